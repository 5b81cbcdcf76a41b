package handreach.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;

class TrialLayoutTest {
    /** Rounding of two ways of solving the same equations. */
    private static final double SAME = 1e-9;

    private static final int ANTENNAS = 5;
    private static final int TRIALS = 7;

    /** Oracle: one regression on a column for each antenna and trial, by a statistics library, over layouts with gaps. */
    @Test
    void agreesWithTheRegressionOnAllColumns() {
        Random random = new Random(3);
        for (int round = 0; round < 30; round++) {
            List<AntennaReadings> readings = new ArrayList<>();
            for (int a = 0; a < ANTENNAS; a++) readings.add(new AntennaReadings("a" + a));
            List<double[]> rows = new ArrayList<>();
            List<Double> levels = new ArrayList<>();
            int place = 0;
            for (int t = 0; t < TRIALS; t++)
                for (int a = 0; a < ANTENNAS; a++) {
                    if (a > 0 && random.nextDouble() < 0.25) continue;
                    double level = -42 + a + random.nextGaussian();
                    readings.get(a).add(level, place++, java.util.OptionalInt.of(t), 0.1);
                    double[] row = new double[ANTENNAS + TRIALS - 1];
                    row[a] = 1;
                    if (t > 0) row[ANTENNAS + t - 1] = 1;
                    rows.add(row);
                    levels.add(level);
                }
            RealMatrix x = new Array2DRowRealMatrix(rows.toArray(new double[0][]));
            RealMatrix y = new Array2DRowRealMatrix(
                    levels.stream().mapToDouble(Double::doubleValue).toArray());
            RealMatrix inverse =
                    new QRDecomposition(x.transpose().multiply(x)).getSolver().getInverse();
            RealMatrix effects = inverse.multiply(x.transpose()).multiply(y);
            RealMatrix rest = y.subtract(x.multiply(effects));
            int degrees = rows.size() - ANTENNAS - TRIALS + 1;
            TrialLayout layout = TrialLayout.of(readings, Optional.empty()).orElseThrow();
            // a turn that only one antenna was read in says nothing, and costs as much as it gives
            assertEquals(degrees, layout.degreesOfFreedom());
            assertEquals(
                    Math.sqrt(rest.transpose().multiply(rest).getEntry(0, 0) / degrees), layout.scatterDb(0), SAME);
            for (int i = 0; i < ANTENNAS; i++)
                for (int j = 0; j < i; j++) {
                    assertEquals(effects.getEntry(i, 0) - effects.getEntry(j, 0), layout.difference(i, j, 0), SAME);
                    double square = inverse.getEntry(i, i) + inverse.getEntry(j, j) - 2 * inverse.getEntry(i, j);
                    assertEquals(Math.sqrt(square), layout.errorOf(i, j), SAME);
                }
        }
    }

    /** Law: a straight drift on top of everything changes neither differences nor scatter once it is taken out, gaps or not. */
    @Test
    void aStraightDriftIsFoundAndTakenOutWhole() {
        Random random = new Random(5);
        List<AntennaReadings> plain = new ArrayList<>();
        List<AntennaReadings> drifting = new ArrayList<>();
        for (int a = 0; a < ANTENNAS; a++) {
            plain.add(new AntennaReadings("a" + a));
            drifting.add(new AntennaReadings("a" + a));
        }
        int place = 0;
        for (int t = 0; t < TRIALS; t++)
            for (int a = 0; a < ANTENNAS; a++) {
                if (a == 1 + t % 4) continue;
                double level = -42 + a + random.nextGaussian();
                plain.get(a).add(level, place, java.util.OptionalInt.of(t), 0.1);
                drifting.get(a).add(level + 0.2 * place, place, java.util.OptionalInt.of(t), 0.1);
                place++;
            }
        TrialLayout before = TrialLayout.of(plain, Optional.empty()).orElseThrow();
        TrialLayout after = TrialLayout.of(drifting, Optional.empty()).orElseThrow();
        assertEquals(0.2, after.trend().slope().value() - before.trend().slope().value(), SAME);
        assertEquals(before.scatterDb(0), after.scatterDb(0.2), SAME);
        assertTrue(Math.abs(before.difference(4, 0, 0) - after.difference(4, 0, 0)) > 0.3);
        assertEquals(before.difference(4, 0, 0), after.difference(4, 0, 0.2), SAME);
    }

    @Test
    void antennasThatNoTrialLinksAreNoLayout() {
        List<AntennaReadings> readings = new ArrayList<>();
        for (int a = 0; a < 4; a++) readings.add(new AntennaReadings("a" + a));
        int place = 0;
        for (int t = 0; t < 8; t++)
            for (int a = t < 4 ? 0 : 2; a < (t < 4 ? 2 : 4); a++)
                readings.get(a).add(-42 - 0.1 * t * a, place++, java.util.OptionalInt.of(t), 0.1);
        assertEquals(Optional.empty(), TrialLayout.of(readings, Optional.empty()));
    }
}
