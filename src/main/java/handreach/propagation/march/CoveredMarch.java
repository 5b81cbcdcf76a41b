package handreach.propagation.march;

import handreach.profile.Profile;
import handreach.propagation.EndCover;
import handreach.propagation.Foliage;
import handreach.propagation.LossBuilder;
import handreach.propagation.PathConditions;
import handreach.propagation.Standing;
import handreach.propagation.TerminalClutter;
import handreach.propagation.Woodland;
import handreach.terrain.Cover;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.DoublePredicate;

/**
 * The field marched along a radial with what stands on it, in one of two ways ({@link Standing}). One such radial for each height of the
 * far antenna. Immutable.
 *
 * <p>At the ends: the terms of {@link EndCover}, as the {@code handheld} model has them, beside a march over bare ground. Where the near end
 * stands in town the field is marched twice, from the antenna and from the roofs; a far end in town is only read higher. What stands
 * between the ends adds nothing.
 *
 * <p>On the way: one march through woods and over roofs ({@link FieldMarchCover}); of the terms only that from the roofs down is left.
 */
public final class CoveredMarch {
    /** Beyond this excess other ways through the air and round the hill decide. */
    public static final double LOST_DB = 65;

    private final EndCover ends;
    private final PathConditions conditions;
    private final Near near;
    private final double rxHeightM;
    private final FullWaveRadial bare;
    private final double[] raisedM;
    private final List<FullWaveRadial> overRoofs;
    private final int firstStanding;
    private final int firstWood;

    /** The near end: the antenna, what stands around it and how high, and the height of the roofs it is reckoned from. */
    private record Near(double heightM, Cover cover, double standingM, double raisedM) {
        static Near of(Profile profile, double heightM) {
            Cover cover = profile.cover(0);
            double standingM = profile.clutterM(0);
            return new Near(heightM, cover, standingM, EndCover.raisedM(heightM, cover, standingM));
        }

        boolean isBelowRoofs() {
            return raisedM > heightM;
        }
    }

    private CoveredMarch(
            Near near,
            double rxHeightM,
            FullWaveRadial bare,
            double[] raisedM,
            List<FullWaveRadial> overRoofs,
            int[] first,
            PathConditions conditions) {
        this.ends = new EndCover(conditions);
        this.conditions = conditions;
        this.near = near;
        this.rxHeightM = rxHeightM;
        this.bare = bare;
        this.raisedM = raisedM;
        this.overRoofs = overRoofs;
        this.firstStanding = first[0];
        this.firstWood = first[1];
    }

    /**
     * Marches a radial for several heights of the far antenna.
     *
     * @shape  one result for each height, in their order; one march, two where the near end is in town; {@code goOn} as
     *     {@link FieldMarch#along(Profile, double, double, PathConditions, DoublePredicate)}
     * @unit   heights m above ground; the roofs are those that far ends of this radial may stand among
     * @valid  the first sample of the profile says what stands around the near end; else as {@link FieldMarch}
     * @error  the march as {@link FieldMarch}; on the way halving every step moves it by tenths of a decibel (docs/full-wave.md); a reading at roof height makes the grid taller and moves the others by hundredths of a
     *     decibel
     * @source as {@link FieldMarch}; Rec. ITU-R P.833-9 section 2.1; Rec. ITU-R P.2108-1 section 3.1
     */
    public static List<CoveredMarch> along(
            Profile profile,
            double txHeightM,
            double[] rxHeightsM,
            double[] roofsM,
            PathConditions conditions,
            DoublePredicate goOn) {
        Near near = Near.of(profile, txHeightM);
        double[] heights = heights(rxHeightsM, roofsM);
        if (conditions.standing() == Standing.ON_THE_WAY) {
            FieldMarchCover cover = FieldMarchCover.of(profile, conditions);
            List<FullWaveRadial> through = FieldMarch.along(profile, cover, near.raisedM(), heights, conditions, goOn);
            return covered(near, profile, rxHeightsM, roofsM, through, through, conditions);
        }
        List<FullWaveRadial> bare = near.isBelowRoofs()
                ? FieldMarch.along(profile, txHeightM, rxHeightsM, conditions, goOn)
                : FieldMarch.along(profile, txHeightM, heights, conditions, goOn);
        List<FullWaveRadial> over =
                near.isBelowRoofs() ? FieldMarch.along(profile, near.raisedM(), heights, conditions, goOn) : bare;
        return covered(near, profile, rxHeightsM, roofsM, bare, over, conditions);
    }

    /**
     * Marches neighbouring radials in lockstep, {@link FieldMarch#together} at most.
     *
     * @shape  for each profile what {@link #along} gives
     * @unit   as {@link #along}
     * @valid  profiles from one place, their samples at the same distances as far as each goes; else as {@link #along}
     * @error  below 65 dB of excess rms 0.02 to 0.11 dB from {@link #along}, largest 1.1 dB, by 32 bits and by steps as the steepest of
     *     them asks for; beyond 90 dB rounding decides: docs/full-wave.md
     * @source as {@link #along}
     */
    public static List<List<CoveredMarch>> together(
            List<Profile> profiles,
            double txHeightM,
            double[] rxHeightsM,
            double[] roofsM,
            PathConditions conditions,
            DoublePredicate goOn) {
        Near near = Near.of(profiles.get(0), txHeightM);
        double[] heights = heights(rxHeightsM, roofsM);
        List<List<CoveredMarch>> marches = new ArrayList<>();
        if (conditions.standing() == Standing.ON_THE_WAY) {
            List<FieldMarchCover> covers = profiles.stream()
                    .map(profile -> FieldMarchCover.of(profile, conditions))
                    .toList();
            List<List<FullWaveRadial>> through =
                    FieldMarch.bundle(profiles, covers, near.raisedM(), heights, conditions, goOn);
            for (int i = 0; i < profiles.size(); i++)
                marches.add(
                        covered(near, profiles.get(i), rxHeightsM, roofsM, through.get(i), through.get(i), conditions));
            return marches;
        }
        List<List<FullWaveRadial>> bare =
                FieldMarch.bundle(profiles, txHeightM, near.isBelowRoofs() ? rxHeightsM : heights, conditions, goOn);
        List<List<FullWaveRadial>> over =
                near.isBelowRoofs() ? FieldMarch.bundle(profiles, near.raisedM(), heights, conditions, goOn) : bare;
        for (int i = 0; i < profiles.size(); i++)
            marches.add(covered(near, profiles.get(i), rxHeightsM, roofsM, bare.get(i), over.get(i), conditions));
        return marches;
    }

    private static List<CoveredMarch> covered(
            Near near,
            Profile profile,
            double[] rxHeightsM,
            double[] roofsM,
            List<FullWaveRadial> bare,
            List<FullWaveRadial> over,
            PathConditions conditions) {
        int n = rxHeightsM.length;
        double[] heights = heights(rxHeightsM, roofsM);
        int[] first = {firstStanding(profile), firstWood(profile)};
        List<CoveredMarch> marches = new ArrayList<>();
        for (int k = 0; k < n; k++) {
            double[] raised = new double[1 + roofsM.length];
            List<FullWaveRadial> read = new ArrayList<>();
            for (int t = 0; t < raised.length; t++) {
                int at = t == 0 ? k : n + k * roofsM.length + t - 1;
                raised[t] = heights[at];
                read.add(over.get(at));
            }
            marches.add(new CoveredMarch(near, rxHeightsM[k], bare.get(k), raised, read, first, conditions));
        }
        return marches;
    }

    /** The far antennas as they are, then each of them at or above each height of roofs. */
    private static double[] heights(double[] rxHeightsM, double[] roofsM) {
        int n = rxHeightsM.length;
        double[] heights = Arrays.copyOf(rxHeightsM, n + n * roofsM.length);
        for (int k = 0; k < n; k++)
            for (int t = 0; t < roofsM.length; t++)
                heights[n + k * roofsM.length + t] = Math.max(rxHeightsM[k], roofsM[t]);
        return heights;
    }

    /** First sample behind the near end on which something stands; the number of samples where there is none. */
    private static int firstStanding(Profile profile) {
        int i = 1;
        while (i < profile.count() && !(profile.clutterM(i) > 0 && profile.cover(i) != Cover.WATER)) i++;
        return i;
    }

    private static int firstWood(Profile profile) {
        int i = 0;
        while (i < profile.count() && profile.cover(i) != Cover.WOODLAND) i++;
        return i;
    }

    /**
     * What the marches of {@link #along} will cost.
     *
     * @shape  one cost for each march; O(samples), pure
     * @unit   as {@link FieldMarchCost}
     * @valid  as {@link FieldMarch#cost}
     * @error  as {@link FieldMarch#cost}
     * @source as {@link FieldMarch#cost}
     */
    public static List<FieldMarchCost> costs(
            Profile profile, double txHeightM, double[] rxHeightsM, double[] roofsM, PathConditions conditions) {
        Near near = Near.of(profile, txHeightM);
        double bareM = Arrays.stream(rxHeightsM).max().orElseThrow();
        double highestM = Arrays.stream(heights(rxHeightsM, roofsM)).max().orElseThrow();
        if (conditions.standing() == Standing.ON_THE_WAY)
            return List.of(FieldMarch.cost(
                    profile, FieldMarchCover.of(profile, conditions), near.raisedM(), highestM, conditions));
        if (!near.isBelowRoofs()) return List.of(FieldMarch.cost(profile, txHeightM, highestM, conditions));
        return List.of(
                FieldMarch.cost(profile, txHeightM, bareM, conditions),
                FieldMarch.cost(profile, near.raisedM(), highestM, conditions));
    }

    /**
     * Height of the roofs that a far end is reckoned to.
     *
     * @shape  one cover and a height in, none or one height out; pure
     * @unit   m above ground; 0 for what stands there takes the representative height
     * @valid  every cover; empty where nothing but the antenna's own height counts
     * @error  as {@link EndCover#raisedM}
     * @source as {@link EndCover#raisedM}
     */
    public static double[] roofsM(Cover cover, double standingM) {
        return cover.isTown() ? new double[] {EndCover.raisedM(0, cover, standingM)} : new double[0];
    }

    /**
     * The same field among trees in another state, which the march itself does not meet where woods count at the ends.
     *
     * @shape  pure; nothing is marched
     * @unit   as {@link #along}
     * @valid  woods at the ends, and conditions that differ from those of the march in their foliage alone; else IllegalArgumentException
     * @error  none of its own
     * @source as {@link #along}
     */
    public CoveredMarch under(PathConditions other) {
        if (other.equals(conditions)) return this;
        if (isOnTheWay() || !other.with(Foliage.IN_LEAF).equals(conditions.with(Foliage.IN_LEAF)))
            throw new IllegalArgumentException("conditions that ask for another march");
        return new CoveredMarch(near, rxHeightM, bare, raisedM, overRoofs, new int[] {firstStanding, firstWood}, other);
    }

    /**
     * How far along a profile the march answers.
     *
     * @shape  as {@link FieldMarch#answered}
     * @unit   as {@link FieldMarch#answered}
     * @valid  as {@link FieldMarch#answered}; where towns count on the way, their roofs are ground
     * @error  none
     * @source as {@link FieldMarch#answered}
     */
    public static int answered(Profile profile, PathConditions conditions) {
        return FieldMarch.answered(FieldMarchCover.of(profile, conditions).raised(profile), conditions);
    }

    /** The field at the far antenna's own height: over bare ground, or on the way through woods and over roofs where they count there. */
    public FullWaveRadial field() {
        return bare;
    }

    /** What is doubtful about the march as a whole, one sentence each. */
    public List<String> warningsOfMarch() {
        return bare.warnings();
    }

    /**
     * What the march itself says: with terms at the ends over bare ground, from antenna to antenna; on the way through woods and over
     * roofs, and from roofs to roofs where an end is below them.
     *
     * @shape  pure
     * @unit   as {@link #townDb}; losses dB, free space with them
     * @valid  as {@link #townDb}
     * @error  as {@link #along}
     * @source as {@link #along}
     */
    public FullWaveRadial marched(Cover cover, double standingM) {
        return isOnTheWay() ? reading(EndCover.raisedM(rxHeightM, cover, standingM)) : bare;
    }

    private boolean isOnTheWay() {
        return conditions.standing() == Standing.ON_THE_WAY;
    }

    /**
     * What towns around the ends add to the march; never less than nothing.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   sample of the profile, 1 to count − 1; what stands around the far antenna there, m, 0 for the representative height; result
     *     dB
     * @valid  a town at the far end only with roofs of a height that was marched for
     * @error  6 dB (standard deviation) between places
     * @source Rec. ITU-R P.2108-1 section 3.1; never better than open ground is ours
     */
    public double townDb(int sample, Cover cover, double standingM) {
        double farM = EndCover.raisedM(rxHeightM, cover, standingM);
        if (!near.isBelowRoofs() && !(farM > rxHeightM)) return 0;
        double down = ends.roofsDb(near.heightM(), near.raisedM(), near.cover()) + ends.roofsDb(rxHeightM, farM, cover);
        if (isOnTheWay()) return down;
        return Math.max(0, down + reading(farM).excessDb(sample) - bare.excessDb(sample));
    }

    private FullWaveRadial reading(double farM) {
        for (int t = 0; t < raisedM.length; t++) if (raisedM[t] == farM) return overRoofs.get(t);
        throw new IllegalArgumentException("no march was read " + farM + " m up");
    }

    /**
     * What woods around the ends add to the march: nothing where it goes through them.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   unbroken woodland from each end along the path m, 0 outside woods; trees around the far antenna m, 0 for the
     *     representative height; elevation angles at both antennas degrees; result dB
     * @valid  as {@link EndCover#woodDb}
     * @error  as {@link EndCover#woodDb}
     * @source as {@link EndCover#woodDb}
     */
    public double woodDb(double nearRunM, double farRunM, double farTreesM, double departureDeg, double arrivalDeg) {
        if (isOnTheWay()) return 0;
        return ends.woodDb(near.heightM(), near.standingM(), nearRunM, Math.tan(Math.toRadians(departureDeg)))
                + ends.woodDb(rxHeightM, farTreesM, farRunM, Math.tan(Math.toRadians(arrivalDeg)));
    }

    /**
     * What is doubtful about the path to a sample, beside {@link #warningsOfMarch}: one sentence each.
     *
     * @shape  pure
     * @unit   what stands around the far antenna, m, 0 for the representative height; what woods add there, dB
     * @valid  every sample from 1
     * @error  none
     * @source docs/full-wave.md
     */
    public List<String> warnings(int sample, Cover cover, double standingM, double woodDb) {
        List<String> warnings = new ArrayList<>();
        if (firstStanding < sample) warnings.add(isOnTheWay() ? LossBuilder.ON_THE_WAY : LossBuilder.ENDS_ONLY);
        if (isOnTheWay() && (cover == Cover.WOODLAND || firstWood < sample))
            warnings.addAll(Woodland.attenuationWarnings(conditions.frequency(), conditions.polarization()));
        if (woodDb > 0) warnings.addAll(Woodland.warnings(conditions.frequency(), conditions.polarization()));
        if (near.cover().isTown() || cover.isTown()) warnings.addAll(TerminalClutter.warnings(conditions.frequency()));
        double excess = marched(cover, standingM).excessDb(sample);
        if (excess > LOST_DB)
            warnings.add(String.format(
                    Locale.ROOT,
                    "Lost: the excess over free space is %.0f dB; beyond %.0f dB %s no longer describes the place"
                            + " (docs/full-wave.md).",
                    excess,
                    LOST_DB,
                    isOnTheWay() ? "the march" : "bare ground"));
        return warnings;
    }
}
