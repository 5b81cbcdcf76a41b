package handreach.walk;

import handreach.geodesy.Compass;
import handreach.geodesy.Place;
import handreach.geodesy.Position;
import handreach.input.Faults;
import handreach.input.InputFault;
import handreach.input.Keyword;
import handreach.input.NumberText;
import handreach.input.SourceText;
import handreach.input.Table;
import handreach.input.TableRow;
import handreach.reach.Progress;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/** The reports of a walk, one a row; every fault of the file is told together. The columns are described in docs/walk.md. */
public final class ReportFile {
    static final List<String> COLUMNS = List.of(
            "time",
            "latitude",
            "longitude",
            "place",
            "level_dbm",
            "sinad_db",
            "readability",
            "copy",
            "direction",
            "loadout",
            "heading_deg",
            "note");
    private static final int MOST_ROWS = 1_000_000;
    private static final Keyword<Boolean> COPY = Keyword.of(List.of(true, false), isCopy -> isCopy ? "yes" : "no")
            .also("y", true)
            .also("1", true)
            .also("true", true)
            .also("copy", true)
            .also("n", false)
            .also("0", false)
            .also("false", false)
            .also("none", false);

    private final SourceText source;
    private final Faults faults = new Faults();
    private final List<WalkReport> reports = new ArrayList<>();

    private ReportFile(SourceText source) {
        this.source = source;
    }

    /** Reads the reports, in the order of the file. Lines that start with # are remarks. */
    public static List<WalkReport> read(SourceText text, Progress progress) {
        ReportFile file = new ReportFile(text);
        file.readAll(progress);
        file.faults.throwIfAny();
        return List.copyOf(file.reports);
    }

    /** Waypoints of a GPS program as reports; those that say nothing of a call are told to the listener. */
    public static List<WalkReport> ofWaypoints(GpxTrack track, Consumer<String> notes) {
        return WaypointReports.of(track, notes);
    }

    private void readAll(Progress progress) {
        int lines = source.lines().size();
        if (lines > MOST_ROWS)
            throw new InputFault(source.name(), 0, "has more than " + MOST_ROWS + " rows. Split it by days.");
        Table table = Table.of(source, List.of(), COLUMNS, faults);
        faults.throwIfAny();
        if (!table.hasAnyOf("time", "place") && !(table.hasAnyOf("latitude") && table.hasAnyOf("longitude")))
            table.headFault("has neither time nor place nor latitude and longitude. Add one of them.");
        if (!table.hasAnyOf("level_dbm", "sinad_db", "readability", "copy"))
            table.headFault("has no column of what was heard. Add level_dbm, sinad_db, readability or copy.");
        table.forEach(row -> {
            progress.goOn();
            report(row);
            progress.done("reading reports", (double) row.line() / lines);
        });
        if (reports.isEmpty() && faults.isEmpty())
            faults.add(
                    source.name(),
                    0,
                    "has no reports under its column heads. Log every call, those without an answer too.");
    }

    private void report(TableRow row) {
        Optional<Instant> time = time(row);
        Optional<Position> at = position(row);
        Optional<Reception> heard = heard(row);
        Optional<Direction> way = row.word("direction", Direction.KEYWORD);
        OptionalDouble heading = row.number(Compass.HEADING);
        if (row.isSound() && time.isEmpty() && at.isEmpty())
            row.fault("has neither a time nor a position. Add one, or remove the row.");
        if (!row.isSound()) return;
        WalkReport.Origin origin = new WalkReport.Origin(row.line(), time, at);
        reports.add(new WalkReport(
                origin,
                heard.orElseThrow(),
                way.orElse(Direction.BOTH),
                Optional.of(row.text("loadout")).filter(name -> !name.isEmpty()),
                heading,
                row.text("note")));
    }

    private static Optional<Instant> time(TableRow row) {
        String typed = row.text("time");
        if (typed.isEmpty()) return Optional.empty();
        String text = typed.replace(' ', 'T');
        for (String full : List.of(text, text + "Z", text + ":00Z")) {
            try {
                Optional<Instant> moment = ClockTime.parse(full);
                if (moment.isPresent()) return moment;
            } catch (DateTimeException next) {
                continue;
            }
        }
        row.fault(
                "time",
                "is \"" + typed
                        + "\", a day and time such as 2026-05-04T09:30:00Z is expected (UTC, or with its offset; "
                        + ClockTime.YEARS + "). Write it so.");
        return Optional.empty();
    }

    private static Optional<Position> position(TableRow row) {
        String latitude = row.text("latitude");
        String longitude = row.text("longitude");
        if (latitude.isEmpty() && longitude.isEmpty()) return place(row);
        if (!row.text("place").isEmpty()) {
            row.fault("has a place and latitude and longitude, which say the same. Keep one.");
            return Optional.empty();
        }
        if (isBeyondThePole(latitude) && !isBeyondThePole(longitude)) {
            row.fault("latitude is \"" + latitude + "\" and longitude \"" + longitude
                    + "\", allowed is -90 to 90 and -180 to 180. The two look exchanged: exchange them.");
            return Optional.empty();
        }
        OptionalDouble lat = row.requiredNumber(Position.LATITUDE);
        OptionalDouble lon = row.requiredNumber(Position.LONGITUDE);
        if (lat.isEmpty() || lon.isEmpty()) return Optional.empty();
        return Optional.of(new Position(lat.getAsDouble(), lon.getAsDouble()));
    }

    /** In any form in which a plan takes a place: degrees, UTM, a grid reference. */
    private static Optional<Position> place(TableRow row) {
        String typed = row.text("place");
        if (typed.isEmpty()) return Optional.empty();
        try {
            return Optional.of(Place.parse("place", typed));
        } catch (InputFault refused) {
            row.fault(refused.faults().get(0).text());
            return Optional.empty();
        }
    }

    private static boolean isBeyondThePole(String degrees) {
        OptionalDouble value = NumberText.parse(degrees);
        return value.isEmpty() || !Position.LATITUDE.accepts(value.getAsDouble());
    }

    private static Optional<Reception> heard(TableRow row) {
        List<Reception> found = new ArrayList<>();
        level(row).ifPresent(found::add);
        row.number(Reception.SINAD).ifPresent(value -> found.add(new Reception(Reception.Kind.SINAD, value)));
        row.number(Reception.READABILITY)
                .ifPresent(value -> found.add(new Reception(Reception.Kind.READABILITY, value)));
        row.word("copy", COPY).ifPresent(isCopy -> found.add(Reception.copy(isCopy)));
        if (found.isEmpty() && row.isSound())
            row.fault(
                    "says nothing of what was heard. Write copy no where there was no answer: such calls teach most.");
        // the finest reading counts
        return found.stream().findFirst();
    }

    private static Optional<Reception> level(TableRow row) {
        String text = row.text("level_dbm");
        boolean below = text.startsWith("<");
        OptionalDouble value = row.number(Reception.LEVEL, below ? text.substring(1) : text);
        if (value.isEmpty()) return Optional.empty();
        return Optional.of(new Reception(below ? Reception.Kind.BELOW : Reception.Kind.LEVEL, value.getAsDouble()));
    }
}
