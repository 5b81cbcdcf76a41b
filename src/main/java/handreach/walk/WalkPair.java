package handreach.walk;

import handreach.geodesy.Position;
import handreach.terrain.Cover;
import handreach.uncertainty.Odds;

/**
 * One report beside its prediction.
 *
 * @param spot where
 * @param link what was predicted for
 * @param marginDb predicted margin at the median place, dB
 * @param heard what was heard
 * @param copied whether it counts as copy
 */
public record WalkPair(Spot spot, Link link, double marginDb, Reception heard, boolean copied) {
    /**
     * A place on a walk.
     *
     * @param line line number of the report
     * @param at where
     * @param alongM way from the start of the walk; walks follow each other with a gap
     * @param bearingDeg bearing from the base
     * @param distanceM distance from the base
     * @param cover what stands there
     */
    public record Spot(int line, Position at, double alongM, double bearingDeg, double distanceM, Cover cover) {}

    /**
     * The link that was tried.
     *
     * @param loadout loadout of the walker
     * @param way direction
     * @param carryBase carry position at the base
     * @param carryWalker carry position of the walker
     * @param neededDbm level that the wanted copy needs
     * @param spreadDb spread between places as predicted
     */
    public record Link(
            String loadout, Direction way, String carryBase, String carryWalker, double neededDbm, double spreadDb) {}

    public WalkPair {
        if (!Double.isFinite(marginDb)) throw new IllegalArgumentException("margin " + marginDb);
    }

    public double predictedDbm() {
        return marginDb + link.neededDbm();
    }

    /** Odds of copy as predicted. */
    public double odds() {
        return Odds.ofMargin(marginDb, link.spreadDb());
    }

    /** Predicted minus walked level, positive where the prediction was too hopeful; only for levels. */
    public double errorDb() {
        if (heard.kind() != Reception.Kind.LEVEL) throw new IllegalStateException("no level was heard");
        return predictedDbm() - heard.value();
    }

    public boolean isLevel() {
        return heard.kind() == Reception.Kind.LEVEL;
    }

    /** The same report beside another prediction. */
    WalkPair with(double newMarginDb, double newSpreadDb) {
        Link other = new Link(
                link.loadout(), link.way(), link.carryBase(), link.carryWalker(), link.neededDbm(), newSpreadDb);
        return new WalkPair(spot, other, newMarginDb, heard, copied);
    }
}
