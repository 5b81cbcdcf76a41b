package handreach.propagation;

import handreach.profile.Profile;
import handreach.terrain.Cover;
import handreach.units.Frequency;
import handreach.units.Polarization;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What trees add to a path: with one end among them, and with a belt of them in the way.
 *
 * <p>Where a terminal stands in a wood the loss grows with the depth to a ceiling; the wave then leaves by the tree tops. The
 * average wood in leaf is meant: single woods differ by a factor of 2 in dB, and {@link Foliage} tells what the season moves. Do not use these terms together with clutter heights in the profile, and reduce the heights of tiles that already hold
 * the canopy first (room {@code profile}).
 */
public final class Woodland {
    private static final double POLARIZATIONS_MEET_MHZ = 1000;
    private static final double LOWEST_MHZ = 30;

    /** Horizontal polarisation, from the Recommendation's curve (from memory, ±40 %): frequency MHz, attenuation dB/m. */
    private static final double[][] HORIZONTAL = {
        {30, 0.005}, {100, 0.02}, {150, 0.03}, {450, 0.1}, {900, 0.18}, {1000, 0.2}
    };

    private Woodland() {}

    /** Woods whose ceiling A1 f^α was measured. */
    public enum Kind {
        /** Mixed forest, 12 to 16 m, antenna at 1.5 m, 106 to 2118 MHz. */
        MIXED_FOREST(1.37, 0.42),
        /** Forest of 15 m, antenna at 1.6 m, 900 to 2200 MHz; standard deviation 8.7 dB. */
        DENSE_STAND(1.15, 0.43),
        /** Trees of a tropical park, 15 m, antenna at 2.4 m, 900 to 1800 MHz. */
        TROPICAL_PARK(0.18, 0.752);

        private final double a1;
        private final double alpha;

        Kind(double a1, double alpha) {
            this.a1 = a1;
            this.alpha = alpha;
        }

        /**
         * Ceiling A_m = A1 f^α of the loss of one terminal, vertical polarisation.
         *
         * @shape  scalar in, scalar out; pure
         * @unit   result dB
         * @valid  as each kind says; {@link Woodland#warnings} tells when it is carried on
         * @error  standard deviation 5 to 9 dB between places
         * @source Rec. ITU-R P.833-9, section 2.1, equation (2) and its three parameter sets
         */
        public double ceilingDb(Frequency frequency) {
            return a1 * Math.pow(frequency.mhz(), alpha);
        }
    }

    /**
     * Attenuation of short paths through an average wood in leaf.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   result dB/m
     * @valid  30 MHz to 1 GHz; the vertical line runs on to 30 GHz; below 30 MHz the value at 30 MHz
     * @error  a factor of 2 between woods; the horizontal curve ±40 %
     * @source Rec. ITU-R P.833-9, Figure 2: vertical log-log line 0.02 (30 MHz) to 0.2 (1 GHz); horizontal from memory
     */
    public static double attenuationDbPerM(Frequency frequency, Polarization polarization) {
        double mhz = Math.max(LOWEST_MHZ, frequency.mhz());
        double vertical = 0.02 * Math.pow(mhz / LOWEST_MHZ, 0.6567);
        if (polarization == Polarization.VERTICAL || mhz >= POLARIZATIONS_MEET_MHZ) return vertical;
        int i = 1;
        while (HORIZONTAL[i][0] < mhz) i++;
        double share = Math.log(mhz / HORIZONTAL[i - 1][0]) / Math.log(HORIZONTAL[i][0] / HORIZONTAL[i - 1][0]);
        double horizontal = HORIZONTAL[i - 1][1] * Math.pow(HORIZONTAL[i][1] / HORIZONTAL[i - 1][1], share);
        return Math.min(vertical, horizontal);
    }

    /**
     * Ceiling of the loss of one terminal in a mixed forest; horizontal polarisation in proportion to its attenuation.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   result dB
     * @valid  106 MHz to 2.1 GHz vertical
     * @error  5 to 9 dB (standard deviation); horizontal: ours, in line with handbook figures to about 2 dB (from memory)
     * @source Rec. ITU-R P.833-9, section 2.1, mixed forest; horizontal ours
     */
    public static double ceilingDb(Frequency frequency, Polarization polarization) {
        double vertical = Kind.MIXED_FOREST.ceilingDb(frequency);
        return vertical
                * attenuationDbPerM(frequency, polarization)
                / attenuationDbPerM(frequency, Polarization.VERTICAL);
    }

    /**
     * Loss of one terminal among trees, A_m [1 − exp(−d γ / A_m)].
     *
     * @shape  scalars in, scalar out; pure
     * @unit   depth from the edge of the wood to the antenna along the path m, attenuation dB/m, ceiling dB; result dB
     * @valid  depth from 0
     * @error  exact within the formula
     * @source Rec. ITU-R P.833-9, section 2.1, equation (1)
     */
    public static double terminalDb(double depthM, double attenuationDbPerM, double ceilingDb) {
        if (!(depthM >= 0) || !(attenuationDbPerM >= 0) || !(ceilingDb > 0))
            throw new IllegalArgumentException(
                    "depth " + depthM + " m, attenuation " + attenuationDbPerM + " dB/m, ceiling " + ceilingDb + " dB");
        return -ceilingDb * Math.expm1(-depthM * attenuationDbPerM / ceilingDb);
    }

    /**
     * Unbroken run of woodland from an end of the profile; borders lie half-way between samples.
     *
     * @shape  n samples in, scalar out; O(n), pure
     * @unit   result m, 0 when the end stands outside woodland
     * @valid  every profile
     * @error  half a sample
     * @source cover of the profile
     */
    public static double runFromEndM(Profile profile, boolean fromFirst) {
        int last = profile.count() - 1;
        int run = 0;
        while (run <= last && profile.cover(fromFirst ? run : last - run) == Cover.WOODLAND) run++;
        if (run == 0) return 0;
        if (run > last) return profile.lengthKm() * 1000;
        int inside = fromFirst ? run - 1 : last - run + 1;
        int outside = fromFirst ? run : last - run;
        double edgeKm = (profile.distanceKm(inside) + profile.distanceKm(outside)) / 2;
        return 1000 * (fromFirst ? edgeKm : profile.lengthKm() - edgeKm);
    }

    /** One sentence for each way in which the woodland terms are carried past the document. */
    public static List<String> warnings(Frequency frequency, Polarization polarization) {
        List<String> warnings = new ArrayList<>();
        if (frequency.mhz() < 105.9 || frequency.mhz() > 2117.5)
            warnings.add(String.format(
                    Locale.ROOT,
                    "The ceiling of woodland loss was measured from 105.9 to 2117.5 MHz (Rec. ITU-R P.833-9); it is carried on to %.4g MHz.",
                    frequency.mhz()));
        if (isHorizontalFromMemory(frequency, polarization))
            warnings.add("Woodland loss of horizontal polarisation below 1 GHz is read from a curve, to about 40 %"
                    + " (Rec. ITU-R P.833-9); its ceiling is ours.");
        return warnings;
    }

    /** One sentence for each way in which the specific attenuation alone is carried past the document. */
    public static List<String> attenuationWarnings(Frequency frequency, Polarization polarization) {
        List<String> warnings = new ArrayList<>();
        if (frequency.mhz() < LOWEST_MHZ)
            warnings.add(String.format(
                    Locale.ROOT,
                    "What a metre of wood takes is known from 30 MHz on (Rec. ITU-R P.833-9); the value there stands for %.4g MHz.",
                    frequency.mhz()));
        if (isHorizontalFromMemory(frequency, polarization))
            warnings.add(
                    "What a metre of wood takes of horizontal polarisation below 1 GHz is read from a curve, to about 40 %"
                            + " (Rec. ITU-R P.833-9).");
        return warnings;
    }

    private static boolean isHorizontalFromMemory(Frequency frequency, Polarization polarization) {
        return polarization == Polarization.HORIZONTAL && frequency.mhz() < POLARIZATIONS_MEET_MHZ;
    }
}
