package handreach.propagation.radial;

import handreach.profile.Profile;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import handreach.propagation.march.CoveredMarch;
import handreach.propagation.march.FieldMarch;
import handreach.propagation.march.FieldMarchCost;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoublePredicate;
import java.util.stream.IntStream;

/** The field marched along a radial for several pairs of heights: those with one height at the source share a march. */
public final class RadialMarch {
    /** No ground gathers the waves to more than this over free space, dB: four rays in step would. */
    private static final double BEST_DB = -12;
    /** Where the excess falls by more from one sample to the next, a march in lockstep is not believed, dB. */
    private static final double FALL_DB = 25;

    private RadialMarch() {}

    /** One march for each pair of heights, over the known samples with what stands there. Needs two known samples; {@code goOn} as {@link CoveredMarch#along}. */
    public static List<CoveredMarch> along(
            Radial radial, List<Terminals> heights, PathConditions conditions, DoublePredicate goOn) {
        Profile profile = profile(radial);
        CoveredMarch[] along = new CoveredMarch[heights.size()];
        for (double txHeightM : sources(heights)) {
            List<CoveredMarch> marches = CoveredMarch.along(
                    profile, txHeightM, receivers(heights, txHeightM), radial.roofsM(), conditions, goOn);
            int read = 0;
            for (int k = 0; k < along.length; k++)
                if (heights.get(k).txHeightM() == txHeightM) along[k] = marches.get(read++);
        }
        return List.of(along);
    }

    /** How many neighbouring radials {@link #together} best takes at once on this virtual machine; one where it has no vectors. */
    public static int together() {
        return FieldMarch.together();
    }

    /**
     * What {@link #along} gives for each of several radials from one place whose samples lie at the same distances, {@link #together()} at
     * most; one that cannot be right is marched again by itself.
     */
    public static List<List<CoveredMarch>> together(
            List<Radial> radials, List<Terminals> heights, PathConditions conditions, DoublePredicate goOn) {
        List<Profile> profiles = radials.stream().map(RadialMarch::profile).toList();
        double[] roofsM = radials.stream()
                .flatMapToDouble(r -> Arrays.stream(r.roofsM()))
                .distinct()
                .toArray();
        List<CoveredMarch[]> along = new ArrayList<>();
        for (int i = 0; i < profiles.size(); i++) along.add(new CoveredMarch[heights.size()]);
        for (double txHeightM : sources(heights)) {
            List<List<CoveredMarch>> marches =
                    CoveredMarch.together(profiles, txHeightM, receivers(heights, txHeightM), roofsM, conditions, goOn);
            for (int i = 0; i < profiles.size(); i++) {
                int read = 0;
                for (int k = 0; k < heights.size(); k++)
                    if (heights.get(k).txHeightM() == txHeightM)
                        along.get(i)[k] = marches.get(i).get(read++);
            }
        }
        List<List<CoveredMarch>> all = new ArrayList<>();
        for (int i = 0; i < radials.size(); i++) {
            Radial radial = radials.get(i);
            List<CoveredMarch> marches = List.of(along.get(i));
            boolean isSound = marches.stream().allMatch(march -> isSound(excessDb(march, radial.known)));
            all.add(isSound ? marches : along(radial, heights, conditions, goOn));
        }
        return all;
    }

    private static double[] excessDb(CoveredMarch march, int known) {
        return IntStream.range(1, known).mapToDouble(march.field()::excessDb).toArray();
    }

    /**
     * Whether a march in numbers of 32 bits can be what the ground does. Two radials at 446 MHz were seen to lose their field to
     * rounding and to read far too well from there on, some 120 dB one of them. Why is not proven; a pivot of a turn close to nothing
     * would do it.
     */
    static boolean isSound(double[] excessDb) {
        for (int i = 0; i < excessDb.length; i++) {
            if (!(excessDb[i] >= BEST_DB && excessDb[i] < Double.POSITIVE_INFINITY)) return false;
            if (i > 0 && excessDb[i] < CoveredMarch.LOST_DB && excessDb[i - 1] - excessDb[i] > FALL_DB) return false;
        }
        return true;
    }

    /** Ends a radial where ground is too steep for the march to answer for what lies behind; says whether there is such. */
    public static boolean endAtSteepGround(Radial radial, PathConditions conditions) {
        if (radial.known < 2) return false;
        int answered = CoveredMarch.answered(profile(radial), conditions);
        boolean endsBefore = answered < radial.known;
        radial.known = answered;
        return endsBefore;
    }

    /** What marching this radial costs, march by march. */
    public static List<FieldMarchCost> costs(Radial radial, List<Terminals> heights, PathConditions conditions) {
        Profile profile = profile(radial);
        return Arrays.stream(sources(heights))
                .boxed()
                .flatMap(txHeightM ->
                        CoveredMarch.costs(
                                profile, txHeightM, receivers(heights, txHeightM), radial.roofsM(), conditions)
                                .stream())
                .toList();
    }

    private static double[] sources(List<Terminals> heights) {
        return heights.stream().mapToDouble(Terminals::txHeightM).distinct().toArray();
    }

    private static double[] receivers(List<Terminals> heights, double txHeightM) {
        return heights.stream()
                .filter(pair -> pair.txHeightM() == txHeightM)
                .mapToDouble(Terminals::rxHeightM)
                .toArray();
    }

    private static Profile profile(Radial radial) {
        return radial.profile(radial.known);
    }
}
