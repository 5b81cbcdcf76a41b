package handreach.propagation;

import handreach.units.Frequency;
import handreach.units.Polarization;
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
            double[] dKm,
            double[] hM,
            double txTipM,
            double rxTipM,
            double earthKm,
            Frequency frequency,
            Ground ground,
            Polarization polarization) {
        SmoothSurface surface = SmoothSurface.of(dKm, hM, txTipM, rxTipM);
        double d = dKm[dKm.length - 1];
        double h1 = txTipM - surface.txM();
        double h2 = rxTipM - surface.rxM();
        return of(
                dKm,
                hM,
                txTipM,
                rxTipM,
                surface,
                earthKm,
                frequency.wavelengthM(),
                a -> SphericalEarth.firstTerm(d, h1, h2, frequency, a, ground, polarization)
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
        double h1 = txTipM - surface.txM();
        double h2 = rxTipM - surface.rxM();
        double profileDb = Bullington.lossDb(dKm, groundM, txTipM, rxTipM, earthKm, wavelengthM);
        double smoothDb = Bullington.lossDb(dKm, new double[dKm.length], h1, h2, earthKm, wavelengthM);
        double sphereDb = SphericalEarth.lossDb(dKm[dKm.length - 1], h1, h2, wavelengthM, earthKm, firstTermDb);
        return new DeltaBullington(profileDb, smoothDb, sphereDb, surface);
    }
}
