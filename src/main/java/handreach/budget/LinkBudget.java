package handreach.budget;

import handreach.propagation.PathLoss;
import handreach.uncertainty.Odds;

/**
 * A link between two loadouts, all settled but the path. The margin of a path is then three additions and two pattern reads; no
 * object is made.
 */
public final class LinkBudget {
    /** Depolarised waves always get something through, dB; our suggestion. */
    private static final double TILT_LIMIT_DB = 15;

    private final Direction there;
    private final Direction back;
    private final LinkTerms terms;
    private final Ways needed;
    /** What the weaker way has but for patterns and path, dB. */
    private final double weakerFixedDb;

    private final EndBudget first;
    private final EndBudget second;

    private LinkBudget(Direction there, Direction back, LinkTerms terms, Ways needed) {
        this.there = there;
        this.back = back;
        this.terms = terms;
        this.needed = needed;
        this.weakerFixedDb = weaker().fixedDb();
        this.first = there.from();
        this.second = there.to();
    }

    /** The link between two ends under these terms. */
    public static LinkBudget between(LinkEnd a, LinkEnd b, LinkTerms terms) {
        EndBudget first = new EndBudget(a, terms.frequency());
        EndBudget second = new EndBudget(b, terms.frequency());
        Direction there = new Direction(a, first, b, second, terms);
        Direction back = new Direction(b, second, a, first, terms);
        return new LinkBudget(there, back, terms, Ways.BOTH);
    }

    /** The same link where these directions alone must work: margin, odds and doubt are then those of them. */
    public LinkBudget asking(Ways ways) {
        return ways == needed ? this : new LinkBudget(there, back, terms, ways);
    }

    public Ways needed() {
        return needed;
    }

    /**
     * Loss between two linear antennas that lean differently across the path.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   difference of tilt in degrees; result dB, positive weakens
     * @valid  every finite angle; not above 15 dB
     * @error  none below the limit; the limit is our suggestion
     * @source projection of one linear polarisation on another, −20 log cos
     */
    public static double tiltLossDb(double differenceDeg) {
        double cos = Math.abs(Math.cos(Math.toRadians(differenceDeg)));
        return Math.min(TILT_LIMIT_DB, Math.max(0, -20 * Math.log10(Math.max(cos, 1e-9))));
    }

    /**
     * Margin from the first end to the second.
     *
     * @shape  scalars in, scalar out; pure, makes no object
     * @unit   basic transmission loss dB; elevation of the path at each end, degrees above the horizon; result dB
     * @valid  every finite argument
     * @error  {@link #commonDoubtDb} and {@link #spreadThereDb}
     * @source sum of the ledger's lines
     */
    public double marginThereDb(double pathLossDb, double aElevationDeg, double bElevationDeg) {
        return there.fixedDb() + patternsDb(aElevationDeg, bElevationDeg) - pathLossDb;
    }

    /**
     * Margin from the second end to the first; elevations in the same order as {@link #marginThereDb}.
     *
     * @shape  scalars in, scalar out; pure, makes no object
     * @unit   as {@link #marginThereDb}
     * @valid  every finite argument
     * @error  {@link #commonDoubtDb} and {@link #spreadBackDb}
     * @source sum of the ledger's lines
     */
    public double marginBackDb(double pathLossDb, double aElevationDeg, double bElevationDeg) {
        return back.fixedDb() + patternsDb(aElevationDeg, bElevationDeg) - pathLossDb;
    }

    /**
     * Margin of the weaker direction of those asked for.
     *
     * @shape  scalars in, scalar out; pure, makes no object
     * @unit   as {@link #marginThereDb}
     * @valid  every finite argument; which direction is the weaker is the same on every path
     * @error  {@link #commonDoubtDb} and {@link #spreadDb}
     * @source sum of the ledger's lines
     */
    public double marginDb(double pathLossDb, double aElevationDeg, double bElevationDeg) {
        return weakerFixedDb + patternsDb(aElevationDeg, bElevationDeg) - pathLossDb;
    }

    private double patternsDb(double aElevationDeg, double bElevationDeg) {
        return first.patternDb(aElevationDeg) + second.patternDb(bElevationDeg);
    }

    private Direction weaker() {
        return isBackWeaker() ? back : there;
    }

    /** Whether the way back is the weaker one, or the only one asked for; it is so on every path or on none. */
    public boolean isBackWeaker() {
        return needed == Ways.BOTH ? back.fixedDb() < there.fixedDb() : needed == Ways.BACK;
    }

    public double commonDoubtDb() {
        return weaker().doubt().commonDb();
    }

    public double spreadDb() {
        return weaker().spreadDb();
    }

    public double spreadThereDb() {
        return there.spreadDb();
    }

    public double spreadBackDb() {
        return back.spreadDb();
    }

    /**
     * Odds of copy, both ways or as asked, at a place with this margin of the weaker direction: those of the way with the lower odds.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   margin dB; result 0 to 1
     * @valid  every finite margin
     * @error  taken as if both ways failed at the same places; independent fades would make both ways together less likely
     * @source normal spread between places, {@link handreach.uncertainty.Odds}
     */
    public double odds(double marginDb) {
        if (needed != Ways.BOTH) return Odds.ofMargin(marginDb, weaker().spreadDb());
        if (there.spreadDb() == back.spreadDb()) return Odds.ofMargin(marginDb, there.spreadDb());
        double thereDb = marginDb + there.fixedDb() - weakerFixedDb;
        double backDb = marginDb + back.fixedDb() - weakerFixedDb;
        // the way with fewer spreads in hand has the lower odds: one normal law a cell of a map, not two
        boolean isThere = thereDb * back.spreadDb() < backDb * there.spreadDb();
        return isThere ? oddsThere(thereDb) : oddsBack(backDb);
    }

    /** Odds of copy from the first end to the second with this margin of that way. */
    double oddsThere(double marginThereDb) {
        return Odds.ofMargin(marginThereDb, there.spreadDb());
    }

    /** Odds of copy from the second end to the first with this margin of that way. */
    double oddsBack(double marginBackDb) {
        return Odds.ofMargin(marginBackDb, back.spreadDb());
    }

    /**
     * Margin of the weaker direction at which both ways reach these odds.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   odds 0 to 1; result dB
     * @valid  odds between 0 and 1, ends left out
     * @error  as {@link #odds}
     * @source inverse of {@link #odds}
     */
    public double locationMarginDb(double odds) {
        if (needed != Ways.BOTH) return Odds.marginFor(odds, weaker().spreadDb());
        return Math.max(
                Odds.marginFor(odds, there.spreadDb()) - (there.fixedDb() - weakerFixedDb),
                Odds.marginFor(odds, back.spreadDb()) - (back.fixedDb() - weakerFixedDb));
    }

    /**
     * Common doubt of the difference of two links' margins; what they share (model, anchor, the same body) cancels. Like ways are
     * compared: the weaker, or, where the two links differ in which that is, the way with more doubt.
     *
     * @shape  two links in, scalar out; pure
     * @unit   standard uncertainty dB
     * @valid  any two links; sources are told apart by their figures and names
     * @error  takes each source as wholly shared or not at all
     * @source JCGM 100:2008 (GUM), 5.2.2
     */
    public double differenceDoubtDb(LinkBudget other) {
        double thereDb = there.sources().differenceDb(other.there.sources());
        double backDb = back.sources().differenceDb(other.back.sources());
        if (isBackWeaker() != other.isBackWeaker()) return Math.max(thereDb, backDb);
        return isBackWeaker() ? backDb : thereDb;
    }

    public LinkTerms terms() {
        return terms;
    }

    /** Both directions line by line for one path. */
    public TwoWayLedger ledger(PathLoss path, double aElevationDeg, double bElevationDeg) {
        return new TwoWayLedger(
                there.ledger(path, aElevationDeg, bElevationDeg),
                back.ledger(path, bElevationDeg, aElevationDeg),
                needed);
    }
}
