package handreach.reach;

import handreach.profile.Profile;
import handreach.propagation.FieldMarch;
import handreach.propagation.FieldMarchCost;
import handreach.propagation.FullWaveRadial;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import java.util.Arrays;
import java.util.List;

/** The field marched along a ray: loss at its samples for several pairs of heights, one march for each height at the source. */
final class RadialMarch {
    private RadialMarch() {}

    /** Loss in dB by pair of heights and known sample; sample 0 holds 0. Needs two known samples. */
    static double[][] lossDb(Ray ray, List<Terminals> heights, PathConditions conditions, Progress progress) {
        Profile profile = profile(ray);
        double[][] loss = new double[heights.size()][];
        for (int k = 0; k < loss.length; k++) {
            if (loss[k] != null) continue;
            double txHeightM = heights.get(k).txHeightM();
            double[] rxHeightM = heights.stream()
                    .filter(pair -> pair.txHeightM() == txHeightM)
                    .mapToDouble(Terminals::rxHeightM)
                    .toArray();
            List<FullWaveRadial> marches =
                    FieldMarch.along(profile, txHeightM, rxHeightM, conditions, share -> !progress.isCancelled());
            int read = 0;
            for (int j = k; j < loss.length; j++)
                if (heights.get(j).txHeightM() == txHeightM) loss[j] = means(marches.get(read++));
        }
        return loss;
    }

    /** What marching this ray costs, for each height at the source. */
    static List<FieldMarchCost> costs(Ray ray, List<Terminals> heights, PathConditions conditions) {
        Profile profile = profile(ray);
        double rxHeightM =
                heights.stream().mapToDouble(Terminals::rxHeightM).max().orElseThrow();
        return heights.stream()
                .mapToDouble(Terminals::txHeightM)
                .distinct()
                .mapToObj(txHeightM -> FieldMarch.cost(profile, txHeightM, rxHeightM, conditions))
                .toList();
    }

    private static Profile profile(Ray ray) {
        return Profile.of(Arrays.copyOf(ray.xKm, ray.known), Arrays.copyOf(ray.groundM, ray.known));
    }

    private static double[] means(FullWaveRadial march) {
        double[] mean = new double[march.count()];
        for (int i = 1; i < mean.length; i++) mean[i] = march.meanLossDb(i);
        return mean;
    }
}
