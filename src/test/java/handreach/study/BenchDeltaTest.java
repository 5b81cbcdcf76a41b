package handreach.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.budget.LedgerLine;
import handreach.budget.LineEnd;
import handreach.budget.LineKey;
import handreach.plan.PlanFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What readings of a bench come to in a ledger: with the doubt of the bench's interval, and with more where they are of another band. */
class BenchDeltaTest {
    private static final Path TILES =
            Path.of("elevation-samples/invented-valley/tiles").toAbsolutePath();
    private static final String ONE = "title = \"Bands\"\n\n[channel]\nname = \"crew\"\nfrequency_mhz = 155.16\n";
    private static final String TWO =
            ONE.replace("[channel]", "[[channel]]") + "\n[[channel]]\nname = \"high\"\nfrequency_mhz = 446.1\n";
    /** Invented readings of the control and of a whip, one pair a turn. */
    private static final double[][] TURNS = {{-42.6, -35.1}, {-43.1, -34.6}, {-41.4, -33.4}, {-41.8, -33.7}};

    @TempDir
    Path folder;

    @BeforeEach
    void plan() throws IOException {
        Files.writeString(folder.resolve("bench.csv"), sheet(4, 155.16));
    }

    private static String sheet(int turns, double mhz) {
        StringBuilder sheet =
                new StringBuilder("# control = factory\nantenna,mount,quantity,value,unit,frequency_mhz,trial\n");
        for (int i = 0; i < turns; i++)
            for (int a = 0; a < 2; a++)
                sheet.append(a == 0 ? "factory" : "whip")
                        .append(",in hand,received_level,")
                        .append(TURNS[i][a])
                        .append(",dBm,")
                        .append(mhz)
                        .append(',')
                        .append(i + 1)
                        .append('\n');
        return sheet.toString();
    }

    private Scene scene(String channel, String... swap) throws IOException {
        Path file = folder.resolve("plan.toml");
        String plan = channel + """

                        [ground]
                        tiles = '%s'
                        surface = "bare-earth"
                        cover = "open"

                        [bench]
                        file = "bench.csv"
                        control = "factory"

                        [[radio]]
                        name = "handheld"
                        power_w = 5
                        sensitivity_dbm = -119

                        [[antenna]]
                        name = "factory"
                        control = true

                        [[antenna]]
                        name = "whip"
                        radiator = "quarter-wave"

                        [[loadout]]
                        name = "whip at face"
                        antenna = "whip"
                        carry = "face"

                        [area]
                        centre = "camp"
                        radius_km = 3

                        [reach]
                        model = "handheld"

                        [[position]]
                        name = "camp"
                        at = "44.4773, -29.5217"
                        loadout = "whip at face"
                        base = true

                        [[position]]
                        name = "lake"
                        at = "44.4629, -29.5700"
                        loadout = "whip at face"
                        """.formatted(TILES);
        Files.writeString(file, swap.length == 0 ? plan : plan.replace(swap[0], swap[1]));
        return Scene.open(PlanFile.open(file));
    }

    private static LedgerLine delta(Scene scene) {
        return line(scene, LineKey.DELTA);
    }

    private static LedgerLine line(Scene scene, LineKey key) {
        var end = scene.loadout("whip at face");
        return PathStudy.between(
                        scene,
                        scene.position("camp").at(),
                        end,
                        scene.position("lake").at(),
                        end,
                        List.of(scene.model()))
                .ledger()
                .orElseThrow()
                .there()
                .lines()
                .stream()
                .filter(line -> line.end() == LineEnd.SENDER && line.key() == key)
                .findFirst()
                .orElseThrow();
    }

    private static boolean tells(Scene scene, String words) {
        return scene.warnings().stream().anyMatch(warning -> warning.contains(words));
    }

    /**
     * By hand: differences 7.5 8.5 8.0 8.1, mean 8.025, s 0.411, u 0.2056, t(0.975, 3) = 3.182 (GUM, table G.2), so an interval of
     * ±0.654 dB; the normal of that interval has 0.334 dB.
     */
    @Test
    void theDoubtIsThatOfTheBenchsInterval() throws IOException {
        LedgerLine delta = delta(scene(ONE));
        assertEquals(8.025, delta.valueDb(), 1e-9);
        assertEquals(0.654 / 1.96, delta.doubt().commonDb(), 0.001);
        assertTrue(delta.source().contains("4 readings"), delta.source());
        assertTrue(delta.source().contains("doubt times 1.62 for so few"), delta.source());
        assertFalse(tells(scene(ONE), "no verdict"));
    }

    /** By hand: differences 7.5 8.5 8.0, s 0.5, u 0.2887, t(0.975, 2) = 4.303: ±1.242 dB. */
    @Test
    void threeTurnsAreTakenAndSaidToHaveNoVerdict() throws IOException {
        Files.writeString(folder.resolve("bench.csv"), sheet(3, 155.16));
        Scene scene = scene(ONE);
        assertEquals(1.242 / 1.96, delta(scene).doubt().commonDb(), 0.001);
        assertTrue(
                tells(scene, "The bench gives no verdict on whip (in hand)"),
                scene.warnings().toString());
    }

    /** Another band costs 3 dB, whether the plan has one channel or two. */
    @Test
    void readingsOfAnotherBandCarryTheirFurtherDoubt() throws IOException {
        Files.writeString(folder.resolve("bench.csv"), sheet(4, 446.1));
        for (String channels : List.of(ONE, TWO)) {
            Scene scene = scene(channels);
            assertEquals(Math.hypot(3, 0.654 / 1.96), delta(scene).doubt().commonDb(), 0.001, channels);
            assertTrue(
                    tells(scene, "whip has no delta on crew (155.16 MHz): that of 446.1 MHz is taken, with 3 dB"),
                    scene.warnings().toString());
        }
    }

    @Test
    void readingsWithoutFrequencyAreSaidToBeTakenForTheChannels() throws IOException {
        Files.writeString(folder.resolve("bench.csv"), sheet(4, 155.16).replace("155.16", ""));
        Scene scene = scene(ONE);
        assertTrue(
                tells(
                        scene,
                        "does not say at which frequency whip was read (in hand): it is taken as read at 155.16 MHz"),
                scene.warnings().toString());
        assertEquals(0.654 / 1.96, delta(scene).doubt().commonDb(), 0.001);
    }

    /** A whip of a metre was called a short helical in the ledger, and nothing told why. */
    @Test
    void anAntennaOfUnstatedKindIsTold() throws IOException {
        assertFalse(tells(scene(ONE), "what kind of antenna"));
        Scene scene = scene(ONE, "radiator = \"quarter-wave\"\n", "");
        assertTrue(
                tells(scene, "does not say what kind of antenna whip is: its pattern"),
                scene.warnings().toString());
        assertTrue(
                tells(scene, "quarter-wave, half-wave-end-fed"),
                scene.warnings().toString());
        String pattern = line(scene, LineKey.PATTERN).source();
        assertTrue(pattern.startsWith("kind not stated, taken as short-helical"), pattern);
        assertTrue(line(scene(ONE), LineKey.PATTERN).source().startsWith("quarter-wave"));
    }
}
