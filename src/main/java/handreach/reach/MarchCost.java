package handreach.reach;

import handreach.propagation.Terminals;
import handreach.propagation.radial.RadialMarch;
import java.util.List;
import java.util.Locale;

/**
 * What marching the field along radials will cost, said before it starts.
 *
 * @param radials number of radials, those that halve gaps left out: how many that will be shows on the way
 * @param checked cells to which an exact path is marched beside them ({@link SamplingDifference})
 * @param pairs pairs of antenna heights; those with one height at the source share a march
 * @param threads threads that share the work
 * @param seconds about how long it takes on these threads when they have nothing else to do
 * @param bytes working memory of all threads together
 * @param isTried whether the time was measured on short paths just now, and not counted alone
 */
public record MarchCost(int radials, int checked, int pairs, int threads, double seconds, long bytes, boolean isTried) {
    /** Ground read, cells put to radials, code compiled: measured, docs/performance.md. */
    static final double START_S = 0.2;
    /** A path by itself takes so many times the processor time of one among radials in lockstep: between hills and mountains, measured. */
    private static final double ALONE = 6;

    /**
     * Cost of {@link MarchArea}: by counts, at once and the same on every machine; or by a trial, for a march of which people want to know
     * whether it takes a minute or five.
     *
     * @shape  24 paths all round are cut and counted, and for a trial short ones marched on all threads for half a second to two
     * @unit   m, s, bytes
     * @valid  as the engine, while its threads have nothing else to do: beside other work it takes longer; by counts on a machine as quick
     *         as that of the fit
     * @error  by counts 0.8 to 1.3 of the processor time of six warm maps of 10 km at 146 and 446 MHz, and two seconds for a cold start; an
     *         older or busy machine up to four times as long. By a trial 0.77 to 1.24 of the processor time of ten cold runs, 1 to 25 km,
     *         70 to 446 MHz, one to three pairs; told as ±40 %
     * @source counts of {@code FieldMarchCost}, fitted to 500 measured paths, with a trial times the speed of this machine in it;
     *         docs/performance.md
     */
    static MarchCost ofArea(
            AreaRequest request, List<Terminals> heights, AreaGround ground, double arcM, MarchTrial trial) {
        return ofRadials(request, heights, ground, MarchArea.radials(request.radiusM(), arcM), trial);
    }

    static MarchCost ofRadials(
            AreaRequest request, List<Terminals> heights, AreaGround ground, int radials, MarchTrial trial) {
        return of(AreaSetting.of(request, ground), heights, radials, RadialMarch.together(), trial);
    }

    /** Cost of {@link BearingLosses} by the march; {@link #ofArea}. */
    public static MarchCost ofBearings(
            BearingRequest request, List<Terminals> heights, AreaGround ground, MarchTrial trial) {
        AreaSetting setting =
                new AreaSetting(request.source(), request.radiusM(), request.conditions(), request.model(), ground);
        return of(setting, heights, request.bearings(), 0, trial);
    }

    /**
     * @param together radials that go in lockstep; 0 where they are the bearings of a rose
     */
    private static MarchCost of(
            AreaSetting setting, List<Terminals> heights, int radials, int together, MarchTrial trial) {
        MarchProbe probe = new MarchProbe(setting, heights, 1);
        boolean isMap = together > 0;
        boolean isLockstep = together > 1;
        int checked = isMap ? MarchArea.checked(radials) : 0;
        double marched = isMap ? MarchArea.marched(radials) * (1 + MarchArea.FORETOLD_WITHIN) : radials;
        double radialsS = marched * probe.meanS(setting.radiusM());
        double cellsS = checked > 0 ? checked * probe.meanOfCellsS() : 0;
        double seconds = 0;
        if (radialsS + cellsS > 0 && trial.isMade()) {
            double countedS = radialsS + (isLockstep ? ALONE : 1) * cellsS;
            seconds = START_S + trial.seconds(setting, heights, Math.max(1, together), countedS);
        } else if (radialsS + cellsS > 0) {
            double countedS = radialsS / (isLockstep ? MarchCount.IN_LOCKSTEP : 1) + cellsS;
            seconds = MarchCount.COLD_S + countedS / trial.threads();
        }
        long bytes = probe.mostBytes() * trial.threads();
        return new MarchCost(radials, checked, heights.size(), trial.threads(), seconds, bytes, trial.isMade());
    }

    /** Whether it counts no more than the usual wait, so that a trial would only make people wait for longer. */
    public boolean isShort() {
        return seconds <= MarchCount.USUAL_WAIT_S;
    }

    /** Both, one after the other, for the same heights: radials, cells and times added, the larger memory. */
    public MarchCost and(MarchCost other) {
        return new MarchCost(
                radials + other.radials,
                checked + other.checked,
                pairs,
                threads,
                seconds + other.seconds,
                Math.max(bytes, other.bytes),
                isTried && other.isTried);
    }

    /** Which march a map goes by on this virtual machine, in words behind "radials": several at once, or nothing more to say. */
    public static String together() {
        int together = RadialMarch.together();
        return together > 1 ? ", " + together + " at once in vectors of 32 bits" : " one by one";
    }

    /** One line for people, said before the march starts. */
    public String sentence() {
        return String.format(
                Locale.ROOT,
                "Marching the field along %d radials%s%s, %s: about %s on %s with nothing else to do"
                        + " (%s), and %.0f MB of memory.",
                radials,
                checked > 0 ? ", more where neighbours differ," : "",
                checked > 0 ? " and to " + checked + " single cells as a check" : "",
                counted(pairs, "pair of antenna heights", "pairs of antenna heights"),
                time(),
                counted(threads, "thread", "threads"),
                isTried
                        ? "good to 40 %, by a trial just now"
                        : "by counts; an old machine takes up to four times as long",
                Math.ceil(bytes / 1e6));
    }

    private String time() {
        if (seconds < 90) return String.format(Locale.ROOT, "%.0f s", Math.max(1, seconds));
        if (seconds < 5400) return String.format(Locale.ROOT, "%.0f min", seconds / 60);
        return String.format(Locale.ROOT, "%.1f h", seconds / 3600);
    }

    private static String counted(int number, String one, String many) {
        return number + " " + (number == 1 ? one : many);
    }
}
