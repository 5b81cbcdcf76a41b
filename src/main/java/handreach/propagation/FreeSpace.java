package handreach.propagation;

import handreach.profile.Profile;
import handreach.units.Frequency;

/** Propagation with nothing in the way. */
public final class FreeSpace {
    /** Wave impedance of vacuum over 4π, Ω: 30 in the texts. */
    private static final double THIRTY = 29.9792458;

    private FreeSpace() {}

    /**
     * Free-space basic transmission loss, 20 log(4πd/λ).
     *
     * @shape  scalars in, scalar out; pure
     * @unit   distance km along the straight line between the antennas; result dB, positive weakens
     * @valid  distance above about two wavelengths; at 0 or below: IllegalArgumentException
     * @error  exact; the text rounds the constant 32.448 to 32.4
     * @source Rec. ITU-R P.525-4, equation (4)
     */
    public static double lossDb(Frequency frequency, double distanceKm) {
        if (!(distanceKm > 0) || !Double.isFinite(distanceKm))
            throw new IllegalArgumentException("a distance must be above 0 km, not " + distanceKm);
        return 20 * Math.log10(4 * Math.PI * distanceKm * 1000 / frequency.wavelengthM());
    }

    /**
     * Field strength at a distance from a transmitter of given radiated power.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   power W over isotropic (EIRP), distance km; result dB over 1 µV/m
     * @valid  far field
     * @error  exact; the text rounds the constant 29.979 to 30, 0.003 dB
     * @source Rec. ITU-R P.525-4, equation (1)
     */
    public static double fieldDbuvPerM(double eirpW, double distanceKm) {
        if (!(eirpW > 0) || !(distanceKm > 0))
            throw new IllegalArgumentException("power and distance must be above 0: " + eirpW + " W, " + distanceKm);
        return 20 * Math.log10(Math.sqrt(THIRTY * eirpW) / (distanceKm * 1000) * 1e6);
    }

    /**
     * Power that a matched isotropic antenna takes from a field.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   field dB over 1 µV/m; result dBm
     * @valid  far field, matched load, matched polarisation
     * @error  exact; the text rounds 167.22 to 167.2
     * @source Rec. ITU-R P.525-4, equation (8)
     */
    public static double isotropicPowerDbm(Frequency frequency, double fieldDbuvPerM) {
        double fieldVPerM = Math.pow(10, fieldDbuvPerM / 20) * 1e-6;
        double fluxWPerM2 = fieldVPerM * fieldVPerM / (4 * Math.PI * THIRTY);
        double apertureM2 = frequency.wavelengthM() * frequency.wavelengthM() / (4 * Math.PI);
        return 10 * Math.log10(fluxWPerM2 * apertureM2) + 30;
    }

    /** Length of the straight line between the two antennas of a path, km: ground distance and difference of height. */
    public static double slantKm(Profile profile, Terminals terminals) {
        int last = profile.count() - 1;
        double riseM = profile.heightM(last) + terminals.rxHeightM() - profile.heightM(0) - terminals.txHeightM();
        return Math.hypot(profile.lengthKm(), riseM / 1000);
    }
}
