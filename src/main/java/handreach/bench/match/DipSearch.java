package handreach.bench.match;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/** Finds where a curve of reflection dips, how wide, and where its reactance is zero. */
final class DipSearch {
    private static final int STEPS_BETWEEN_POINTS = 32;
    /** Steps altogether: a sweep of more than 31 250 rows is looked at in fewer between two, as its rows stand close. */
    private static final int MOST_STEPS = 1_000_000;

    /** Reflection of SWR 6 between two dips makes them two. */
    private static final double PARTING = Match.ofSwr(6).reflection();

    private static final double RELATIVE = 1e-9;
    private static final int MOST_EVALUATIONS = 500;
    private static final double DERIVATIVE_STEP = 1e-5;

    private final ReflectionCurve curve;
    private final double systemOhm;
    private final double[] grid;
    private final double[] reflection;
    private final double[] imaginary;
    /** How many steps up to and with this one take hardly any power: two places with the same count lie in one dip. */
    private final int[] parted;
    /** Steps before which the reactance passes through zero. */
    private final int[] crossings;

    DipSearch(ReflectionCurve curve, double systemOhm) {
        this.curve = curve;
        this.systemOhm = systemOhm;
        int cells = curve.count() - 1;
        int steps = Math.max(1, Math.min(STEPS_BETWEEN_POINTS, MOST_STEPS / Math.max(1, cells)));
        grid = new double[cells * steps + 1];
        reflection = new double[grid.length];
        imaginary = new double[grid.length];
        for (int i = 0; i < grid.length; i++) {
            int cell = Math.min(cells - 1, i / steps);
            double share = (double) (i - cell * steps) / steps;
            double low = curve.mhz(Math.max(0, cell));
            grid[i] = cells == 0 ? low : share == 1 ? curve.mhz(cell + 1) : low + share * (curve.mhz(cell + 1) - low);
            Complex value = curve.at(grid[i]);
            reflection[i] = value.abs();
            imaginary[i] = value.getImaginary();
        }
        parted = new int[grid.length];
        int so = 0;
        for (int i = 0; i < grid.length; i++) {
            if (reflection[i] > PARTING) so++;
            parted[i] = so;
        }
        crossings = IntStream.range(1, grid.length)
                .filter(i -> !(imaginary[i - 1] == 0 && imaginary[i] == 0) && imaginary[i - 1] * imaginary[i] <= 0)
                .toArray();
    }

    /**
     * The least SWR of all, and further dips that reach 3:1 in bands of their own; by frequency. Between two dips the antenna takes
     * hardly any power somewhere; noise makes no such gap.
     */
    List<Dip> dips() {
        List<Dip> found = new ArrayList<>();
        Set<Integer> taken = new HashSet<>();
        minima().stream().sorted(Comparator.comparingDouble(i -> reflection[i])).forEach(i -> {
            if (!found.isEmpty() && (reflection[i] > PARTING || taken.contains(parted[i]))) return;
            double mhz = refined(i);
            if (!found.isEmpty() && curve.match(mhz).swr() > 3) return;
            found.add(dip(mhz));
            taken.add(parted[i]);
        });
        return found.stream()
                .sorted(Comparator.comparingDouble(Dip::frequencyMhz))
                .toList();
    }

    private List<Integer> minima() {
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < grid.length; i++) {
            boolean fallsTo = i == 0 || reflection[i] <= reflection[i - 1];
            boolean risesFrom = i == grid.length - 1 || reflection[i] < reflection[i + 1];
            if (fallsTo && risesFrom) found.add(i);
        }
        return found;
    }

    private double refined(int i) {
        double low = grid[Math.max(0, i - 1)];
        double high = grid[Math.min(grid.length - 1, i + 1)];
        if (!(low < high)) return grid[i];
        double found = new BrentOptimizer(RELATIVE, RELATIVE)
                .optimize(
                        new UnivariateObjectiveFunction(f -> {
                            double size =
                                    curve.at(Math.min(high, Math.max(low, f))).abs();
                            return size * size;
                        }),
                        GoalType.MINIMIZE,
                        new SearchInterval(low, high, grid[i] > low && grid[i] < high ? grid[i] : (low + high) / 2),
                        new MaxEval(MOST_EVALUATIONS))
                .getPoint();
        return curve.at(found).abs() <= reflection[i] ? found : grid[i];
    }

    private Dip dip(double mhz) {
        return new Dip(mhz, curve.match(mhz), resonance(mhz), band(mhz, 2), band(mhz, 3));
    }

    private Optional<SwrBand> band(double mhz, double swr) {
        double limit = Match.ofSwr(swr).reflection();
        DoubleUnaryOperator over = f -> curve.at(f).abs() - limit;
        if (over.applyAsDouble(mhz) > 0) return Optional.empty();
        int above = firstAbove(mhz);
        int up = above;
        while (up < grid.length && reflection[up] <= limit) up++;
        int down = above - 1;
        while (down >= 0 && reflection[down] <= limit) down--;
        double high = up == grid.length ? curve.highestMhz() : root(over, Math.max(mhz, grid[up - 1]), grid[up]);
        double low = down < 0 ? curve.lowestMhz() : root(over, grid[down], Math.min(mhz, grid[down + 1]));
        return Optional.of(new SwrBand(low, high, down < 0, up == grid.length));
    }

    private int firstAbove(double mhz) {
        int found = Arrays.binarySearch(grid, mhz);
        if (found < 0) return -found - 1;
        while (found < grid.length && grid[found] <= mhz) found++;
        return found;
    }

    private static double root(DoubleUnaryOperator function, double low, double high) {
        double atLow = function.applyAsDouble(low);
        double atHigh = function.applyAsDouble(high);
        if (atLow == 0) return low;
        if (atHigh == 0) return high;
        if (atLow * atHigh > 0) return (low + high) / 2;
        return new BrentSolver(RELATIVE, RELATIVE * high).solve(MOST_EVALUATIONS, function::applyAsDouble, low, high);
    }

    /** The zero of the reactance nearest to a frequency. Reactance and the imaginary part of Γ are zero together. */
    private Optional<Resonance> resonance(double nearMhz) {
        int above = Arrays.binarySearch(crossings, firstAbove(nearMhz));
        int next = above < 0 ? -above - 1 : above;
        double best = Double.NaN;
        // the zeros stand in order: the nearest is among those of the cell itself and of one crossing on either side
        for (int k = Math.max(0, next - 2); k < Math.min(crossings.length, next + 2); k++) {
            int i = crossings[k];
            double zero = root(f -> curve.at(f).getImaginary(), grid[i - 1], grid[i]);
            if (Double.isNaN(best) || Math.abs(zero - nearMhz) < Math.abs(best - nearMhz)) best = zero;
        }
        return Double.isNaN(best) ? Optional.empty() : Optional.of(resonanceAt(best));
    }

    private Resonance resonanceAt(double mhz) {
        double step = mhz * DERIVATIVE_STEP;
        double low = Math.max(curve.lowestMhz(), mhz - step);
        double high = Math.min(curve.highestMhz(), mhz + step);
        double slope =
                (curve.impedance(high).getImaginary() - curve.impedance(low).getImaginary()) / (high - low);
        double resistance = Math.max(1e-9, curve.impedance(mhz).getReal());
        return new Resonance(mhz, resistance * systemOhm, mhz * Math.abs(slope) / (2 * resistance), slope > 0);
    }
}
