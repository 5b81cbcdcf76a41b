package handreach.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.bench.match.MatchAnalysis;
import handreach.bench.match.MatchComparison;
import handreach.bench.match.Touchstone;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The sample session that the sample plans stand on. */
class InventedBenchTest {
    private static final Path FOLDER = Path.of("elevation-samples", "invented-bench");

    @Test
    void saysThatItIsInvented() throws IOException {
        for (String name : List.of("bench.csv", "quarter-wave-whip.s1p", "quarter-wave-whip-with-wire.s1p"))
            assertTrue(Files.readString(FOLDER.resolve(name)).startsWith("# INVENTED")
                    || Files.readString(FOLDER.resolve(name)).startsWith("! INVENTED"));
    }

    /** Within the doubt that the session itself states, the true differences of its generator come back. */
    @Test
    void theTruthBehindItComesBack() {
        BenchAnalysis analysis = BenchAnalysis.of(BenchFile.read(FOLDER.resolve("bench.csv")));
        assertEquals(3, analysis.mounts().size());
        MountResult hand = analysis.mounts().get(0);
        assertEquals(7, hand.antennas().size());
        List<String> names = List.of("quarter-wave whip", "end-fed half-wave", "five-eighths whip");
        List<Double> truth = List.of(3.2, 4.4, 2.2);
        for (int i = 0; i < 3; i++) {
            AntennaResult found = hand.antenna(names.get(i)).orElseThrow();
            assertEquals(ComparisonMethod.PAIRED, found.method());
            assertTrue(found.delta().interval95().orElseThrow().contains(truth.get(i)), names.get(i));
            assertTrue(found.toldApart());
        }
        assertFalse(hand.antenna("factory helical with wire").orElseThrow().toldApart());
        assertTrue(hand.alike().contains(List.of("factory helical with wire", "factory helical")));
        assertTrue(hand.alike().get(0).containsAll(List.of("end-fed half-wave", "end-fed half-wave with wire")));
        assertEquals(1, analysis.meters().size());
        assertTrue(analysis.meters().get(0).agreement().orElseThrow().spearman() > 0.8);
        assertEquals(16, analysis.matches().size());
    }

    @Test
    void theSweepsShowWhatTheWireChanges() {
        MatchAnalysis bare =
                MatchAnalysis.of(Touchstone.read(FOLDER.resolve("quarter-wave-whip.s1p")), List.of(155.0), 50);
        MatchAnalysis wired = MatchAnalysis.of(
                Touchstone.read(FOLDER.resolve("quarter-wave-whip-with-wire.s1p")), List.of(155.0), 50);
        assertTrue(bare.channels().get(0).match().swr() > 20);
        assertTrue(wired.channels().get(0).match().swr() < 2);
        MatchComparison.Change change =
                MatchComparison.of(List.of(bare, wired)).changes().get(0);
        assertTrue(change.mismatchChangeDb().get(0) < -8);
        assertTrue(change.tunedShiftMhz() < -35);
    }
}
