package handreach.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.bench.BenchAnalysis;
import handreach.bench.BenchFile;
import handreach.budget.Ledger;
import handreach.budget.LedgerLine;
import handreach.budget.LineKey;
import handreach.budget.TwoWayLedger;
import handreach.input.SourceText;
import handreach.loadout.Burden;
import handreach.report.page.Bullets;
import handreach.report.page.Caution;
import handreach.report.page.Cautions;
import handreach.report.page.Drawing;
import handreach.report.page.Page;
import handreach.report.page.Paragraph;
import handreach.report.page.PlainText;
import handreach.report.page.Section;
import handreach.report.page.Table;
import handreach.uncertainty.Doubt;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ReportPagesTest {
    private static final String BENCH = """
            antenna,mount,quantity,value,unit,frequency_mhz,trial,note
            helical,in hand,received_level,-50.0,dBm,155.1,1,
            whip,in hand,received_level,-47.0,dBm,155.1,1,
            wire,in hand,received_level,-49.9,dBm,155.1,1,
            helical,in hand,received_level,-50.3,dBm,155.1,2,
            whip,in hand,received_level,-47.4,dBm,155.1,2,
            wire,in hand,received_level,-50.5,dBm,155.1,2,
            helical,in hand,received_level,-49.8,dBm,155.1,3,
            whip,in hand,received_level,-46.7,dBm,155.1,3,
            wire,in hand,received_level,-49.6,dBm,155.1,3,
            helical,in hand,received_level,-50.1,dBm,155.1,4,
            whip,in hand,received_level,-47.1,dBm,155.1,4,
            wire,in hand,received_level,-50.1,dBm,155.1,4,
            """;

    private static BenchView bench() {
        BenchAnalysis analysis = BenchAnalysis.of(BenchFile.of(SourceText.of("bench.csv", BENCH)), "helical");
        return new BenchView(
                "session",
                BenchView.Question.of(Optional.empty()),
                analysis,
                List.of(),
                List.of(),
                List.of(
                        new AntennaCost("whip", new Burden(47, 45, 25, 1)),
                        new AntennaCost("helical", new Burden(16, 30, 0, 2))),
                List.of(),
                "made here");
    }

    private static List<List<String>> cells(Table<?> table) {
        return IntStream.range(0, table.rowCount())
                .mapToObj(row -> IntStream.range(0, table.columnCount())
                        .mapToObj(column -> table.cell(row, column))
                        .toList())
                .toList();
    }

    private static TwoWayLedger ledger() {
        LedgerLine power = new LedgerLine(LineKey.POWER, "transmitter power, dBm", 37, Doubt.NONE, "radio", "");
        LedgerLine path = new LedgerLine(LineKey.PATH, "free space", -94.5, new Doubt(6, 8), "Rec. ITU-R P.525", "");
        LedgerLine quiet = new LedgerLine(LineKey.NOISE, "noise: quiet", -2, Doubt.NONE, "Rec. ITU-R P.372", "");
        LedgerLine city = new LedgerLine(LineKey.NOISE, "noise: city", -12, Doubt.spread(4), "Rec. ITU-R P.372", "");
        LedgerLine extra = new LedgerLine(LineKey.EXTRA, "only here", -1, Doubt.NONE, "ours", "why");
        return new TwoWayLedger(
                new Ledger("A", "B", List.of(power, path, quiet), 10, new Doubt(6, 8)),
                new Ledger("B", "A", List.of(power, path, city, extra), 10, new Doubt(6, 8)));
    }

    @Test
    void theLedgerSetsThereBesideBack() {
        Table<LedgerRow> table = LedgerComposer.table(ledger());
        assertEquals(List.of("transmitter power, dBm", "+37.0", "+37.0", "", "", "radio"), cells(table, 0));
        assertEquals(
                List.of("free space", "\u221294.5", "\u221294.5", "6.0", "8.0", "Rec. ITU-R P.525"), cells(table, 1));
        assertEquals(List.of("only here", "–", "\u22121.0", "", "", "ours"), cells(table, 3));
        // by hand: 37 − 94.5 − 2 = −59.5 there, 37 − 94.5 − 12 − 1 = −70.5 back
        assertEquals(
                List.of("margin at the median place", "\u221259.5", "\u221270.5"),
                cells(table, 4).subList(0, 3));
        assertEquals(List.of("there", "back, weaker"), List.of(table.head(1), table.head(2)));
        assertEquals(
                new Paragraph(
                        "Margin \u221270.5 dB, odds of copy under 1 %: the way back is the weaker and rules.",
                        Paragraph.Weight.PLAIN),
                LedgerComposer.blocks(ledger()).get(0));
        TwoWayLedger even = new TwoWayLedger(ledger().there(), ledger().there());
        assertTrue(LedgerComposer.verdict(even).endsWith("both ways are alike."), LedgerComposer.verdict(even));
        assertEquals("there", LedgerComposer.table(even).head(1));
    }

    private static List<String> cells(Table<?> table, int row) {
        return IntStream.range(0, table.columnCount())
                .mapToObj(column -> table.cell(row, column))
                .toList();
    }

    /** The terminal of the trade has 80 to 100 columns; a ledger that runs over them cannot be read. */
    @Test
    void theLedgerFitsOnATerminal() {
        String text = PlainText.of(LedgerComposer.table(ledger()), PlainText.USUAL_WIDTH);
        assertTrue(text.contains("back, weaker"), text);
        assertTrue(text.lines().allMatch(line -> line.length() <= PlainText.USUAL_WIDTH), text);
    }

    @Test
    void aNoteOfOneDirectionIsNotPutOnTheOther() {
        List<String> noise = cells(LedgerComposer.table(ledger()), 2);
        assertEquals("noise: quiet\nback: noise: city", noise.get(0));
        assertEquals("–\nback: 4.0", noise.get(4));
        assertEquals(List.of("Only here: why."), LedgerComposer.notes(ledger()));
    }

    @Test
    void theBenchReportTellsApartInWords() {
        Page page = BenchComposer.of(bench()).page();
        assertEquals(2, page.answer().size());
        String words = ((Paragraph) page.answer().get(0)).words();
        assertTrue(
                words.startsWith("Mounting \"in hand\": strongest of 2 antennas is whip, +3.0 dB over helical."),
                words);
        assertTrue(words.contains("the interval that holds for all of them together"), words);
        assertTrue(words.endsWith("It is told apart from the control."), words);
        assertEquals(
                List.of("Cannot be told from one another: wire, helical."),
                ((Bullets) page.answer().get(1)).points());
        List<List<String>> verdicts =
                cells((Table<?>) page.sections().get(0).blocks().get(2));
        assertEquals(List.of("whip", "told apart", "+3.0"), verdicts.get(0).subList(0, 3));
        assertEquals("not told apart", verdicts.get(1).get(1));
        assertTrue(Double.parseDouble(verdicts.get(1).get(4)) > 0.3, "the least difference this session shows");
        assertTrue(page.sections().stream().anyMatch(s -> s.heading().equals("Cautions")));
    }

    @Test
    void pairsThatCannotBeToldApartAreHatched() {
        Drawing pairs = (Drawing)
                BenchComposer.of(bench()).sections(true).get(0).blocks().get(4);
        String words = pairs.figure().description();
        assertTrue(words.contains("whip and helical: +3.0 dB, told apart."), words);
        assertTrue(words.contains("wire and helical: 0.0 dB, not told apart."), words);
    }

    @Test
    void theTerminalSaysWhatThePageSaysInLinesThatFit() {
        BenchComposer composer = BenchComposer.of(bench());
        String text = composer.text(PlainText.USUAL_WIDTH);
        assertTrue(text.lines().allMatch(line -> line.length() <= PlainText.USUAL_WIDTH), text);
        assertTrue(text.indexOf("strongest of 2 antennas is whip") < text.indexOf("over control, dB"), text);
        assertEquals(text.indexOf("Cannot be told"), text.lastIndexOf("Cannot be told"), "a verdict is said once");
        for (Section section : composer.sections(true)) assertTrue(text.contains(section.heading() + "\n"), text);
    }

    @Test
    void costsStandBesideWhatTheyBuy() {
        Table<?> costs = (Table<?>)
                BenchComposer.of(bench()).sections(true).get(1).blocks().get(0);
        assertEquals(
                List.of("whip", "+3.0 dB in hand", "47", "45", "25"),
                cells(costs).get(0));
        assertEquals("control", costs.cell(1, 1));
    }

    @Test
    void everyCautionHasWordsShortAndLong() {
        for (Caution caution : Caution.values()) {
            assertTrue(Cautions.brief(caution).length() > 60
                    && Cautions.brief(caution).length() < 220);
            assertTrue(Cautions.full(caution).length() > Cautions.brief(caution).length());
        }
        assertTrue(Cautions.full(Caution.LIGHTNING).contains("30 minutes"));
        assertTrue(Cautions.full(Caution.LICENCE).contains("licensed radio engineer"));
        assertTrue(Cautions.RAISING.containsAll(Cautions.CARRYING));
    }
}
