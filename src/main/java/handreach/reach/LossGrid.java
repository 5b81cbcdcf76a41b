package handreach.reach;

import handreach.terrain.Cover;
import java.util.Optional;

/**
 * Loss from one position to every cell of a grid, with the elevation angles at which the path leaves and arrives. Immutable
 * once an engine has handed it out.
 *
 * <p>A cell is known, unknown (its path meets ground that no tile knows, or that is too steep for the model), or outside the radius or the drawn area. Only a known cell has numbers;
 * asking another for its loss is a mistake and is refused.
 */
public final class LossGrid implements CellSink {
    /** What one cell holds in memory: three floats and one byte. */
    public static final int BYTES_PER_CELL = 13;

    /** What is known of a cell. */
    public enum State {
        OUTSIDE,
        UNKNOWN,
        KNOWN
    }

    private static final int STATE_BITS = 3;
    /** On a known cell: in sight. On an unknown one: behind ground too steep for the model. */
    private static final int SIGHT_BIT = 4;

    private static final int STEEP_BIT = SIGHT_BIT;
    private static final int COVER_SHIFT = 3;
    private static final State[] STATES = State.values();
    private static final Cover[] COVERS = Cover.values();

    private final AreaRequest request;
    private final MapEngine engine;
    private final float[] lossDb;
    private final float[] departureDeg;
    private final float[] arrivalDeg;
    private final byte[] mark;
    private final SamplingDifference difference;

    LossGrid(AreaRequest request, MapEngine engine) {
        this(
                request,
                engine,
                new float[request.grid().count()],
                new float[request.grid().count()],
                new float[request.grid().count()],
                new byte[request.grid().count()],
                null);
    }

    private LossGrid(
            AreaRequest request,
            MapEngine engine,
            float[] lossDb,
            float[] departureDeg,
            float[] arrivalDeg,
            byte[] mark,
            SamplingDifference difference) {
        this.request = request;
        this.engine = engine;
        this.lossDb = lossDb;
        this.departureDeg = departureDeg;
        this.arrivalDeg = arrivalDeg;
        this.mark = mark;
        this.difference = difference;
    }

    LossGrid with(SamplingDifference measured) {
        return new LossGrid(request, engine, lossDb, departureDeg, arrivalDeg, mark, measured);
    }

    /** The same with every cell whose centre lies outside a drawn area left outside, as one beyond the radius is. */
    public LossGrid within(DrawnArea drawn) {
        byte[] narrowed = mark.clone();
        for (int cell = 0; cell < narrowed.length; cell++)
            if (state(cell) != State.OUTSIDE && !drawn.holds(grid().positionOf(cell)))
                narrowed[cell] = (byte) State.OUTSIDE.ordinal();
        return new LossGrid(request, engine, lossDb, departureDeg, arrivalDeg, narrowed, difference);
    }

    @Override
    public void put(int cell, double loss, double departure, double arrival, boolean inSight, int coverOrdinal) {
        if (!Double.isFinite(loss)) throw new IllegalStateException("loss of cell " + cell + " is not a finite number");
        lossDb[cell] = (float) loss;
        departureDeg[cell] = (float) departure;
        arrivalDeg[cell] = (float) arrival;
        mark[cell] = (byte) (State.KNOWN.ordinal() | (inSight ? SIGHT_BIT : 0) | coverOrdinal << COVER_SHIFT);
    }

    @Override
    public void putUnknown(int cell) {
        mark[cell] = (byte) State.UNKNOWN.ordinal();
    }

    /** Unknown, since its path meets ground too steep for the model to answer behind. */
    void putBehindSteepGround(int cell) {
        mark[cell] = (byte) (State.UNKNOWN.ordinal() | STEEP_BIT);
    }

    public AreaRequest request() {
        return request;
    }

    public CellGrid grid() {
        return request.grid();
    }

    /** The engine that made it. */
    public MapEngine engine() {
        return engine;
    }

    /** How far losses off radials differ from one exact path per cell; empty for engines that compute every cell. */
    public Optional<SamplingDifference> difference() {
        return Optional.ofNullable(difference);
    }

    public State state(int cell) {
        return STATES[mark[cell] & STATE_BITS];
    }

    public boolean isKnown(int cell) {
        return (mark[cell] & STATE_BITS) == State.KNOWN.ordinal();
    }

    /** Basic transmission loss, dB, of a known cell. */
    public double lossDb(int cell) {
        requireKnown(cell);
        return lossDb[cell];
    }

    /** Elevation angle at the source, degrees above the horizon, towards the cell or the horizon that hides it. */
    public double departureDeg(int cell) {
        requireKnown(cell);
        return departureDeg[cell];
    }

    /** Elevation angle in the cell, degrees above the horizon, towards the source or the horizon that hides it. */
    public double arrivalDeg(int cell) {
        requireKnown(cell);
        return arrivalDeg[cell];
    }

    /** Whether the two antennas see each other over the curved earth. */
    public boolean inSight(int cell) {
        return isKnown(cell) && (mark[cell] & SIGHT_BIT) != 0;
    }

    /** What stands on the ground in a known cell. */
    public Cover cover(int cell) {
        requireKnown(cell);
        return COVERS[mark[cell] >> COVER_SHIFT & 7];
    }

    public int knownCount() {
        return count(State.KNOWN);
    }

    /** Number of cells in a state. */
    public int count(State state) {
        int n = 0;
        for (byte m : mark) if ((m & STATE_BITS) == state.ordinal()) n++;
        return n;
    }

    /** Number of cells that are unknown only because the model gives no answer behind steep ground. */
    public int behindSteepGround() {
        int n = 0;
        for (byte m : mark) if (m == (byte) (State.UNKNOWN.ordinal() | STEEP_BIT)) n++;
        return n;
    }

    private void requireKnown(int cell) {
        if (!isKnown(cell)) throw new IllegalArgumentException("cell " + cell + " is " + state(cell));
    }
}
