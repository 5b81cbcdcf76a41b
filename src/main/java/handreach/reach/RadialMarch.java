package handreach.reach;

import handreach.profile.Profile;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import handreach.propagation.march.CoveredMarch;
import handreach.propagation.march.FieldMarch;
import handreach.propagation.march.FieldMarchCost;
import java.util.Arrays;
import java.util.List;

/** The field marched along a ray for several pairs of heights: those with one height at the source share a march. */
final class RadialMarch {
    private RadialMarch() {}

    /** One march for each pair of heights, over the known samples with what stands there. Needs two known samples. */
    static List<CoveredMarch> along(Ray ray, List<Terminals> heights, PathConditions conditions, Progress progress) {
        Profile profile = profile(ray);
        CoveredMarch[] along = new CoveredMarch[heights.size()];
        for (double txHeightM : sources(heights)) {
            List<CoveredMarch> marches = CoveredMarch.along(
                    profile,
                    txHeightM,
                    receivers(heights, txHeightM),
                    ray.roofsM(),
                    conditions,
                    share -> !progress.isCancelled());
            int read = 0;
            for (int k = 0; k < along.length; k++)
                if (heights.get(k).txHeightM() == txHeightM) along[k] = marches.get(read++);
        }
        return List.of(along);
    }

    /** Ends a ray where ground is too steep for the march to answer for what lies behind. */
    static void endAtSteepGround(Ray ray, PathConditions conditions) {
        ray.endsAtSteepGround = false;
        if (ray.known < 2) return;
        int answered = FieldMarch.answered(profile(ray), conditions);
        ray.endsAtSteepGround = answered < ray.known;
        ray.known = answered;
    }

    /** What marching this ray costs, march by march. */
    static List<FieldMarchCost> costs(Ray ray, List<Terminals> heights, PathConditions conditions) {
        Profile profile = profile(ray);
        return Arrays.stream(sources(heights))
                .boxed()
                .flatMap(txHeightM ->
                        CoveredMarch.costs(profile, txHeightM, receivers(heights, txHeightM), ray.roofsM(), conditions)
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

    private static Profile profile(Ray ray) {
        return ray.profile(ray.known);
    }
}
