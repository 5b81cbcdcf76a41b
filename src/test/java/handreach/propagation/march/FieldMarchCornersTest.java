package handreach.propagation.march;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Corners of facets: where the ground bends, as many whatever the ground, and never too close. */
class FieldMarchCornersTest {
    private static final double[] X =
            IntStream.range(0, 13).mapToDouble(i -> 5.0 * i).toArray();

    @Test
    void aCornerStandsWhereTheGroundBends() { // by hand: bends at 15, 30 and 45 m, stretches of 15 m from 10 m on
        double[] z = IntStream.range(0, 13)
                .mapToDouble(i -> new double[] {0, 2, 4, 6, 5, 4, 3, 7, 11, 15, 15, 15, 15}[i])
                .toArray();
        // the last stretch holds one sample, on the level ground at the end
        assertArrayEquals(new int[] {0, 3, 6, 9, 11, 12}, FieldMarchCorners.of(X, z, 10, 15, 5));
    }

    /** Oracle: every choice of one sample a stretch tried. */
    @Test
    void noOtherChoiceLiesNearerToTheSamples() {
        Random random = new Random(20261201);
        for (int trial = 0; trial < 200; trial++) {
            double[] z = random.doubles(X.length, 0, 10).toArray();
            int[] corners = FieldMarchCorners.of(X, z, 5, 20, 10);
            // stretches by hand: samples 1 to 4, 5 to 8 and 9 to 10; the last face is 10 m long at least
            double least = Double.POSITIVE_INFINITY;
            for (int a = 1; a <= 4; a++)
                for (int b = Math.max(5, a + 2); b <= 8; b++)
                    for (int c = Math.max(9, b + 2); c <= 10; c++)
                        least = Math.min(least, off(z, new int[] {0, a, b, c, 12}));
            assertEquals(5, corners.length, Arrays.toString(corners));
            assertEquals(least, off(z, corners), 1e-9, Arrays.toString(corners));
        }
    }

    @Test
    void neighboursHaveAsManyCornersAndNoFaceIsTooShort() {
        Random random = new Random(7);
        double[] x = IntStream.range(0, 400).mapToDouble(i -> 2.75 * i).toArray();
        int[] first = FieldMarchCorners.of(x, new double[400], 4.7, 20, 1.3);
        for (int trial = 0; trial < 50; trial++) {
            int[] corners = FieldMarchCorners.of(x, random.doubles(400, 0, 40).toArray(), 4.7, 20, 4.1);
            int[] wide = FieldMarchCorners.of(x, random.doubles(400, 0, 40).toArray(), 30, 40, 20);
            assertEquals(first.length, corners.length);
            for (int i = 1; i < corners.length; i++)
                assertTrue(x[corners[i]] - x[corners[i - 1]] >= 4.1, "face " + i + " of " + Arrays.toString(corners));
            for (int i = 2; i < wide.length; i++)
                assertTrue(x[wide[i]] - x[wide[i - 1]] >= 20, "face " + i + " of " + Arrays.toString(wide));
            assertTrue(x[wide[1]] >= 30);
        }
    }

    @Test
    void aShortPathHasItsEndsAlone() {
        assertArrayEquals(new int[] {0, 1}, FieldMarchCorners.of(new double[] {0, 60}, new double[] {1, 2}, 5, 20, 4));
        assertArrayEquals(
                new int[] {0, 3}, FieldMarchCorners.of(new double[] {0, 1, 2, 3}, new double[] {1, 2, 9, 2}, 5, 20, 4));
    }

    private static double off(double[] z, int[] corners) {
        double sum = 0;
        for (int k = 1; k < corners.length; k++)
            for (int i = corners[k - 1]; i < corners[k]; i++) {
                double share = (X[i] - X[corners[k - 1]]) / (X[corners[k]] - X[corners[k - 1]]);
                double off = z[i] - z[corners[k - 1]] - share * (z[corners[k]] - z[corners[k - 1]]);
                sum += off * off;
            }
        return sum;
    }
}
