package handreach.propagation;

import handreach.propagation.handheld.HandheldWalk;
import handreach.propagation.march.CoveredMarch;
import handreach.terrain.Cover;

/**
 * What the trees and houses around one end of a path do to it: one term an end, the same for every model that computes over bare
 * ground from the antenna's own height ({@link HandheldWalk}, {@link CoveredMarch}).
 *
 * <p>An end in woodland adds the loss of its way through the trees (P.833) to the path from its true height. For an end in town the
 * path is computed to the height of the roofs and the loss from there down to the antenna (P.2108) added; since open ground costs a
 * low antenna more than some towns do by that rule, a town never makes a path better than open ground would.
 *
 * <p>A height of 0 for what stands there means that none was told: the representative one is taken. Immutable, any thread.
 */
public final class EndCover {
    /** From here on the gain by height is cut: the height of a hand, at which the loss of woods was measured, m. */
    private static final double CUT_FROM_M = 1.5;
    /** Share of the gain by height over open ground that is left well below the tops. */
    private static final double TOWN_GAIN = 0.15;

    private static final double WOOD_GAIN = 0.6;

    private final PathConditions conditions;
    private final double woodDbPerM;
    private final double woodCeilingDb;

    public EndCover(PathConditions conditions) {
        this.conditions = conditions;
        double trees = conditions.foliage().factor(conditions.frequency());
        woodDbPerM = trees * Woodland.attenuationDbPerM(conditions.frequency(), conditions.polarization());
        woodCeilingDb = trees * Woodland.ceilingDb(conditions.frequency(), conditions.polarization());
    }

    /**
     * What trees in their state take of a wave along a short path through them.
     *
     * @shape  scalar out; pure
     * @unit   dB/m
     * @valid  as {@link Woodland#attenuationDbPerM}
     * @error  as {@link Woodland#attenuationDbPerM}
     * @source as {@link Woodland#attenuationDbPerM}; the state as {@link Foliage#factor}
     */
    public double woodDbPerM() {
        return woodDbPerM;
    }

    /**
     * Height from which the path of an end is computed: that of the roofs in town, where they stand higher than the antenna.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   m above ground; 0 for what stands there takes the representative height; result m
     * @valid  every height above 0
     * @error  that of the stated height of the roofs
     * @source Rec. ITU-R P.2108, section 3.1: the loss is counted from the top of the clutter
     */
    public static double raisedM(double antennaM, Cover cover, double standingM) {
        if (!cover.isTown()) return antennaM;
        return Math.max(antennaM, standingM > 0 ? standingM : TerminalClutter.representativeHeightM(cover));
    }

    /**
     * Height that counts for the wave along the ground: among houses or trees an antenna that is lifted above the hand gains less than
     * over open ground, until it nears their tops.
     *
     * @shape  scalars in, scalar out; pure, continuous in both heights
     * @unit   m above ground; 0 for what stands there takes its representative height
     * @valid  antennas from 0.5 m; over open ground and water, up to 1.5 m and from the tops on the antenna's own height, to the last digit
     * @error  1.1 dB (town) and 1.3 dB (valley) of the step from 1.5 to 3 m where it was measured, one place each at 868 MHz; carried to
     *     other frequencies and heights as a share of the gain
     * @source ours; measured gains of 0.8 and 3.2 dB, open data (DOI 10.5281/zenodo.1560654), docs/handheld-model.md
     */
    public static double countedM(double antennaM, Cover cover, double standingM) {
        if (cover == Cover.OPEN || cover == Cover.WATER || antennaM <= CUT_FROM_M) return antennaM;
        double topM = standingM > 0 ? standingM : TerminalClutter.representativeHeightM(cover);
        if (antennaM >= topM) return antennaM;
        double below = 1 - antennaM * antennaM / (topM * topM);
        double lost = (1 - (cover.isTown() ? TOWN_GAIN : WOOD_GAIN)) * below;
        return antennaM * Math.pow(antennaM / CUT_FROM_M, -lost);
    }

    /** Whether either antenna stands so high that its gain is cut where trees or houses overtop it. */
    public static boolean mayCutGain(Terminals terminals) {
        return Math.max(terminals.txHeightM(), terminals.rxHeightM()) > CUT_FROM_M;
    }

    /**
     * How much of a wood so far along the path counts: none at its edge, all deep in it, as its loss grows to its ceiling.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   unbroken woodland from the end along the path m; result a share
     * @valid  from 0
     * @error  that of the length over which woods reach their ceiling, a factor of 2
     * @source Rec. ITU-R P.833-9, section 2.1
     */
    public double woodShare(double runM) {
        return Woodland.terminalDb(runM, woodDbPerM, woodCeilingDb) / woodCeilingDb;
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
    public double roofsDb(double antennaM, double raisedM, Cover cover) {
        if (!(raisedM > antennaM)) return 0;
        return TerminalClutter.lossDb(conditions.frequency(), cover, antennaM, raisedM, TerminalClutter.STREET_WIDTH_M);
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
