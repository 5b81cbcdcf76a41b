package handreach.propagation;

/** Inverse of the upper tail of the normal law, as rounded in Rec. ITU-R P.1546 and P.1812: to be used only inside them. */
public final class InverseNormal {
    private InverseNormal() {}

    /**
     * I(x), the deviate that is passed with probability x.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   probability in; result in standard deviations
     * @valid  x from 0.000001 to 0.999999; beyond, the value at the end
     * @error  below 4.5e-4, Abramowitz and Stegun (from memory)
     * @source Rec. ITU-R P.1812-6 Attachment 2, after Abramowitz and Stegun 26.2.23
     */
    public static double of(double x) {
        return x <= 0.5 ? tail(x) : -tail(1 - x);
    }

    private static double tail(double x) {
        double t = Math.sqrt(-2 * Math.log(Math.max(x, 1e-6)));
        double upper = (0.010328 * t + 0.802853) * t + 2.515516698;
        double lower = ((0.001308 * t + 0.189269) * t + 1.432788) * t + 1;
        return t - upper / lower;
    }
}
