package handreach.propagation.handheld;

import handreach.propagation.EndCover;
import handreach.propagation.PathConditions;
import handreach.propagation.PathGeometry;
import handreach.propagation.Terminals;
import handreach.terrain.Cover;

/**
 * A radial walked outward under the {@code handheld} model, with what stands around its two ends.
 *
 * <p>Of the three ways to count trees and town exactly one is taken: bare ground between the ends and one term per end
 * ({@link EndCover}). What stands between the ends adds nothing.
 *
 * <p>One object per thread; nothing is allocated while walking.
 */
public final class HandheldWalk {
    private final HandheldTerms terms;
    private final EndCover ends;
    private final StretchedString string;
    private final StretchedString raised;
    private double raisedNearM;
    private double nearTownDb;
    private HandheldTerms.End nearAmong;
    private HandheldTerms.End nearEnd;
    private HandheldTerms.End farAmong;
    private HandheldTerms.End farEnd;
    private Cover farCover = Cover.OPEN;
    private double farStandingM;
    private boolean nearInWood;
    private double nearWoodRunM;
    private double nearTopsOverM;

    // What was computed last.
    private double bareDb;
    private double townDb;
    private double woodDb;

    /** Room for so many ground samples a radial. */
    public HandheldWalk(PathConditions conditions, Terminals terminals, int capacity) {
        terms = HandheldTerms.of(conditions, terminals);
        ends = new EndCover(conditions);
        string = new StretchedString(capacity);
        raised = new StretchedString(capacity);
        farAmong = terms.far();
        farEnd = farAmong;
    }

    public int capacity() {
        return string.capacity();
    }

    public HandheldTerms terms() {
        return terms;
    }

    /**
     * Begin a radial at the near end.
     *
     * @param groundM ground under the near antenna, m above sea level
     * @param cover what stands around the near end
     * @param clutterM its height, m; 0 for the representative one
     * @param woodRunM unbroken woodland along the radial from the near end, m
     */
    public void start(double groundM, Cover cover, double clutterM, double woodRunM) {
        double heightM = terms.terminals().txHeightM();
        raisedNearM = EndCover.raisedM(heightM, cover, clutterM);
        nearTownDb = ends.roofsDb(heightM, raisedNearM, cover);
        nearInWood = cover == Cover.WOODLAND;
        nearAmong = among(terms.near(), cover, clutterM);
        nearEnd = nearAmong;
        nearWoodRunM = Double.NaN;
        nearWoodRun(woodRunM);
        nearTopsOverM = EndCover.topsOverM(heightM, clutterM);
        string.start(terms.effectiveRadiusM(), groundM, heightM);
        if (raisedNearM > heightM) raised.start(terms.effectiveRadiusM(), groundM, raisedNearM);
    }

    /**
     * A whole path of equal steps at once, in place of {@link #start} and {@link #add}: faster, and not to be walked on.
     *
     * @param stepM between neighbouring samples, m
     * @param groundM ground above sea level, m; samples 0 to {@code last} are read
     * @param cover what stands around the near end
     * @param clutterM its height, m; 0 for the representative one
     */
    public void lay(double stepM, double[] groundM, int last, Cover cover, double clutterM) {
        start(groundM[0], cover, clutterM, 0);
        double farM = terms.terminals().rxHeightM();
        double radiusM = terms.effectiveRadiusM();
        string.lay(radiusM, terms.terminals().txHeightM(), farM, stepM, groundM, last);
        if (nearInTown()) raised.lay(radiusM, raisedNearM, farM, stepM, groundM, last);
    }

    /** Walk on to the next ground sample; afterwards the path ends there. */
    public void add(double distanceM, double groundM) {
        string.add(distanceM, groundM);
        if (nearInTown()) raised.add(distanceM, groundM);
    }

    /** Take the end of the path elsewhere, see {@link StretchedString#moveEnd}. */
    public void moveEnd(double distanceM, double groundM) {
        string.moveEnd(distanceM, groundM);
        if (nearInTown()) raised.moveEnd(distanceM, groundM);
    }

    /** Unbroken woodland from the near end along the path now asked about, m; it never runs past that path's end. */
    public void nearWoodRun(double runM) {
        double runInWoodM = nearInWood ? runM : 0;
        if (runInWoodM == nearWoodRunM) return;
        nearWoodRunM = runInWoodM;
        if (nearInWood) nearEnd = inWood(terms.near(), nearAmong, runInWoodM);
    }

    /** An end well inside what stands around it. */
    private HandheldTerms.End among(HandheldTerms.End open, Cover cover, double clutterM) {
        double countedM = EndCover.countedM(open.heightM(), cover, clutterM);
        return countedM == open.heightM() ? open : terms.end(open.heightM(), countedM);
    }

    private HandheldTerms.End inWood(HandheldTerms.End open, HandheldTerms.End among, double runM) {
        return among.countedM() == open.countedM() ? open : open.toward(among, ends.woodShare(runM));
    }

    private void farEnd(Cover cover, double clutterM, double woodRunM) {
        if (cover != farCover || clutterM != farStandingM) {
            farCover = cover;
            farStandingM = clutterM;
            farAmong = among(terms.far(), cover, clutterM);
        }
        farEnd = cover == Cover.WOODLAND ? inWood(terms.far(), farAmong, woodRunM) : farAmong;
    }

    private boolean nearInTown() {
        return raisedNearM > terms.terminals().txHeightM();
    }

    /**
     * Loss over free space of the path that ends at the last sample walked.
     *
     * @shape  what stands around the far end in, scalar out; O(log n) beyond the horizon, O(n) in sight; nothing allocated
     * @unit   height of what stands there m, 0 for the representative one; unbroken woodland along the radial back from the far end
     *     m; result dB, negative where the ground helps
     * @valid  at least two samples walked
     * @error  bare ground as {@link Handheld}; woodland 5 to 9 dB, town 6 dB standard deviation between places
     * @source ours, see {@link Handheld}; Rec. ITU-R P.833-9 section 2.1; Rec. ITU-R P.2108-1 section 3.1
     */
    public double excessDb(Cover cover, double clutterM, double woodRunM) {
        double farM = terms.terminals().rxHeightM();
        double raisedFarM = EndCover.raisedM(farM, cover, clutterM);
        farEnd(cover, clutterM, woodRunM);
        double overRoofs = Double.NEGATIVE_INFINITY;
        if (nearInTown() || raisedFarM > farM)
            overRoofs = nearTownDb
                    + ends.roofsDb(farM, raisedFarM, cover)
                    + terms.excessDb(
                            nearInTown() ? raised : string, over(nearEnd, raisedNearM), over(farEnd, raisedFarM));
        bareDb = terms.excessDb(string, nearEnd, farEnd);
        townDb = Math.max(0, overRoofs - bareDb);
        double farWood = cover == Cover.WOODLAND ? woodRunM : 0;
        woodDb = ends.throughTreesDb(nearWoodRunM, nearTopsOverM, string.nearSlope())
                + ends.throughTreesDb(farWood, EndCover.topsOverM(farM, clutterM), string.farSlope());
        return bareDb + townDb + woodDb;
    }

    /** An end as it is, or over the roofs around it. */
    private HandheldTerms.End over(HandheldTerms.End end, double raisedM) {
        return raisedM > end.heightM() ? terms.end(raisedM, raisedM) : end;
    }

    /**
     * What the antennas of the path computed last gain less by their height than over open ground, see {@link EndCover#countedM}.
     *
     * @shape  scalar out; O(log n) beyond the horizon, O(n) in sight; nothing allocated
     * @unit   dB; exactly 0 where no end stands in cover higher than itself, or none is higher than a hand
     * @valid  after the loss
     * @error  as {@link EndCover#countedM}
     * @source as {@link EndCover#countedM}; ground laws as {@link Handheld}
     */
    public double heightInCoverDb() {
        if (nearEnd.countedM() == nearEnd.heightM() && farEnd.countedM() == farEnd.heightM()) return 0;
        return bareDb - terms.excessDb(string, terms.near(), terms.far());
    }

    /** Whether the antennas of the path computed last see each other over the bare ground. */
    public boolean inSight() {
        return string.inSight();
    }

    /** Elevation angle at the near antenna of the path computed last, degrees; as {@link PathGeometry#departureDeg}. */
    public double departureDeg() {
        return elevationDeg(string.nearSlope());
    }

    /** Elevation angle at the far antenna of the path computed last, degrees; as {@link PathGeometry#arrivalDeg}. */
    public double arrivalDeg() {
        return elevationDeg(string.farSlope());
    }

    /** Arc tangent in degrees; for the small slopes of most ground six terms of its series leave 1e-12 and take a fifth of the time. */
    private static double elevationDeg(double slope) {
        if (!(Math.abs(slope) < 0.1)) return Math.toDegrees(Math.atan(slope));
        double s = slope * slope;
        return Math.toDegrees(slope
                * (1 - s * (1.0 / 3 - s * (1.0 / 5 - s * (1.0 / 7 - s * (1.0 / 9 - s * (1.0 / 11)))))));
    }

    StretchedString string() {
        return string;
    }

    double bareDb() {
        return bareDb;
    }

    /** What the edges of the bare ground cost; a map asks for the whole alone, so it is not kept for every cell. */
    double edgesDb() {
        return terms.edgesDb(string);
    }

    double townDb() {
        return townDb;
    }

    double woodDb() {
        return woodDb;
    }
}
