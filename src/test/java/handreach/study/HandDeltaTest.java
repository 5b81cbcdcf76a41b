package handreach.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.bench.BenchAnalysis;
import handreach.bench.BenchFile;
import handreach.input.SourceText;
import handreach.plan.PlanFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HandDeltaTest {
    private static final Path SAMPLE =
            Path.of("elevation-samples/invented-valley").toAbsolutePath();
    private static final double EXACT = 1e-9;

    @TempDir
    Path folder;

    private PlanFile plan(String... swaps) throws IOException {
        String plan = Files.readString(SAMPLE.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + SAMPLE.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + SAMPLE.resolve("../invented-bench/bench.csv") + "'");
        for (int i = 0; i < swaps.length; i += 2) {
            assertTrue(plan.contains(swaps[i]), swaps[i]);
            plan = plan.replace(swaps[i], swaps[i + 1]);
        }
        Path file = folder.resolve("plan.toml");
        Files.writeString(file, plan);
        return PlanFile.open(file);
    }

    /** Four trials of each antenna in each mounting: the half-wave 4 dB over the control on the box and 11 in the hand. */
    private static BenchAnalysis session() {
        StringBuilder text = new StringBuilder("antenna,mount,quantity,value,unit,frequency_mhz,trial,note\n");
        for (int trial = 1; trial <= 4; trial++) {
            double wobble = 0.2 * (trial % 2);
            for (String row : List.of(
                    "factory helical,chassis box,-50",
                    "end-fed half-wave,chassis box,-46",
                    "quarter-wave whip with wire,chassis box,-45",
                    "factory helical,in hand,-60",
                    "end-fed half-wave,in hand,-49")) {
                String[] cells = row.split(",");
                text.append(String.format(
                        Locale.ROOT,
                        "%s,%s,received_level,%.1f,dBm,155,%d,%n",
                        cells[0],
                        cells[1],
                        Double.parseDouble(cells[2]) + wobble * (cells[0].startsWith("factory") ? 1 : -1),
                        trial));
            }
        }
        return BenchAnalysis.of(BenchFile.of(SourceText.of("bench.csv", text.toString())), "factory helical");
    }

    private static HandDelta of(List<HandDelta> all, String antenna) {
        return all.stream()
                .filter(one -> one.read().antenna().equals(antenna))
                .findFirst()
                .orElseThrow(() -> new AssertionError(
                        all.stream().map(one -> one.read().antenna()).collect(Collectors.joining(", "))));
    }

    @Test
    void whatWasReadOnTheBoxStandsBesideWhatIsExpectedInTheHand() throws IOException {
        List<HandDelta> all = HandDelta.of(plan(), session());
        assertEquals(2, all.size());
        HandDelta half = of(all, "end-fed half-wave");
        assertEquals(half.read().db() + 7.8, half.expectedDb().orElseThrow(), EXACT); // by hand: columns 12.1 and 4.3
        assertEquals("in hand", half.inHand().orElseThrow().mounting().name());
        double readDb = half.read().standardUncertaintyDb().orElseThrow();
        assertEquals(
                Math.sqrt(readDb * readDb + 9 + 1.95 * 1.95), half.doubtDb().orElseThrow(), EXACT);
        HandDelta wired =
                of(all, "quarter-wave whip with wire"); // by hand: columns 7.5 and 4.5, the control without a wire
        assertEquals(wired.read().db() + 3, wired.expectedDb().orElseThrow(), EXACT);
        assertTrue(wired.inHand().isEmpty());
    }

    @Test
    void whatIsNotKnownOfAnUnstatedKindIsNoNumber() throws IOException {
        HandDelta half =
                of(HandDelta.of(plan("radiator = \"half-wave-end-fed\"\n", ""), session()), "end-fed half-wave");
        assertFalse(half.move().isKnown());
        assertTrue(half.expectedDb().isEmpty());
        assertTrue(half.doubtDb().isEmpty());
        assertTrue(half.move().words().contains("kind of this antenna is not known"));
    }
}
