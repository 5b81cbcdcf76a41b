package handreach.atlas;

import handreach.reach.LoadoutReach;
import handreach.reach.ReachEstimate;

/**
 * What one loadout does at one position.
 *
 * @param medianM median over the bearings of the continuous reach, m
 * @param worst along the worst bearing
 * @param share of the known ground within the radius
 * @param openEnded bearings whose reach did not end within the radius or the known ground: it is at least what is said
 * @param partlyUnknown bearings on which ground is unknown somewhere within the radius
 * @param heard targets reached
 */
public record LoadoutFigures(
        ReachEstimate medianM, Worst worst, ReachEstimate share, int openEnded, int partlyUnknown, HeardBits heard) {
    /** The least continuous reach, m, and its bearing, degrees from true north. */
    public record Worst(ReachEstimate reachM, double bearingDeg) {}

    static LoadoutFigures of(LoadoutReach reach, HeardBits heard) {
        return new LoadoutFigures(
                reach.medianM(),
                new Worst(reach.worstM(), reach.worstBearingDeg()),
                reach.share(),
                reach.openEnded(),
                reach.partlyUnknown(),
                heard);
    }

    LoadoutFigures with(HeardBits other) {
        return new LoadoutFigures(medianM, worst, share, openEnded, partlyUnknown, other);
    }
}
