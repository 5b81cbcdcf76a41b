package handreach.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.bench.match.MatchReadings;
import handreach.input.InputFault;
import handreach.uncertainty.Estimate;
import handreach.uncertainty.Interval;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import org.apache.commons.math3.stat.inference.TTest;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class BenchAnalysisTest {
    private static final double LIBRARY_DB = 1e-9;

    private static AntennaResult only(BenchAnalysis analysis) {
        return analysis.mounts().get(0).antennas().get(0);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/handreach/bench/deltas-scipy.csv", useHeadersInDisplayName = true)
    void agreesWithAStatisticsLibrary(
            int sessionNumber,
            ComparisonMethod method,
            String control,
            String antenna,
            double deltaDb,
            double uDb,
            double lowDb,
            double highDb,
            double p) {
        Bench bench = new Bench().header();
        if (method == ComparisonMethod.PAIRED) bench.inTurns("helical", levels(control), "whip", levels(antenna));
        else bench.block("helical", levels(control)).block("whip", levels(antenna));
        AntennaResult found = only(bench.against("helical"));
        assertEquals(method, found.method());
        assertEquals(deltaDb, found.delta().db(), LIBRARY_DB);
        assertEquals(uDb, found.delta().standardUncertaintyDb().getAsDouble(), LIBRARY_DB);
        assertEquals(lowDb, found.delta().interval95().orElseThrow().low(), 1e-8);
        assertEquals(highDb, found.delta().interval95().orElseThrow().high(), 1e-8);
        assertEquals(p, found.verdict().orElseThrow().p(), 1e-9);
        boolean isEnough = Math.min(levels(control).length, levels(antenna).length) >= LevelSession.LEAST_TRIALS;
        assertEquals(p < 0.05 && isEnough, found.toldApart());
        assertEquals(!isEnough, found.finding() == AntennaResult.Finding.TOO_FEW_TRIALS);
    }

    /** Invented example of the project's notes on measuring well (reproduced in docs/bench.md): 2.250, 0.1586, 1.842 to 2.658. */
    @Test
    void pairedExample() {
        AntennaResult found = only(new Bench()
                .header()
                .inTurns("helical", Bench.CONTROL, "whip", Bench.CANDIDATE)
                .against("helical"));
        assertEquals(ComparisonMethod.PAIRED, found.method());
        assertEquals(2.250, found.delta().db(), 5e-4);
        Estimate estimate = found.delta().estimate().orElseThrow();
        assertEquals(0.1586, estimate.standardUncertainty(), 5e-5);
        assertEquals(5, estimate.degreesOfFreedom(), 1e-9);
        assertEquals(1.842, estimate.interval95().low(), 5e-4);
        assertEquals(2.658, estimate.interval95().high(), 5e-4);
        assertTrue(found.toldApart());
    }

    /** The same with linearity ±0.5, phase-centre height ±0.8, drift ±0.3: 0.5932, 20 degrees, 1.01 to 3.49. */
    @Test
    void pairedExampleWithDeclaredDoubts() {
        AntennaResult found = only(new Bench()
                .declare("linearity_db = 0.5")
                .declare("phase_centre_db for whip = 0.8")
                .declare("drift_db = 0.3 rectangular 25 %")
                .header()
                .inTurns("helical", Bench.CONTROL, "whip", Bench.CANDIDATE)
                .against("helical"));
        Estimate estimate = found.delta().estimate().orElseThrow();
        assertEquals(0.5932, estimate.standardUncertainty(), 5e-5);
        assertEquals(20, estimate.degreesOfFreedom(), 0);
        assertEquals(1.013, estimate.interval95().low(), 5e-4);
        assertEquals(3.487, estimate.interval95().high(), 5e-4);
        assertEquals(4, found.parts().size());
        assertTrue(found.toldApart());
    }

    /** Same data in blocks: Welch, 0.1881 with 8.56 degrees. */
    @Test
    void blocksAreComparedAsIndependentSets() {
        BenchAnalysis analysis = new Bench()
                .header()
                .block("helical", Bench.CONTROL)
                .block("whip", Bench.CANDIDATE)
                .against("helical");
        Estimate estimate = only(analysis).delta().estimate().orElseThrow();
        assertEquals(ComparisonMethod.WELCH, only(analysis).method());
        assertEquals(0.1881, estimate.standardUncertainty(), 5e-5);
        assertEquals(8.56, estimate.degreesOfFreedom(), 5e-3);
        assertTrue(Bench.together(analysis.warnings()).contains("declare # order = interleaved"));
        AntennaResult declared = only(new Bench()
                .declare("order = interleaved")
                .header()
                .block("helical", Bench.CONTROL)
                .block("whip", Bench.CANDIDATE)
                .against("helical"));
        assertEquals(ComparisonMethod.PAIRED, declared.method());
        assertEquals(0.1586, declared.delta().standardUncertaintyDb().getAsDouble(), 5e-5);
        AntennaResult denied = only(new Bench()
                .declare("order = blocks")
                .header()
                .inTurns("helical", Bench.CONTROL, "whip", Bench.CANDIDATE)
                .against("helical"));
        assertEquals(ComparisonMethod.WELCH, denied.method());
    }

    /** Four readings against six: 0.2667, 0.3148, 5.02 degrees, −0.542 to 1.075, odds 0.436. */
    @Test
    void unpairedExampleIsNotToldApart() {
        for (Bench bench : List.of(
                new Bench().header().block("helical", Bench.CONTROL).block("stub", Bench.SECOND),
                new Bench().header().inTurns("helical", Bench.CONTROL, "stub", Bench.SECOND))) {
            AntennaResult found = only(bench.against("helical"));
            assertEquals(ComparisonMethod.WELCH, found.method());
            Estimate estimate = found.delta().estimate().orElseThrow();
            assertEquals(0.2667, estimate.value(), 5e-5);
            assertEquals(0.3148, estimate.standardUncertainty(), 5e-5);
            assertEquals(5.02, estimate.degreesOfFreedom(), 5e-3);
            assertEquals(-0.542, estimate.interval95().low(), 5e-4);
            assertEquals(1.075, estimate.interval95().high(), 5e-4);
            assertEquals(0.436, found.verdict().orElseThrow().p(), 5e-4);
            assertFalse(found.toldApart());
        }
    }

    @Test
    void aLostTrialLeavesTheOtherPairs() {
        double[] five = Arrays.copyOf(Bench.CANDIDATE, 5);
        BenchAnalysis analysis = new Bench()
                .header()
                .inTurns("helical", Bench.CONTROL, "whip", five)
                .against("helical");
        assertEquals(ComparisonMethod.PAIRED, only(analysis).method());
        assertEquals(4, only(analysis).delta().estimate().orElseThrow().degreesOfFreedom(), 1e-9);
        assertTrue(Bench.together(analysis.warnings()).contains("trial 6 has no partner"));
    }

    @Test
    void randomSessionsAgreeWithTheLibrary() {
        Random random = new Random(11);
        TTest library = new TTest();
        int inTurns = 0;
        for (int round = 0; round < 100; round++) {
            int n = 2 + random.nextInt(9);
            double[] a = levels(random, n);
            double[] b = levels(random, n);
            double[] c = levels(random, 2 + random.nextInt(9));
            AntennaResult paired =
                    only(new Bench().header().inTurns("helical", a, "whip", b).against("helical"));
            // scatter is taken for drift once in twenty sessions; then the library has nothing to compare
            if (paired.method() == ComparisonMethod.PAIRED) {
                inTurns++;
                assertEquals(
                        library.pairedTTest(b, a),
                        paired.verdict().orElseThrow().p(),
                        1e-9);
            }
            AntennaResult welch = only(new Bench()
                    .declare("order = blocks")
                    .header()
                    .block("helical", a)
                    .block("whip", c)
                    .against("helical"));
            assertEquals(library.tTest(c, a), welch.verdict().orElseThrow().p(), 1e-9);
        }
        assertTrue(inTurns > 85, inTurns + " of 100");
    }

    @Test
    void liftingOneAntennaLiftsItsDeltaAndNothingElse() {
        double[] lifted = Arrays.stream(Bench.CANDIDATE).map(x -> x + 3).toArray();
        AntennaResult before = only(new Bench()
                .header()
                .inTurns("helical", Bench.CONTROL, "whip", Bench.CANDIDATE)
                .against("helical"));
        AntennaResult after = only(new Bench()
                .header()
                .inTurns("helical", Bench.CONTROL, "whip", lifted)
                .against("helical"));
        assertEquals(before.delta().db() + 3, after.delta().db(), 1e-9);
        assertEquals(
                before.delta().standardUncertaintyDb().getAsDouble(),
                after.delta().standardUncertaintyDb().getAsDouble(),
                1e-9);
    }

    /** The order of rows of different antennas does not matter to Welch, nor do names, nor an equal offset on all. */
    @Test
    void rowsInAnotherOrderGiveTheSameWelchDelta() {
        List<double[]> rows = new ArrayList<>();
        for (double level : Bench.CONTROL) rows.add(new double[] {0, level});
        for (double level : Bench.SECOND) rows.add(new double[] {1, level});
        Random random = new Random(5);
        for (int round = 0; round < 20; round++) {
            Collections.shuffle(rows, random);
            Bench bench = new Bench().declare("order = blocks").header();
            int trial = 0;
            for (double[] row : rows) bench.level(row[0] == 0 ? "A" : "B", "box", row[1] - 30, ++trial);
            AntennaResult found = only(bench.against("A"));
            assertEquals(0.266667, found.delta().db(), 1e-6);
            assertEquals(0.3148, found.delta().standardUncertaintyDb().getAsDouble(), 5e-5);
        }
    }

    @Test
    void severalAntennasAreJudgedTogether() {
        Bench bench = new Bench().header();
        double[] a = {-42.0, -41.6, -42.3, -41.9};
        for (int i = 0; i < 4; i++) {
            bench.level("helical", "box", a[i], i + 1);
            for (int k = 0; k < 6; k++)
                bench.level(
                        "copy " + k, "box", a[i] + 0.1 * k + new double[] {0.0, 0.3, -0.1, 0.25}[(i + k) % 4], i + 1);
        }
        MountResult mount = bench.against("helical").mounts().get(0);
        for (AntennaResult antenna : mount.antennas()) {
            AntennaResult.Verdict verdict = antenna.verdict().orElseThrow();
            assertTrue(verdict.adjustedP() >= verdict.p());
            assertEquals(verdict.adjustedP() < 0.05, verdict.toldApart());
        }
        assertTrue(
                mount.antennas().stream().anyMatch(x -> x.verdict().get().p() < 0.05 && !x.toldApart()),
                "the family must make a difference here");
        for (int i = 1; i < mount.antennas().size(); i++)
            assertTrue(mount.antennas().get(i - 1).delta().db()
                    >= mount.antennas().get(i).delta().db());
    }

    @Test
    void oneTrialGivesADifferenceAndNoInterval() {
        BenchAnalysis analysis = new Bench()
                .header()
                .block("helical", Bench.CONTROL)
                .block("whip", new double[] {-39.0})
                .against("helical");
        AntennaResult found = only(analysis);
        assertEquals(3.016667, found.delta().db(), 1e-6);
        assertEquals(Optional.empty(), found.delta().interval95());
        assertEquals(OptionalDouble.empty(), found.delta().standardUncertaintyDb());
        assertEquals(Optional.empty(), found.verdict());
        assertFalse(found.toldApart());
        String said = Bench.together(analysis.warnings());
        assertTrue(said.contains("one trial gives a difference but no scatter"), said);
        // s = 0.3869, six readings: t(5) 2.5706 · 0.3869 · √(7/6) = 1.07
        assertTrue(said.contains("If it scatters as helical does, a difference below 1.1 dB means nothing"), said);
    }

    /** Earlier scatter 0.6 from 20 trials, one trial each: u = 0.6·√2 with 19 degrees. */
    @Test
    void oneTrialWithEarlierScatterHasAnInterval() {
        AntennaResult found = only(new Bench()
                .declare("earlier_scatter_db = 0.6")
                .declare("earlier_scatter_trials = 20")
                .header()
                .block("helical", new double[] {-42})
                .block("whip", new double[] {-39})
                .against("helical"));
        assertEquals(ComparisonMethod.EARLIER_SCATTER, found.method());
        assertEquals(0.6 * Math.sqrt(2), found.delta().standardUncertaintyDb().getAsDouble(), 1e-12);
        assertEquals(19, found.delta().estimate().orElseThrow().degreesOfFreedom(), 1e-9);
    }

    /** Written in steps of 0.1: ±0.05 rectangular on each of the two levels, 0.0408 dB, known as four trials know a scatter. */
    @Test
    void readingsWithoutScatterAreDoubtedByTheirStep() {
        BenchAnalysis analysis = new Bench()
                .header()
                .inTurns("helical", new double[] {-42.1, -42.1, -42.1, -42.1}, "whip", new double[] {
                    -40.6, -40.6, -40.6, -40.6
                })
                .against("helical");
        Estimate estimate = only(analysis).delta().estimate().orElseThrow();
        assertEquals(0.1 / Math.sqrt(12) * Math.sqrt(2), estimate.standardUncertainty(), 1e-9);
        assertEquals(3, estimate.degreesOfFreedom(), 1e-9);
        assertTrue(only(analysis).toldApart());
        assertTrue(Bench.together(analysis.warnings()).contains("do not scatter at all"));
    }

    /** Two trials that agree: t of one degree of freedom is 12.71, so 0.0408 dB become ±0.52, and there is no verdict. */
    @Test
    void twoTrialsThatHappenToAgreeAreNoVerdict() {
        for (String declaration : List.of("tx_height_m = 1.5", "resolution_db = 0.1")) {
            Bench bench = new Bench();
            if (declaration.startsWith("res")) bench.declare(declaration);
            BenchAnalysis analysis = bench.header()
                    .inTurns("helical", new double[] {-45.0, -44.1}, "whip", new double[] {-43.9, -43.0})
                    .against("helical");
            AntennaResult found = only(analysis);
            Estimate estimate = found.delta().estimate().orElseThrow();
            assertEquals(1.1, estimate.value(), 1e-9);
            assertEquals(1, estimate.degreesOfFreedom(), 1e-9);
            assertEquals(12.706 * 0.0408, estimate.expandedUncertainty95(), 1e-3);
            assertEquals(AntennaResult.Finding.TOO_FEW_TRIALS, found.finding());
            assertFalse(found.toldApart());
            assertTrue(Bench.together(analysis.warnings()).contains("no verdict from fewer than 4 trials"));
        }
    }

    /** Three pairs, differences 2.0 2.4 2.2: s² 0.04 with 2 degrees; earlier 0.5 dB from 11 readings: 2 · 0.25 with 10. */
    @Test
    void fewTrialsCountTogetherWithEarlierScatter() {
        AntennaResult found = only(new Bench()
                .declare("earlier_scatter_db = 0.5")
                .declare("earlier_scatter_trials = 11")
                .header()
                .inTurns("helical", new double[] {-42.0, -42.4, -41.9}, "whip", new double[] {-40.0, -40.0, -39.7})
                .against("helical"));
        Estimate estimate = found.delta().estimate().orElseThrow();
        assertEquals(ComparisonMethod.EARLIER_SCATTER, found.method());
        assertEquals(12, estimate.degreesOfFreedom(), 1e-9);
        assertEquals(Math.sqrt((2 * 0.04 + 10 * 0.5) / 12 / 3), estimate.standardUncertainty(), 1e-9);
        assertTrue(found.toldApart());
    }

    /** A declared doubt knows nothing of the scatter: it opens the verdict, but the few trials must leave out zero by themselves too. */
    @Test
    void declaredDoubtsOpenTheVerdictOfFewTrials() {
        double[] control = {-42.0, -42.4, -41.9};
        AntennaResult clear = only(new Bench()
                .declare("linearity_db = 0.5")
                .header()
                .inTurns("helical", control, "whip", new double[] {-38.0, -38.3, -37.8})
                .against("helical"));
        assertEquals(AntennaResult.Finding.TOLD_APART, clear.finding());
        AntennaResult scattered = only(new Bench()
                .declare("linearity_db = 0.5")
                .header()
                .inTurns("helical", control, "whip", new double[] {-41.2, -40.0, -41.5})
                .against("helical"));
        assertFalse(scattered.toldApart());
    }

    @Test
    void driftOfTheControlIsTakenOutWhereItIsBeyondDoubt() {
        Random random = new Random(2);
        Bench bench = new Bench().header();
        int place = 0;
        for (int i = 0; i < 12; i++) {
            bench.level("helical", "box", -42 - 0.2 * place++ + 0.05 * random.nextGaussian(), 100 + i);
            if (i >= 5 && i < 11)
                bench.level("whip", "box", -40 - 0.2 * place++ + 0.05 * random.nextGaussian(), 200 + i);
        }
        BenchAnalysis analysis = bench.against("helical");
        AntennaResult found = only(analysis);
        assertEquals(ComparisonMethod.WELCH_DRIFT_CORRECTED, found.method());
        assertEquals(-0.2, analysis.mounts().get(0).drift().orElseThrow().dbPerReading(), 0.02);
        assertEquals(2, found.delta().db(), 0.15);
        assertTrue(found.delta().interval95().orElseThrow().contains(2));
        assertEquals(2, found.parts().size());
        // uncorrected the antenna, read late, would have looked weaker by 0.2 dB a place
        assertTrue(found.level().mean() - analysis.mounts().get(0).control().mean() < 1.6);
    }

    /**
     * By the textbook: the control's line foretells its level at the antenna's mean place with s²(1/n + Δ²/Sxx) and n − 2
     * degrees; the antenna, its trend taken out, adds s²/m with m − 1; Welch and Satterthwaite join the two.
     */
    @Test
    void driftCorrectionFollowsTheTextbook() {
        double[] c = {-42.0, -42.4, -42.7, -43.2, -43.5, -44.0, -44.3};
        double[] w = {-40.6, -41.15, -41.2};
        int[] placesC = {0, 1, 3, 4, 6, 8, 9};
        int[] placesW = {2, 5, 7};
        Bench bench = new Bench().header();
        for (int place = 0, i = 0, k = 0; place < 10; place++)
            if (k < 3 && placesW[k] == place) bench.level("whip", "box", w[k], 50 + k++);
            else bench.level("helical", "box", c[i], i++);
        AntennaResult found = only(bench.against("helical"));
        assertEquals(ComparisonMethod.WELCH_DRIFT_CORRECTED, found.method());
        SimpleRegression line = new SimpleRegression();
        for (int i = 0; i < 7; i++) line.addData(placesC[i], c[i]);
        double slope = line.getSlope();
        double meanPlaceW = 14.0 / 3;
        double meanW = 0;
        for (double level : w) meanW += level / 3;
        double squareW = 0;
        for (int k = 0; k < 3; k++) squareW += Math.pow(w[k] - meanW - slope * (placesW[k] - meanPlaceW), 2) / 2 / 3;
        double gap = meanPlaceW - 31.0 / 7;
        double squareC = line.getMeanSquareError() * (1.0 / 7 + gap * gap / line.getXSumSquares());
        double u = Math.sqrt(squareC + squareW);
        double degrees = Math.pow(u, 4) / (squareC * squareC / 5 + squareW * squareW / 2);
        Estimate estimate = found.delta().estimate().orElseThrow();
        assertEquals(meanW - line.predict(meanPlaceW), estimate.value(), 1e-9);
        assertEquals(u, estimate.standardUncertainty(), 1e-9);
        assertEquals(degrees, estimate.degreesOfFreedom(), 1e-6);
    }

    /** The interval of the corrected delta must hold the truth 19 times out of 20. */
    @Test
    void driftCorrectedIntervalsCover() {
        Random random = new Random(77);
        int covered = 0;
        int corrected = 0;
        for (int round = 0; round < 300; round++) {
            Bench bench = new Bench().header();
            int place = 0;
            for (int i = 0; i < 10; i++) {
                bench.level("helical", "box", -42 - 0.3 * place++ + 0.4 * random.nextGaussian(), 100 + i);
                if (i >= 4 && i < 9)
                    bench.level("whip", "box", -40 - 0.3 * place++ + 0.4 * random.nextGaussian(), 200 + i);
            }
            AntennaResult found = only(bench.against("helical"));
            if (found.method() != ComparisonMethod.WELCH_DRIFT_CORRECTED) continue;
            corrected++;
            if (found.delta().interval95().orElseThrow().contains(2)) covered++;
        }
        assertTrue(corrected > 250, corrected + " corrected");
        assertEquals(0.95, (double) covered / corrected, 0.04);
    }

    @Test
    void driftThatCannotBeTakenOutIsTold() {
        Bench bench = new Bench().header();
        for (int i = 0; i < 8; i++) bench.level("helical", "box", -42 - 0.3 * i + 0.02 * (i % 2), i);
        for (int i = 0; i < 4; i++) bench.level("whip", "box", -44.5 + 0.1 * (i % 3), 20 + i);
        BenchAnalysis analysis = bench.against("helical");
        assertEquals(ComparisonMethod.WELCH, only(analysis).method());
        assertTrue(Bench.together(analysis.warnings()).contains("the drift cannot be taken out"));
    }

    @Test
    void driftBetweenTheTwoOfAPairIsTakenOut() {
        Bench bench = new Bench().header();
        for (int i = 0; i < 8; i++) {
            bench.level("helical", "box", -42 - 0.2 * i + 0.02 * (i % 2), i);
            bench.level("whip", "box", -40 - 0.2 * i - 0.1 - 0.01 * (i % 3), i);
        }
        BenchAnalysis analysis = bench.against("helical");
        // by hand: raw difference 1.88, a turn loses 0.2 dB over two places, the antenna stands one place later: 1.88 +
        // 0.1
        assertEquals(ComparisonMethod.PAIRED_DRIFT_CORRECTED, only(analysis).method());
        assertEquals(1.98, only(analysis).delta().db(), 0.01);
        assertEquals(-0.1, analysis.mounts().get(0).drift().orElseThrow().dbPerReading(), 0.002);
        assertEquals(
                ControlDrift.Basis.TURNS,
                analysis.mounts().get(0).drift().orElseThrow().basis());
        assertEquals(2, only(analysis).parts().size());
        assertTrue(Bench.together(analysis.warnings()).contains("drifted by −0.100 dB from one reading to the next"));
        assertTrue(Bench.together(analysis.warnings()).contains("The drift is taken out of every delta"));
    }

    /** Too few pairs are left: the reader is told which turns to take again. */
    @Test
    void missingTrialsThatSpoilAComparisonAreNamed() {
        Bench bench = new Bench().header();
        for (int t = 1; t <= 5; t++) {
            if (t != 2) bench.level("helical", "hand", -42 + 0.1 * t, t);
            if (t != 4) bench.level("whip", "hand", -40 + 0.07 * t, t);
        }
        String said = Bench.together(bench.against("helical").warnings());
        assertTrue(
                said.contains(
                        "trials 2, 4 have no partner and are left out of the pairs, too many to compare within trials."
                                + " Repeat trials 2, 4 with both antennas, and drop the old rows of them."),
                said);
        Bench short4 = new Bench().header();
        for (int t = 1; t <= 4; t++) {
            short4.level("helical", "hand", -42 + 0.1 * t, t);
            if (t != 4) short4.level("whip", "hand", -40 + 0.07 * t, t);
        }
        String few = Bench.together(short4.against("helical").warnings());
        assertTrue(few.contains("Repeat trial 4 with both antennas, and drop the old rows of it."), few);
    }

    /** A remark that holds for several antennas stands once. */
    @Test
    void equalRemarksAreToldTogether() {
        Bench bench = new Bench().header();
        for (int t = 1; t <= 6; t++)
            for (int k = 0; k < 8; k++)
                if (k == 0 || t > 1) bench.level("a" + k, "box", -42 + 0.1 * ((t * (k + 3)) % 5), t);
        List<String> said = bench.against("a0").warnings();
        List<String> partner =
                said.stream().filter(w -> w.contains("no partner")).toList();
        assertEquals(1, partner.size(), partner.toString());
        assertTrue(partner.get(0).startsWith("a1, a2, a3 and 4 more, box at 155 MHz:"), partner.get(0));
    }

    /** Each antenna had lost another trial, which made a note for each. */
    @Test
    void trialsLeftOutOfThePairsAreToldTogetherWhicheverTheyAre() {
        Bench bench = new Bench().header();
        for (int t = 1; t <= 8; t++)
            for (int k = 0; k < 6; k++)
                if (k == 0 || t != k + 1) bench.level("a" + k, "box", -42 + 0.1 * ((t * (k + 3)) % 5), t);
        List<String> partner = bench.against("a0").warnings().stream()
                .filter(w -> w.contains("no partner"))
                .toList();
        assertEquals(
                List.of("a1 (trial 2), a2 (trial 3), a3 (trial 4) and 2 more, box at 155 MHz: these trials have no"
                        + " partner and are left out of the pairs."),
                partner);
    }

    /** Three antennas whose own intervals leave out zero, and which all comparisons together do not tell apart. */
    @Test
    void resultsToBeExpectedByChanceAreToldTogether() {
        double[] noise = {0.9, -0.8, 0.2, -0.5, 0.6, -0.4};
        Bench bench = new Bench().header();
        for (int t = 0; t < 6; t++)
            for (int k = 0; k < 9; k++)
                bench.level(
                        "a" + k, "box", -42 + (k > 0 && k < 4 ? 0.9 : 0) + noise[(t + k) % 6] * (k == 0 ? 0 : 1), t);
        List<String> chance = bench.against("a0").warnings().stream()
                .filter(w -> w.contains("out zero"))
                .toList();
        assertEquals(1, chance.size(), chance.toString());
        assertTrue(
                chance.get(0)
                        .startsWith("a1, a2, a3, box at 155 MHz: their own intervals leave out zero (odds of chance"),
                chance.get(0));
    }

    /** A lost sign made the best antenna of the session. */
    @Test
    void aReadingFarFromTheOthersOfItsAntennaIsToldWithItsLine() {
        Bench bench = new Bench().header();
        for (int t = 1; t <= 5; t++) {
            bench.level("helical", "hand", -46 - 0.1 * t, t);
            bench.level("whip", "hand", t == 3 ? 45.2 : -45 - 0.1 * t, t);
        }
        List<String> slips = bench.against("helical").warnings().stream()
                .filter(w -> w.contains("Is it a slip"))
                .toList();
        assertEquals(1, slips.size(), slips.toString());
        assertTrue(
                slips.get(0)
                        .startsWith(
                                "line 7, whip, hand at 155 MHz: 45.2 dBm, while others of it lie about \u221245.2 dBm."),
                slips.get(0));
    }

    @Test
    void aMisspeltMountingIsAnsweredWithTheNearest() {
        Bench bench = new Bench().header();
        for (int t = 1; t <= 5; t++) {
            bench.level("helical", "in the hand", -46 - 0.1 * t, t);
            bench.level("whip", t == 3 ? "in the hnad" : "in the hand", -45 - 0.1 * t, t);
        }
        assertTrue(Bench.together(bench.against("helical").warnings())
                .contains("at the same frequency. Did you mean in the hand?"));
    }

    /** Ordinary scatter must not be taken for drift: the bar is passed about once in a thousand sessions. */
    @Test
    void scatterAloneIsSeldomTakenForDrift() {
        Random random = new Random(13);
        int taken = 0;
        for (int round = 0; round < 400; round++) {
            Bench bench =
                    new Bench().header().block("helical", levels(random, 8)).block("whip", levels(random, 3));
            if (bench.against("helical").mounts().get(0).drift().orElseThrow().significant()) taken++;
        }
        assertTrue(taken <= 3, taken + " of 400");
    }

    @Test
    void mountingsAndFrequenciesAreKeptApart() {
        BenchAnalysis analysis = BenchAnalysis.of(
                Bench.read(Bench.HEADER
                        + "helical,hand,received_level,-42,dBm,155,1,\nwhip,hand,received_level,-40,dBm,155,1,\n"
                        + "helical,hand,received_level,-52,dBm,455,1,\nwhip,hand,received_level,-51,dBm,455,1,\n"
                        + "helical,box,received_level,-45,dBm,155,1,\nwhip,box,received_level,-40,dBm,155,1,\n"
                        + "whip,belt,received_level,-60,dBm,155,1,\n"),
                "helical");
        assertEquals(3, analysis.mounts().size());
        assertEquals(
                List.of(2.0, 1.0, 5.0),
                analysis.deltas("whip").stream().map(DeltaOverControl::db).toList());
        assertTrue(
                Bench.together(analysis.warnings())
                        .contains(
                                "Mounting \"belt\" at 155 MHz: the control \"helical\" was not read (it was: hand at 155 MHz,"));
    }

    @Test
    void aRowWithoutFrequencyJoinsTheOnlyOne() {
        BenchAnalysis analysis = BenchAnalysis.of(
                Bench.read(Bench.HEADER
                        + "helical,hand,received_level,-42,dBm,155,1,\nwhip,hand,received_level,-40,dBm,,1,\n"),
                "helical");
        assertEquals(1, analysis.mounts().size());
        assertEquals(2, only(analysis).delta().db(), 0);
    }

    @Test
    void noControlIsOneClearLine() {
        BenchFile file = new Bench()
                .header()
                .block("helical", Bench.CONTROL)
                .block("whip", Bench.SECOND)
                .file();
        assertTrue(assertThrows(InputFault.class, () -> BenchAnalysis.of(file))
                .getMessage()
                .contains("names no control"));
        String wrong = assertThrows(InputFault.class, () -> BenchAnalysis.of(file, "helcal"))
                .getMessage();
        assertTrue(wrong.contains("the control \"helcal\" has no reading. Did you mean helical?"), wrong);
        BenchFile alone = new Bench().header().block("helical", Bench.CONTROL).file();
        assertTrue(assertThrows(InputFault.class, () -> BenchAnalysis.of(alone, "helical"))
                .getMessage()
                .contains("only the control"));
    }

    @Test
    void controlInAnotherMountingOnlyIsRefusedWithItsLine() {
        BenchFile file = new Bench()
                .header()
                .level("helical", "box", -42, 1)
                .level("whip", "hand", -40, 1)
                .file();
        String said = assertThrows(InputFault.class, () -> BenchAnalysis.of(file, "helical"))
                .getMessage();
        assertEquals(
                "bench.csv line 3: the mounting \"hand\" has received_level readings but none of the control \"helical\", which"
                        + " was read in box only. Read the control in the same mounting; a delta across mountings means nothing.",
                said);
    }

    @Test
    void theDeclaredControlIsUsed() {
        BenchFile file = new Bench()
                .declare("control = Helical")
                .header()
                .inTurns("helical", Bench.CONTROL, "whip", Bench.CANDIDATE)
                .file();
        assertEquals(Optional.of("helical"), BenchAnalysis.of(file).control());
        assertEquals(2.25, only(BenchAnalysis.of(file)).delta().db(), 1e-9);
        assertEquals(-2.25, only(BenchAnalysis.of(file, "whip")).delta().db(), 1e-9);
    }

    /** Exact noncentral t of the notes: six pairs show 1.435 standard deviations, 1.435 · 0.3886 = 0.558 dB. */
    @Test
    void whatTheSessionCouldHaveShown() {
        DetectionLimit limit = only(new Bench()
                        .header()
                        .inTurns("helical", Bench.CONTROL, "whip", Bench.CANDIDATE)
                        .against("helical"))
                .detection()
                .orElseThrow();
        assertEquals(1.435 * 0.3886, limit.minimumDifferenceDb(), 5e-4);
        assertEquals(OptionalInt.of(6), limit.trialsFor(1.435 * 0.3886));
        assertEquals(OptionalInt.of(10), limit.trialsFor(0.997 * 0.3886));
        assertEquals(OptionalInt.of(11), limit.trialsFor(0.995 * 0.3886));
        assertEquals(OptionalInt.of(2), limit.trialsFor(30));
        assertEquals(OptionalInt.empty(), limit.trialsFor(0));
    }

    @Test
    void declaredDoubtsSetAFloorThatNoTrialsLower() {
        DetectionLimit limit = only(new Bench()
                        .declare("linearity_db = 2")
                        .header()
                        .inTurns("helical", Bench.CONTROL, "whip", Bench.CANDIDATE)
                        .against("helical"))
                .detection()
                .orElseThrow();
        assertEquals(OptionalInt.empty(), limit.trialsFor(2));
        assertTrue(limit.trialsFor(6).isPresent());
        assertTrue(limit.minimumDifferenceDb() > 3);
    }

    @Test
    void groupsThatCannotBeToldApart() {
        Bench bench = new Bench().header();
        double[] noise = {0.1, -0.2, 0.15, -0.05, 0.0, 0.12};
        for (int i = 0; i < 6; i++) {
            bench.level("helical", "box", -42 + noise[i], i);
            bench.level("stub", "box", -42.05 + noise[(i + 2) % 6], i);
            bench.level("whip", "box", -38 + noise[(i + 1) % 6], i);
            bench.level("copy", "box", -38.1 + noise[(i + 4) % 6], i);
            bench.level("long", "box", -35 + noise[(i + 3) % 6], i);
        }
        assertEquals(
                List.of(List.of("whip", "copy"), List.of("helical", "stub")),
                bench.against("helical").mounts().get(0).alike());
    }

    @Test
    void tenThousandReadingsAreAnalysed() {
        Random random = new Random(1);
        Bench bench = new Bench().header();
        for (int trial = 0; trial < 500; trial++)
            for (int antenna = 0; antenna < 20; antenna++)
                bench.level("a" + antenna, "box", -42 + 0.05 * antenna + random.nextGaussian(), trial);
        BenchAnalysis analysis = bench.against("a0");
        assertEquals(19, analysis.mounts().get(0).antennas().size());
        assertTrue(analysis.mounts().get(0).antenna("a19").orElseThrow().toldApart());
    }

    @Test
    void readingsNearTheLimitsOfTheInstrumentAreTold() {
        String said = Bench.together(new Bench()
                .declare("noise_floor_dbm = -50")
                .declare("overload_dbm = -39")
                .header()
                .inTurns("helical", Bench.CONTROL, "whip", Bench.CANDIDATE)
                .against("helical")
                .warnings());
        assertTrue(
                said.contains("helical (6 of 6), whip (1 of 6), hand at 155 MHz: readings lie less than 10 dB above the"
                        + " noise floor"),
                said);
        assertTrue(said.contains("whip, hand at 155 MHz: 5 of 6 readings lie within 1 dB of the overload level"), said);
    }

    @Test
    void matchRowsAloneNeedNoControl() {
        BenchAnalysis analysis = BenchAnalysis.of(Bench.read(Bench.HEADER
                + "whip,box,swr,1.5,:1,155,,\nwhip,box,return_loss,14,dB,155,,\nwhip,box,swr,3,:1,150,,\n"
                + "whip,box,resonance,156,MHz,,,\nwhip,box,bandwidth,8,MHz,,,\n"));
        assertEquals(List.of(), analysis.mounts());
        MatchReadings match = analysis.matches().get(0);
        assertEquals(2, match.points().size());
        assertEquals(3, match.points().get(0).match().swr(), 1e-12);
        assertEquals(156, match.resonanceMhz().getAsDouble(), 0);
        assertEquals(8, match.bandwidthMhz().getAsDouble(), 0);
        assertFalse(Bench.together(analysis.warnings()).contains("do not agree"));
    }

    @Test
    void swrAndReturnLossThatContradictAreTold() {
        BenchAnalysis analysis = BenchAnalysis.of(
                Bench.read(Bench.HEADER + "whip,box,swr,1.2,:1,155,,\nwhip,box,return_loss,6,dB,155,,\n"));
        assertTrue(Bench.together(analysis.warnings()).contains("do not agree"));
        String several = Bench.HEADER;
        for (String antenna : List.of("a", "b", "c"))
            several += antenna + ",box,swr,1.2,:1,155,,\n" + antenna + ",box,return_loss,6,dB,155,,\n";
        List<String> said = BenchAnalysis.of(Bench.read(several)).warnings().stream()
                .filter(w -> w.contains("do not agree"))
                .toList();
        assertEquals(1, said.size(), said.toString());
        assertTrue(said.get(0).startsWith("a, box at 155 MHz:")
                && said.get(0).endsWith("The same of 2 more pairs of rows."));
    }

    private static double[] levels(String text) {
        return Arrays.stream(text.split(" ")).mapToDouble(Double::parseDouble).toArray();
    }

    private static double[] levels(Random random, int n) {
        return random.doubles(n).map(x -> Math.rint(100 * (-42 + 4 * x)) / 100).toArray();
    }

    @Test
    void intervalsCoverTheTruth() {
        Random random = new Random(99);
        int covered = 0;
        for (int round = 0; round < 400; round++) {
            double[] a = random.doubles(6).map(x -> -42).toArray();
            double[] b = new double[6];
            for (int i = 0; i < 6; i++) {
                a[i] += random.nextGaussian();
                b[i] = -40 + random.nextGaussian();
            }
            Interval interval = only(new Bench()
                            .header()
                            .inTurns("helical", a, "whip", b)
                            .against("helical"))
                    .delta()
                    .interval95()
                    .orElseThrow();
            if (interval.contains(2)) covered++;
        }
        assertEquals(380, covered, 16);
    }
}
