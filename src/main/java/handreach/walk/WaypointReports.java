package handreach.walk;

import handreach.input.Faults;
import handreach.input.InputFault;
import handreach.input.NumberText;
import handreach.input.Range;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Marks that a person set in a GPS program where a call was made, as reports: a waypoint with its place and time, whose name, comment
 * or description says in a few words what was heard.
 */
final class WaypointReports {
    private static final String NUMBER = "((?<![\\d.,])[-\u2212]?\\d{1,3}(?:[.,]\\d{1,2})?)";
    private static final Pattern LEVEL = Pattern.compile("(<\\s*)?" + NUMBER + "\\s*dbm\\b");
    private static final Pattern SINAD =
            Pattern.compile("\\bsinad\\s*[:=]?\\s*" + NUMBER + "|" + NUMBER + "\\s*db\\s*sinad\\b");
    private static final Pattern READABILITY = Pattern.compile("\\b(?:readability|readable|r)\\s*[:=]?\\s*([0-5])\\b");
    private static final Pattern NO_COPY =
            Pattern.compile("\\b(?:no (?:copy|answer|contact)|copy\\s*[:=]?\\s*no|not heard|nothing|silent)\\b");
    private static final Pattern COPY = Pattern.compile("\\b(?:copy|copied|heard|answered|contact)\\b");
    private static final int MOST_NAMED = 3;

    private WaypointReports() {}

    /** Reports in the order of the file; marks that say nothing of a call are left out and told to the listener. */
    static List<WalkReport> of(GpxTrack track, Consumer<String> notes) {
        List<WalkReport> reports = new ArrayList<>();
        List<String> silent = new ArrayList<>();
        Faults faults = new Faults();
        int number = 0;
        for (TrackPoint point : track.waypoints()) {
            number++;
            String words = point.words().toLowerCase(Locale.ROOT);
            Optional<Reception> heard = heard(words);
            int at = number;
            heard.flatMap(WaypointReports::fault)
                    .ifPresent(fault -> faults.add(track.name(), 0, "waypoint " + at + " says " + fault));
            if (heard.isEmpty()) {
                silent.add(point.name().isEmpty() ? "no. " + number : point.name());
                continue;
            }
            reports.add(new WalkReport(
                    new WalkReport.Origin(number, point.time(), Optional.of(point.at())),
                    heard.get(),
                    way(words),
                    Optional.empty(),
                    OptionalDouble.empty(),
                    point.words()));
        }
        faults.throwIfAny();
        if (reports.isEmpty())
            throw new InputFault(
                    track.name(),
                    0,
                    "has no waypoint that says what was heard. Write it into the name or the comment of each: copy, no copy, -104 dBm,"
                            + " SINAD 12, readability 4.");
        if (!silent.isEmpty())
            notes.accept(track.name() + ": " + silent.size() + " of "
                    + track.waypoints().size()
                    + " waypoints say nothing of what was heard and are left out: "
                    + String.join(", ", silent.subList(0, Math.min(MOST_NAMED, silent.size())))
                    + (silent.size() > MOST_NAMED ? " and " + (silent.size() - MOST_NAMED) + " more." : "."));
        return List.copyOf(reports);
    }

    /** The finest that the words hold: level, SINAD, readability, copy. */
    static Optional<Reception> heard(String words) {
        Matcher level = LEVEL.matcher(words);
        if (level.find())
            return Optional.of(new Reception(
                    level.group(1) == null ? Reception.Kind.LEVEL : Reception.Kind.BELOW, number(level.group(2))));
        Matcher sinad = SINAD.matcher(words);
        if (sinad.find())
            return Optional.of(new Reception(
                    Reception.Kind.SINAD, number(sinad.group(1) == null ? sinad.group(2) : sinad.group(1))));
        Matcher readability = READABILITY.matcher(words);
        if (readability.find())
            return Optional.of(new Reception(Reception.Kind.READABILITY, number(readability.group(1))));
        if (NO_COPY.matcher(words).find()) return Optional.of(Reception.copy(false));
        return COPY.matcher(words).find() ? Optional.of(Reception.copy(true)) : Optional.empty();
    }

    /** What is wrong with a number that no receiver can have shown. */
    private static Optional<String> fault(Reception heard) {
        // Readability is read digit by digit, and copy by words.
        if (!heard.isLevel() && heard.kind() != Reception.Kind.SINAD) return Optional.empty();
        Range allowed = heard.isLevel() ? Reception.LEVEL : Reception.SINAD;
        return allowed.accepts(heard.value())
                ? Optional.empty()
                : Optional.of("\"" + NumberText.plain(heard.value()) + "\" " + allowed.unit() + ", allowed is "
                        + allowed.words() + ". Correct the mark, or take it out.");
    }

    private static double number(String text) {
        return Double.parseDouble(text.replace('\u2212', '-').replace(',', '.'));
    }

    private static Direction way(String words) {
        String plain = words.replace(' ', '-');
        for (Direction way : List.of(Direction.TO_WALKER, Direction.TO_BASE))
            if (plain.contains(way.word())) return way;
        return Direction.BOTH;
    }
}
