package handreach.uncertainty;

import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.special.Erf;
import org.apache.commons.math3.special.Gamma;

/** Power of a t test: the odds that a real difference is seen as one. */
public final class NoncentralT {
    /** Terms below e^−28 of the largest are left out. */
    private static final double LN_NOTHING = 28;

    /** Beyond this many standard deviations the normal law is 0 or 1 to 1e-15. */
    private static final double CERTAIN = 8;

    /** The trapezoid rule errs by e^(−2π² n²) with n steps a width for a bell curve. */
    private static final double STEPS_PER_WIDTH = 2.8;

    /** And by e^(−2πa/h) where the integrand stays small for |Im x| < a = π/4: h = 0.14 gives 1e-15. */
    private static final double WIDEST_STEP = 0.14;

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
        double critical = StudentT.quantile(1 - level / 2, degreesOfFreedom);
        return beyond(critical, Math.abs(differenceInErrors), degreesOfFreedom);
    }

    /** Odds of a noncentral t farther from zero than a critical value. */
    private static double beyond(double critical, double delta, double nu) {
        double width = Math.min(1 / Math.sqrt(2 * nu), 1 / Math.max(1, delta));
        double step = Math.min(WIDEST_STEP, width / STEPS_PER_WIDTH);
        double lnConstant = Math.log(2) + nu / 2 * Math.log(nu / 2) - Gamma.logGamma(nu / 2);
        double sum = 0;
        double weight = 0;
        // the density peaks at x = 0: walk outwards on either side until nothing is left
        for (int side = -1; side <= 1; side += 2)
            for (int i = side < 0 ? -1 : 0; ; i += side) {
                double x = i * step;
                double lnDensity = lnConstant + nu * x - nu / 2 * Math.exp(2 * x);
                if (lnDensity < lnConstant - nu / 2 - LN_NOTHING) break;
                double density = Math.exp(lnDensity);
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
        if (z < -CERTAIN) return 0;
        if (z > CERTAIN) return 1;
        return 0.5 * Erf.erfc(-z / Math.sqrt(2));
    }
}
