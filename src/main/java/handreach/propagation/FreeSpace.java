package handreach.propagation;

import handreach.profile.Profile;
import handreach.units.Frequency;

/** Propagation with nothing in the way. */
public final class FreeSpace {
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
     * Loss over one kilometre: what {@link #slantDb} begins with.
     *
     * @shape  frequency in, scalar out; pure
     * @unit   dB
     * @valid  every frequency
     * @error  as {@link #lossDb}
     * @source as {@link #lossDb}
     */
    public static double atOneKmDb(Frequency frequency) {
        return lossDb(frequency, 1);
    }

    /**
     * The loss along the slant between two antennas from that over one kilometre, for many of them: one logarithm and no root.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   distance over ground km, difference of height m; dB
     * @valid  distance above 0
     * @error  rounding against {@link #lossDb}
     * @source as {@link #lossDb}
     */
    public static double slantDb(double atOneKmDb, double groundKm, double riseM) {
        double riseKm = riseM / 1000;
        return atOneKmDb + 10 * Math.log10(groundKm * groundKm + riseKm * riseKm);
    }

    /** Length of the straight line between the two antennas of a path, km: ground distance and difference of height. */
    static double slantKm(Profile profile, Terminals terminals) {
        int last = profile.count() - 1;
        double riseM = profile.heightM(last) + terminals.rxHeightM() - profile.heightM(0) - terminals.txHeightM();
        return Math.hypot(profile.lengthKm(), riseM / 1000);
    }
}
