package handreach.report;

import handreach.bench.Quantity;
import handreach.bench.SessionOrder;
import handreach.bench.SessionOrder.Turn;
import handreach.input.FillIn;
import handreach.input.InputFault;
import handreach.input.SourceText;
import handreach.input.Sources;
import handreach.report.file.AnswerFile;
import handreach.report.file.Csv;
import handreach.report.page.Block;
import handreach.report.page.Bullets;
import handreach.report.page.Caution;
import handreach.report.page.CautionBlock;
import handreach.report.page.Column;
import handreach.report.page.Facts;
import handreach.report.page.HtmlPage;
import handreach.report.page.Page;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Table;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The blank sheet of a bench session: a table for a spreadsheet, which {@code bench} reads once the values are in, and the same as a
 * page to be filled in by hand.
 *
 * @param order what to read, in order
 * @param frequencyMhz as it is to stand in every row; may be empty
 * @param lot the number by which the order was drawn
 * @param quantities what to read, in order
 */
public record BenchSheet(SessionOrder order, String frequencyMhz, long lot, List<Quantity> quantities) {
    private static final List<String> HEADS =
            List.of("antenna", "mount", "quantity", "value", "unit", "frequency_mhz", "trial", "note");

    private static final String NOISE_FLOOR = "noise_floor_dbm";
    private static final List<String> RANGE = List.of("distance_m", "tx_height_m", "rx_height_m");

    private static final int VALUE = HEADS.indexOf("value");
    private static final int NOTE = HEADS.indexOf("note");

    /** One line to fill in. */
    private record Line(Turn turn, Quantity quantity) {}

    public BenchSheet {
        quantities = List.copyOf(quantities);
    }

    /** Writes the table, and the page beside it under the same name; hands back the page's file. */
    public Path write(Path table, Sources sources) {
        String name = String.valueOf(table.getFileName());
        int dot = name.lastIndexOf('.');
        if (holdsMore(table))
            throw new InputFault(
                    table.toString(),
                    0,
                    "is there already and holds more than a blank sheet. Name another file. What is there is unchanged.");
        Path page = table.resolveSibling((dot > 0 ? name.substring(0, dot) : name) + ".html");
        AnswerFile.write(table, csv(), sources);
        AnswerFile.write(page, HtmlPage.text(page()), sources);
        return page;
    }

    /** Whether a file is there that is no blank sheet: readings that were typed in are never written over. */
    private static boolean holdsMore(Path table) {
        if (!Files.isRegularFile(table)) return false;
        List<String> lines = SourceText.readTable(table).lines();
        if (lines.stream().anyMatch(BenchSheet::declares)) return true;
        List<String> rows = lines.stream()
                .filter(line -> !line.isBlank() && !line.startsWith("#") && !line.startsWith("sep="))
                .toList();
        return !rows.isEmpty()
                && (!isRow(rows.get(0), HEADS) || !rows.stream().skip(1).allMatch(BenchSheet::isBlank));
    }

    /** Whether a line above the heads says what no blank sheet says. */
    private static boolean declares(String line) {
        int equals = line.indexOf('=');
        if (!line.startsWith("#") || equals < 0) return false;
        String key = line.substring(1, equals).strip();
        String value = line.substring(equals + 1).replaceAll("[,;\\s]+$", "");
        return !key.equals("control") && !key.equals("order") && !FillIn.isIn(value);
    }

    private static boolean isRow(String line, List<String> cells) {
        return Stream.of(",", ";", "\t")
                .anyMatch(by -> List.of(line.split(by, -1)).equals(cells));
    }

    private static boolean isBlank(String line) {
        return Stream.of(",", ";", "\t")
                .map(by -> line.split(by, -1))
                .anyMatch(cells -> cells.length == HEADS.size() && cells[VALUE].isBlank() && cells[NOTE].isBlank());
    }

    String csv() {
        List<List<String>> rows = mounts().stream()
                .flatMap(mount -> quantities.stream().flatMap(quantity -> lines(mount, quantity).stream()))
                .map(line -> List.of(
                        line.turn().antenna(),
                        line.turn().mount(),
                        line.quantity().key(),
                        "",
                        line.quantity().unit(),
                        frequencyMhz,
                        String.valueOf(line.turn().trial()),
                        ""))
                .toList();
        String once = readOnce().stream()
                .map(key -> "# " + key + " = " + FillIn.WORDS + "\r\n")
                .collect(Collectors.joining());
        return "sep=,\r\n# control = " + order.control() + "\r\n# order = interleaved\r\n" + once
                + Csv.text(HEADS, rows);
    }

    /** Declarations that are read once in a session: what these quantities have use for. */
    private List<String> readOnce() {
        List<String> keys = new ArrayList<>();
        if (quantities.contains(Quantity.RECEIVED_LEVEL)) keys.add(NOISE_FLOOR);
        if (quantities.stream().anyMatch(Quantity::isReadInTurns)) keys.addAll(RANGE);
        return keys;
    }

    /** Where on the table goes what is written down once. */
    private String whereItGoes() {
        String lines = readOnce().stream().map(key -> "# " + key).collect(Collectors.joining(", "));
        return "What is read once goes into the table too, above its column heads, in place of " + FillIn.WORDS
                + ": the lines " + lines
                + ". What was not read stays as it is; of distance and heights it is all or none.";
    }

    List<String> mounts() {
        return order.turns().stream().map(Turn::mount).distinct().toList();
    }

    /** Every turn of a mounting, or each antenna once, as the quantity is read. */
    private List<Line> lines(String mount, Quantity quantity) {
        if (!quantity.isReadInTurns())
            return order.antennas().stream()
                    .map(antenna -> new Line(new Turn(mount, 1, antenna), quantity))
                    .toList();
        return order.turns().stream()
                .filter(turn -> turn.mount().equals(mount))
                .map(turn -> new Line(turn, quantity))
                .toList();
    }

    Page page() {
        List<Section> sections = new ArrayList<>();
        sections.add(Section.of(
                "Before you start",
                new Facts(Stream.of(
                                "Date and place",
                                "Who reads",
                                "Instrument",
                                "Radio and power",
                                "Noise floor, dBm",
                                "Distance, m",
                                "Height of the sending antenna, m",
                                "Height of the receiving antenna, m",
                                "Weather")
                        .map(name -> new Facts.Fact(name, "\u2026".repeat(12)))
                        .toList()),
                new Bullets(Stream.concat(
                                beforeReading().stream(),
                                Stream.of(
                                        "Same radio, same battery, same hand, same marked spot, same direction. Wait three seconds before you read.",
                                        "Take each antenna off and put it on again for every reading.",
                                        "Read in the order of the sheet. A trial that was missed is left empty, or read again later as a whole turn."))
                        .toList())));
        for (String mount : mounts())
            sections.add(new Section(
                    "Mounting: " + mount,
                    quantities.stream()
                            .<Block>map(quantity -> readings(lines(mount, quantity), quantity))
                            .toList()));
        sections.add(new Section("Cautions", List.of(new CautionBlock(List.of(Caution.EXPOSURE, Caution.LICENCE)))));
        return new Page(
                "Bench session",
                order.control() + " against "
                        + String.join(
                                ", ",
                                order.antennas().subList(1, order.antennas().size())),
                "How strongly is each antenna received, in turns with the control?",
                answer(),
                sections,
                "Made by Handreach. Order drawn by lot " + lot
                        + "; fill in the table of the same name and give it to bench.");
    }

    private List<String> beforeReading() {
        List<String> steps = new ArrayList<>();
        if (readOnce().contains(NOISE_FLOOR))
            steps.add("Transmitter off, read once: that is the noise floor. Write it down.");
        if (!readOnce().isEmpty()) steps.add(whereItGoes());
        return steps;
    }

    private List<Block> answer() {
        int trials = order.turns().stream().mapToInt(Turn::trial).max().orElseThrow();
        int readings = mounts().stream()
                .flatMap(mount -> quantities.stream().map(quantity -> lines(mount, quantity)))
                .mapToInt(List::size)
                .sum();
        return List.of(
                Paragraph.answer(readings + " readings, " + trials + " turns through all antennas"
                        + (frequencyMhz.isEmpty() ? "" : ", at " + frequencyMhz + " MHz") + "."),
                Paragraph.of(
                        "Every turn holds each antenna once, in an order drawn by lot. So drift cancels within the turn, and no"
                                + " antenna is always read first."));
    }

    private static Table<Line> readings(List<Line> lines, Quantity quantity) {
        return Table.of(
                        "",
                        lines,
                        List.of(
                                Column.number(
                                        "trial",
                                        line -> String.valueOf(line.turn().trial())),
                                Column.words("antenna", line -> line.turn().antenna()),
                                Column.words(head(quantity), line -> ""),
                                Column.words("note", line -> "")))
                .forWriting();
    }

    private static String head(Quantity quantity) {
        return switch (quantity) {
            case RECEIVED_LEVEL -> "level, dBm";
            case FIELD_METER -> "field meter, \u00B5A";
            case SWR -> "SWR, :1";
            case RETURN_LOSS -> "return loss, dB";
            case RESONANCE -> "resonance, MHz";
            case BANDWIDTH -> "bandwidth at 3:1, MHz";
        };
    }
}
