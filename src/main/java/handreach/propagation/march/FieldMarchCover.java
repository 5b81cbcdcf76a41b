package handreach.propagation.march;

import handreach.profile.Profile;
import handreach.propagation.EndCover;
import handreach.propagation.PathConditions;
import handreach.propagation.Standing;
import handreach.terrain.Cover;
import java.util.Arrays;

/**
 * What stands along a radial, as the field march goes through and over it. Woods are an absorbing layer as high as the trees. Towns raise the
 * ground to their roofs, from their rim on by a metre for every three; whoever is below the roofs is reckoned from the roofs. Immutable.
 *
 * <p>Borders of woods lie half-way between samples.
 */
final class FieldMarchCover {
    /** The roofs of a town rise from its rim by so much for each metre (ours: 18°, which the march is checked for). */
    private static final double RAMP = 1.0 / 3;
    /**
     * Behind many rows of roofs b apart the field of a wave that falls in at a small angle α is 2.35 α √(b/λ) of its own (Walfisch and
     * Bertoni, IEEE Trans. Antennas Propag. 36 (1988) 1788, whose exponent of 0.9 is taken as 1; from memory). Over a level mirror of the
     * other sign it is 2kαh at a height h: the same at h = 0.187 √(bλ).
     */
    private static final double SETTLED = 2.35 / (4 * Math.PI);
    /** Rows of houses, m: middle of the 20 to 50 m of Rec. ITU-R P.1411 (from memory). */
    private static final double ROWS_M = 35;
    /**
     * Of air and trees together: the average wood of Tamir, IEEE Trans. Antennas Propag. 15 (1967) 806 (from memory; 1.03 thin, 1.3 dense).
     * With it a low end in a wood of 14 m comes near the ceiling of Rec. ITU-R P.833-9 at VHF; without, UHF would lose twice that. What
     * other values do: docs/full-wave.md.
     */
    private static final double PERMITTIVITY = 1.1;
    /** The last sample stands for what lies beyond it. */
    private static final double BEYOND_M = 1000;

    /** Bare ground: nothing stands anywhere. */
    static final FieldMarchCover NONE = new FieldMarchCover();

    private final boolean hasRoofs;
    private final double[] xM;
    private final double[] raisedM;
    private final double overRoofsM;
    private final double nepersPerM;
    private final double radiansPerM;
    /** Borders of the samples, and up to each of them the wood along the way, m, and its height summed over that, m². */
    private final double[] borderM;

    private final double[] woodM;
    private final double[] woodM2;

    private FieldMarchCover() {
        this.hasRoofs = false;
        this.xM = new double[0];
        this.raisedM = xM;
        this.overRoofsM = 0;
        this.nepersPerM = 0;
        this.radiansPerM = 0;
        this.borderM = xM;
        this.woodM = xM;
        this.woodM2 = xM;
    }

    private FieldMarchCover(
            Profile profile, double[] raisedM, double overRoofsM, double nepersPerM, double radiansPerM) {
        int n = profile.count();
        this.raisedM = raisedM;
        this.hasRoofs = Arrays.stream(raisedM).anyMatch(m -> m > 0);
        this.overRoofsM = overRoofsM;
        this.nepersPerM = nepersPerM;
        this.radiansPerM = radiansPerM;
        this.xM = profile.distancesKm();
        for (int i = 0; i < n; i++) xM[i] *= 1000;
        this.borderM = new double[n + 1];
        this.woodM = new double[n + 1];
        this.woodM2 = new double[n + 1];
        for (int i = 0; i < n; i++) {
            borderM[i + 1] = i < n - 1 ? 0.5 * (xM[i] + xM[i + 1]) : xM[i] + BEYOND_M;
            double lengthM = profile.cover(i) == Cover.WOODLAND ? borderM[i + 1] - borderM[i] : 0;
            woodM[i + 1] = woodM[i] + lengthM;
            woodM2[i + 1] = woodM2[i] + (lengthM > 0 ? lengthM * EndCover.topsOverM(0, profile.clutterM(i)) : 0);
        }
    }

    /** What the profile says stands along it, where the conditions ask for it on the way; else nothing. */
    static FieldMarchCover of(Profile profile, PathConditions conditions) {
        if (conditions.standing() != Standing.ON_THE_WAY) return NONE;
        int n = profile.count();
        double[] raisedM = new double[n];
        for (int i = 0; i < n; i++) raisedM[i] = EndCover.raisedM(0, profile.cover(i), profile.clutterM(i));
        for (int i = 1; i < n; i++) raisedM[i] = Math.min(raisedM[i], raisedM[i - 1] + ramp(profile, i));
        for (int i = n - 1; i > 0; i--) raisedM[i - 1] = Math.min(raisedM[i - 1], raisedM[i] + ramp(profile, i));
        double overRoofsM = SETTLED * Math.sqrt(ROWS_M * conditions.frequency().wavelengthM());
        double nepersPerM = new EndCover(conditions).woodDbPerM() * Math.log(10) / 20;
        double radiansPerM =
                (Math.sqrt(PERMITTIVITY) - 1) * conditions.frequency().waveNumber();
        return new FieldMarchCover(profile, raisedM, overRoofsM, nepersPerM, radiansPerM);
    }

    private static double ramp(Profile profile, int sample) {
        return RAMP * 1000 * (profile.distanceKm(sample) - profile.distanceKm(sample - 1));
    }

    /** The ground that the march goes over: with the roofs of towns. */
    Profile raised(Profile profile) {
        return hasRoofs ? profile.raised(raisedM) : profile;
    }

    /** Height over that ground of an antenna so high over the bare one, at a sample. */
    double overGroundM(int sample, double antennaM) {
        return hasRoofs ? over(raisedM[sample], antennaM) : antennaM;
    }

    /** The same at any distance. */
    double overGroundAtM(double atM, double antennaM) {
        if (!hasRoofs) return antennaM;
        int at = Arrays.binarySearch(xM, atM);
        if (at >= 0) return over(raisedM[at], antennaM);
        int right = Math.min(xM.length - 1, Math.max(1, -at - 1));
        double share = Math.max(0, Math.min(1, (atM - xM[right - 1]) / (xM[right] - xM[right - 1])));
        return over(raisedM[right - 1] + share * (raisedM[right] - raisedM[right - 1]), antennaM);
    }

    /** Where the roofs settle the field, it is that so much over their mean plane. */
    private double over(double raised, double antennaM) {
        if (!(raised > 0)) return antennaM;
        return Math.max(antennaM - raised, Math.min(antennaM, overRoofsM));
    }

    /** The wood on a facet. */
    FieldMarchLayer layer(FieldMarchGround ground, int facet) {
        return layer(ground.startM(facet), ground.startM(facet + 1), ground.slopeRad(facet));
    }

    /** The wood between two distances, evened out over all of the way, over ground of this slope. */
    FieldMarchLayer layer(double fromM, double toM, double slopeRad) {
        if (woodM.length == 0) return FieldMarchLayer.NONE;
        double wood = upTo(woodM, toM) - upTo(woodM, fromM);
        if (!(wood > 1e-9)) return FieldMarchLayer.NONE;
        double treesM = (upTo(woodM2, toM) - upTo(woodM2, fromM)) / wood;
        double share = wood / (toM - fromM);
        return new FieldMarchLayer(treesM * Math.cos(slopeRad), share * nepersPerM, share * radiansPerM);
    }

    private double upTo(double[] sum, double atM) {
        int at = Arrays.binarySearch(borderM, atM);
        if (at >= 0) return sum[at];
        int right = Math.min(borderM.length - 1, Math.max(1, -at - 1));
        double share = (atM - borderM[right - 1]) / (borderM[right] - borderM[right - 1]);
        return sum[right - 1] + Math.min(1, share) * (sum[right] - sum[right - 1]);
    }
}
