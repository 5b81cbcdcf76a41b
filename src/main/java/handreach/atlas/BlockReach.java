package handreach.atlas;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.propagation.Terminals;
import handreach.reach.AreaGround;
import handreach.reach.AreaRequest;
import handreach.reach.BearingLosses;
import handreach.reach.BearingRequest;
import handreach.reach.CellGrid;
import handreach.reach.LoadoutReach;
import handreach.reach.LossGrid;
import handreach.reach.MapEngine;
import handreach.reach.OddsGrid;
import handreach.reach.Progress;
import handreach.reach.ReachLink;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.function.Function;

/** Reckons the positions of one block in one thread. */
public final class BlockReach {
    /** Two people nearer than this stand at one place, as the engines take it, m. */
    private static final double ONE_PLACE_M = 50;

    private final AtlasQuestion.Reach asked;
    private final AtlasGrid positions;
    private final AtlasGrid targets;
    private final AreaGround ground;
    private final Function<Position, Standpoint> standpoints;
    private final boolean isPairOnce;

    /**
     * A reckoner for all blocks of an atlas; safe for several threads.
     *
     * @param asked what is asked of each position
     * @param positions where people stand
     * @param targets where they should be heard
     * @param ground the ground of the whole region
     * @param standpoints what holds at each position
     * @param isPairOnce whether of each position only the targets after it are reckoned, the others being left to {@link PairsOnce}
     */
    public BlockReach(
            AtlasQuestion.Reach asked,
            AtlasGrid positions,
            AtlasGrid targets,
            AreaGround ground,
            Function<Position, Standpoint> standpoints,
            boolean isPairOnce) {
        this.asked = asked;
        this.positions = positions;
        this.targets = targets;
        this.ground = ground;
        this.standpoints = standpoints;
        this.isPairOnce = isPairOnce;
    }

    /**
     * Figures of every position of a block within the region.
     *
     * @shape  block in, one row a position out, row by row; O(positions x (bearings + targets) x samples); one thread
     * @unit   as {@link LoadoutFigures}
     * @valid  models other than {@code full-wave}, which goes along whole radials and is refused
     * @error  that of {@link BearingLosses} and of one exact path a target: the figures of a single position, to the last digit
     * @source the model named; the bearings as in {@link LoadoutReach}
     */
    public List<PositionFigures> reckon(AtlasBlock block, Progress progress) {
        return reckon(block, positions.cellsOf(block), progress);
    }

    /** The same of one position of a block, to try what it costs. */
    public PositionFigures first(AtlasBlock block) {
        return reckon(block, positions.cellsOf(block).subList(0, 1), Progress.SILENT)
                .get(0);
    }

    private List<PositionFigures> reckon(AtlasBlock block, List<Integer> cells, Progress progress) {
        AreaGround near = windowOf(block);
        List<PositionFigures> rows = new ArrayList<>();
        for (int cell : cells) {
            progress.goOn();
            rows.add(position(cell, near, progress));
        }
        return rows;
    }

    private AreaGround windowOf(AtlasBlock block) {
        CellGrid cells = positions.cells();
        int lastRow = block.row() + block.rows() - 1;
        int lastColumn = block.column() + block.columns() - 1;
        Position first = cells.positionOf(block.row(), block.column());
        Position last = cells.positionOf(lastRow, lastColumn);
        Position middle = new Position(
                (first.latitudeDeg() + last.latitudeDeg()) / 2,
                (cells.longitudeOf(block.column()) + cells.longitudeOf(lastColumn)) / 2);
        double besideM = Math.max(GeodesicLine.distanceM(middle, first), GeodesicLine.distanceM(middle, last));
        return ground.near(middle, asked.radiusM() + besideM + cells.cellM());
    }

    private PositionFigures position(int cell, AreaGround near, Progress progress) {
        Position at = positions.cells().positionOf(cell);
        if (isVoid(near, at)) return new PositionFigures(cell, at, List.of());
        Standpoint here = standpoints.apply(at);
        List<Terminals> heights =
                here.links().stream().map(ReachLink::terminals).distinct().toList();
        List<BearingLosses> bearings = bearings(at, here, heights, near, progress);
        HeardBits.Window window = window(at);
        List<LossGrid> losses = losses(cell, at, here, heights, window, near, progress);
        BitSet known = losses.isEmpty() ? new BitSet() : known(losses.get(0));
        List<LoadoutFigures> figures = new ArrayList<>();
        for (ReachLink link : here.links()) {
            int pair = heights.indexOf(link.terminals());
            figures.add(LoadoutFigures.of(
                    LoadoutReach.of(bearings.get(pair), link, asked.odds()),
                    losses.isEmpty() ? none() : heard(OddsGrid.of(losses.get(pair), link), known, window)));
        }
        return new PositionFigures(cell, at, figures);
    }

    private static boolean isVoid(AreaGround ground, Position at) {
        boolean[] isVoid = new boolean[1];
        ground.elevation()
                .heights(new double[] {at.latitudeDeg()}, new double[] {at.longitudeDeg()}, 1, new double[1], isVoid);
        return isVoid[0];
    }

    private List<BearingLosses> bearings(
            Position at, Standpoint here, List<Terminals> heights, AreaGround near, Progress progress) {
        BearingRequest request =
                new BearingRequest(at, asked.radiusM(), asked.bearingStepDeg(), here.conditions(), here.model());
        List<BearingLosses> all = BearingLosses.of(request, heights, near, 1, progress);
        return here.drawn()
                .map(drawn -> all.stream().map(one -> one.within(drawn)).toList())
                .orElse(all);
    }

    private List<LossGrid> losses(
            int cell,
            Position at,
            Standpoint here,
            List<Terminals> heights,
            HeardBits.Window window,
            AreaGround near,
            Progress progress) {
        if (window.rows() == 0 || window.columns() == 0) return List.of();
        CellGrid part = targets.cells().part(window.row(), window.column(), window.rows(), window.columns());
        AreaRequest request =
                new AreaRequest(at, part, asked.radiusM(), heights.get(0), here.conditions(), here.model());
        int himself = here(at);
        return MapEngine.exactTo(bit -> isWanted(cell, target(window, bit), himself), 1)
                .losses(request, heights, near, progress);
    }

    private boolean isWanted(int cell, int target, int here) {
        return targets.isAsked(target) && target != here && (!isPairOnce || target > cell);
    }

    private int target(HeardBits.Window window, int bit) {
        return targets.cells().index(window.row() + bit / window.columns(), window.column() + bit % window.columns());
    }

    /** The least part of the grid of targets that holds all within the radius. */
    private HeardBits.Window window(Position at) {
        CellGrid cells = targets.cells();
        double highDeg = 1.01 * asked.radiusM() / cells.cellM() * cells.latitudeStepDeg();
        double shrink = Math.cos(Math.toRadians(Math.min(89, Math.abs(at.latitudeDeg()) + highDeg)));
        double wideDeg = 1.01 * highDeg / shrink;
        double west = Math.IEEEremainder(at.longitudeDeg() - cells.westDeg() - 180, 360) + 180;
        int top = bounded((cells.northDeg() - at.latitudeDeg() - highDeg) / cells.latitudeStepDeg(), cells.rows());
        int bottom =
                bounded((cells.northDeg() - at.latitudeDeg() + highDeg) / cells.latitudeStepDeg() + 1, cells.rows());
        int left = bounded((west - wideDeg) / cells.longitudeStepDeg(), cells.columns());
        int right = bounded((west + wideDeg) / cells.longitudeStepDeg() + 1, cells.columns());
        return new HeardBits.Window(top, left, bottom - top, right - left);
    }

    private static int bounded(double edge, int most) {
        return (int) Math.min(most, Math.max(0, Math.floor(edge)));
    }

    private HeardBits none() {
        return isPairOnce ? HeardBits.NONE_LATER : HeardBits.NONE;
    }

    /** Paths to all of these were reckoned; whether the ground along one is known does not hang on the heights of the antennas. */
    private static BitSet known(LossGrid losses) {
        BitSet known = new BitSet();
        for (int bit = 0; bit < losses.grid().count(); bit++) if (losses.isKnown(bit)) known.set(bit);
        return known;
    }

    private HeardBits heard(OddsGrid odds, BitSet known, HeardBits.Window window) {
        double threshold = odds.link().thresholdDb(asked.odds());
        BitSet reached = new BitSet();
        for (int bit = known.nextSetBit(0); bit >= 0; bit = known.nextSetBit(bit + 1))
            if (odds.reachesMargin(bit, threshold)) reached.set(bit);
        return isPairOnce
                ? HeardBits.ofLater(window, reached, known)
                : HeardBits.of(window, reached, known.cardinality());
    }

    /** The target at which whoever stands at a position hears himself; −1 where there is none. */
    private int here(Position at) {
        int target = targets.cells().indexOf(at);
        boolean isHere =
                target >= 0 && GeodesicLine.distanceM(at, targets.cells().positionOf(target)) < ONE_PLACE_M;
        return isHere ? target : -1;
    }
}
