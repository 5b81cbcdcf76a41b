package handreach.walk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.reach.Progress;
import handreach.reach.SiteCalibration;
import handreach.terrain.Cover;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CalibrationTest {
    private static final double FAR_M = 20;

    private static Calibration of(List<WalkPair> pairs) {
        return Calibration.of(pairs, FAR_M, Priors.USUAL, List.of(), Progress.SILENT);
    }

    /** 200 walks each; a fair 95 % interval holds in 90 to 99 % of 200 nearly always. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void intervalsHoldTheTruthAsOftenAsTheySay(boolean levels) {
        Random random = new Random(20260504);
        int[][] held = new int[2][2];
        int spread = 0;
        int difference = 0;
        int walks = 200;
        for (int w = 0; w < walks; w++) {
            SimulatedWalk truth = SimulatedWalk.drawn(random, Priors.USUAL);
            Calibration calibration = of(truth.walk(random, 120, levels));
            for (int c = 0; c < 2; c++) for (int k = 0; k < 2; k++) if (holds(calibration, truth, c, k)) held[c][k]++;
            if (calibration.spread95Db().contains(truth.spreadDb())) spread++;
            SiteCalibration site = calibration.site("simulated", LocalDate.of(2026, 5, 4));
            SiteCalibration.Shift face = site.biasByCarry().get("face");
            double meant = carryOverMix(calibration, truth);
            if (Math.abs(face.lossDb() - meant) <= 1.96 * face.standardUncertaintyDb()) difference++;
        }
        for (int[] row : held) for (int count : row) assertShare(count, walks, "shift");
        assertShare(spread, walks, "spread");
        assertShare(difference, walks, "carry loss");
    }

    private static boolean holds(Calibration calibration, SimulatedWalk truth, int cover, int carry) {
        String word = SimulatedWalk.CARRIES[carry];
        SiteCalibration.Shift shift = SimulatedWalk.shift(calibration, SimulatedWalk.COVERS[cover], word, word);
        return Math.abs(shift.lossDb() - truth.shiftDb(cover, carry)) <= 1.96 * shift.standardUncertaintyDb();
    }

    /** The truth of what the site calibration calls the carry's own shift: its loss over the mean of the mix walked. */
    private static double carryOverMix(Calibration calibration, SimulatedWalk truth) {
        SiteCalibration site = calibration.site("x", LocalDate.of(2026, 5, 4));
        double faceMean = site.biasByCarry().get("face").lossDb();
        double hipMean = site.biasByCarry().get("hip-tight").lossDb();
        // face = (1 − p)(k_f − k_h) and hip = −p (k_f − k_h), so p follows from the two
        double share = faceMean == hipMean ? 0.5 : -hipMean / (faceMean - hipMean);
        return (1 - share) * (truth.carryDb()[0] - truth.carryDb()[1]);
    }

    private static void assertShare(int count, int of, String what) {
        double share = (double) count / of;
        assertTrue(share >= 0.90 && share <= 0.99, what + " held in " + share);
    }

    /** A fixed site, worse than believed and with a carry loss of its own, not drawn from the prior. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aKnownSiteIsFoundAgain(boolean levels) {
        SimulatedWalk truth = new SimulatedWalk(7, new double[] {0, 3}, new double[] {-1, 2}, 9);
        Calibration calibration = of(truth.walk(new Random(3), 1500, levels));
        for (int c = 0; c < 2; c++)
            for (int k = 0; k < 2; k++) {
                String carry = SimulatedWalk.CARRIES[k];
                double found = SimulatedWalk.shift(calibration, SimulatedWalk.COVERS[c], carry, carry)
                        .lossDb();
                assertEquals(truth.shiftDb(c, k), found, levels ? 1.5 : 3);
            }
        assertEquals(9, calibration.spreadDb(), levels ? 0.6 : 1.5);
    }

    /**
     * Deaths of beetles by dose, Bliss 1935; probit estimates −34.935 + 19.728 x in Dobson, An Introduction to Generalized Linear
     * Models (both from memory). Doses are laid out as margins of 300 dB a unit about 1.77, so the shift is 300 (34.935/19.728 −
     * 1.77) = 0.25 dB and the spread 300/19.728 = 15.21 dB; the prior and the wild share move them by less than the tolerance.
     */
    @Test
    void probitFollowsThePublishedBeetles() {
        double[] dose = {1.6907, 1.7242, 1.7552, 1.7842, 1.8113, 1.8369, 1.8610, 1.8839};
        int[] exposed = {59, 60, 62, 56, 63, 59, 62, 60};
        int[] dead = {6, 13, 18, 28, 52, 53, 61, 60};
        List<WalkPair> pairs = new ArrayList<>();
        for (int d = 0; d < dose.length; d++)
            for (int i = 0; i < exposed[d]; i++) pairs.add(spread15(pairs.size(), 300 * (dose[d] - 1.77), i < dead[d]));
        Calibration calibration =
                Calibration.of(pairs, FAR_M, new Priors(60, 1e-3, 1e-3, 2), List.of(), Progress.SILENT);
        assertEquals(
                0.25,
                SimulatedWalk.shift(calibration, Cover.OPEN, "face", "face").lossDb(),
                0.4);
        assertEquals(15.21, calibration.spreadDb(), 0.8);
    }

    private static WalkPair spread15(int i, double marginDb, boolean copied) {
        return SimulatedWalk.pair(i, Cover.OPEN, "face", marginDb, Reception.copy(copied), copied)
                .with(marginDb, 15);
    }

    /** Normal levels, normal prior: mean n/s² over n/s² + 1/u² of the mean error, by hand; only the spread is also estimated. */
    @Test
    void levelsFollowTheNormalUpdateByHand() {
        List<WalkPair> pairs = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            double error = 6 + (i % 2 == 0 ? 4 : -4);
            pairs.add(level(i, error));
        }
        Calibration calibration =
                Calibration.of(pairs, FAR_M, new Priors(6, 1e-3, 1e-3, 1), List.of(), Progress.SILENT);
        double variance = 16;
        double expected = 6 * (40 / variance) / (40 / variance + 1 / 36.0);
        assertEquals(
                expected,
                SimulatedWalk.shift(calibration, Cover.OPEN, "face", "face").lossDb(),
                0.05);
        assertEquals(4, calibration.spreadDb(), 0.25);
        assertEquals(
                4 / Math.sqrt(40),
                SimulatedWalk.shift(calibration, Cover.OPEN, "face", "face").standardUncertaintyDb(),
                0.06);
    }

    private static WalkPair level(int i, double lossTooLowDb) {
        Reception heard = new Reception(Reception.Kind.LEVEL, -110 - lossTooLowDb);
        return SimulatedWalk.pair(i, Cover.OPEN, "face", 0, heard, lossTooLowDb <= 0);
    }

    @Test
    void aFewWildReportsHardlyMoveIt() {
        SimulatedWalk truth = new SimulatedWalk(4, new double[] {0, 0}, new double[] {0, 0}, 7);
        List<WalkPair> pairs = truth.walk(new Random(5), 100, true);
        double without =
                SimulatedWalk.shift(of(pairs), Cover.OPEN, "face", "face").lossDb();
        List<WalkPair> wild = new ArrayList<>(pairs);
        for (int i = 0; i < 3; i++) wild.add(level(200 + i, 90));
        assertEquals(
                without,
                SimulatedWalk.shift(of(wild), Cover.OPEN, "face", "face").lossDb(),
                0.5);
        assertEquals(of(pairs).spreadDb(), of(wild).spreadDb(), 0.7);
    }

    @ParameterizedTest
    @CsvSource({"-122, 1", "-112, 2"})
    void censoringDoesNotBendTheShift(double floorDbm, double toleranceDb) {
        Random random = new Random(11);
        List<WalkPair> pairs = new ArrayList<>();
        for (int i = 0; i < 400; i++) {
            double level = -110 - 5 + 8 * random.nextGaussian();
            Reception heard = level < floorDbm
                    ? new Reception(Reception.Kind.BELOW, floorDbm)
                    : new Reception(Reception.Kind.LEVEL, level);
            pairs.add(SimulatedWalk.pair(i, Cover.OPEN, "face", 0, heard, level > -110));
        }
        Calibration calibration =
                Calibration.of(pairs, FAR_M, new Priors(6, 1e-3, 1e-3, 0.3), List.of(), Progress.SILENT);
        assertEquals(
                5, SimulatedWalk.shift(calibration, Cover.OPEN, "face", "face").lossDb(), toleranceDb);
        assertEquals(8, calibration.spreadDb(), 1);
    }

    @Test
    void whatWasNotWalkedKeepsItsDoubt() {
        SimulatedWalk truth = new SimulatedWalk(4, new double[] {0, 0}, new double[] {0, 0}, 7);
        Calibration calibration = Calibration.of(
                truth.walk(new Random(5), 200, true), FAR_M, Priors.USUAL, List.of("chest"), Progress.SILENT);
        SiteCalibration site = calibration.site("w", LocalDate.of(2026, 5, 4));
        assertTrue(site.biasByCover().get(Cover.URBAN).standardUncertaintyDb() > 2.9);
        assertTrue(site.biasByCarry().get("chest").standardUncertaintyDb() > 2.9);
        assertTrue(site.bias().standardUncertaintyDb() < 0.7, site.bias().toString());
        double whole = SimulatedWalk.shift(calibration, Cover.WOODLAND, "face", "hip-tight")
                .lossDb();
        assertEquals(whole, site.lossShiftDb(Cover.WOODLAND, "face", "hip-tight"), 1e-9);
    }

    @Test
    void heldBackStretchesAreBetterOnlyWhereThereIsSomethingToLearn() {
        SimulatedWalk worse = new SimulatedWalk(9, new double[] {0, 2}, new double[] {0, 1}, 6);
        BlockedCheck helped = BlockedCheck.of(
                        worse.walk(new Random(1), 150, true), FAR_M, Priors.USUAL, Progress.SILENT)
                .orElseThrow();
        assertTrue(helped.rmseAfterDb().orElseThrow() < helped.rmseBeforeDb().orElseThrow() - 2, helped.toString());
        assertTrue(helped.brierAfter() < helped.brierBefore());
        SimulatedWalk right = new SimulatedWalk(0, new double[] {0, 0}, new double[] {0, 0}, 8);
        BlockedCheck same = BlockedCheck.of(right.walk(new Random(1), 150, true), FAR_M, Priors.USUAL, Progress.SILENT)
                .orElseThrow();
        assertEquals(same.rmseBeforeDb().orElseThrow(), same.rmseAfterDb().orElseThrow(), 0.5);
        assertTrue(BlockedCheck.of(right.walk(new Random(1), 12, true), FAR_M, Priors.USUAL, Progress.SILENT)
                .isEmpty());
    }
}
