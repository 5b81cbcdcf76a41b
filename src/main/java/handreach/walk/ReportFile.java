package handreach.walk;

import handreach.geodesy.Position;
import handreach.input.Faults;
import handreach.input.InputFault;
import handreach.input.NearestWord;
import handreach.input.NumberText;
import handreach.input.SourceText;
import handreach.reach.Progress;
import java.io.IOException;
import java.io.StringReader;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** The reports of a walk, one a row; every fault of the file is told together. The columns are described in docs/walk.md. */
public final class ReportFile {
    static final List<String> COLUMNS = List.of(
            "time",
            "latitude",
            "longitude",
            "level_dbm",
            "sinad_db",
            "readability",
            "copy",
            "direction",
            "loadout",
            "heading_deg",
            "note");
    private static final int MOST_ROWS = 1_000_000;

    private final String source;
    private final Faults faults = new Faults();
    private final Map<String, Integer> columns = new HashMap<>();
    private final List<WalkReport> reports = new ArrayList<>();

    private ReportFile(String source) {
        this.source = source;
    }

    /** Reads the reports, in the order of the file. Lines that start with # are remarks. */
    public static List<WalkReport> read(SourceText text, Progress progress) {
        ReportFile file = new ReportFile(text.name());
        file.readAll(text.lines(), progress);
        file.faults.throwIfAny();
        return List.copyOf(file.reports);
    }

    private void readAll(List<String> lines, Progress progress) {
        int head = 0;
        while (head < lines.size() && isRemark(lines.get(head))) head++;
        if (head == lines.size())
            throw new InputFault(source, 0, "has no line of column heads. See docs/walk.md for the columns.");
        heads(lines.get(head), head + 1);
        faults.throwIfAny();
        if (lines.size() - head > MOST_ROWS)
            throw new InputFault(source, 0, "has more than " + MOST_ROWS + " rows. Split it by days.");
        for (int i = head + 1; i < lines.size(); i++) {
            progress.goOn();
            if (!isRemark(lines.get(i))) cells(lines.get(i), i + 1).ifPresent(row -> report(row));
            progress.done("reading reports", (i + 1.0) / lines.size());
        }
        if (reports.isEmpty() && faults.isEmpty())
            faults.add(
                    source, 0, "has no reports under its column heads. Log every call, those without an answer too.");
    }

    private static boolean isRemark(String line) {
        return line.isBlank() || line.stripLeading().startsWith("#");
    }

    private record Row(int line, List<String> cells) {}

    private Optional<Row> cells(String line, int number) {
        try (CSVParser parser = new CSVParser(new StringReader(line), CSVFormat.RFC4180)) {
            List<CSVRecord> records = parser.getRecords();
            List<String> cells = new ArrayList<>();
            if (records.size() == 1) records.get(0).forEach(cell -> cells.add(cell.strip()));
            if (records.size() == 1 && (cells.size() == columns.size() || columns.isEmpty()))
                return Optional.of(new Row(number, cells));
            String comma =
                    cells.size() > columns.size() ? " A decimal comma, or a comma in a note without quotes?" : "";
            faults.add(
                    source,
                    number,
                    "has " + cells.size() + " cells, the column heads are " + columns.size() + "." + comma
                            + " Correct the row.");
        } catch (IOException | IllegalStateException | java.io.UncheckedIOException e) {
            faults.add(source, number, "has a quote that is not closed in the same line. Close it.");
        }
        return Optional.empty();
    }

    private void heads(String line, int number) {
        List<String> heads = cells(line, number).map(Row::cells).orElse(List.of()).stream()
                .map(ReportFile::plain)
                .toList();
        for (String head : heads) {
            if (!COLUMNS.contains(head))
                faults.add(
                        source,
                        number,
                        "has the column \"" + head + "\", which is not known." + NearestWord.hint(head, COLUMNS)
                                + " Known are " + String.join(", ", COLUMNS) + ".");
            else if (columns.containsKey(head))
                faults.add(source, number, "has the column " + head + " twice. Remove one.");
            columns.putIfAbsent(head, columns.size());
        }
        boolean placed =
                columns.containsKey("time") || columns.containsKey("latitude") && columns.containsKey("longitude");
        if (!placed) faults.add(source, number, "has neither time nor latitude and longitude. Add one of the two.");
        if (List.of("level_dbm", "sinad_db", "readability", "copy").stream().noneMatch(columns::containsKey))
            faults.add(
                    source, number, "has no column of what was heard. Add level_dbm, sinad_db, readability or copy.");
    }

    private static String plain(String head) {
        return head.toLowerCase(Locale.ROOT).replace(' ', '_');
    }

    private String cell(Row row, String column) {
        Integer at = columns.get(column);
        return at == null ? "" : row.cells().get(at);
    }

    private void report(Row row) {
        int before = faults.list().size();
        Optional<Instant> time = time(row);
        Optional<Position> at = position(row);
        Optional<Heard> heard = heard(row);
        Optional<Way> way = way(row);
        OptionalDouble heading = number(row, "heading_deg", 0, 360, "degrees");
        String loadout = cell(row, "loadout");
        if (faults.list().size() > before) return;
        if (time.isEmpty() && at.isEmpty()) {
            faults.add(source, row.line(), "has neither a time nor a position. Add one, or remove the row.");
            return;
        }
        WalkReport.Origin origin = new WalkReport.Origin(row.line(), time, at);
        reports.add(new WalkReport(
                origin,
                heard.orElseThrow(),
                way.orElseThrow(),
                loadout.isEmpty() ? Optional.empty() : Optional.of(loadout),
                heading,
                cell(row, "note")));
    }

    private Optional<Instant> time(Row row) {
        String text = cell(row, "time").replace(' ', 'T');
        if (text.isEmpty()) return Optional.empty();
        for (String full : List.of(text, text + "Z", text + ":00Z")) {
            try {
                Optional<Instant> moment = ClockTime.parse(full);
                if (moment.isPresent()) return moment;
            } catch (DateTimeException next) {
                continue;
            }
        }
        faults.add(
                source,
                row.line(),
                "time is \"" + cell(row, "time")
                        + "\", a day and time such as 2026-05-04T09:30:00Z is expected (UTC, or with"
                        + " its offset; " + ClockTime.YEARS + "). Write it so.");
        return Optional.empty();
    }

    private Optional<Position> position(Row row) {
        String latitude = cell(row, "latitude");
        String longitude = cell(row, "longitude");
        if (latitude.isEmpty() && longitude.isEmpty()) return Optional.empty();
        OptionalDouble lat = NumberText.parse(latitude);
        OptionalDouble lon = NumberText.parse(longitude);
        boolean numbers = lat.isPresent() && lon.isPresent();
        if (numbers && Math.abs(lat.getAsDouble()) <= 90 && Math.abs(lon.getAsDouble()) <= 180)
            return Optional.of(new Position(lat.getAsDouble(), lon.getAsDouble()));
        boolean exchanged = numbers && Math.abs(lat.getAsDouble()) <= 180 && Math.abs(lon.getAsDouble()) <= 90;
        faults.add(
                source,
                row.line(),
                "latitude is \"" + latitude + "\" and longitude \"" + longitude
                        + "\", allowed is -90 to 90 and -180 to 180. "
                        + (exchanged ? "The two look exchanged: exchange them." : "Write both as decimal degrees."));
        return Optional.empty();
    }

    private Optional<Heard> heard(Row row) {
        List<Heard> found = new ArrayList<>();
        int before = faults.list().size();
        level(row).ifPresent(found::add);
        number(row, "sinad_db", -10, 80, "dB").ifPresent(value -> found.add(new Heard(Heard.Kind.SINAD, value)));
        number(row, "readability", 0, 5, "").ifPresent(value -> found.add(new Heard(Heard.Kind.READABILITY, value)));
        copy(row).ifPresent(found::add);
        if (faults.list().size() > before) return Optional.empty();
        if (found.isEmpty())
            faults.add(
                    source,
                    row.line(),
                    "says nothing of what was heard. Write copy no where there was no answer: such calls teach most.");
        // the finest reading counts
        return found.stream().findFirst();
    }

    private Optional<Heard> level(Row row) {
        String text = cell(row, "level_dbm");
        boolean below = text.startsWith("<");
        OptionalDouble value = number(row, "level_dbm", below ? text.substring(1) : text, -170, 30, "dBm");
        if (value.isEmpty()) return Optional.empty();
        return Optional.of(new Heard(below ? Heard.Kind.BELOW : Heard.Kind.LEVEL, value.getAsDouble()));
    }

    private Optional<Heard> copy(Row row) {
        String text = cell(row, "copy").toLowerCase(Locale.ROOT);
        if (text.isEmpty()) return Optional.empty();
        if (List.of("yes", "y", "1", "true", "copy").contains(text)) return Optional.of(Heard.copy(true));
        if (List.of("no", "n", "0", "false", "none").contains(text)) return Optional.of(Heard.copy(false));
        faults.add(
                source, row.line(), "copy is \"" + cell(row, "copy") + "\", allowed is yes or no. Write one of them.");
        return Optional.empty();
    }

    private Optional<Way> way(Row row) {
        String text = cell(row, "direction");
        if (text.isEmpty()) return Optional.of(Way.BOTH);
        return Way.KEYWORD.read(text, refused -> faults.add(source, row.line(), "direction " + refused));
    }

    private OptionalDouble number(Row row, String column, double low, double high, String unit) {
        return number(row, column, cell(row, column), low, high, unit);
    }

    private OptionalDouble number(Row row, String column, String text, double low, double high, String unit) {
        if (text.isEmpty()) return OptionalDouble.empty();
        OptionalDouble value = NumberText.parse(text);
        if (value.isPresent() && value.getAsDouble() >= low && value.getAsDouble() <= high) return value;
        faults.add(
                source,
                row.line(),
                String.format(
                        Locale.ROOT,
                        "%s is \"%s\", allowed is %.0f to %.0f%s.%s Correct it, or leave the cell empty.",
                        column,
                        text,
                        low,
                        high,
                        unit.isEmpty() ? "" : " " + unit,
                        NumberText.hasDecimalComma(text) ? " Decimals take a point." : ""));
        return OptionalDouble.empty();
    }
}
