package handreach.propagation;

import handreach.terrain.Cover;
import handreach.units.Frequency;
import org.apache.commons.math3.distribution.NormalDistribution;

/** Both antennas at street level in town. The loss is complete: no clutter, ground or diffraction is added to it. */
public final class StreetLevel {
    private static final NormalDistribution STANDARD = new NormalDistribution(null, 0, 1);
    private static final double SIGMA_DB = 7;
    private static final double TRANSITION_M = 20;

    private StreetLevel() {}

    /**
     * Basic transmission loss not exceeded at p % of the places, street to street.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   distance m, share of places %; result dB
     * @valid  300 to 3000 MHz, antennas 1.9 to 3 m, to 3 km; nothing in the document holds below 300 MHz
     * @error  0.1 dB against the document's own table; places differ by 7 dB (standard deviation)
     * @source Rec. ITU-R P.1411-11, section 4.3.1
     */
    public static double lossDb(Frequency frequency, double distanceM, Cover town, double locationPercent) {
        if (!(distanceM > 0) || !(locationPercent > 0 && locationPercent < 100))
            throw new IllegalArgumentException("distance " + distanceM + " m, " + locationPercent + " % of places");
        double sight = sightRangeM(locationPercent);
        if (distanceM < sight) return inSight(frequency, distanceM, locationPercent);
        if (distanceM > sight + TRANSITION_M) return behindCorners(frequency, distanceM, town, locationPercent);
        double near = inSight(frequency, sight, locationPercent);
        double far = behindCorners(frequency, sight + TRANSITION_M, town, locationPercent);
        return near + (far - near) * (distanceM - sight) / TRANSITION_M;
    }

    /** Distance to which p % of the places are in sight, m. */
    static double sightRangeM(double locationPercent) {
        double share = locationPercent / 100;
        double log = Math.log10(share);
        return locationPercent < 45 ? 212 * log * log - 64 * log : 79.2 - 70 * share;
    }

    /** Spread term of places in sight, dB. */
    static double sightSpreadDb(double locationPercent) {
        return 1.5624 * SIGMA_DB * (Math.sqrt(-2 * Math.log(1 - locationPercent / 100)) - 1.1774);
    }

    /** Spread term of places out of sight, dB. */
    static double cornerSpreadDb(double locationPercent) {
        return SIGMA_DB * STANDARD.inverseCumulativeProbability(locationPercent / 100);
    }

    private static double inSight(Frequency frequency, double distanceM, double locationPercent) {
        return 32.45
                + 20 * Math.log10(frequency.mhz())
                + 20 * Math.log10(distanceM / 1000)
                + sightSpreadDb(locationPercent);
    }

    private static double behindCorners(Frequency frequency, double distanceM, Cover town, double locationPercent) {
        return 9.5
                + 45 * Math.log10(frequency.mhz())
                + 40 * Math.log10(distanceM / 1000)
                + townDb(town)
                + cornerSpreadDb(locationPercent);
    }

    private static double townDb(Cover town) {
        return switch (town) {
            case URBAN -> 6.8;
            case DENSE_URBAN -> 2.3;
            case SUBURBAN, OPEN, WATER, WOODLAND -> 0;
        };
    }

    /**
     * Median loss along one street in sight, two slopes that meet where the ground reflection takes over.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   distance m, antenna heights above the road m; result dB
     * @valid  300 MHz to 3 GHz
     * @error  standard deviation about 7 dB
     * @source Rec. ITU-R P.1411-11, section 4.1.2, UHF (from memory)
     */
    public static double canyonDb(Frequency frequency, double distanceM, double h1M, double h2M) {
        if (!(distanceM > 0) || !(h1M > 0) || !(h2M > 0))
            throw new IllegalArgumentException("distance " + distanceM + " m, heights " + h1M + ", " + h2M + " m");
        double wavelengthM = frequency.wavelengthM();
        double breakM = 4 * h1M * h2M / wavelengthM;
        double breakDb = Math.abs(20 * Math.log10(wavelengthM * wavelengthM / (8 * Math.PI * h1M * h2M)));
        double slope = distanceM <= breakM ? 20 : 40;
        return breakDb + 6 + slope * Math.log10(distanceM / breakM);
    }

    /**
     * Median loss in a street canyon, one slope.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   distance m; result dB
     * @valid  0.8 to 73 GHz, 5 to 660 m in sight (30 to 715 m out of sight among high buildings)
     * @error  standard deviation 5.1 dB in sight, 7.6 dB out of sight
     * @source Rec. ITU-R P.1411-11, section 4.1.1, Table 4
     */
    public static double siteGeneralDb(Frequency frequency, double distanceM, boolean inSight) {
        if (!(distanceM > 0)) throw new IllegalArgumentException("distance " + distanceM + " m");
        double logD = Math.log10(distanceM);
        double logF = Math.log10(frequency.ghz());
        return inSight ? 21.2 * logD + 29.2 + 21.1 * logF : 40.0 * logD + 10.2 + 23.6 * logF;
    }
}
