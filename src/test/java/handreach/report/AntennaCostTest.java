package handreach.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.plan.PlanFile;
import handreach.reach.Progress;
import handreach.report.file.Json;
import handreach.report.page.PlainText;
import handreach.report.page.Table;
import handreach.study.ReachOptions;
import handreach.study.ReachStudy;
import handreach.study.RelayStudy;
import handreach.study.Scene;
import handreach.units.Decibels;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AntennaCostTest {
    private static final Path SAMPLE = Path.of("elevation-samples/forest-hills").toAbsolutePath();

    @TempDir
    Path folder;

    /** The sample plan with some of its words replaced. */
    private Scene scene(String... swaps) throws IOException {
        String plan = Files.readString(SAMPLE.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + SAMPLE.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + SAMPLE.resolve("../invented-bench/bench.csv") + "'")
                .replaceAll("(?s)\\[\\[walk\\]\\].*", "");
        for (int i = 0; i < swaps.length; i += 2) {
            assertTrue(plan.contains(swaps[i]), swaps[i]);
            plan = plan.replace(swaps[i], swaps[i + 1]);
        }
        Path file = folder.resolve("plan.toml");
        Files.writeString(file, plan);
        return Scene.open(PlanFile.open(file));
    }

    private static List<String> row(Scene scene, String antenna) {
        Table<AntennaCost> table = BenchComposer.costs(AntennaCost.of(scene.plan()), scene.bench());
        return IntStream.range(0, table.rowCount())
                .mapToObj(row -> IntStream.range(0, table.columnCount())
                        .mapToObj(column -> table.cell(row, column))
                        .toList())
                .filter(cells -> cells.get(0).equals(antenna))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no row for " + antenna));
    }

    @Test
    void anAntennaReadWithItsWireShowsWhatItBuys() throws IOException {
        Scene scene = scene();
        List<String> wired = row(scene, "quarter-wave whip with counterpoise wire");
        assertTrue(wired.get(1).matches("\\+\\d+\\.\\d dB in hand.*"), wired.toString());
        assertFalse(wired.get(1).equals(row(scene, "quarter-wave whip").get(1)), "the wire makes a difference");
    }

    @Test
    void theTableTellsTheDeltaThatTheLedgerUses() throws IOException {
        Scene scene = scene();
        double used = scene.bench().orElseThrow().deltas("quarter-wave whip with wire").stream()
                .filter(delta -> delta.mounting().name().equals("in hand"))
                .findFirst()
                .orElseThrow()
                .db();
        assertTrue(row(scene, "quarter-wave whip with counterpoise wire")
                .get(1)
                .contains(Decibels.signed(used, 1) + " dB in hand"));
    }

    @Test
    void anAntennaThatNobodyCarriesStandsInTheTable() throws IOException {
        Scene scene = scene("""
                [[loadout]]
                name = "five-eighths at face"
                antenna = "five-eighths whip"
                carry = "face"
                """, "");
        assertEquals("118", row(scene, "five-eighths whip").get(2));
    }

    @Test
    void whatIsNotGivenIsNeverZero() throws IOException {
        Scene scene = scene("mass_g = 38\nprice = 25\nstiffness = 4\n", "", "price = 0\n", "");
        assertEquals(
                List.of("46", "not given", "not given"),
                row(scene, "quarter-wave whip").subList(2, 5));
        assertEquals(
                List.of("15", "22", "not given"), row(scene, "factory helical").subList(2, 5));
    }

    @Test
    void aPriceOfNothingStaysZero() throws IOException {
        assertEquals("0", row(scene(), "factory helical").get(4));
    }

    @Test
    void aDeltaStatedInThePlanIsToldAsStated() throws IOException {
        Scene scene = scene(
                "radiator = \"five-eighths\"",
                "radiator = \"five-eighths\"\ndelta_db = 4.5\ndelta_uncertainty_db = 1\ndelta_mount = \"in hand\"");
        assertEquals(
                "+4.5 dB in hand, stated in the plan",
                row(scene, "five-eighths whip").get(1));
    }

    @Test
    void reachAndRelayTellAMissingMassAsMissing() throws IOException {
        Scene scene = scene(
                "mass_g = 38\n",
                "",
                "radius_km = 5",
                "radius_km = 1.5",
                "bearing_step_deg = 5",
                "bearing_step_deg = 30");
        var reach = ReachStudy.run(scene, ReachOptions.ofPlan(false), Progress.SILENT);
        String text = PlainText.of(ReachComposer.of(reach).page(), PlainText.USUAL_WIDTH);
        assertTrue(line(text).matches("quarter-wave at chest +46 +not given +.*"), text);
        assertTrue(Json.tree(ReachNumbers.of(reach)).toString().contains("\"mass_g\":null"), "JSON tells it as null");
        for (ReachNumbers.OfLoadout one : ReachNumbers.of(reach).loadouts())
            assertFalse(one.verdict().contains("no more to carry"), one.verdict());
        var relay = RelayStudy.run(scene, Progress.SILENT);
        assertTrue(
                line(new RelayComposer(relay).text(PlainText.USUAL_WIDTH)).contains("not given"),
                line(new RelayComposer(relay).text(PlainText.USUAL_WIDTH)));
    }

    private static String line(String text) {
        return text.lines()
                .filter(line -> line.startsWith("quarter-wave at chest "))
                .findFirst()
                .orElseThrow();
    }
}
