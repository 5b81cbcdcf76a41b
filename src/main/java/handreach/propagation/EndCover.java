package handreach.propagation;

import handreach.propagation.handheld.HandheldWalk;
import handreach.propagation.march.CoveredMarch;
import handreach.terrain.Cover;

/**
 * What the trees and houses around one end of a path do to it: one term an end, the same for every model that reckons over bare
 * ground from the antenna's own height ({@link HandheldWalk}, {@link CoveredMarch}).
 *
 * <p>An end in woodland adds the loss of its way through the trees (P.833) to the path from its true height. For an end in town the
 * path is reckoned to the height of the roofs and the loss from there down to the antenna (P.2108) added; since open ground costs a
 * low antenna more than some towns do by that rule, a town never makes a path better than open ground would.
 *
 * <p>A height of 0 for what stands there means that none was told: the representative one is taken. Immutable, any thread.
 */
public final class EndCover {
    private final PathConditions conditions;
    private final double woodDbPerM;
    private final double woodCeilingDb;

    public EndCover(PathConditions conditions) {
        this.conditions = conditions;
        woodDbPerM = Woodland.attenuationDbPerM(conditions.frequency(), conditions.polarization());
        woodCeilingDb = Woodland.ceilingDb(conditions.frequency(), conditions.polarization());
    }

    /**
     * Height from which the path of an end is reckoned: that of the roofs in town, where they stand higher than the antenna.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   m above ground; 0 for what stands there takes the representative height; result m
     * @valid  every height above 0
     * @error  that of the stated height of the roofs
     * @source Rec. ITU-R P.2108, section 3.1: the loss is counted from the top of the clutter
     */
    public static double reckonedM(double antennaM, Cover cover, double standingM) {
        if (!cover.isTown()) return antennaM;
        return Math.max(antennaM, standingM > 0 ? standingM : TerminalClutter.representativeHeightM(cover));
    }

    /**
     * Loss from that height down to the antenna.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   heights m above ground; result dB, 0 outside towns
     * @valid  as {@link TerminalClutter#lossDb}
     * @error  as {@link TerminalClutter#lossDb}
     * @source Rec. ITU-R P.2108, section 3.1, over the usual street width
     */
    public double roofsDb(double antennaM, double reckonedM, Cover cover) {
        if (!(reckonedM > antennaM)) return 0;
        return TerminalClutter.lossDb(
                conditions.frequency(), cover, antennaM, reckonedM, TerminalClutter.STREET_WIDTH_M);
    }

    /**
     * Tops of the trees over the antenna of an end in woodland.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   m above ground; 0 for trees takes their representative height; result m
     * @valid  every finite height; negative for an antenna above the tops
     * @error  that of the stated height of the trees
     * @source Rec. ITU-R P.1812, representative clutter height of woodland
     */
    public static double topsOverM(double antennaM, double standingM) {
        double treesM = standingM > 0 ? standingM : TerminalClutter.representativeHeightM(Cover.WOODLAND);
        return treesM - antennaM;
    }

    /**
     * Loss on the way out of the wood around one end: to its edge, or to where the rising ray passes the tree tops.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   antenna and trees m above ground, the trees 0 for the representative height; unbroken woodland from the end along the path
     *     m, 0 outside woods; slope of the path at the antenna, tangent, positive upwards; result dB
     * @valid  as {@link Woodland#terminalDb(double, double, double)}
     * @error  5 to 9 dB (standard deviation) between places; the tree tops taken as level
     * @source Rec. ITU-R P.833-9, section 2.1; the length in the trees geometry
     */
    public double woodDb(double antennaM, double treesM, double woodRunM, double slope) {
        return throughTreesDb(woodRunM, topsOverM(antennaM, treesM), slope);
    }

    /**
     * The same for tops so far over the antenna.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   unbroken woodland m, tops over the antenna m, slope of the path as a tangent; result dB
     * @valid  0 where there is no wood or the antenna stands over the tops
     * @error  as {@link #woodDb}
     * @source as {@link #woodDb}
     */
    public double throughTreesDb(double runM, double toTopsM, double slope) {
        if (!(runM > 0) || !(toTopsM > 0)) return 0;
        double depth = slope > 0 ? Math.min(runM, toTopsM / slope) : runM;
        return Woodland.terminalDb(depth, woodDbPerM, woodCeilingDb);
    }
}
