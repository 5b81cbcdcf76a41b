package handreach.reach;

import handreach.budget.Ways;
import handreach.geodesy.Position;
import handreach.uncertainty.Interval;
import java.util.Optional;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;

/**
 * One link over an area: margin and odds of copy in every known cell, with the antenna patterns read at the angles of that very
 * cell. A view of the losses, which are shared by all links with the same antenna heights; it holds nothing of its own.
 */
public final class OddsGrid {
    private final LossGrid losses;
    private final ReachLink link;

    private OddsGrid(LossGrid losses, ReachLink link) {
        this.losses = losses;
        this.link = link;
    }

    /** The link over losses that were computed for its antenna heights; for others: IllegalArgumentException. */
    public static OddsGrid of(LossGrid losses, ReachLink link) {
        if (!losses.request().terminals().equals(link.terminals()))
            throw new IllegalArgumentException("losses are for "
                    + losses.request().terminals() + ", the link " + link.name() + " has " + link.terminals());
        return new OddsGrid(losses, link);
    }

    /** The same where these directions alone must work; there is from the source to the cell. */
    public OddsGrid asking(Ways ways) {
        return new OddsGrid(losses, link.asking(ways));
    }

    public LossGrid losses() {
        return losses;
    }

    public CellGrid grid() {
        return losses.grid();
    }

    public ReachLink link() {
        return link;
    }

    public boolean isKnown(int cell) {
        return losses.isKnown(cell);
    }

    /**
     * Margin of the weaker direction, dB, in a known cell.
     *
     * @shape  index in, scalar out; pure, makes no object
     * @unit   dB over what the copy target needs
     * @valid  known cells; others: IllegalArgumentException
     * @error  the losses' own, and the link's doubt
     * @source ledger of the link at the cell's loss and angles
     */
    public double marginDb(int cell) {
        double margin = link.marginDb(
                losses.lossDb(cell), losses.departureDeg(cell), losses.arrivalDeg(cell), losses.cover(cell));
        return link.isTurned() ? margin + link.turnedDb(bearingDeg(cell)) : margin;
    }

    /** Bearing of a cell from the source, on a plane that touches the earth between them: within 1° over 100 km below 60° of latitude. */
    private double bearingDeg(int cell) {
        Position source = losses.request().source();
        double latitudeDeg = grid().latitudeOf(grid().rowOf(cell));
        double eastDeg = Math.IEEEremainder(grid().longitudeOf(grid().columnOf(cell)) - source.longitudeDeg(), 360);
        double cos = Math.cos(Math.toRadians((latitudeDeg + source.latitudeDeg()) / 2));
        return Math.toDegrees(Math.atan2(eastDeg * cos, latitudeDeg - source.latitudeDeg()));
    }

    /**
     * Margins of cells next to one another, as {@link #marginDb}.
     *
     * @shape  index of the first cell and their number in, as many margins into the first entries of {@code out}; makes no object
     * @unit   dB over what the copy target needs; NaN where nothing is known
     * @valid  cells of the grid
     * @error  as {@link #marginDb}
     * @source as {@link #marginDb}
     */
    public void marginsDb(int firstCell, int count, double[] out) {
        for (int i = 0; i < count; i++) out[i] = isKnown(firstCell + i) ? marginDb(firstCell + i) : Double.NaN;
    }

    /** Odds of copy in a known cell, 0 to 1. */
    public double odds(int cell) {
        return link.odds(marginDb(cell));
    }

    /**
     * 95 % interval of the odds from the doubt common to all places: the margin shifted, the physics left alone.
     *
     * @shape  index in, interval out; pure
     * @unit   odds 0 to 1
     * @valid  known cells
     * @error  takes the common doubt as normal
     * @source JCGM 100:2008, 6.3.3, coverage factor 1.96
     */
    public Interval oddsInterval(int cell) {
        double margin = marginDb(cell);
        double shift = Interval.COVERAGE_95 * link.commonDoubtDb();
        return new Interval(link.odds(margin - shift), link.odds(margin + shift));
    }

    /** Whether a cell is known and has at least this margin, dB. */
    public boolean reachesMargin(int cell, double thresholdDb) {
        return losses.isKnown(cell) && marginDb(cell) >= thresholdDb;
    }

    /** Share of the known ground that reaches the target odds, with its 95 % interval from the doubt common to all places. */
    public ReachEstimate shareEstimate(double targetOdds) {
        ShareCount count = new ShareCount(this, targetOdds);
        double[] marginDb = new double[grid().columns()];
        for (int row = 0; row < grid().rows(); row++) {
            marginsDb(grid().index(row, 0), marginDb.length, marginDb);
            count.row(marginDb);
        }
        return count.estimate();
    }

    /** Outline of all ground that reaches the target odds; {@link ReachOutline#of}. */
    public MultiPolygon outline(double targetOdds) {
        double threshold = link.thresholdDb(targetOdds);
        return ReachOutline.of(grid(), cell -> reachesMargin(cell, threshold));
    }

    /** Outline of the ground round the source that reaches the target odds without a gap; {@link ReachOutline#contiguous}. */
    public Optional<Polygon> contiguousOutline(double targetOdds) {
        double threshold = link.thresholdDb(targetOdds);
        Position source = losses.request().source();
        return ReachOutline.contiguous(grid(), cell -> reachesMargin(cell, threshold), source);
    }
}
