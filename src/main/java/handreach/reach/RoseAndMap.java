package handreach.reach;

import handreach.propagation.LossModels;
import handreach.propagation.Terminals;
import java.util.ArrayList;
import java.util.List;

/**
 * The rose and the map of one march around one place: every bearing of the rose is a radial of the map, marched once.
 *
 * @param roses losses by bearing for each pair of heights, one such list for each rose asked for
 * @param map losses by cell for each pair of heights
 */
public record RoseAndMap(List<List<BearingLosses>> roses, List<LossGrid> map) {
    public RoseAndMap {
        roses = List.copyOf(roses);
        map = List.copyOf(map);
    }

    /**
     * Computes both.
     *
     * @shape  one list of losses for each rose, one grid for each pair of heights, in their order
     * @unit   as {@link BearingLosses} and {@link LossGrid}
     * @valid  roses round the map's own place and radius by the map's model, which differ in the state of the trees at most; asked for
     *     where {@link #isOneMarch} holds
     * @error  the rose as the map's radials: docs/full-wave.md; where radials are marched by themselves it is that of
     *     {@link BearingLosses#of}
     * @source the model {@code full-wave}
     */
    public static RoseAndMap of(
            List<BearingRequest> roses,
            AreaRequest map,
            List<Terminals> heights,
            AreaGround ground,
            int threads,
            Progress progress) {
        List<MarchArea.Rose> wanted = new ArrayList<>();
        for (BearingRequest rose : roses) {
            if (!isOneMarch(rose, map)) throw new IllegalArgumentException("a rose and a map of two marches");
            wanted.add(new MarchArea.Rose(rose, new RadialLosses[heights.size()][rose.bearings()]));
        }
        double arcM = arcM(map);
        List<LossGrid> grids =
                new MarchArea(threads, arcM).losses(map, heights, ground, radials(roses.get(0), map), wanted, progress);
        List<List<BearingLosses>> read = wanted.stream()
                .map(rose -> BearingLosses.of(rose.request(), heights, rose.found()))
                .toList();
        return new RoseAndMap(read, grids);
    }

    /** Whether the rose is had from the radials of the map: by the march, round the same place, with no more bearings than radials. */
    public static boolean isOneMarch(BearingRequest rose, AreaRequest map) {
        return map.model().equals(LossModels.FULL_WAVE)
                && rose.model().equals(LossModels.FULL_WAVE)
                && rose.source().equals(map.source())
                && rose.radiusM() == map.radiusM()
                && MarchArea.sharesRadials(MarchArea.radials(map.radiusM(), arcM(map)), rose.bearings());
    }

    /** Cost of both, said before they start: {@link MarchCost#ofBearings}. */
    public static MarchCost cost(
            BearingRequest rose, AreaRequest map, List<Terminals> heights, AreaGround ground, MarchTrial trial) {
        if (isOneMarch(rose, map)) return MarchCost.ofRadials(map, heights, ground, radials(rose, map), trial);
        return MarchCost.ofBearings(rose, heights, ground, trial)
                .and(MarchCost.ofArea(map, heights, ground, arcM(map), trial));
    }

    private static int radials(BearingRequest rose, AreaRequest map) {
        return MarchArea.radials(map.radiusM(), arcM(map), rose.bearings());
    }

    private static double arcM(AreaRequest map) {
        return MarchArea.arcOfAMapM(map.radiusM(), map.grid().cellM());
    }
}
