package handreach.relay;

import handreach.budget.LinkBudget;
import handreach.budget.LinkEnd;
import handreach.budget.TwoWayLedger;
import handreach.geodesy.Position;
import handreach.propagation.PathLoss;
import handreach.reach.SiteLesson;
import java.util.Optional;
import org.apache.commons.math3.distribution.NormalDistribution;

/** A hop's ledger turned into standings: the margin of the weaker direction over the spread between places. */
final class HopBudget {
    /** Half-width of a 95 % interval in standard uncertainties. */
    private static final double COVERAGE = 1.96;
    /** Spread below which shadowing is a step, dB. */
    private static final double LEAST_SPREAD_DB = 0.01;

    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    private final LinkBudget budget;
    private final Optional<Taught> taught;
    private final double thereLossDb;
    private final double backLossDb;
    private final double spreadDb;

    private HopBudget(LinkBudget budget, Optional<Taught> taught, double thereDesenseDb, double backDesenseDb) {
        this.budget = budget;
        this.taught = taught;
        this.thereLossDb = thereDesenseDb + siteShiftDb();
        this.backLossDb = backDesenseDb + siteShiftDb();
        this.spreadDb = Math.max(
                LEAST_SPREAD_DB,
                taught.map(known -> known.lesson().spreadDb(budget.spreadDb())).orElseGet(budget::spreadDb));
    }

    /** What walks have taught about the hop, and the shift that comes of it. */
    private record Taught(SiteLesson lesson, double shiftDb) {}

    static HopBudget direct(RelayQuestion.Setting setting, Demand a, Demand b) {
        LinkBudget budget = LinkBudget.between(a.end(), b.end(), setting.terms());
        return new HopBudget(budget, taught(setting, budget, a.end(), b.end(), a.at(), b.at()), 0, 0);
    }

    /** From somebody to the relay: its own transmitter deafens it a little. */
    static HopBudget toRelay(RelayQuestion.Setting setting, Demand demand, RelayEquipment relay) {
        LinkBudget budget = LinkBudget.between(demand.end(), relay.end(), setting.terms());
        return new HopBudget(
                budget,
                taught(setting, budget, demand.end(), relay.end(), demand.at()),
                relay.mode().desenseDb(),
                0);
    }

    static HopBudget betweenRelays(RelayQuestion.Setting setting, RelayEquipment relay) {
        LinkBudget budget = LinkBudget.between(relay.end(), relay.end(), setting.terms());
        double desense = relay.mode().desenseDb();
        return new HopBudget(budget, taught(setting, budget, relay.end(), relay.end()), desense, desense);
    }

    private static Optional<Taught> taught(
            RelayQuestion.Setting setting, LinkBudget budget, LinkEnd a, LinkEnd b, Position... people) {
        return setting.learned().map(site -> {
            SiteLesson lesson = site.lesson(budget, carry(a), carry(b));
            return new Taught(lesson, lesson.shiftDb(site.covers(setting::coverAt, people)));
        });
    }

    private static String carry(LinkEnd end) {
        return end.loadout().carry().carry().word();
    }

    LinkBudget budget() {
        return budget;
    }

    /** Both directions line by line, with what walks have taught. */
    TwoWayLedger ledger(PathLoss loss, double aDeg, double bDeg) {
        TwoWayLedger plain = budget.ledger(loss, aDeg, bDeg);
        return taught.map(known -> known.lesson()
                        .over(plain, known.shiftDb(), budget.terms().odds()))
                .orElse(plain);
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

    /** What walks have taught to add to the loss, dB. */
    double siteShiftDb() {
        return taught.map(Taught::shiftDb).orElse(0.0);
    }

    double spreadDb() {
        return spreadDb;
    }

    /** What the standing falls by at the pessimistic end of the doubt that is common to all places. */
    double pessimism() {
        double doubt = taught.map(known -> known.lesson().commonDoubtDb(budget.commonDoubtDb()))
                .orElseGet(budget::commonDoubtDb);
        return COVERAGE * doubt / spreadDb;
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
