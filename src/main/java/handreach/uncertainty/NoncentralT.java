package handreach.uncertainty;

import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.special.Erf;
import org.apache.commons.math3.special.Gamma;

/** Power of a t test: the odds that a real difference is seen as one. */
public final class NoncentralT {
    private static final double WIDEST_TAIL = 40;
    private static final double STEPS_PER_WIDTH = 4;

    private NoncentralT() {}

    /**
     * Odds that a two-sided test at the stated level sees a difference of δ standard errors.
     *
     * <p>Integrates over the chi law of the estimated scatter, in the logarithm of the scatter, where the integrand is smooth
     * and dies on both sides, so that the trapezoid rule converges faster than any power of its step.
     *
     * @shape  scalars in, scalar out; some hundreds to some thousands of terms; pure
     * @unit   difference in standard errors, level and result 0 to 1
     * @valid  degrees of freedom from 1 to 1e7, level 0 to 1 with both ends left out; outside: IllegalArgumentException
     * @error  below 1e-9, against the noncentral t of a statistics library
     * @source noncentral t, Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions 2, chapter 31 (from memory)
     */
    public static double power(double differenceInErrors, double degreesOfFreedom, double level) {
        if (!(degreesOfFreedom >= 1 && degreesOfFreedom <= 1e7) || !(level > 0 && level < 1))
            throw new IllegalArgumentException("power at " + degreesOfFreedom + " degrees of freedom, level " + level);
        if (!Double.isFinite(differenceInErrors))
            throw new IllegalArgumentException("difference " + differenceInErrors);
        double nu = degreesOfFreedom;
        double delta = Math.abs(differenceInErrors);
        double critical = StudentT.quantile(1 - level / 2, nu);
        double width = Math.min(1 / Math.sqrt(2 * nu), 1 / Math.max(1, delta));
        double step = width / STEPS_PER_WIDTH;
        double low = -Math.min(WIDEST_TAIL / nu + 1, 12 / Math.sqrt(nu) + WIDEST_TAIL / nu);
        double high = Math.min(2.3, 12 / Math.sqrt(nu));
        double lnConstant = Math.log(2) + nu / 2 * Math.log(nu / 2) - Gamma.logGamma(nu / 2);
        double sum = 0;
        double weight = 0;
        for (double x = low; x <= high; x += step) {
            double density = Math.exp(lnConstant + nu * x - nu / 2 * Math.exp(2 * x));
            double edge = critical * Math.exp(x);
            sum += density * (normal(delta - edge) + normal(-delta - edge));
            weight += density;
        }
        return Math.min(1, sum / weight);
    }

    /**
     * The difference that a two-sided test sees with the wanted odds.
     *
     * @shape  scalars in, scalar out; some ten evaluations of {@link #power}; pure
     * @unit   result in standard errors
     * @valid  as {@link #power}; power above the level and below 1
     * @error  below 1e-8 standard errors
     * @source inverse of {@link #power}
     */
    public static double detectableDifference(double degreesOfFreedom, double level, double power) {
        if (!(power > level && power < 1)) throw new IllegalArgumentException("power " + power);
        double guess = StudentT.quantile(1 - level / 2, degreesOfFreedom) + StudentT.quantile(power, degreesOfFreedom);
        double high = guess;
        while (power(high, degreesOfFreedom, level) < power) high *= 1.5;
        double low = high / 2;
        while (power(low, degreesOfFreedom, level) > power) low /= 2;
        return new BrentSolver(1e-10, 1e-10).solve(100, d -> power(d, degreesOfFreedom, level) - power, low, high);
    }

    private static double normal(double z) {
        return 0.5 * Erf.erfc(-z / Math.sqrt(2));
    }
}
