package handreach.propagation;

/**
 * What the {@code handheld} model needs for one pair of antenna heights under one set of conditions, worked out once; then each
 * path costs one call.
 *
 * <p>Immutable, any thread; the {@link StretchedString} handed in is the scratch of one thread. A whole radial:
 *
 * <pre>{@code
 * string.start(terms.effectiveRadiusM(), groundM[0], nearHeightM);
 * for (int i = 1; i < n; i++) {
 *     string.add(distanceM[i], groundM[i]);
 *     excessDb[i] = terms.excessDb(string);      // what the model would say of the path cut at i
 * }
 * }</pre>
 */
public final class HandheldTerms {
    private final SmoothGround smooth;
    private final Terminals terminals;
    private final double effectiveRadiusM;
    private final double wavelengthM;

    private HandheldTerms(PathConditions conditions, Terminals terminals) {
        this.terminals = terminals;
        effectiveRadiusM = 1000 * conditions.atmosphere().effectiveRadiusKm();
        wavelengthM = conditions.frequency().wavelengthM();
        smooth = new SmoothGround(
                conditions.frequency(), conditions.polarization(), conditions.ground(), effectiveRadiusM);
    }

    public static HandheldTerms of(PathConditions conditions, Terminals terminals) {
        return new HandheldTerms(conditions, terminals);
    }

    public Terminals terminals() {
        return terminals;
    }

    public double effectiveRadiusM() {
        return effectiveRadiusM;
    }

    /**
     * Loss of the bare ground over free space, for the path over the first samples of two arrays.
     *
     * @shape samples 0 to {@code last} in, scalar out; O(last), nothing allocated
     * @unit distances and ground heights m; dB over free space, negative where the ground helps
     * @valid distances from 0, increasing; {@code last} at least 1 and below the capacity of the string
     * @error see {@link Handheld}
     * @source ours, see {@link Handheld}
     */
    public double excessDb(double[] distanceM, double[] groundM, int last, StretchedString string) {
        string.start(effectiveRadiusM, groundM[0], terminals.txHeightM());
        for (int i = 1; i <= last; i++) string.add(distanceM[i], groundM[i]);
        return excessDb(string);
    }

    /**
     * The same for the path that ends at the last sample walked by the string, which was started at this near height.
     *
     * @shape one string in, scalar out; O(log n) beyond the horizon, O(n) in sight; nothing allocated
     * @unit dB over free space, negative where the ground helps
     * @valid at least two samples walked
     * @error see {@link Handheld}
     * @source ours, see {@link Handheld}
     */
    public double excessDb(StretchedString string) {
        string.stretchTo(terminals.rxHeightM());
        double d = string.lengthM();
        double fitNear = Math.min(string.fitNearM(), string.nearGroundM());
        double fitFar = Math.min(string.fitFarM(), string.farGroundM());
        double rise = string.largestRiseM();
        if (rise > 0) {
            double near = string.nearRise();
            double far = string.farRise();
            fitNear = Math.min(fitNear, 0.5 * (fitNear + string.fitNearM() - rise * near / (near + far)));
            fitFar = Math.min(fitFar, 0.5 * (fitFar + string.fitFarM() - rise * far / (near + far)));
        }
        double height1 = terminals.txHeightM() + string.nearGroundM() - fitNear;
        double height2 = terminals.rxHeightM() + string.farGroundM() - fitFar;
        double edgesDb = string.inSight()
                ? edgeDb(string.clearanceNu(wavelengthM))
                : edgeDb(nu(string.totalBend(), string.bendMeanM(), d)) * 1.3;
        double groundDb = smooth.lossDb(d, height1, height2) - smoothEdgesDb(d, height1, height2);
        return edgesDb + groundDb;
    }

    private double smoothEdgesDb(double d, double height1, double height2) {
        double tangent1 = Math.sqrt(2 * effectiveRadiusM * height1);
        double tangent2 = Math.sqrt(2 * effectiveRadiusM * height2);
        double bend = (d - tangent1 - tangent2) / effectiveRadiusM;
        return edgeDb(nu(bend, 0.5 * (d + tangent1 - tangent2), d));
    }

    private double nu(double bend, double at, double d) {
        return bend * Math.sqrt(Math.max(0, 2 * at * (d - at) / (wavelengthM * d)));
    }

    /** Loss of one knife edge, P.526-15 equation (31). */
    private static double edgeDb(double nu) {
        if (nu <= -0.78) return 0;
        double u = nu - 0.1;
        return 6.9 + 20 * Math.log10(Math.sqrt(u * u + 1) + u);
    }
}
