package handreach.uncertainty;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.special.Beta;
import org.apache.commons.math3.special.Gamma;

/** Student's t with any number of degrees of freedom above zero, whole or not; infinitely many give the normal law. */
final class StudentT {
    private static final double ACCURACY = 1e-12;
    private static final int NEWTON_STEPS = 12;
    private static final double NEWTON_SETTLED = 1e-11;
    private static final double NORMAL_FROM = 1e8;
    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1, ACCURACY);

    private StudentT() {}

    /**
     * The value that t stays below with this probability.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   probability 0 to 1, both ends left out; result in standard uncertainties
     * @valid  degrees of freedom above 0, infinity included; outside: IllegalArgumentException
     * @error  below 1e-9 relative down to one degree of freedom, against a statistics library
     * @source JCGM 100:2008 (GUM), G.3 and table G.2
     */
    public static double quantile(double probability, double degreesOfFreedom) {
        if (!(probability > 0 && probability < 1)) throw new IllegalArgumentException("probability " + probability);
        requireDegrees(degreesOfFreedom);
        if (degreesOfFreedom > NORMAL_FROM) return NORMAL.inverseCumulativeProbability(probability);
        double tail = Math.min(probability, 1 - probability);
        double size = tail == 0.5 ? 0 : upperQuantile(tail, degreesOfFreedom);
        return probability < 0.5 ? -size : size;
    }

    /** Newton's steps from the expansion around the normal quantile; where they do not settle, the library's search. */
    private static double upperQuantile(double tail, double nu) {
        double z = -NORMAL.inverseCumulativeProbability(tail);
        double z3 = z * z * z;
        double t = z + (z3 + z) / (4 * nu) + (5 * z3 * z * z + 16 * z3 + 3 * z) / (96 * nu * nu);
        double lnConstant = Gamma.logGamma((nu + 1) / 2) - Gamma.logGamma(nu / 2) - 0.5 * Math.log(nu * Math.PI);
        for (int i = 0; i < NEWTON_STEPS; i++) {
            double density = Math.exp(lnConstant - (nu + 1) / 2 * Math.log1p(t * t / nu));
            double step = (twoSidedP(t, nu) / 2 - tail) / density;
            t += step;
            if (!(t > 0)) break;
            if (Math.abs(step) < NEWTON_SETTLED * t) return t;
        }
        return -new TDistribution(null, nu, ACCURACY).inverseCumulativeProbability(tail);
    }

    /**
     * Coverage factor for 95 %: the t that is exceeded, on either side together, once in twenty times.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   result in standard uncertainties
     * @valid  as {@link #quantile}
     * @error  as {@link #quantile}
     * @source JCGM 100:2008 (GUM), table G.2
     */
    public static double coverageFactor95(double degreesOfFreedom) {
        return quantile(0.975, degreesOfFreedom);
    }

    /**
     * Odds of a t at least as far from zero by chance alone.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   t in standard uncertainties; result 0 to 1
     * @valid  every t, infinity included (odds 0); degrees of freedom above 0, infinity included
     * @error  below 1e-10, worst above 100 000 degrees of freedom
     * @source incomplete beta form of Student's law, Abramowitz and Stegun 26.7.1 (from memory)
     */
    public static double twoSidedP(double t, double degreesOfFreedom) {
        if (Double.isNaN(t)) throw new IllegalArgumentException("t must be a number");
        requireDegrees(degreesOfFreedom);
        if (Double.isInfinite(t)) return 0;
        if (degreesOfFreedom > NORMAL_FROM) return 2 * NORMAL.cumulativeProbability(-Math.abs(t));
        if (t == 0) return 1;
        return Beta.regularizedBeta(degreesOfFreedom / (degreesOfFreedom + t * t), degreesOfFreedom / 2, 0.5);
    }

    private static void requireDegrees(double degreesOfFreedom) {
        if (!(degreesOfFreedom > 0)) throw new IllegalArgumentException("degrees of freedom " + degreesOfFreedom);
    }
}
