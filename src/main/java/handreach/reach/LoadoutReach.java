package handreach.reach;

import handreach.uncertainty.Interval;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** How far one link reaches: along every bearing, and in sum, with the interval that the common doubt leaves open. */
public final class LoadoutReach {
    private final ReachLink link;
    private final double stepDeg;
    private final List<RadialReach> likely;
    private final List<RadialReach> low;
    private final List<RadialReach> high;
    private final ReachDifference difference;

    private LoadoutReach(
            ReachLink link,
            double stepDeg,
            List<RadialReach> likely,
            List<RadialReach> low,
            List<RadialReach> high,
            ReachDifference difference) {
        this.link = link;
        this.stepDeg = stepDeg;
        this.likely = likely;
        this.low = low;
        this.high = high;
        this.difference = difference;
    }

    /**
     * Reach of one link without a comparison.
     *
     * @shape  losses by bearing in; O(samples), pure
     * @unit   odds 0 to 1; results m
     * @valid  losses computed for the link's antenna heights; else IllegalArgumentException
     * @error  one sample spacing, and what the intervals say
     * @source docs/definitions.md
     */
    public static LoadoutReach of(BearingLosses losses, ReachLink link, double targetOdds) {
        return of(losses, link, margins(losses, link), targetOdds);
    }

    private static LoadoutReach of(BearingLosses losses, ReachLink link, List<double[]> marginsDb, double targetOdds) {
        double threshold = link.thresholdDb(targetOdds);
        double shift = Interval.COVERAGE_95 * link.commonDoubtDb();
        return new LoadoutReach(
                link,
                losses.request().stepDeg(),
                radials(losses, marginsDb, threshold),
                radials(losses, marginsDb, threshold + shift),
                radials(losses, marginsDb, threshold - shift),
                null);
    }

    /**
     * Reach of one link, and what it adds to the control.
     *
     * @shape  losses by bearing in, for both links; O(samples), pure
     * @unit   odds 0 to 1; results m
     * @valid  losses computed for each link's antenna heights over the same bearings
     * @error  as {@link #of}
     * @source docs/definitions.md; JCGM 100:2008, 5.2.2: what both links share cancels in their difference
     */
    public static LoadoutReach against(LoadoutReach control, BearingLosses losses, ReachLink link, double targetOdds) {
        List<double[]> marginsDb = margins(losses, link);
        LoadoutReach alone = of(losses, link, marginsDb, targetOdds);
        double threshold = link.thresholdDb(targetOdds);
        double shift = Interval.COVERAGE_95 * link.differenceDoubtDb(control.link);
        double base = median(control.likely);
        ReachDifference difference = new ReachDifference(
                control.link.name(),
                median(alone.likely) - base,
                new Interval(
                        median(radials(losses, marginsDb, threshold + shift)) - base,
                        median(radials(losses, marginsDb, threshold - shift)) - base));
        return new LoadoutReach(link, alone.stepDeg, alone.likely, alone.low, alone.high, difference);
    }

    private static List<double[]> margins(BearingLosses losses, ReachLink link) {
        if (!losses.terminals().equals(link.terminals()))
            throw new IllegalArgumentException(
                    "losses are for " + losses.terminals() + ", the link has " + link.terminals());
        List<double[]> marginsDb = new ArrayList<>();
        for (RadialLosses radial : losses.radials()) marginsDb.add(radial.marginsDb(link));
        return marginsDb;
    }

    private static List<RadialReach> radials(BearingLosses losses, List<double[]> marginsDb, double thresholdDb) {
        List<RadialReach> radials = new ArrayList<>();
        for (RadialLosses radial : losses.radials())
            radials.add(radial.reach(marginsDb.get(radials.size()), thresholdDb));
        return List.copyOf(radials);
    }

    public ReachLink link() {
        return link;
    }

    /** Number of bearings, from north clockwise. */
    public int bearings() {
        return likely.size();
    }

    public double bearingDeg(int number) {
        return number * stepDeg;
    }

    /** Reach along one bearing. */
    public RadialReach radial(int number) {
        return likely.get(number);
    }

    /** Continuous reach along one bearing with its interval, m. */
    public ReachEstimate continuousM(int number) {
        return estimate(
                likely.get(number).continuousM(),
                low.get(number).continuousM(),
                high.get(number).continuousM());
    }

    /** Farthest place at all along one bearing with its interval, m. */
    public ReachEstimate farthestM(int number) {
        return estimate(
                likely.get(number).farthestM(),
                low.get(number).farthestM(),
                high.get(number).farthestM());
    }

    /** Median over the bearings of the continuous reach, m. */
    public ReachEstimate medianM() {
        return estimate(median(likely), median(low), median(high));
    }

    /** Continuous reach along the worst bearing, m. The interval is that of the worst bearing of each shift. */
    public ReachEstimate worstM() {
        return estimate(worst(likely), worst(low), worst(high));
    }

    /** Bearing of the least continuous reach, the first of equal ones, degrees. */
    public double worstBearingDeg() {
        int worst = 0;
        for (int i = 1; i < likely.size(); i++)
            if (likely.get(i).continuousM() < likely.get(worst).continuousM()) worst = i;
        return bearingDeg(worst);
    }

    /** Share of the known ground within the radius, and within what is drawn, that reaches the target odds, 0 to 1. */
    public ReachEstimate share() {
        return estimate(share(likely), share(low), share(high));
    }

    /** Bearings whose continuous reach did not end at a gap: it is at least what is said. */
    public int openEnded() {
        return (int) likely.stream().filter(RadialReach::openEnded).count();
    }

    /** Bearings on which ground is unknown somewhere within the radius. */
    public int partlyUnknown() {
        return (int) likely.stream().filter(r -> r.unknownBeyondM().isPresent()).count();
    }

    /** What the link adds to the control; empty for the control itself. */
    public Optional<ReachDifference> overControl() {
        return Optional.ofNullable(difference);
    }

    private static ReachEstimate estimate(double value, double low, double high) {
        return new ReachEstimate(value, new Interval(low, high));
    }

    private static double median(List<RadialReach> radials) {
        double[] sorted = sorted(radials, RadialReach::continuousM);
        int n = sorted.length;
        return (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
    }

    private static double worst(List<RadialReach> radials) {
        return sorted(radials, RadialReach::continuousM)[0];
    }

    private static double share(List<RadialReach> radials) {
        double ground = 0;
        double reached = 0;
        for (RadialReach radial : radials) {
            ground += radial.knownGround();
            reached += radial.share() * radial.knownGround();
        }
        return ground > 0 ? reached / ground : 0;
    }

    private static double[] sorted(List<RadialReach> radials, ToDoubleFunction<RadialReach> figure) {
        double[] sorted = radials.stream().mapToDouble(figure).toArray();
        Arrays.sort(sorted);
        return sorted;
    }
}
