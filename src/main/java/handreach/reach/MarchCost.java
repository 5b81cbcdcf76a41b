package handreach.reach;

import handreach.propagation.FieldMarchCost;
import handreach.propagation.Terminals;
import java.util.List;
import java.util.Locale;

/**
 * What marching the field along radials will cost, said before it starts.
 *
 * @param radials number of radials
 * @param seconds about how long it takes on these threads, good to a factor of 2
 * @param bytes working memory of all threads together
 */
public record MarchCost(int radials, double seconds, long bytes) {
    private static final int PROBED = 8;

    /**
     * Cost of {@link MarchArea}.
     *
     * @shape  eight radials are cut and looked at, none is marched
     * @unit   m, s, bytes
     * @valid  as the engine
     * @error  time good to a factor of 2
     * @source counts of steps and nodes, docs/full-wave.md
     */
    public static MarchCost ofArea(
            AreaRequest request, List<Terminals> heights, AreaGround ground, double arcM, int threads) {
        AreaSetting setting = AreaSetting.of(request, ground);
        return of(setting, heights, MarchArea.radials(request.radiusM(), arcM), threads);
    }

    /** Cost of {@link BearingLosses} by the march; {@link #ofArea}. */
    public static MarchCost ofBearings(
            BearingRequest request, List<Terminals> heights, AreaGround ground, int threads) {
        AreaSetting setting = new AreaSetting(request.source(), request.radiusM(), request.conditions(), ground);
        return of(setting, heights, request.bearings(), threads);
    }

    /** Both, one after the other: the longer list of radials, the times added, the larger memory. */
    public MarchCost and(MarchCost other) {
        return new MarchCost(radials + other.radials, seconds + other.seconds, Math.max(bytes, other.bytes));
    }

    /** One line for people, said before the march starts. */
    public String sentence() {
        String time = seconds < 90
                ? String.format(Locale.ROOT, "%.0f s", Math.max(1, seconds))
                : String.format(Locale.ROOT, "%.0f min", seconds / 60);
        return String.format(
                Locale.ROOT,
                "Marching the field along %d radials: about %s, good to a factor of 2, and %.0f MB of memory.",
                radials,
                time,
                Math.ceil(bytes / 1e6));
    }

    private static MarchCost of(AreaSetting setting, List<Terminals> heights, int radials, int threads) {
        RaySampler sampler = setting.sampler();
        Ray ray = new Ray();
        double seconds = 0;
        long bytes = 0;
        double[] tx =
                heights.stream().mapToDouble(Terminals::txHeightM).distinct().toArray();
        double rx = heights.stream().mapToDouble(Terminals::rxHeightM).max().orElseThrow();
        for (int i = 0; i < PROBED; i++) {
            setting.cut(sampler, 2 * Math.PI * i / PROBED, setting.radiusM(), ray);
            if (ray.known < 2) continue;
            for (double height : tx) {
                FieldMarchCost cost = RadialMarch.cost(ray, new Terminals(height, rx), setting.conditions());
                seconds += cost.seconds() / PROBED;
                bytes = Math.max(bytes, cost.bytes());
            }
        }
        return new MarchCost(radials, seconds * radials / threads, bytes * threads);
    }
}
