package handreach.reach;

import handreach.budget.LinkBudget;
import handreach.budget.Ways;
import handreach.propagation.Terminals;
import handreach.terrain.Cover;
import handreach.uncertainty.Odds;
import java.util.List;

/**
 * A named link whose reach is asked for: the ledger between the source and whoever stands in the cell, their antenna heights, and
 * what walks have taught about the site. The first end of the budget stands at the source.
 */
public final class ReachLink {
    private final String name;
    private final LinkBudget budget;
    private final Terminals terminals;
    private final SiteLesson learned;
    /** What stands at the source, where that counts beside the cover of the cell; null where it does not. */
    private final Cover atSource;
    /** What the heading at the source does on a bearing; null where no heading is known. */
    private final TurnedEnd turned;

    private ReachLink(
            String name, LinkBudget budget, Terminals terminals, SiteLesson learned, Cover atSource, TurnedEnd turned) {
        if (name == null || budget == null || terminals == null)
            throw new IllegalArgumentException("a link has a name, a budget and antenna heights");
        this.name = name;
        this.budget = budget;
        this.terminals = terminals;
        this.learned = learned;
        this.atSource = atSource;
        this.turned = turned;
    }

    public static ReachLink of(String name, LinkBudget budget, Terminals terminals) {
        return new ReachLink(name, budget, terminals, null, null, null);
    }

    /** A link from somebody at the source of whom it is known which way they face. */
    public static ReachLink of(String name, TurnedEnd turned, Terminals terminals) {
        return new ReachLink(name, turned.facingNorth(), terminals, null, null, turned);
    }

    /** The same link where walks have taught the site; covers at the source as {@link LearnedSite#covers} hands them out. */
    public ReachLink calibrated(SiteLesson byWalks, List<Cover> coversAtSource) {
        return new ReachLink(
                name,
                budget,
                terminals,
                byWalks,
                coversAtSource.stream().findFirst().orElse(null),
                turned);
    }

    /** The same link where these directions alone must work; there is from the source. */
    public ReachLink asking(Ways ways) {
        if (ways == budget.needed()) return this;
        return new ReachLink(
                name, budget.asking(ways), terminals, learned, atSource, turned == null ? null : turned.asking(ways));
    }

    public String name() {
        return name;
    }

    public LinkBudget budget() {
        return budget;
    }

    public Terminals terminals() {
        return terminals;
    }

    /**
     * Margin of the weaker direction in one cell, with the site's shift where walks have taught one.
     *
     * @shape  scalars in, scalar out; pure, makes no object
     * @unit   loss dB; angles degrees above the horizon at the source and in the cell; result dB
     * @valid  every finite argument
     * @error  {@link #commonDoubtDb} for all cells alike, {@link #spreadDb} between cells
     * @source ledger of the link; {@link SiteCalibration}
     */
    public double marginDb(double lossDb, double departureDeg, double arrivalDeg, Cover cover) {
        double margin = budget.marginDb(lossDb, departureDeg, arrivalDeg);
        if (learned == null) return margin;
        double shift = learned.shiftDb(cover);
        return margin - (atSource == null ? shift : (shift + learned.shiftDb(atSource)) / 2);
    }

    /** What is added to {@link #marginDb} on a bearing from the source, for the way that people face there, dB; mostly nothing. */
    double turnedDb(double bearingDeg) {
        return turned == null ? 0 : turned.gainDb(bearingDeg);
    }

    /** Whether {@link #turnedDb} is anything. */
    boolean isTurned() {
        return turned != null;
    }

    /** The same between two places of which it is known who stands where, with the covers that count there. */
    public double marginDb(double lossDb, double departureDeg, double arrivalDeg, List<Cover> covers) {
        double margin = budget.marginDb(lossDb, departureDeg, arrivalDeg);
        return learned == null ? margin : margin - learned.shiftDb(covers);
    }

    /** Doubt common to all places, dB: the ledger's, or what walks have left of it. */
    public double commonDoubtDb() {
        return learned == null ? budget.commonDoubtDb() : learned.commonDoubtDb(budget.commonDoubtDb());
    }

    /** Spread between places of the weaker direction, dB: the ledger's, or the one found on the walks. */
    public double spreadDb() {
        return learned == null ? budget.spreadDb() : learned.spreadDb(budget.spreadDb());
    }

    /**
     * Margin at which these odds are reached.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   odds 0 to 1; result dB
     * @valid  odds between 0 and 1, ends left out
     * @error  as {@link #odds}
     * @source inverse of {@link #odds}
     */
    public double thresholdDb(double targetOdds) {
        return isSpreadTaught() ? Odds.marginFor(targetOdds, spreadDb()) : budget.locationMarginDb(targetOdds);
    }

    /**
     * Odds of copy both ways at a place with this margin of the weaker direction.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   margin dB; result 0 to 1
     * @valid  every finite margin
     * @error  as {@link LinkBudget#odds}; where walks have taught one spread it holds for both ways
     * @source {@link LinkBudget#odds}; else the spread found on the walks
     */
    public double odds(double marginDb) {
        return isSpreadTaught() ? Odds.ofMargin(marginDb, spreadDb()) : budget.odds(marginDb);
    }

    /** Whether walks have taught one spread for both ways. */
    private boolean isSpreadTaught() {
        return learned != null && learned.calibration().spreadDb() != 0;
    }

    /**
     * Common doubt of the difference of two links' margins; what they share cancels.
     *
     * @shape  two links in, scalar out; pure
     * @unit   standard uncertainty dB
     * @valid  as {@link LinkBudget#differenceDoubtDb}
     * @error  as {@link LinkBudget#differenceDoubtDb}; what walks have taught is left out, since both links share it
     * @source {@link LinkBudget#differenceDoubtDb}
     */
    public double differenceDoubtDb(ReachLink other) {
        return budget.differenceDoubtDb(other.budget);
    }
}
