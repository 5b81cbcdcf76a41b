package handreach.propagation.handheld;

import handreach.profile.Profile;
import handreach.propagation.LossBuilder;
import handreach.propagation.LossModel;
import handreach.propagation.PathConditions;
import handreach.propagation.PathLoss;
import handreach.propagation.TerminalClutter;
import handreach.propagation.Terminals;
import handreach.propagation.Woodland;
import handreach.terrain.Cover;
import java.util.List;

/**
 * The default model: two antennas near the ground, in closed form.
 *
 * <p>Three things decide such a path and no single Recommendation has all three: the ground wave under low antennas, which P.526
 * misses by up to 5 dB; edges that are not one edge; and slopes that mirror the wave on both sides of every crest. The form joins
 * an exact smooth-earth term to a law for rough ground whose constants were fitted to full-wave solutions over several
 * hundred profiles ({@link HandheldTerms}, {@code docs/handheld-model.md}). Woods and town count once, at the ends
 * ({@link HandheldWalk}).
 *
 * <p>Accuracy against full-wave solutions, profiles not used for fitting, loss up to 165 dB: mean 0.1 dB, standard deviation 4 dB;
 * smooth ground within 1 dB of the exact solution. The elevation data alone spread the truth by 3 dB (146 MHz) to 6 dB (446 MHz).
 * Measured loss over open rural ground is met with 4 dB at 144 MHz and 5 dB at 435 MHz.
 */
public final class Handheld implements LossModel {
    /** Excess over free space beyond which bare-ground theory no longer describes the place, dB. */
    public static final double LOST_DB = 65;

    private static final String NAME = "handheld";
    private static final String OURS = "handheld model (ours)";
    private static final double LONGEST_KM = 60;

    @Override
    public String name() {
        return NAME;
    }

    /**
     * Loss from antenna to antenna, with parts for edges, ground, woodland and town.
     *
     * @shape  n samples in; O(n), pure
     * @unit   dB, positive weakens
     * @valid  30 MHz to 1 GHz, antennas 0.5 to 100 m, 50 m to 60 km; outside a warning, below 50 m refused
     * @error  4 dB standard deviation against full-wave solutions over bare ground, 1 dB on smooth ground; beyond 65 dB excess not to
     *     be trusted (a place that is lost)
     * @source ours; fitted to full-wave solutions (docs/handheld-model.md); woodland Rec. ITU-R P.833-9, town Rec. ITU-R P.2108-1
     */
    @Override
    public PathLoss loss(Profile profile, Terminals terminals, PathConditions conditions) {
        LossBuilder account = new LossBuilder(name(), profile, terminals, conditions);
        int last = profile.count() - 1;
        HandheldWalk walk = new HandheldWalk(conditions, terminals, profile.count());
        walk.start(profile.heightM(0), profile.cover(0), profile.clutterM(0), Woodland.runFromEndM(profile, true));
        for (int i = 1; i <= last; i++) walk.add(1000 * profile.distanceKm(i), profile.heightM(i));
        walk.excessDb(profile.cover(last), profile.clutterM(last), Woodland.runFromEndM(profile, false));
        double cut = walk.heightInCoverDb();
        account.part("edges", walk.edgesDb(), OURS).part("ground", walk.bareDb() - cut - walk.edgesDb(), OURS);
        // The way over the roofs leaves nothing to cut: what it costs over open ground is the town's.
        boolean overRoofs = walk.townDb() > 0;
        if (cut != 0 && !overRoofs) account.part(LossBuilder.HEIGHT_IN_COVER, cut, LossBuilder.HEIGHT_SOURCE);
        account.part("woodland", walk.woodDb(), "Rec. ITU-R P.833-9 section 2.1, at the ends")
                .part("town", overRoofs ? walk.townDb() + cut : 0, "Rec. ITU-R P.2108-1 section 3.1, at the ends");
        steps(account, walk);
        doubts(account, walk, profile, terminals, conditions);
        return account.close();
    }

    /**
     * What is doubtful about a path that has just been walked: the warnings of {@link #loss} without walking it again.
     *
     * @param walk the walk, its excess computed
     * @param outline the ends of the path, and whatever of it stands between: one sample with clutter will do for all
     */
    public static List<String> warnings(
            HandheldWalk walk, Profile outline, Terminals terminals, PathConditions conditions) {
        LossBuilder account = new LossBuilder(NAME, outline, terminals, conditions);
        doubts(account, walk, outline, terminals, conditions);
        return account.warnings();
    }

    private static void doubts(
            LossBuilder account, HandheldWalk walk, Profile profile, Terminals terminals, PathConditions conditions) {
        warn(account, profile, terminals, conditions);
        if (walk.woodDb() > 0)
            Woodland.warnings(conditions.frequency(), conditions.polarization()).forEach(account::warn);
        if (profile.cover(0).isTown() || profile.cover(profile.count() - 1).isTown())
            TerminalClutter.warnings(conditions.frequency()).forEach(account::warn);
        if (walk.bareDb() > LOST_DB)
            account.warn(
                    "Lost: " + Math.round(walk.bareDb())
                            + " dB over free space, trees and buildings not counted. Beyond " + Math.round(LOST_DB)
                            + " dB bare-ground theory no longer describes the place; the number only says that it is far gone.");
    }

    private static void steps(LossBuilder account, HandheldWalk walk) {
        StretchedString string = walk.string();
        account.step("Θ", string.totalBend(), "rad")
                .step("M", string.liftM(), "m")
                .step("ν", walk.terms().nu(string), "")
                .step("s", string.splitM(), "m")
                .step("α_t", 20 * string.nearClearanceM() / string.lengthM(), "rad")
                .step("α_r", 20 * string.farClearanceM() / string.lengthM(), "rad")
                .step("g_t", string.gapFromNearM(HandheldTerms.LOCAL_M), "m")
                .step("g_r", string.gapFromFarM(HandheldTerms.LOCAL_M), "m")
                .step("r", string.roughnessM(), "m")
                .step("q", walk.terms().roughShare(string), "");
    }

    private static void warn(LossBuilder account, Profile profile, Terminals terminals, PathConditions conditions) {
        account.within("The frequency", conditions.frequency().mhz(), 30, 1000, "MHz", "the handheld model")
                .within("The first antenna", terminals.txHeightM(), 0.5, 100, "m", "the handheld model")
                .within("The last antenna", terminals.rxHeightM(), 0.5, 100, "m", "the handheld model")
                .within(
                        "The path",
                        profile.lengthKm(),
                        LossBuilder.SHORTEST_KM,
                        LONGEST_KM,
                        "km",
                        "the handheld model");
        for (int i = 1; i < profile.count() - 1; i++)
            if (profile.clutterM(i) > 0 && profile.cover(i) != Cover.WATER) {
                account.warn(LossBuilder.ENDS_ONLY);
                return;
            }
    }
}
