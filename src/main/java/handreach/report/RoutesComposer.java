package handreach.report;

import handreach.plan.Plan;
import handreach.relay.HopPath;
import handreach.report.card.CardLine;
import handreach.report.file.Gpx;
import handreach.report.page.Block;
import handreach.report.page.Bullets;
import handreach.report.page.Column;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Table;
import handreach.study.ReachAnswer;
import handreach.study.RoutesAnswer;
import handreach.study.RoutesAnswer.Apart;
import handreach.study.RoutesAnswer.Contact;
import handreach.study.RoutesAnswer.Meeting;
import handreach.study.RoutesAnswer.Point;
import handreach.study.RoutesAnswer.Route;
import handreach.study.RoutesAnswer.Stretch;
import handreach.units.Decibels;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.StringJoiner;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/** Contact along the routes of a plan that say when people go: stretches, silences, where to call next. */
public final class RoutesComposer {
    private static final int DAY_S = 86_400;

    private final RoutesAnswer answer;
    private final Plan plan;
    private final Lengths lengths;

    private RoutesComposer(ReachAnswer answer) {
        this.answer = answer.routes();
        this.plan = answer.scene().plan();
        this.lengths = plan.header().lengths();
    }

    /** The routes of a reach answer. */
    public static RoutesComposer of(ReachAnswer answer) {
        return new RoutesComposer(answer);
    }

    /** Nothing where no route says when. */
    Optional<Section> section() {
        List<Block> blocks = new ArrayList<>();
        for (Route route : answer.routes()) {
            blocks.add(Paragraph.of(sentence(route)));
            blocks.add(stretches(route));
        }
        for (Meeting meeting : answer.meetings()) blocks.add(Paragraph.of(sentence(meeting)));
        for (Apart apart : answer.apart()) blocks.add(Paragraph.of(sentence(apart)));
        if (!answer.warnings().isEmpty()) blocks.add(new Bullets(answer.warnings()));
        return blocks.isEmpty()
                ? Optional.empty()
                : Optional.of(new Section("Along the routes", blocks).answering("When can people on the move talk?"));
    }

    /** The same in short, for a narrow place. */
    public List<Block> brief() {
        List<Block> blocks = new ArrayList<>();
        for (Route route : answer.routes()) blocks.add(Paragraph.of(sentence(route)));
        for (Meeting meeting : answer.meetings()) blocks.add(Paragraph.of(sentence(meeting)));
        for (Apart apart : answer.apart()) blocks.add(Paragraph.of(sentence(apart)));
        return blocks;
    }

    /** When and where to call, for the field card: the last sure place before each silence and the first after it. */
    List<CardLine> checkTimes() {
        List<CardLine> lines = new ArrayList<>();
        for (Route route : answer.routes())
            for (Stretch silence : silences(route)) {
                String before = route.lastSure(silence.from().alongM())
                        .map(point -> "call before it at " + place(route, point))
                        .orElse("no sure place before it");
                String after = route.nextSure(silence.to().alongM())
                        .map(point -> "sure again at " + place(route, point))
                        .orElse("no sure place after it");
                lines.add(new CardLine(
                        route.name() + ":",
                        "silence " + span(route, silence) + "; " + before + "; " + after + ".",
                        brief(route, silence)));
            }
        return lines;
    }

    /** A silence without its places: {@code call 08:16, silence 08:18 to 08:50, sure again 09:05 UTC}. */
    private String brief(Route route, Stretch silence) {
        StringJoiner words = new StringJoiner(", ");
        route.lastSure(silence.from().alongM()).ifPresent(point -> words.add("call " + bare(point)));
        words.add("silence " + bare(silence.from()) + " to " + bare(silence.to()));
        route.nextSure(silence.to().alongM()).ifPresent(point -> words.add("sure again " + bare(point)));
        boolean hasTimes = silence.from().timeS().isPresent();
        return words + (!hasTimes ? " from the start" : route.isUtc() ? " UTC" : "");
    }

    private String bare(Point point) {
        return point.timeS().isPresent() ? clock(point.timeS().getAsDouble(), false) : lengths.text(point.alongM());
    }

    private static List<Stretch> silences(Route route) {
        return route.stretches().stream()
                .filter(stretch -> !stretch.contact().isTalk())
                .toList();
    }

    private String sentence(Route route) {
        List<Stretch> silences = silences(route);
        double silentM = silences.stream().mapToDouble(Stretch::lengthM).sum();
        String base = answer.base().orElseThrow();
        String sure = route.sure(true)
                .map(first -> "the first sure place " + place(route, first) + ", the last "
                        + place(route, route.sure(false).orElseThrow()))
                .orElse("nowhere sure");
        String silent = silences.isEmpty()
                ? "no silence"
                : silences.size() + (silences.size() == 1 ? " silence" : " silences") + ", "
                        + lengths.text(silentM) + " in all, the longest "
                        + span(
                                route,
                                silences.stream()
                                        .max(Comparator.comparingDouble(Stretch::lengthM))
                                        .orElseThrow());
        return route.name() + " with " + base + ", carrying " + route.loadout() + ": " + silent + "; " + sure + ".";
    }

    private String sentence(Meeting meeting) {
        String both = meeting.a() + " and " + meeting.b() + " are both on the way from "
                + clock(meeting.fromS(), meeting.isUtc()) + " to " + clock(meeting.toS(), meeting.isUtc());
        return meeting.windows().isEmpty()
                ? both + " and can never talk with the wanted " + wanted() + " both ways."
                : both + " and can talk with the wanted " + wanted() + " both ways "
                        + meeting.windows().stream()
                                .map(window -> "from " + clock(window.fromS(), meeting.isUtc()) + " to "
                                        + clock(window.toS(), meeting.isUtc()))
                                .collect(Collectors.joining(", "))
                        + ".";
    }

    private static String sentence(Apart apart) {
        boolean isOneDay = day(apart.first().fromS()) == day(apart.first().toS())
                && day(apart.first().fromS()) == day(apart.second().fromS())
                && day(apart.first().fromS()) == day(apart.second().toS());
        boolean isDated = apart.isUtc() && !isOneDay;
        return apart.a() + " goes from " + moment(apart.first().fromS(), apart.isUtc(), isDated) + " to "
                + moment(apart.first().toS(), apart.isUtc(), isDated) + " and " + apart.b() + " from "
                + moment(apart.second().fromS(), apart.isUtc(), isDated) + " to "
                + moment(apart.second().toS(), apart.isUtc(), isDated) + ": they are never on the way at once.";
    }

    private static long day(double seconds) {
        return Math.floorDiv((long) seconds, (long) DAY_S);
    }

    private static String moment(double seconds, boolean isUtc, boolean isDated) {
        return (isDated ? LocalDate.ofEpochDay(day(seconds)) + " " : "") + clock(seconds, isUtc);
    }

    private Table<Stretch> stretches(Route route) {
        return Table.of(
                "Sure: the wanted " + wanted()
                        + " "
                        + plan.channel().wish().ways().towards(answer.base().orElseThrow())
                        + ", should all that is uncertain everywhere turn out badly, too; likely: without that. Next sure: from"
                        + " the end of a stretch on.",
                route.stretches(),
                List.of(
                        Column.words("contact", stretch -> stretch.contact().word()),
                        Column.number("from", stretch -> moment(route, stretch.from())),
                        Column.number("to", stretch -> moment(route, stretch.to())),
                        Column.number("length", stretch -> duration(stretch) + lengths.text(stretch.lengthM())),
                        Column.words("begins at", stretch -> grid(stretch.from())),
                        Column.number("worst", stretch -> worst(route, stretch)),
                        Column.words(
                                "next sure",
                                stretch -> stretch.contact() == Contact.SURE
                                        ? ""
                                        : route.nextSure(stretch.to().alongM())
                                                .map(point -> moment(route, point))
                                                .orElse("none"))));
    }

    private String worst(Route route, Stretch stretch) {
        OptionalDouble least = route.points().stream()
                .filter(point -> point.alongM() >= stretch.from().alongM()
                        && (point.alongM() < stretch.to().alongM() || stretch.lengthM() == 0))
                .flatMap(point -> point.odds().stream())
                .mapToDouble(odds -> odds.weaker())
                .min();
        return least.isPresent()
                ? Shares.odds(least.getAsDouble(), plan.channel().wish().odds())
                : "unknown";
    }

    private String span(Route route, Stretch stretch) {
        return moment(route, stretch.from()) + " to " + moment(route, stretch.to()) + " (" + duration(stretch)
                + lengths.text(stretch.lengthM()) + ")";
    }

    private static String duration(Stretch stretch) {
        if (stretch.from().timeS().isEmpty() || stretch.to().timeS().isEmpty()) return "";
        double seconds =
                stretch.to().timeS().getAsDouble() - stretch.from().timeS().getAsDouble();
        return Decibels.number(seconds / 60, 0) + " min, ";
    }

    /** When, else how far from the start. */
    private String moment(Route route, Point point) {
        return point.timeS().isPresent()
                ? clock(point.timeS().getAsDouble(), route.isUtc())
                : lengths.text(point.alongM()) + " from the start";
    }

    private String place(Route route, Point point) {
        return moment(route, point) + ", " + grid(point);
    }

    private String grid(Point point) {
        return plan.header().placeForm().format(point.at());
    }

    static String clock(double seconds, boolean isUtc) {
        long minute = Math.floorMod(Math.round(seconds / 60), (long) DAY_S / 60);
        return String.format(Locale.ROOT, "%02d:%02d%s", minute / 60, minute % 60, isUtc ? " UTC" : "");
    }

    private String wanted() {
        return Shares.wanted(plan.channel().wish().odds());
    }

    /**
     * The same for a handheld navigator: each route as a track, and waypoints where to call before a silence, where it begins and ends,
     * and from where contact is sure again. Times stand in it where the tracks have them; the crew's clock has no day and stands in the
     * names.
     */
    Optional<String> gpx() {
        if (answer.routes().isEmpty()) return Optional.empty();
        List<Gpx.Mark> marks = new ArrayList<>();
        List<Gpx.Track> tracks = new ArrayList<>();
        for (Route route : answer.routes()) {
            for (Stretch silence : silences(route)) {
                String about = "silence " + span(route, silence);
                route.lastSure(silence.from().alongM())
                        .ifPresent(point -> marks.add(mark(route, "call before silence", point, about)));
                marks.add(mark(route, "silence begins", silence.from(), about));
                Optional<Point> sure = route.nextSure(silence.to().alongM());
                if (sure.filter(silence.to()::equals).isEmpty())
                    marks.add(mark(route, "silence ends", silence.to(), about));
                sure.ifPresent(point -> marks.add(mark(route, "sure again", point, about)));
            }
            tracks.add(new Gpx.Track(
                    route.name(),
                    route.points().stream()
                            .map(point -> mark(route, point.contact().word(), point, ""))
                            .toList()));
        }
        Set<String> told = new HashSet<>();
        marks.removeIf(mark -> !told.add(mark.name()));
        return Optional.of(Gpx.text(
                "Check times with " + answer.base().orElse("the base") + ". " + ReachOrigin.caution(), marks, tracks));
    }

    private Gpx.Mark mark(Route route, String what, Point point, String about) {
        Optional<Instant> time = route.isUtc() && point.timeS().isPresent()
                ? Optional.of(Instant.ofEpochSecond(Math.round(point.timeS().getAsDouble())))
                : Optional.empty();
        return new Gpx.Mark(point.at(), route.name() + ", " + moment(route, point) + ": " + what, about, time);
    }

    /** Every point of every route; empty where there are none. */
    Optional<String> csv(ReachOrigin origin) {
        if (answer.routes().isEmpty()) return Optional.empty();
        List<List<String>> rows = new ArrayList<>();
        for (Route route : answer.routes())
            for (Point point : route.points())
                rows.add(List.of(
                        route.name(),
                        point.timeS().isPresent() ? clock(point.timeS().getAsDouble(), route.isUtc()) : "",
                        Decibels.plain(point.alongM() / 1000, 3),
                        Decibels.plain(point.at().latitudeDeg(), 6),
                        Decibels.plain(point.at().longitudeDeg(), 6),
                        odds(point, odds -> odds.there()),
                        odds(point, odds -> odds.back()),
                        odds(point, odds -> odds.pessimistic()),
                        point.contact().word()));
        return Optional.of(origin.csv(
                List.of(
                        "route",
                        "time",
                        "km",
                        "latitude",
                        "longitude",
                        "odds_there",
                        "odds_back",
                        "odds_pessimistic",
                        "contact"),
                rows));
    }

    private static String odds(Point point, ToDoubleFunction<HopPath.HopOdds> figure) {
        return point.odds()
                .map(odds -> Decibels.plain(figure.applyAsDouble(odds), 4))
                .orElse("");
    }
}
