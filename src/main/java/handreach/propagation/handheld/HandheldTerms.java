package handreach.propagation.handheld;

import handreach.propagation.KnifeEdge;
import handreach.propagation.PathConditions;
import handreach.propagation.SmoothGround;
import handreach.propagation.Terminals;

/**
 * What the {@code handheld} model needs under one set of conditions, worked out once; then each path costs one call.
 *
 * <p>Immutable, any thread; the {@link StretchedString} handed in is the scratch of one thread. A whole radial over bare ground:
 *
 * <pre>{@code
 * string.start(terms.effectiveRadiusM(), groundM[0], nearHeightM);
 * for (int i = 1; i < n; i++) {
 *     string.add(distanceM[i], groundM[i]);
 *     excessDb[i] = terms.excessDb(string, terms.near(), terms.far());      // what the model says of the path cut at i
 * }
 * }</pre>
 *
 * <p>With woods and town at the ends use {@link HandheldWalk}. The formula, its constants and its errors stand in
 * {@code docs/handheld-model.md}. In short, with θ the bends of the string stretched between the antennas, x their places on the
 * path of length d, Θ = Σθ, and every measure O(1) from running sums:
 *
 * <ul>
 *   <li>edges: E = J(ν) + 7 min(1, J(ν)/J(0)) + 17 log(1 + 10 s/λ), J the knife-edge loss; ν² = 2ΘM/λ with the lift
 *       M = Σ θ x(d − x)/d (of one edge: its own ν; in sight: of the nearest clearance), s = Θ S/M with the split
 *       S = Σ θθ′ abc/d over the pairs of bends and their three spans;
 *   <li>rough ground: G = −6.9 + 8.5 ρ/(ρ + 5) + 5.5 log[(1/y₁² + 1)(1/y₂² + 1)] − 3.3 [S(z₁) + S(z₂)], ρ = r/√λ,
 *       y = 2k|h + 1/(jkδ)| α, where α is the mean angle under which an antenna sees the ground below the string, weighted by
 *       (1 − x/d)³; S(z) = z/√(1 + z²) says how clearly the ground falls away under the string 120 m from the antenna,
 *       z = 7.8 (c − 0.64 − 0.2 log|h + 1/(jkδ)|), c = g/(g + ¼√(120 λ)) of the gap g there;
 *   <li>smooth ground: the exact field over the smooth earth less the edges of its bulge;
 *   <li>excess = E + q G + (1 − q)(smooth ground), q = t²(3 − 2t), t = min(1, r/(2.5 √λ)), r the roughness of the profile.
 * </ul>
 */
final class HandheldTerms {
    /** No excess is below this: one reflection in phase doubles the field. */
    private static final double LEAST_EXCESS_DB = -20 * Math.log10(2);

    /** Knife edge loss at grazing. */
    private static final double GRAZING_DB = KnifeEdge.lossDb(0);

    private static final double GRAZING_EXTRA_DB = 7;
    private static final double SPLIT_FACTOR = 17;
    private static final double SPLIT_SCALE = 10;
    private static final double GROUND_FACTOR = 5.5;
    private static final double GROUND_CEILING = 1;
    private static final double GROUND_DB = -6.9;
    private static final double RUGGED_DB = 8.5;
    private static final double RUGGED_HALF_AT = 5;
    private static final double ROUGH_FROM = 2.5;
    /** So far from an antenna the ground around it is looked at, m. */
    static final double LOCAL_M = 120;

    private static final double LOCAL_FRESNEL = 0.25;
    private static final double LOCAL_DB = 3.3;
    private static final double LOCAL_STEEP = 7.8;
    private static final double LOCAL_TURN = 0.64;
    private static final double LOCAL_TURN_BY_HEIGHT = 0.2;

    private final SmoothGround smooth;
    private final Terminals terminals;
    private final double effectiveRadiusM;
    private final double wavelengthM;
    private final double waveNumber;
    private final double rootWavelength;
    private final double localFresnelM;
    private final End near;
    private final End far;

    /**
     * What one antenna alone decides.
     *
     * @param heightM over the ground
     * @param countedM height that counts for the wave along the ground, less than its own among houses and trees
     * @param phase 2k|h + 1/(jkδ)|, of which the angle makes y
     * @param turnsAt share of clearance at which the ground around it stops being a mirror
     */
    record End(double heightM, double countedM, double phase, double turnsAt) {
        /** So much of the way to how it counts elsewhere. */
        End toward(End other, double share) {
            return new End(
                    heightM,
                    countedM + share * (other.countedM - countedM),
                    phase + share * (other.phase - phase),
                    turnsAt + share * (other.turnsAt - turnsAt));
        }
    }

    private HandheldTerms(PathConditions conditions, Terminals terminals) {
        this.terminals = terminals;
        effectiveRadiusM = 1000 * conditions.atmosphere().effectiveRadiusKm();
        wavelengthM = conditions.frequency().wavelengthM();
        waveNumber = conditions.frequency().waveNumber();
        rootWavelength = Math.sqrt(wavelengthM);
        localFresnelM = fresnelM(LOCAL_M);
        smooth = new SmoothGround(
                conditions.frequency(), conditions.polarization(), conditions.ground(), effectiveRadiusM);
        near = end(terminals.txHeightM(), terminals.txHeightM());
        far = end(terminals.rxHeightM(), terminals.rxHeightM());
    }

    /** An end at a height above ground that counts for the wave along the ground as another does. */
    End end(double heightM, double countedM) {
        double waveHeightM = smooth.waveHeightM(countedM);
        return new End(
                heightM,
                countedM,
                2 * waveNumber * waveHeightM,
                LOCAL_TURN + LOCAL_TURN_BY_HEIGHT * Math.log10(waveHeightM));
    }

    /** The near antenna in the open. */
    End near() {
        return near;
    }

    /** The far antenna in the open. */
    End far() {
        return far;
    }

    public static HandheldTerms of(PathConditions conditions, Terminals terminals) {
        return new HandheldTerms(conditions, terminals);
    }

    public Terminals terminals() {
        return terminals;
    }

    public double effectiveRadiusM() {
        return effectiveRadiusM;
    }

    /**
     * The same for the path that ends at the last sample walked by the string, which was started at the height of the first end.
     *
     * @shape  one string in, scalar out; O(log n) beyond the horizon, O(n) in sight; nothing allocated
     * @unit   dB over free space, negative where the ground helps
     * @valid  at least two samples walked
     * @error  see {@link Handheld}
     * @source ours, see {@link Handheld}
     */
    double excessDb(StretchedString string, End first, End last) {
        string.stretchTo(last.heightM());
        double edges = edgesDb(string);
        return Math.max(LEAST_EXCESS_DB, edges + groundDb(string, first, last));
    }

    /** What the bends of a stretched string cost. */
    double edgesDb(StretchedString string) {
        return edgesDb(nu(string), string.splitM());
    }

    /** Diffraction parameter: of all bends together, in sight of the nearest clearance. */
    double nu(StretchedString string) {
        if (string.inSight()) return string.clearanceNu(wavelengthM, KnifeEdge.CLEAR_NU);
        return Math.sqrt(2 * string.totalBend() * string.liftM() / wavelengthM);
    }

    private double edgesDb(double nu, double splitM) {
        double single = KnifeEdge.lossDb(nu);
        return single
                + GRAZING_EXTRA_DB * Math.min(1, single / GRAZING_DB)
                + SPLIT_FACTOR * Math.log10(1 + SPLIT_SCALE * splitM / wavelengthM);
    }

    /** Share of the rough-ground law, 0 on a straight slope, 1 on ground rough for the wavelength. */
    double roughShare(StretchedString string) {
        return roughShare(roughness(string));
    }

    /** Roughness in the measure of the wave, r/√λ, √m. */
    private double roughness(StretchedString string) {
        return string.roughnessM() / rootWavelength;
    }

    private static double roughShare(double roughness) {
        double t = Math.min(1, roughness / ROUGH_FROM);
        return t * t * (3 - 2 * t);
    }

    /** What the ground adds to the edges. */
    private double groundDb(StretchedString string, End first, End last) {
        double roughness = roughness(string);
        double rough = roughShare(roughness);
        double ground = rough > 0 ? rough * roughGroundDb(string, roughness, first, last) : 0;
        if (!(rough < 1)) return ground;
        return ground + (1 - rough) * smoothGroundDb(string.lengthM(), first, last);
    }

    private double roughGroundDb(StretchedString string, double roughness, End first, End last) {
        double scale = 20 / string.lengthM();
        double mirrors = (reflection(first, scale * string.nearClearanceM()) + GROUND_CEILING)
                * (reflection(last, scale * string.farClearanceM()) + GROUND_CEILING);
        double fresnelM = string.lengthM() < LOCAL_M ? fresnelM(string.lengthM()) : localFresnelM;
        return GROUND_DB
                + RUGGED_DB * roughness / (roughness + RUGGED_HALF_AT)
                + GROUND_FACTOR * Math.log10(mirrors)
                - LOCAL_DB
                        * (fallsAway(first, string.gapFromNearM(LOCAL_M), fresnelM)
                                + fallsAway(last, string.gapFromFarM(LOCAL_M), fresnelM));
    }

    private double fresnelM(double distanceM) {
        return LOCAL_FRESNEL * Math.sqrt(wavelengthM * distanceM);
    }

    /** 1/y² of one end: twice the phase of its wave height under the mean angle to the ground below the string. */
    private static double reflection(End end, double angle) {
        double y = end.phase() * Math.max(angle, 1e-9);
        return 1 / (y * y);
    }

    /** How clearly the ground around an end falls away under the string: from −1, where it hugs the string, to 1. */
    private static double fallsAway(End end, double gapM, double fresnelM) {
        double over = LOCAL_STEEP * (gapM / (gapM + fresnelM) - end.turnsAt());
        return over / Math.sqrt(1 + over * over);
    }

    /** The bulge is that under the antennas as they stand, which the edges of the string hold as well. */
    double smoothGroundDb(double d, End first, End last) {
        double bulge = edgesDb(
                smooth.nu(d, first.heightM(), last.heightM()), smooth.splitM(d, first.heightM(), last.heightM()));
        return smooth.lossDb(d, first.countedM(), last.countedM()) - bulge;
    }
}
