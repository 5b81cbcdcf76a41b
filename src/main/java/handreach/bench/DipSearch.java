package handreach.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
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

    DipSearch(ReflectionCurve curve, double systemOhm) {
        this.curve = curve;
        this.systemOhm = systemOhm;
        int cells = curve.count() - 1;
        grid = new double[cells * STEPS_BETWEEN_POINTS + 1];
        reflection = new double[grid.length];
        imaginary = new double[grid.length];
        for (int i = 0; i < grid.length; i++) {
            int cell = Math.min(cells - 1, i / STEPS_BETWEEN_POINTS);
            double share = (double) (i - cell * STEPS_BETWEEN_POINTS) / STEPS_BETWEEN_POINTS;
            double low = curve.mhz(Math.max(0, cell));
            grid[i] = cells == 0 ? low : share == 1 ? curve.mhz(cell + 1) : low + share * (curve.mhz(cell + 1) - low);
            Complex value = curve.at(grid[i]);
            reflection[i] = value.abs();
            imaginary[i] = value.getImaginary();
        }
    }

    /** The least SWR of all, and further dips that reach 3:1 in bands of their own; by frequency. */
    List<Dip> dips() {
        List<Dip> found = new ArrayList<>();
        minima().stream().sorted(Comparator.comparingDouble(i -> reflection[i])).forEach(i -> {
            double mhz = refined(i);
            boolean isNew = found.stream().allMatch(d -> isParted(mhz, d.frequencyMhz()));
            boolean isDeep = curve.match(mhz).swr() <= 3;
            if (found.isEmpty() || (isNew && isDeep)) found.add(dip(mhz));
        });
        return found.stream()
                .sorted(Comparator.comparingDouble(Dip::frequencyMhz))
                .toList();
    }

    /** Whether the antenna takes hardly any power somewhere between two frequencies; noise makes no such gap. */
    private boolean isParted(double mhz, double otherMhz) {
        for (int i = 0; i < grid.length; i++)
            if (grid[i] > Math.min(mhz, otherMhz) && grid[i] < Math.max(mhz, otherMhz) && reflection[i] > PARTING)
                return true;
        return false;
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

    private Optional<Band> band(double mhz, double swr) {
        double limit = Match.ofSwr(swr).reflection();
        DoubleUnaryOperator over = f -> curve.at(f).abs() - limit;
        if (over.applyAsDouble(mhz) > 0) return Optional.empty();
        int above = 0;
        while (above < grid.length && grid[above] <= mhz) above++;
        int up = above;
        while (up < grid.length && reflection[up] <= limit) up++;
        int down = above - 1;
        while (down >= 0 && reflection[down] <= limit) down--;
        double high = up == grid.length ? curve.highestMhz() : root(over, Math.max(mhz, grid[up - 1]), grid[up]);
        double low = down < 0 ? curve.lowestMhz() : root(over, grid[down], Math.min(mhz, grid[down + 1]));
        return Optional.of(new Band(low, high, down < 0, up == grid.length));
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
        double best = Double.NaN;
        for (int i = 1; i < grid.length; i++) {
            if (imaginary[i - 1] == 0 && imaginary[i] == 0) continue;
            if (imaginary[i - 1] * imaginary[i] > 0) continue;
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
