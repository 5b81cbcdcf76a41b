package handreach.propagation;

/** Diffraction over one sharp edge. */
public final class KnifeEdge {
    /** At or below this ν the edge counts as clear. */
    public static final double CLEAR_NU = -0.78;

    private KnifeEdge() {}

    /**
     * Loss over free space of an edge with diffraction parameter ν, the Recommendation's approximation J(ν).
     *
     * @shape  scalar in, scalar out; pure
     * @unit   ν dimensionless, above zero when the edge rises into the ray; result dB, positive weakens
     * @valid  every finite ν; at or below −0.78 the edge counts as clear and costs 0 dB
     * @error  within 0.125 dB of {@link #exactLossDb} above −0.78, worst near ν = 4.6
     * @source Rec. ITU-R P.526-15, equation (31)
     */
    public static double lossDb(double nu) {
        if (nu <= CLEAR_NU) return 0;
        double u = nu - 0.1;
        return 6.9 + 20 * Math.log10(Math.sqrt(u * u + 1) + u);
    }

    /**
     * Loss over free space of an edge from the Fresnel integrals; below −0.78 it ripples through zero.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   ν dimensionless; result dB, positive weakens
     * @valid  every finite ν; an absorbing half-plane across a two-dimensional path
     * @error  1e-6 dB for ν up to 10, where the integrals nearly cancel; above, from the first terms of their asymptotic series
     * @source Rec. ITU-R P.526-15, equations (29) and (30)
     */
    public static double exactLossDb(double nu) {
        if (nu > 30) return 20 * Math.log10(Math.PI * Math.sqrt(2) * nu);
        FresnelIntegral value = FresnelIntegral.of(nu);
        double a = 1 - value.c() - value.s();
        double b = value.c() - value.s();
        return -20 * Math.log10(Math.hypot(a, b) / 2);
    }

    /**
     * Diffraction parameter ν of an edge between two ends.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   height of the edge above the straight line m (negative below), distances to the ends km, wavelength m
     * @valid  both distances above 0
     * @error  exact within the paraxial form
     * @source Rec. ITU-R P.526-15, equation (26)
     */
    public static double nu(double aboveLineM, double d1Km, double d2Km, double wavelengthM) {
        return nu(aboveLineM, d1Km, d2Km, d1Km + d2Km, wavelengthM);
    }

    /** The same where the whole distance is known, km. */
    static double nu(double aboveLineM, double d1Km, double d2Km, double dKm, double wavelengthM) {
        return aboveLineM * Math.sqrt(0.002 * dKm / (wavelengthM * d1Km * d2Km));
    }

    /**
     * Radius of the first Fresnel zone.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   distances to the ends km, wavelength m; result m
     * @valid  distances from 0 up
     * @error  exact; the text's 550 is 0.5 % high
     * @source Rec. ITU-R P.526-15, equation (2)
     */
    public static double fresnelRadiusM(double d1Km, double d2Km, double wavelengthM) {
        return Math.sqrt(1000 * wavelengthM * d1Km * d2Km / (d1Km + d2Km));
    }
}
