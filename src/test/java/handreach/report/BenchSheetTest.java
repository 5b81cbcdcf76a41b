package handreach.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.bench.BenchAnalysis;
import handreach.bench.BenchFile;
import handreach.bench.Quantity;
import handreach.bench.SessionOrder;
import handreach.input.InputFault;
import handreach.input.SourceText;
import handreach.input.Sources;
import handreach.report.page.HtmlPage;
import handreach.uncertainty.Estimate;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The way of a blank sheet: out, filled in by a spreadsheet of some country, and back to deltas. */
class BenchSheetTest {
    private static final BenchSheet SHEET = new BenchSheet(
            SessionOrder.drawn(List.of("factory helical", "quarter whip, long"), List.of("in the hand"), 6, 1),
            "155.16",
            1,
            List.of(Quantity.RECEIVED_LEVEL));

    /** The heads and all rows, without what stands above them. */
    private static List<String> table(BenchSheet sheet) {
        return sheet.csv()
                .lines()
                .dropWhile(line -> line.startsWith("sep=") || line.startsWith("#"))
                .toList();
    }

    /** Rows of the sheet with a level in each, as cells. */
    private static List<List<String>> filled() {
        Random random = new Random(5);
        List<List<String>> rows = new ArrayList<>();
        for (String line : table(SHEET)) {
            List<String> cells = new ArrayList<>(List.of(
                    line.replace("\"quarter whip, long\"", "quarter whip@ long").split(",", -1)));
            if (!rows.isEmpty()) {
                double level = (cells.get(0).startsWith("factory") ? -42 : -39.5) + 0.3 * random.nextGaussian();
                cells.set(3, String.format(java.util.Locale.ROOT, "%.1f", level));
            }
            rows.add(cells.stream().map(cell -> cell.replace('@', ',')).toList());
        }
        return rows;
    }

    private static String table(char separator, char point, List<Integer> order) {
        return filled().stream()
                .map(cells -> order.stream()
                        .map(cells::get)
                        .map(cell -> cell.matches("[-0-9.]+") ? cell.replace('.', point) : cell)
                        .map(cell -> cell.indexOf(separator) >= 0 ? "\"" + cell + "\"" : cell)
                        .collect(Collectors.joining(String.valueOf(separator))))
                .collect(Collectors.joining("\r\n"));
    }

    private static Optional<Estimate> delta(String text) {
        return BenchAnalysis.of(BenchFile.of(SourceText.of("session.csv", text)))
                .deltas("quarter whip, long")
                .get(0)
                .estimate();
    }

    @Test
    void threeCountriesAndTwoOrdersOfColumnsComeToTheSameDelta() {
        List<Integer> asMade = List.of(0, 1, 2, 3, 4, 5, 6, 7);
        List<Integer> moved = List.of(6, 0, 3, 4, 2, 1, 7, 5);
        String remarks = "# control = factory helical";
        Optional<Estimate> first = delta(remarks + "\n# order = interleaved\n" + table(',', '.', asMade));
        assertTrue(first.isPresent());
        for (List<Integer> order : List.of(asMade, moved)) {
            assertEquals(
                    first,
                    delta("sep=,\r\n" + remarks + ",,,,,,,\r\n# order = interleaved,,,,,,,\r\n"
                            + table(',', '.', order)));
            assertEquals(
                    first,
                    delta("\"" + remarks + "\";;;;;;;\r\n# order = interleaved;;;;;;;\r\n" + table(';', ',', order)));
            assertEquals(first, delta(remarks + "\n# order = interleaved\n" + table('\t', ',', order)));
        }
    }

    @Test
    void thePageHoldsEveryReadingAndTheCautions() {
        String html = HtmlPage.text(SHEET.page());
        assertEquals(6, html.split("quarter whip, long</td>|>quarter whip, long<", -1).length - 1);
        assertTrue(html.contains("12 readings, 6 turns through all antennas, at 155.16 MHz."));
        assertTrue(html.contains("Radio energy near the body"));
    }

    @Test
    void matchIsAskedOnceForAnAntennaAndMountingAndAFieldMeterInEveryTurn() {
        List<Quantity> all =
                Quantity.namedBy("--quantity", List.of("level", "meter", "SWR", "return loss", "resonance"));
        BenchSheet sheet = new BenchSheet(
                SessionOrder.drawn(List.of("helical", "whip"), List.of("in the hand", "on the analyser"), 4, 1),
                "155.16",
                1,
                all);
        List<String> table = table(sheet);
        List<String> rows = table.subList(1, table.size());
        assertEquals(2 * (2 * 4 + 2 * 4 + 3 * 2), rows.size());
        assertEquals(
                16,
                rows.stream()
                        .filter(row -> row.contains(",field_meter,,uA,155.16,"))
                        .count());
        for (String antenna : List.of("helical", "whip"))
            for (String mount : List.of("in the hand", "on the analyser"))
                for (String asked : List.of("swr,,:1", "return_loss,,dB", "resonance,,MHz"))
                    assertTrue(rows.contains(antenna + "," + mount + "," + asked + ",155.16,1,"), asked);
        String html = HtmlPage.text(sheet.page());
        assertTrue(html.contains("44 readings, 4 turns"));
        for (String head :
                List.of("level, dBm", "field meter, \u00B5A", "SWR, :1", "return loss, dB", "resonance, MHz"))
            assertTrue(html.contains(head), head);
        String filled = sheet.csv()
                .replace(",received_level,,", ",received_level,-40,")
                .replace(",field_meter,,", ",field_meter,20,")
                .replace(",swr,,", ",swr,1.5,")
                .replace(",return_loss,,", ",return_loss,14,")
                .replace(",resonance,,", ",resonance,154,");
        assertEquals(
                44,
                BenchFile.of(SourceText.of("session.csv", filled)).readings().size());
    }

    @Test
    void aWordForNothingThatIsReadIsRefusedWithWhatThereIs() {
        String said = assertThrows(InputFault.class, () -> Quantity.namedBy("--quantity", List.of("gain", "swr")))
                .getMessage();
        assertTrue(said.contains("\"gain\"") && said.contains("return_loss"), said);
    }

    @Test
    void tableAndPageStandBesideOneAnother(@TempDir Path folder) throws Exception {
        Path page = SHEET.write(folder.resolve("session.csv"), Sources.NONE);
        assertEquals(folder.resolve("session.html"), page);
        assertTrue(
                Files.readString(folder.resolve("session.csv")).startsWith("sep=,\r\n# control = factory helical\r\n"));
        assertFalse(Files.readString(page).contains("\u2026.csv"));
    }

    /** The page said to write the noise floor down, and neither it nor the table said where; as a row it became an antenna. */
    @Test
    void whatIsReadOnceHasItsLineAboveTheHeads() {
        String lines = "# noise_floor_dbm = FILL IN\r\n# distance_m = FILL IN\r\n# tx_height_m = FILL IN\r\n"
                + "# rx_height_m = FILL IN\r\n";
        assertTrue(SHEET.csv().contains("# order = interleaved\r\n" + lines + "antenna,mount,"), SHEET.csv());
        String html = HtmlPage.text(SHEET.page());
        for (String key : List.of("noise_floor_dbm", "distance_m", "tx_height_m", "rx_height_m"))
            assertTrue(html.contains("# " + key), key);

        String read = SHEET.csv().replace(",received_level,,", ",received_level,-40,");
        BenchFile unfilled = BenchFile.of(SourceText.of("session.csv", read));
        assertTrue(unfilled.declarations().range().isEmpty());
        assertTrue(unfilled.declarations().instrument().noiseFloorDbm().isEmpty());
        BenchFile filled = BenchFile.of(SourceText.of(
                "session.csv",
                read.replace("noise_floor_dbm = FILL IN", "noise_floor_dbm = -110")
                        .replace("= FILL IN", "= 12")));
        assertEquals(-110, filled.declarations().instrument().noiseFloorDbm().orElseThrow());
        assertTrue(filled.declarations().range().isPresent());
        String half = assertThrows(
                        InputFault.class,
                        () -> BenchFile.of(SourceText.of(
                                "session.csv", read.replace("# distance_m = FILL IN", "# distance_m = 12"))))
                .getMessage();
        assertTrue(half.contains("are needed together"), half);
    }
}
