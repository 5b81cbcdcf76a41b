package handreach.propagation;

import handreach.terrain.Cover;
import handreach.units.Frequency;
import org.apache.commons.math3.distribution.NormalDistribution;

/** Both antennas at street level in town. The loss is complete: no clutter, ground or diffraction is added to it. */
final class StreetLevel {
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
}
