package handreach.propagation.handheld;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** The end of a path that is moved between samples, and the search for the worst clearance that skips blocks. */
class StretchedStringEndTest {
    private static final double EARTH_M = 8_930_777;
    private static final double WAVE_M = 2.05;

    @Test
    void aMovedEndIsAsGoodAsAPathCutThere() {
        Random random = new Random(11);
        double[] x = new double[300];
        double[] h = new double[300];
        StretchedString walked = new StretchedString(301);
        walked.start(EARTH_M, h[0], 1.5);
        for (int i = 1; i < 300; i++) {
            x[i] = x[i - 1] + 10 + 20 * random.nextDouble();
            h[i] = h[i - 1] + 6 * random.nextGaussian();
            if (i == 1) walked.add(x[1] + 5, h[0]);
            walked.moveEnd(x[i], h[i]);
            double between = x[i] + 7;
            double ground = h[i] + random.nextGaussian();
            walked.add(between, ground);
            StretchedString cut = new StretchedString(i + 2);
            cut.start(EARTH_M, h[0], 1.5);
            for (int j = 1; j <= i; j++) cut.add(x[j], h[j]);
            cut.add(between, ground);
            for (StretchedString string : new StretchedString[] {walked, cut}) string.stretchTo(1.2);
            assertEquals(cut.totalBend(), walked.totalBend(), 1e-15);
            assertEquals(cut.roughnessM(), walked.roughnessM(), 1e-9);
            assertEquals(cut.farClearanceM(), walked.farClearanceM(), 1e-9);
            assertEquals(cut.clearanceNu(WAVE_M, -2), walked.clearanceNu(WAVE_M, -2), 1e-12);
            assertEquals(cut.gapFromFarM(120), walked.gapFromFarM(120));
            assertEquals(cut.gapFromNearM(120), walked.gapFromNearM(120));
        }
    }

    @Test
    void skippingBlocksFindsTheSameWorstClearance() {
        for (int seed = 1; seed <= 200; seed++) {
            Random random = new Random(seed);
            int n = 3 + random.nextInt(400);
            double rough = Math.pow(10, 2 * random.nextDouble() - 1);
            double[] x = new double[n];
            double[] h = new double[n];
            StretchedString string = new StretchedString(n);
            double near = 200 * random.nextDouble();
            double far = 200 * random.nextDouble();
            string.start(EARTH_M, 0, near + 1);
            for (int i = 1; i < n; i++) {
                x[i] = 25.0 * i;
                h[i] = rough * random.nextGaussian();
                string.add(x[i], h[i]);
            }
            string.stretchTo(far + 1);
            if (!string.inSight()) continue;
            double worst = -2;
            double d = x[n - 1];
            for (int i = 1; i < n - 1; i++) {
                double line = near + 1 + (h[n - 1] + far + 1 - near - 1) * x[i] / d;
                double above = h[i] + x[i] * (d - x[i]) / (2 * EARTH_M) - line;
                worst = Math.max(worst, above * Math.sqrt(2 * d / (WAVE_M * x[i] * (d - x[i]))));
            }
            assertEquals(worst, string.clearanceNu(WAVE_M, -2), 1e-9, "seed " + seed);
        }
    }

    @Test
    void aStringLaidAtOnceIsTheStringWalked() {
        for (int seed = 1; seed <= 200; seed++) {
            Random random = new Random(seed);
            int last = 2 + random.nextInt(400);
            double[] h = new double[last + 1];
            double rough = 8 * random.nextDouble() * random.nextDouble();
            for (int i = 1; i <= last; i++) h[i] = h[i - 1] + rough * random.nextGaussian();
            StretchedString walked = new StretchedString(last + 1);
            StretchedString laid = new StretchedString(last + 1);
            walked.start(EARTH_M, h[0], 1.5);
            for (int i = 1; i <= last; i++) walked.add(12.5 * i, h[i]);
            laid.lay(EARTH_M, 1.5, 1.2, 12.5, h, last);
            for (double far : new double[] {1.2, 9}) {
                walked.stretchTo(far);
                laid.stretchTo(far);
                String where = "seed " + seed;
                assertEquals(walked.inSight(), laid.inSight(), where);
                assertEquals(walked.totalBend(), laid.totalBend(), 1e-12, where);
                assertEquals(walked.liftM(), laid.liftM(), 1e-7, where);
                assertEquals(walked.nearClearanceM(), laid.nearClearanceM(), 1e-7, where);
                assertEquals(walked.farClearanceM(), laid.farClearanceM(), 1e-7, where);
                assertEquals(walked.roughnessM(), laid.roughnessM(), 1e-7, where);
                assertEquals(walked.gapFromNearM(120), laid.gapFromNearM(120), 1e-9, where);
                assertEquals(walked.gapFromFarM(120), laid.gapFromFarM(120), 1e-9, where);
                if (walked.inSight())
                    assertEquals(walked.clearanceNu(WAVE_M, -0.78), laid.clearanceNu(WAVE_M, -0.78), 1e-9, where);
            }
        }
    }

    @Test
    void theGapIsThatOfTheStringOverStraightGround() {
        // By hand, flat earth: ground 0, 30, 0, 0 m at 0, 100, 200, 400 m; antennas 2 m, then 6 m at the last sample.
        // The string
        // bends at 100 m and falls there by 24/300. 60 m out: 2 + 0.6 · 28 − 18 = 0.8 m; 250 m back: 150 m out, 30 − 4
        // − 15 = 11 m;
        // 120 m back: 280 m out, 30 − 14.4 = 15.6 m. Farther than the path is long: over the other end.
        StretchedString string = new StretchedString(4);
        string.start(1e15, 0, 2);
        string.add(100, 30);
        string.add(200, 0);
        string.add(400, 0);
        string.stretchTo(6);
        assertEquals(0.8, string.gapFromNearM(60), 1e-9);
        assertEquals(11, string.gapFromFarM(250), 1e-9);
        assertEquals(15.6, string.gapFromFarM(120), 1e-9);
        assertEquals(6, string.gapFromNearM(900), 1e-9);
        assertEquals(2, string.gapFromFarM(900), 1e-9);
    }
}
