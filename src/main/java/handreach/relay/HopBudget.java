package handreach.relay;

import handreach.budget.LinkBudget;
import handreach.budget.LinkEnd;
import handreach.budget.LinkTerms;
import org.apache.commons.math3.distribution.NormalDistribution;

/** A hop's ledger turned into standings: the margin of the weaker direction over the spread between places. */
final class HopBudget {
    /** Half-width of a 95 % interval in standard uncertainties. */
    private static final double COVERAGE = 1.96;
    /** Spread below which shadowing is a step, dB. */
    private static final double LEAST_SPREAD_DB = 0.01;

    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    private final LinkBudget budget;
    private final double thereLossDb;
    private final double backLossDb;
    private final double spreadDb;

    private HopBudget(LinkBudget budget, double thereLossDb, double backLossDb) {
        this.budget = budget;
        this.thereLossDb = thereLossDb;
        this.backLossDb = backLossDb;
        this.spreadDb = Math.max(LEAST_SPREAD_DB, budget.spreadDb());
    }

    static HopBudget direct(LinkEnd a, LinkEnd b, LinkTerms terms) {
        return new HopBudget(LinkBudget.between(a, b, terms), 0, 0);
    }

    /** From somebody to the relay: its own transmitter deafens it a little. */
    static HopBudget toRelay(LinkEnd demand, RelayEquipment relay, LinkTerms terms) {
        return new HopBudget(
                LinkBudget.between(demand, relay.end(), terms), relay.mode().desenseDb(), 0);
    }

    static HopBudget betweenRelays(RelayEquipment relay, LinkTerms terms) {
        double desense = relay.mode().desenseDb();
        return new HopBudget(LinkBudget.between(relay.end(), relay.end(), terms), desense, desense);
    }

    LinkBudget budget() {
        return budget;
    }

    double marginThereDb(double lossDb, double aDeg, double bDeg) {
        return budget.marginThereDb(lossDb, aDeg, bDeg) - thereLossDb;
    }

    double marginBackDb(double lossDb, double aDeg, double bDeg) {
        return budget.marginBackDb(lossDb, aDeg, bDeg) - backLossDb;
    }

    double standing(double lossDb, double aDeg, double bDeg) {
        return Math.min(marginThereDb(lossDb, aDeg, bDeg), marginBackDb(lossDb, aDeg, bDeg)) / spreadDb;
    }

    double spreadDb() {
        return spreadDb;
    }

    /** What the standing falls by at the pessimistic end of the doubt that is common to all places. */
    double pessimism() {
        return COVERAGE * budget.commonDoubtDb() / spreadDb;
    }

    /** The standing at which the wanted odds are reached. */
    static double wanted(double odds) {
        return NORMAL.inverseCumulativeProbability(odds);
    }

    /** The standing that gives these odds; infinite at 0 and 1. */
    static double standingOf(double odds) {
        if (odds <= 0) return Double.NEGATIVE_INFINITY;
        return odds >= 1 ? Double.POSITIVE_INFINITY : NORMAL.inverseCumulativeProbability(odds);
    }
}
