package handreach.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class MeterComparisonTest {
    private static Bench session(String... declarations) {
        Bench bench = new Bench();
        for (String line : declarations) bench.declare(line);
        bench.header();
        double[] level = {-42, -38, -40, -36};
        double[] meter = {20, 40, 30, 80};
        for (int trial = 1; trial <= 3; trial++)
            for (int i = 0; i < 4; i++) {
                bench.level("a" + i, "box", level[i] + 0.1 * trial * (i % 2), trial);
                bench.row("a" + i, "box", "field_meter", meter[i] + trial - 2, "uA", trial);
            }
        return bench;
    }

    @Test
    void microampsRankAndNoMore() {
        BenchAnalysis analysis = session().against("a0");
        MeterResult meter = analysis.meters().get(0);
        assertEquals(
                List.of("a3", "a1", "a2", "a0"),
                meter.ranks().stream().map(MeterResult.Rank::antenna).toList());
        assertEquals(List.of(), meter.deltas());
        assertEquals(1, meter.agreement().orElseThrow().kendall(), 1e-12);
        assertTrue(Bench.together(analysis.warnings()).contains("put antennas in order and say no more"));
        // a doubled reading is 3.0 or 6.0 dB
        assertEquals(3.01, meter.ranks().get(1).bracketDb().orElseThrow().low(), 5e-3);
        assertEquals(6.02, meter.ranks().get(1).bracketDb().orElseThrow().high(), 5e-3);
    }

    @Test
    void adeclaredLawGivesDecibels() {
        MeterResult square =
                session("detector_law = square").against("a0").meters().get(0);
        MeterResult linear =
                session("detector_law = linear").against("a0").meters().get(0);
        double mean = 0;
        for (int t = -1; t <= 1; t++) mean += 10 * Math.log10((40.0 + t) / (20 + t)) / 3;
        double delta = square.deltas().stream()
                .filter(a -> a.antenna().equals("a1"))
                .findFirst()
                .orElseThrow()
                .delta()
                .db();
        assertEquals(mean, delta, 1e-9);
        assertEquals(
                2 * delta,
                linear.deltas().stream()
                        .filter(a -> a.antenna().equals("a1"))
                        .findFirst()
                        .orElseThrow()
                        .delta()
                        .db(),
                1e-9);
    }

    @Test
    void outsideTheCalibrationAnAntennaKeepsItsRankOnly() {
        BenchAnalysis analysis =
                session("meter_calibration = 10:-30, 20:-27, 60:-20").against("a0");
        MeterResult meter = analysis.meters().get(0);
        assertEquals(4, meter.ranks().size());
        assertEquals(
                List.of("a1", "a2"),
                meter.deltas().stream().map(AntennaResult::antenna).toList());
        assertTrue(Bench.together(analysis.warnings()).contains("readings of a3 are zero or outside the calibration"));
    }

    /** Straight over log I between steps: 10·√2 µA lies half-way between 10 and 20. */
    @Test
    void calibrationIsReadBetweenItsSteps() {
        MeterScale scale = Bench.read("# meter_calibration = 20:-27, 10:-30\n" + Bench.HEADER + "a,box,swr,2,:1,,,\n")
                .declarations()
                .meter();
        assertEquals(-28.5, scale.levelDb(10 * Math.sqrt(2)).getAsDouble(), 1e-12);
        assertEquals(-30, scale.levelDb(10).getAsDouble(), 0);
        assertEquals(OptionalDouble.empty(), scale.levelDb(9.9));
        assertEquals(OptionalDouble.empty(), scale.levelDb(0));
        double last = -100;
        for (double i = 10; i <= 20; i += 0.1) {
            assertTrue(scale.levelDb(i).getAsDouble() >= last);
            last = scale.levelDb(i).getAsDouble();
        }
    }

    @Test
    void meterDeltasStandInOnlyWhereThereAreNoLevels() {
        BenchAnalysis analysis = session("detector_law = square").against("a0");
        assertEquals(1, analysis.deltas("a1").size());
        assertEquals(
                analysis.mounts().get(0).antenna("a1").orElseThrow().delta(),
                analysis.deltas("a1").get(0));
        BenchAnalysis meterOnly = BenchAnalysis.of(
                Bench.read("# detector_law = square\n" + Bench.HEADER
                        + "c,box,field_meter,10,uA,,1,\nw,box,field_meter,20,uA,,1,\nw,box,field_meter,0,uA,,2,\n"
                        + "v,box,field_meter,40,uA,,1,\n"),
                "c");
        assertEquals(List.of(), meterOnly.deltas("w"));
        assertEquals(6.02, meterOnly.deltas("v").get(0).db(), 5e-3);
    }
}
