package handreach.propagation;

/** Diffraction over one obstacle with a rounded top. */
public final class RoundedObstacle {
    private RoundedObstacle() {}

    /**
     * Loss over free space: J(ν) and the extra T(m, n) of the curvature.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   height above the line m, distances to the ends km, radius of curvature m, wavelength m; result dB
     * @valid  radius from 0 (a knife edge) up, edge at or above the line (n ≥ 0); with the edge below the line the curvature term is
     *     taken at grazing and fades out with J(ν)
     * @error  agrees with the ESSA/NBS grazing cubic to 0.2 dB for m below 0.25 and 1.2 dB at m = 1
     * @source Rec. ITU-R P.526-15, section 4.2 (from memory); below the line: ours
     */
    public static double lossDb(double aboveLineM, double d1Km, double d2Km, double radiusM, double wavelengthM) {
        if (!(radiusM >= 0) || !Double.isFinite(radiusM))
            throw new IllegalArgumentException("a radius of curvature is 0 m or more, not " + radiusM);
        double j = KnifeEdge.lossDb(KnifeEdge.nu(aboveLineM, d1Km, d2Km, wavelengthM));
        if (radiusM == 0 || j <= 0) return j;
        double m = m(d1Km, d2Km, radiusM, wavelengthM);
        double extra = curvatureDb(m, Math.max(0, n(aboveLineM, radiusM, wavelengthM)));
        return aboveLineM >= 0 ? j + extra : j + extra * j / KnifeEdge.lossDb(0);
    }

    static double m(double d1Km, double d2Km, double radiusM, double wavelengthM) {
        return radiusM * (d1Km + d2Km) / (1000 * d1Km * d2Km) / Math.cbrt(Math.PI * radiusM / wavelengthM);
    }

    static double n(double aboveLineM, double radiusM, double wavelengthM) {
        return aboveLineM * Math.pow(Math.PI * radiusM / wavelengthM, 2.0 / 3) / radiusM;
    }

    /** T(m, n) of the Recommendation, dB. */
    static double curvatureDb(double m, double n) {
        double common = 7.2 * Math.sqrt(m) + 3.6 * Math.pow(m, 1.5) - 0.8 * m * m;
        return m * n <= 4 ? common - (2 - 12.5 * n) * m : common - 6 - 20 * Math.log10(m * n) - (2 - 17 * n) * m;
    }
}
