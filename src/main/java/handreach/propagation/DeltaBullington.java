package handreach.propagation;

import java.util.function.DoubleUnaryOperator;

/**
 * Diffraction of the general path: the Bullington edge, and what the smooth earth under it adds.
 *
 * @param profileDb L_bulla, Bullington loss of the real profile
 * @param smoothDb L_bulls, Bullington loss of the smooth surface
 * @param sphereDb L_dsph, spherical-earth loss over the smooth surface
 * @param surface the smooth surface
 */
public record DeltaBullington(double profileDb, double smoothDb, double sphereDb, SmoothSurface surface) {
    /** Diffraction loss over free space, dB. */
    public double lossDb() {
        return profileDb + Math.max(sphereDb - smoothDb, 0);
    }

    /**
     * Over bare ground of one kind, Rec. ITU-R P.526-15 section 4.5.2.
     *
     * @param txTipM height of the first antenna above sea level, m
     * @param rxTipM height of the last antenna above sea level, m
     */
    public static DeltaBullington of(
            double[] dKm, double[] hM, double txTipM, double rxTipM, double earthKm, PathConditions conditions) {
        int last = dKm.length - 1;
        double nu = Bullington.nu(
                dKm, hM, txTipM, rxTipM, earthKm, conditions.frequency().wavelengthM());
        SmoothSurface surface = SmoothSurface.of(dKm, hM, txTipM, rxTipM);
        return of(nu, surface, txTipM, rxTipM, dKm, last - 1, dKm[last], earthKm, conditions);
    }

    /**
     * The same of a path whose ν and smooth surface are known, at the end of a radial or of a profile.
     *
     * @param nu of the real profile, as {@link Bullington} has it
     * @param last index of the last sample between the antennas
     * @param d distance of the far antenna, km
     */
    public static DeltaBullington of(
            double nu,
            SmoothSurface surface,
            double txTipM,
            double rxTipM,
            double[] dKm,
            int last,
            double d,
            double earthKm,
            PathConditions conditions) {
        double h1 = txTipM - surface.txM();
        double h2 = rxTipM - surface.rxM();
        return of(
                nu,
                surface,
                h1,
                h2,
                dKm,
                last,
                d,
                earthKm,
                conditions.frequency().wavelengthM(),
                a -> SphericalEarth.firstTerm(
                                d, h1, h2, conditions.frequency(), a, conditions.ground(), conditions.polarization())
                        .lossDb());
    }

    /** Over a profile that may carry clutter and a surface found before; the first-term loss as a function of the earth radius. */
    public static DeltaBullington of(
            double[] dKm,
            double[] groundM,
            double txTipM,
            double rxTipM,
            SmoothSurface surface,
            double earthKm,
            double wavelengthM,
            DoubleUnaryOperator firstTermDb) {
        int last = dKm.length - 1;
        double nu = Bullington.nu(dKm, groundM, txTipM, rxTipM, earthKm, wavelengthM);
        double h1 = txTipM - surface.txM();
        double h2 = rxTipM - surface.rxM();
        return of(nu, surface, h1, h2, dKm, last - 1, dKm[last], earthKm, wavelengthM, firstTermDb);
    }

    private static DeltaBullington of(
            double nu,
            SmoothSurface surface,
            double h1,
            double h2,
            double[] dKm,
            int last,
            double d,
            double earthKm,
            double wavelengthM,
            DoubleUnaryOperator firstTermDb) {
        double levelNu = Bullington.levelNu(dKm, last, d, h1, h2, earthKm, wavelengthM);
        return new DeltaBullington(
                Bullington.lossDb(nu, d),
                Bullington.lossDb(levelNu, d),
                SphericalEarth.lossDb(d, h1, h2, wavelengthM, earthKm, firstTermDb),
                surface);
    }
}
