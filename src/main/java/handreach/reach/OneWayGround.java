package handreach.reach;

import handreach.budget.Ways;

/**
 * Ground on which one way of a link works and the other does not.
 *
 * @param both share of the known ground that has the wanted odds both ways, 0 to 1
 * @param hearsOnly the same where people copy the middle, which does not copy them
 * @param heardOnly the same where the middle copies people, who do not copy it
 * @param knownM2 known ground within the radius, m²
 */
public record OneWayGround(double both, double hearsOnly, double heardOnly, double knownM2) {
    /** Cell by cell: the first link is the way to the middle, the second the way from it; bought is what only hears. */
    public static LoadoutDifference places(OddsGrid odds, double targetOdds) {
        return LoadoutDifference.of(odds.asking(Ways.BACK), odds.asking(Ways.THERE), targetOdds);
    }

    /**
     * Over the cells of a map.
     *
     * @shape  one grid in; O(cells), pure
     * @unit   odds 0 to 1; shares 0 to 1, m²
     * @valid  every grid; each way by its own margin and spread, whatever the link asks for
     * @error  that of the odds; doubt common to all places moves both edges together
     * @source definition, docs/definitions.md
     */
    public static OneWayGround of(OddsGrid odds, double targetOdds) {
        LoadoutDifference places = places(odds, targetOdds);
        CellGrid grid = odds.grid();
        return new OneWayGround(
                places.share(LoadoutDifference.Place.BOTH),
                places.share(LoadoutDifference.Place.BOUGHT),
                places.share(LoadoutDifference.Place.LOST),
                odds.losses().knownCount() * grid.cellM() * grid.cellM());
    }

    /**
     * Along bearings, where each sample stands for the ring of ground round it.
     *
     * @shape  losses along the bearings in; O(samples), pure
     * @unit   as {@link #of(OddsGrid, double)}
     * @valid  losses for the link's antenna heights
     * @error  as {@link #of(OddsGrid, double)}, and what lies between bearings
     * @source definition, docs/definitions.md
     */
    public static OneWayGround of(BearingLosses losses, ReachLink link, double targetOdds) {
        ReachLink calls = link.asking(Ways.BACK);
        ReachLink hears = link.asking(Ways.THERE);
        double callsDb = calls.thresholdDb(targetOdds);
        double hearsDb = hears.thresholdDb(targetOdds);
        double half = Math.toRadians(losses.request().stepDeg()) / 2;
        double[] sum = new double[4];
        for (RadialLosses radial : losses.radials()) {
            double[] up = radial.marginsDb(calls);
            double[] down = radial.marginsDb(hears);
            for (int i = 0; i < radial.knownCount(); i++) {
                if (!radial.counts(i)) continue;
                int kind = (up[i] >= callsDb ? 1 : 0) + (down[i] >= hearsDb ? 2 : 0);
                sum[kind] += half * radial.ringM2(i);
            }
        }
        double known = sum[0] + sum[1] + sum[2] + sum[3];
        double all = known > 0 ? known : 1;
        return new OneWayGround(sum[3] / all, sum[2] / all, sum[1] / all, known);
    }
}
