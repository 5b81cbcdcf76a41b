package handreach.reach;

import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.propagation.Terminals;
import java.util.List;

/**
 * A way to compute the loss to every cell of an area. Engines differ in cost and in how they sample the ground, never in the
 * physics: the same model, the same definitions of angle and of sight.
 *
 * <p>All engines: deterministic whatever the number of threads; a cancelled run throws
 * {@link java.util.concurrent.CancellationException} and hands nothing out.
 */
public interface AreaEngine {
    /**
     * Losses for several pairs of antenna heights over the same cells; the ground is read once.
     *
     * @shape  one grid per pair of heights, in their order
     * @unit   as {@link LossGrid}
     * @valid  the request's own heights are replaced by each of the given ones
     * @error  stated by each engine
     * @source the model named in the request
     */
    List<LossGrid> losses(AreaRequest request, List<Terminals> heights, AreaGround ground, Progress progress);

    /** The same without comparing cells with exact paths, where nobody reads the comparison. */
    default AreaEngine withoutMeasuring() {
        return this;
    }

    /** Losses for the request's own antenna heights. */
    default LossGrid losses(AreaRequest request, AreaGround ground, Progress progress) {
        return losses(request, List.of(request.terminals()), ground, progress).get(0);
    }

    /**
     * The quick engine for a map by this model: a sweep; for {@code full-wave} a march along half-degree radials, which takes a second
     * or so for every kilometre of radius ({@link MarchCost} says). What is printed is better taken from {@link MapEngine#usual}.
     */
    static AreaEngine forMap(LossModel model, double radiusM, double cellM, int threads) {
        if (!model.equals(LossModels.FULL_WAVE)) return new SweepArea(threads);
        return new MarchArea(threads, MarchArea.arcOfAMapM(radiusM, cellM));
    }
}
