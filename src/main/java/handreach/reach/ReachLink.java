package handreach.reach;

import handreach.budget.LinkBudget;
import handreach.propagation.Terminals;
import handreach.terrain.Cover;
import handreach.uncertainty.Odds;

/**
 * A named link whose reach is asked for: the ledger between the source and whoever stands in the cell, their antenna heights, and
 * what walks have taught about the site. The first end of the budget stands at the source.
 */
public final class ReachLink {
    /** Half-width of a 95 % interval in standard uncertainties, normal law. */
    static final double COVERAGE_95 = 1.96;

    private final String name;
    private final LinkBudget budget;
    private final Terminals terminals;
    private final Learned learned;

    private ReachLink(String name, LinkBudget budget, Terminals terminals, Learned learned) {
        if (name == null || budget == null || terminals == null)
            throw new IllegalArgumentException("a link has a name, a budget and antenna heights");
        this.name = name;
        this.budget = budget;
        this.terminals = terminals;
        this.learned = learned;
    }

    /**
     * What a calibration means for one link.
     *
     * @param calibration from walks
     * @param carryA carry position at the source, as the calibration names it
     * @param carryB carry position in the cell
     * @param relativeDoubtDb common doubt of this link's margin against the link that was walked, dB; 0 for that link itself
     */
    public record Learned(SiteCalibration calibration, String carryA, String carryB, double relativeDoubtDb) {
        public Learned {
            if (calibration == null || !(relativeDoubtDb >= 0))
                throw new IllegalArgumentException("a calibration and a doubt from 0 up, not " + relativeDoubtDb);
        }
    }

    public static ReachLink of(String name, LinkBudget budget, Terminals terminals) {
        return new ReachLink(name, budget, terminals, null);
    }

    /** The same link where walks have taught the site. */
    public ReachLink calibrated(Learned byWalks) {
        return new ReachLink(name, budget, terminals, byWalks);
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
        return margin - learned.calibration().lossShiftDb(cover, learned.carryA(), learned.carryB());
    }

    /** Doubt common to all places, dB: the ledger's, or what walks have left of it. */
    public double commonDoubtDb() {
        if (learned == null) return budget.commonDoubtDb();
        double taught = learned.calibration().commonUncertaintyDb(learned.carryA(), learned.carryB());
        return Math.min(budget.commonDoubtDb(), Math.hypot(taught, learned.relativeDoubtDb()));
    }

    /** Spread between places, dB: the ledger's, or the one found on the walks. */
    public double spreadDb() {
        if (learned == null || learned.calibration().spreadDb() == 0) return budget.spreadDb();
        return learned.calibration().spreadDb();
    }

    /** Margin at which the wanted odds of the link's terms are reached, dB. */
    public double thresholdDb() {
        return thresholdDb(budget.terms().odds());
    }

    /** Margin at which these odds are reached, dB. */
    public double thresholdDb(double targetOdds) {
        return Odds.marginFor(targetOdds, spreadDb());
    }

    /** Odds of copy at a place with this margin. */
    public double odds(double marginDb) {
        return Odds.ofMargin(marginDb, spreadDb());
    }

    /** Common doubt of the difference of two links' margins, dB; what they share cancels. */
    public double differenceDoubtDb(ReachLink other) {
        return budget.differenceDoubtDb(other.budget);
    }
}
