package handreach.propagation;

import handreach.profile.Profile;
import handreach.units.Frequency;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The path as rays see it: earth bulge, clearance, horizons, obstacles, and the angles at which the antennas look.
 *
 * <p>Rays are straight over an earth of effective radius. Angles are over the horizontal at each antenna, in degrees, positive
 * upward. The ends of the profile are the feet of the antennas and never obstacles.
 */
public final class PathGeometry {
    /** Share of the first Fresnel zone that counts as clear: common practice, Rec. ITU-R P.530 design rule. */
    public static final double FREE_SHARE = 0.6;

    private final double[] dKm;
    private final double[] surfaceM;
    private final double txTipM;
    private final double rxTipM;
    private final double earthKm;
    private final double wavelengthM;
    private final Angles angles;

    private PathGeometry(PathArrays path, double[] surfaceM, Atmosphere atmosphere, Frequency frequency) {
        this.dKm = path.dKm();
        this.surfaceM = surfaceM;
        this.txTipM = path.txTipM();
        this.rxTipM = path.rxTipM();
        this.earthKm = atmosphere.effectiveRadiusKm();
        this.wavelengthM = frequency.wavelengthM();
        this.angles = Angles.of(dKm, surfaceM, txTipM, rxTipM, earthKm);
    }

    /**
     * Where a path comes nearest to the ground, measured in Fresnel zones.
     *
     * @param sample index in the profile
     * @param distanceKm from the first terminal
     * @param clearanceM ray above ground, negative when the ground stands above the ray
     * @param fresnelRadiusM radius of the first Fresnel zone there
     */
    public record Clearance(int sample, double distanceKm, double clearanceM, double fresnelRadiusM) {
        /** Clearance as a multiple of the first Fresnel radius; 0.6 counts as unobstructed. */
        public double inFresnelRadii() {
            return clearanceM / fresnelRadiusM;
        }
    }

    /**
     * An edge under the stretched string.
     *
     * @param sample index in the profile
     * @param distanceKm from the first terminal
     * @param heightM ground there above sea level
     * @param aboveLineM above the straight line between the antennas, bulge included
     * @param nu diffraction parameter of this edge alone between the two antennas
     * @param lossDb J(ν) of this edge alone
     */
    public record Obstacle(
            int sample, double distanceKm, double heightM, double aboveLineM, double nu, double lossDb) {}

    /**
     * Geometry over the bare ground of a profile.
     *
     * @shape  n samples in; O(n), pure
     * @unit   as the types say
     * @valid  n from 2
     * @error  exact within the parabolic earth, below 1e-4 of the bulge up to 300 km
     * @source Rec. ITU-R P.526-15 section 2; Rec. ITU-R P.1812-6 Attachment 1 section 4
     */
    public static PathGeometry of(Profile profile, Terminals terminals, Atmosphere atmosphere, Frequency frequency) {
        PathArrays path = PathArrays.of(profile, terminals);
        return new PathGeometry(path, path.hM(), atmosphere, frequency);
    }

    /** The same over what stands on the ground between the ends, as the profile's clutter heights say. */
    public static PathGeometry overClutter(
            Profile profile, Terminals terminals, Atmosphere atmosphere, Frequency frequency) {
        PathArrays path = PathArrays.of(profile, terminals);
        double[] surface = profile.heightsM();
        for (int i = 1; i < surface.length - 1; i++) surface[i] += profile.clutterM(i);
        return new PathGeometry(path, surface, atmosphere, frequency);
    }

    /** True when no sample stands above the straight line between the antennas. */
    public boolean lineOfSight() {
        return angles.lineOfSight();
    }

    /** Angle at which the first antenna looks: at its horizon when obstructed, else at the other antenna. */
    public double departureDeg() {
        return angles.departureDeg();
    }

    /** Angle at which the last antenna looks: at its horizon when obstructed, else at the first antenna. */
    public double arrivalDeg() {
        return angles.arrivalDeg();
    }

    /** Height of the earth's bulge over the chord at a sample, m. */
    public double bulgeM(int sample) {
        return 500 * dKm[sample] * (lengthKm() - dKm[sample]) / earthKm;
    }

    /** Height of the straight line between the antennas over sea level at a sample, the earth drawn flat and bulged, m. */
    public double rayHeightM(int sample) {
        double d = lengthKm();
        return (txTipM * (d - dKm[sample]) + rxTipM * dKm[sample]) / d;
    }

    /** Ray above the raised ground at a sample, m; negative when blocked. */
    public double clearanceM(int sample) {
        return rayHeightM(sample) - surfaceM[sample] - bulgeM(sample);
    }

    /** Radius of the first Fresnel zone at a sample, m; 0 at the ends. */
    public double fresnelRadiusM(int sample) {
        return KnifeEdge.fresnelRadiusM(dKm[sample], lengthKm() - dKm[sample], wavelengthM);
    }

    /**
     * The inner sample with the least clearance in Fresnel radii; empty when the profile has no inner sample. What every face of an
     * answer calls the least clearance is this, of the geometry over bare ground.
     *
     * @shape  O(n), pure
     * @unit   as {@link Clearance}
     * @valid  n from 3
     * @error  exact at the samples; between them the ground is not seen
     * @source Rec. ITU-R P.526-15 section 2.2
     */
    public Optional<Clearance> worstClearance() {
        double least = Double.POSITIVE_INFINITY;
        Clearance worst = null;
        for (int i = 1; i < dKm.length - 1; i++) {
            double clearance = clearanceM(i);
            double radius = fresnelRadiusM(i);
            if (clearance / radius < least) {
                least = clearance / radius;
                worst = new Clearance(i, dKm[i], clearance, radius);
            }
        }
        return Optional.ofNullable(worst);
    }

    /**
     * The edges of the string stretched over the ground from antenna to antenna, in order; none in sight. On sampled ground a
     * rounded top counts once.
     *
     * @shape  at most n − 2 out; O(n × edges), pure
     * @unit   as {@link Obstacle}
     * @valid  every profile
     * @error  as the samples
     * @source upper hull, common practice, no source; the rule for rounded tops is ours
     */
    public List<Obstacle> obstacles() {
        if (lineOfSight()) return List.of();
        double[] y = surfaceM.clone();
        for (int i = 0; i < y.length; i++) y[i] += bulgeM(i);
        int last = y.length - 1;
        y[0] = txTipM;
        y[last] = rxTipM;
        int[] edges = EpsteinPeterson.edges(dKm, y, wavelengthM);
        List<Obstacle> obstacles = new ArrayList<>();
        for (int k = 1; k < edges.length - 1; k++) {
            int i = edges[k];
            double nu = EdgeSearch.nu(dKm, y, 0, i, last, wavelengthM);
            obstacles.add(new Obstacle(i, dKm[i], surfaceM[i], -clearanceM(i), nu, KnifeEdge.lossDb(nu)));
        }
        return obstacles;
    }

    /**
     * Angle over the horizontal of a ray.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   slope metres up for each metre along; result degrees, positive upwards
     * @valid  every slope
     * @error  rounding
     * @source arc tangent
     */
    public static double elevationDeg(double slope) {
        return Math.toDegrees(Math.atan(slope));
    }

    public double lengthKm() {
        return dKm[dKm.length - 1];
    }

    /**
     * Angles and horizons of one path.
     *
     * @param txHorizon sample with the steepest ray from the first antenna; −1 when there is no inner sample
     * @param rxHorizon the same from the last
     */
    record Angles(boolean lineOfSight, double departureDeg, double arrivalDeg, int txHorizon, int rxHorizon) {
        static Angles of(double[] dKm, double[] surfaceM, double txTipM, double rxTipM, double earthKm) {
            int n = dKm.length - 1;
            double d = dKm[n];
            double direct = slope(rxTipM - txTipM, d, earthKm);
            double steepTx = Double.NEGATIVE_INFINITY;
            double steepRx = Double.NEGATIVE_INFINITY;
            int tx = -1;
            int rx = -1;
            for (int i = 1; i < n; i++) {
                double fromTx = slope(surfaceM[i] - txTipM, dKm[i], earthKm);
                double fromRx = slope(surfaceM[i] - rxTipM, d - dKm[i], earthKm);
                if (fromTx > steepTx) {
                    steepTx = fromTx;
                    tx = i;
                }
                if (fromRx >= steepRx) {
                    steepRx = fromRx;
                    rx = i;
                }
            }
            boolean inSight = steepTx <= direct;
            double departure = inSight ? direct : steepTx;
            double arrival = inSight ? slope(txTipM - rxTipM, d, earthKm) : steepRx;
            return new Angles(inSight, elevationDeg(departure), elevationDeg(arrival), tx, rx);
        }

        /** Rise per run, both in m/km over 1000, of a ray that leaves over the horizontal of its antenna. */
        static double slope(double riseM, double runKm, double earthKm) {
            return riseM / (1000 * runKm) - runKm / (2 * earthKm);
        }
    }
}
