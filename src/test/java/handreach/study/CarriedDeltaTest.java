package handreach.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.budget.Ledger;
import handreach.budget.LedgerLine;
import handreach.budget.LineEnd;
import handreach.budget.LineKey;
import handreach.budget.TwoWayLedger;
import handreach.plan.PlanFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a plan's carry positions and deltas come to at the ends of a link, by default and with the user's own figures. */
class CarriedDeltaTest {
    private static final Path SAMPLE =
            Path.of("elevation-samples/invented-valley").toAbsolutePath();
    private static final double EXACT = 1e-12;

    private static final String OWN = """

            [[carry_loss]]
            carry = "face"
            control_gain_dbd = -9.3
            uncertainty_db = 1.2
            spread_db = 3.1

            [[carry_loss]]
            carry = "chest"
            control_gain_dbd = -11.7
            uncertainty_db = 1.9
            spread_db = 4.3

            [[carry_loss]]
            carry = "hip"
            control_gain_dbd = -14.9
            uncertainty_db = 2.3
            spread_db = 4.9
            """;

    @TempDir
    Path folder;

    private TwoWayLedger ledger(String near, String far, String more, String... swaps) throws IOException {
        String plan = Files.readString(SAMPLE.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + SAMPLE.resolve("tiles") + "'")
                .replaceAll("(?s)\\[bench\\].*?\\n\\n", "")
                .replace(
                        "bench_with_counterpoise = \"quarter-wave whip with wire\"",
                        "delta_db = 2.35\ndelta_uncertainty_db = 0.45\ndelta_mount = \"in hand\"")
                .replace(
                        "name = \"end-fed half-wave\"",
                        "name = \"end-fed half-wave\"\ndelta_db = 4.25\ndelta_uncertainty_db = 0.55\ndelta_mount = \"bare box\"")
                .replace(
                        "name = \"five-eighths whip\"",
                        "name = \"five-eighths whip\"\ndelta_db = 3.15\ndelta_uncertainty_db = 0.65\ndelta_mount = \"analyser\"");
        for (int i = 0; i < swaps.length; i += 2) {
            assertTrue(plan.contains(swaps[i]), swaps[i]);
            plan = plan.replace(swaps[i], swaps[i + 1]);
        }
        Path file = folder.resolve("plan.toml");
        Files.writeString(file, plan + more);
        Scene scene = Scene.open(PlanFile.open(file));
        return PathStudy.between(
                        scene,
                        scene.position("lake crew").at(),
                        scene.loadout(near),
                        scene.position("upper crew").at(),
                        scene.loadout(far),
                        List.of(scene.model()))
                .ledger()
                .orElseThrow();
    }

    private static Optional<LedgerLine> line(Ledger ledger, LineEnd end, LineKey key) {
        return ledger.lines().stream()
                .filter(line -> line.end() == end && line.key() == key)
                .findFirst();
    }

    private static void same(Ledger ledger, LineEnd end, LineKey key, double db, double commonDb, double spreadDb) {
        LedgerLine line = line(ledger, end, key).orElseThrow();
        assertEquals(db, line.valueDb(), 0, key.word());
        assertEquals(commonDb, line.doubt().commonDb(), 0, key.word());
        assertEquals(spreadDb, line.doubt().spreadDb(), 0, key.word());
    }

    /** Figures as the program gave them before bodies were computed: what the user measured stands alone, to the last digit. */
    @Test
    void ownFiguresOfPositionsAnswerAsTheyAlwaysDid() throws IOException {
        Ledger boxed = ledger("half-wave at face", "quarter-wave at chest", OWN).there();
        same(boxed, LineEnd.SENDER, LineKey.ANTENNA, -1.85, 1.5, 0);
        same(boxed, LineEnd.SENDER, LineKey.DELTA, 4.25, 3.05, 0);
        same(boxed, LineEnd.SENDER, LineKey.CARRY, -5.300000000000001, 1.2, 0);
        same(boxed, LineEnd.SENDER, LineKey.HEADING, 0, 0, 3.1);
        same(boxed, LineEnd.RECEIVER, LineKey.DELTA, 2.35, 1.5660459763365826, 0);
        same(boxed, LineEnd.RECEIVER, LineKey.CARRY, -7.699999999999999, 1.9, 0);
        same(boxed, LineEnd.RECEIVER, LineKey.HEADING, 0, 0, 4.3);
        Ledger analysed = ledger("five-eighths at face", "factory at hip", OWN).there();
        same(analysed, LineEnd.SENDER, LineKey.DELTA, 3.15, 3.0696090956341653, 0);
        same(analysed, LineEnd.RECEIVER, LineKey.DELTA, 0, 0, 0);
        same(analysed, LineEnd.RECEIVER, LineKey.CARRY, -10.9, 2.3, 0);
        same(analysed, LineEnd.RECEIVER, LineKey.HEADING, 0, 0, 4.9);
        for (Ledger ledger : List.of(boxed, analysed))
            for (LineEnd end : LineEnd.values())
                assertTrue(line(ledger, end, LineKey.MOVE).isEmpty());
        assertTrue(
                line(boxed, LineEnd.SENDER, LineKey.DELTA).orElseThrow().note().contains("+7.8 dB would be added"));
    }

    /** By hand: half-wave 12.1 − 4.3 = 7.8 dB more in the hand than on the box, doubt √(3² + 1.95²). */
    @Test
    void aDeltaOfTheBoxIsMovedByALineOfItsOwn() throws IOException {
        TwoWayLedger ledger = ledger("half-wave at face", "quarter-wave at chest", "");
        LedgerLine sent = line(ledger.there(), LineEnd.SENDER, LineKey.MOVE).orElseThrow();
        assertEquals(7.8, sent.valueDb(), EXACT);
        assertEquals(Math.hypot(3, 1.95), sent.doubt().commonDb(), EXACT);
        assertEquals("measured on the bare radio, used in the hand at the face", sent.note());
        assertTrue(sent.source().contains("no measurement"));
        LedgerLine held = line(ledger.back(), LineEnd.RECEIVER, LineKey.MOVE).orElseThrow();
        assertEquals(sent.valueDb(), held.valueDb(), 0);
        assertEquals(
                1.7,
                line(ledger.there(), LineEnd.RECEIVER, LineKey.MOVE)
                        .orElseThrow()
                        .valueDb(),
                EXACT);
        LedgerLine delta = line(ledger.there(), LineEnd.SENDER, LineKey.DELTA).orElseThrow();
        assertEquals(4.25, delta.valueDb(), 0);
        assertEquals(0.55, delta.doubt().commonDb(), EXACT);
    }

    /** By hand: the two together are shared at both ends and add without squares: 2 · 3 dB and 2 · 1.95 dB. */
    @Test
    void theDoubtOfAMoveIsSharedByBothEnds() throws IOException {
        double one = ledger("half-wave at face", "factory at hip", "")
                .there()
                .doubt()
                .commonDb();
        double both = ledger("half-wave at face", "half-wave at face", "")
                .there()
                .doubt()
                .commonDb();
        assertTrue(both > one + 1, one + " " + both);
    }

    @Test
    void anAntennaOfUnstatedKindIsNotMovedAndSaysSo() throws IOException {
        Ledger ledger = ledger("half-wave at face", "factory at hip", "", "radiator = \"half-wave-end-fed\"\n", "")
                .there();
        assertTrue(line(ledger, LineEnd.SENDER, LineKey.MOVE).isEmpty());
        LedgerLine delta = line(ledger, LineEnd.SENDER, LineKey.DELTA).orElseThrow();
        assertEquals(Math.hypot(0.55, 3), delta.doubt().commonDb(), EXACT);
        assertTrue(delta.note().contains("kind of this antenna is not known"), delta.note());
    }

    @Test
    void everyLineOfABodySaysThatNobodyMeasuredIt() throws IOException {
        Ledger ledger = ledger("half-wave at face", "factory at hip", "").there();
        assertTrue(line(ledger, LineEnd.SENDER, LineKey.CARRY)
                .orElseThrow()
                .source()
                .contains("bracketing, no measurement"));
        assertTrue(line(ledger, LineEnd.RECEIVER, LineKey.CARRY)
                .orElseThrow()
                .source()
                .contains("computed for this project"));
    }

    /** By hand: stated 2 dBi at the face; helical computed 11 dB, half-wave 7.8 dB less: 3.2 dB of body. */
    @Test
    void aStatedGainLosesWhatItsKindLoses() throws IOException {
        Ledger ledger = ledger(
                        "half-wave at face",
                        "factory at hip",
                        "",
                        "delta_db = 4.25\ndelta_uncertainty_db = 0.55\ndelta_mount = \"bare box\"",
                        "gain_dbi = 2")
                .there();
        assertEquals(
                -3.2, line(ledger, LineEnd.SENDER, LineKey.CARRY).orElseThrow().valueDb(), 1e-9);
    }
}
