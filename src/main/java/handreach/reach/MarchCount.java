package handreach.reach;

import handreach.propagation.Terminals;
import java.util.List;

/**
 * Whether a map is one for the march where nobody names a model. It goes by counts alone: the same plan over the same tiles has one
 * answer on every machine, however busy, and every command asks here. How long a march takes on this machine is {@link MarchCost}'s matter.
 *
 * @param seconds of the whole map, rose and check cells included, on {@link #THREADS} threads at the speed of the fit; without end, and
 *     not counted, where a bearing meets ground too steep
 * @param meetsSteepGround whether a bearing meets ground behind which the march gives no answer
 */
public record MarchCount(double seconds, boolean meetsSteepGround) {
    /**
     * The usual wait, s: a map that counts no more is marched unasked. Ten seconds is as long as a person waits for a page without
     * turning to something else (common practice, no source), and three times what the closed form takes by one path per cell.
     */
    public static final double USUAL_WAIT_S = 10;

    /** Threads of the machine that is counted with; half of small machines have no more (from memory). */
    private static final int THREADS = 2;
    /** Radials of a full turn that is counted with, as in lockstep, and how many times less each takes so: docs/performance.md. */
    private static final int RADIALS = 900;

    static final double IN_LOCKSTEP = 4;
    /** Until the virtual machine has compiled the march, s of each thread: a cold process beside the counts, as far as a busy machine tells. */
    static final double COLD_S = 2;

    /**
     * Counts the map of a request and its rose.
     *
     * @shape  one path a bearing is cut, and where none meets ground too steep 24 all round counted; none is marched
     * @unit   s
     * @valid  as {@link MarchArea}; ground that the bearings pass by may still be too steep
     * @error  the counts are good to 40 % on the machine of the fit when it has nothing else to do (docs/performance.md); another, or a busy
     *         one, differs by a factor, up to 4 seen
     * @source counts of {@code FieldMarchCost}
     */
    public static MarchCount of(AreaRequest request, int bearings, List<Terminals> heights, AreaGround ground) {
        AreaSetting setting = AreaSetting.of(request, ground);
        MarchProbe probe = new MarchProbe(setting, heights, 1);
        if (probe.meetsSteepGround(bearings)) return new MarchCount(Double.POSITIVE_INFINITY, true);
        double arcM = Math.max(request.grid().cellM(), 2 * Math.PI * request.radiusM() / RADIALS);
        int radials = MarchArea.radials(request.radiusM(), arcM);
        double alone = bearings + MarchArea.marched(radials) / IN_LOCKSTEP;
        double countedS = alone * probe.meanS(request.radiusM()) + MarchArea.checked(radials) * probe.meanOfCellsS();
        return new MarchCount(COLD_S + countedS / THREADS, false);
    }

    /** Whether it is over within the usual wait. */
    public boolean isShort() {
        return seconds <= USUAL_WAIT_S;
    }
}
