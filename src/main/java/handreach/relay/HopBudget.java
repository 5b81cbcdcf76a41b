package handreach.relay;

import handreach.budget.LinkBudget;
import handreach.budget.LinkEnd;
import handreach.budget.TwoWayLedger;
import handreach.budget.Ways;
import handreach.geodesy.Position;
import handreach.propagation.PathLoss;
import handreach.reach.SiteLesson;
import handreach.uncertainty.Interval;
import handreach.uncertainty.Odds;
import java.util.Optional;
import org.apache.commons.math3.distribution.NormalDistribution;

/** A hop's ledger turned into standings: the margin of the weaker direction over the spread between places. */
final class HopBudget {
    /** Spread below which shadowing is a step, dB. */
    private static final double LEAST_SPREAD_DB = 0.01;

    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    private final LinkBudget budget;
    private final Optional<Taught> taught;
    private final double thereSpreadDb;
    private final double backSpreadDb;

    private HopBudget(LinkBudget budget, Optional<Taught> taught) {
        this.budget = budget;
        this.taught = taught;
        this.thereSpreadDb = spreadDb(budget.spreadThereDb());
        this.backSpreadDb = spreadDb(budget.spreadBackDb());
    }

    private double spreadDb(double ledgerDb) {
        return Math.max(
                LEAST_SPREAD_DB,
                taught.map(known -> known.lesson().spreadDb(ledgerDb)).orElse(ledgerDb));
    }

    private static HopBudget of(RelayRequest.Setting setting, LinkEnd a, LinkEnd b, Position... people) {
        return of(setting, LinkBudget.between(a, b, setting.terms()), a, b, people);
    }

    private static HopBudget of(
            RelayRequest.Setting setting, LinkBudget budget, LinkEnd a, LinkEnd b, Position... people) {
        return new HopBudget(budget, taught(setting, budget, a, b, people));
    }

    /** Straight between two people, with the budget of what they carry at hand: to compute it takes longer than most paths. */
    static HopBudget direct(RelayRequest.Setting setting, LinkBudget budget, Party a, Party b) {
        return of(setting, budget.asking(setting.straight(a, b)), a.end(), b.end(), a.at(), b.at());
    }

    /** What walks have taught about the hop, and the shift that comes of it. */
    private record Taught(SiteLesson lesson, double shiftDb) {}

    static HopBudget direct(RelayRequest.Setting setting, Party a, Party b) {
        LinkEnd first = a.endTowards(b.at());
        LinkEnd second = b.endTowards(a.at());
        LinkBudget budget = LinkBudget.between(first, second, setting.terms()).asking(setting.straight(a, b));
        return of(setting, budget, first, second, a.at(), b.at());
    }

    /** From somebody to the relay: its own transmitter deafens it a little. */
    static HopBudget toRelay(RelayRequest.Setting setting, Party demand, RelayEquipment relay) {
        return toRelay(setting, demand, relay, setting.toRelay(demand));
    }

    /** The same where these ways must work. */
    static HopBudget toRelay(RelayRequest.Setting setting, Party demand, RelayEquipment relay, Ways ways) {
        LinkEnd there = relay.atWork();
        LinkBudget budget =
                LinkBudget.between(demand.end(), there, setting.terms()).asking(ways);
        return of(setting, budget, demand.end(), there, demand.at());
    }

    /** From somebody to what stands already, with the budget at hand: covers count as for a relay, or at both ends of a talk. */
    static HopBudget toStation(
            RelayRequest.Setting setting,
            LinkBudget budget,
            Party demand,
            Position site,
            LinkEnd station,
            boolean isRelay) {
        return isRelay
                ? of(setting, budget, demand.end(), station, demand.at())
                : of(setting, budget, demand.end(), station, demand.at(), site);
    }

    /** Odds of a hop that is heard on one frequency and answered on another. */
    static HopPath.HopOdds split(TalkBook.Hop up, TalkBook.Hop down) {
        HopBudget in = up.budget();
        HopBudget out = down.budget();
        double thereDb = in.thereDb(up.lossDb(), up.departureDeg(), up.arrivalDeg());
        double backDb = out.backDb(down.lossDb(), down.departureDeg(), down.arrivalDeg());
        double there = thereDb / in.thereSpreadDb;
        double back = backDb / out.backSpreadDb;
        Ways ways = in.budget.needed();
        double sure = ways.least(
                there - Interval.COVERAGE_95 * in.commonDoubtDb() / in.thereSpreadDb,
                back - Interval.COVERAGE_95 * out.commonDoubtDb() / out.backSpreadDb);
        return new HopPath.HopOdds(
                Odds.ofMargin(thereDb, in.thereSpreadDb),
                Odds.ofMargin(backDb, out.backSpreadDb),
                ways.least(thereDb, backDb),
                ways.least(there, back),
                Odds.ofMargin(sure, 1),
                ways == Ways.BOTH
                        ? Math.max(in.siteShiftDb(), out.siteShiftDb())
                        : ways.least(in.siteShiftDb(), out.siteShiftDb()),
                ways);
    }

    static HopBudget betweenRelays(RelayRequest.Setting setting, RelayEquipment relay) {
        return of(setting, relay.atWork(), relay.atWork());
    }

    private static Optional<Taught> taught(
            RelayRequest.Setting setting, LinkBudget budget, LinkEnd a, LinkEnd b, Position... people) {
        return setting.learned().map(site -> {
            SiteLesson lesson = site.lesson(budget, carry(a), carry(b));
            return new Taught(lesson, lesson.shiftDb(site.covers(setting::coverAt, people)));
        });
    }

    private static String carry(LinkEnd end) {
        return end.loadout().carry().carry().word();
    }

    /** Both directions line by line, with what walks have taught. */
    TwoWayLedger ledger(PathLoss loss, double aDeg, double bDeg) {
        TwoWayLedger plain = budget.ledger(loss, aDeg, bDeg);
        return taught.map(known -> known.lesson()
                        .over(plain, known.shiftDb(), budget.terms().odds()))
                .orElse(plain);
    }

    /** Margin over spread, of the way with the lower odds. */
    double standing(double lossDb, double aDeg, double bDeg) {
        return budget.needed()
                .least(thereDb(lossDb, aDeg, bDeg) / thereSpreadDb, backDb(lossDb, aDeg, bDeg) / backSpreadDb);
    }

    private double thereDb(double lossDb, double aDeg, double bDeg) {
        return budget.marginThereDb(lossDb, aDeg, bDeg) - siteShiftDb();
    }

    private double backDb(double lossDb, double aDeg, double bDeg) {
        return budget.marginBackDb(lossDb, aDeg, bDeg) - siteShiftDb();
    }

    /** Odds of one path, both ways: those of its ledger to a thousand-millionth, without its lines. */
    HopPath.HopOdds odds(double lossDb, double aDeg, double bDeg) {
        double there = thereDb(lossDb, aDeg, bDeg);
        double back = backDb(lossDb, aDeg, bDeg);
        double standing = standing(lossDb, aDeg, bDeg);
        return new HopPath.HopOdds(
                Odds.ofMargin(there, thereSpreadDb),
                Odds.ofMargin(back, backSpreadDb),
                budget.needed().least(there, back),
                standing,
                Odds.ofMargin(standing - pessimism(), 1),
                siteShiftDb(),
                budget.needed());
    }

    /** By how many decibels both ways could fall before one of them has less than this standing. */
    double spareDb(double lossDb, double aDeg, double bDeg, double standing) {
        return budget.needed()
                .least(
                        thereDb(lossDb, aDeg, bDeg) - standing * thereSpreadDb,
                        backDb(lossDb, aDeg, bDeg) - standing * backSpreadDb);
    }

    /** What walks have taught to add to the loss, dB. */
    double siteShiftDb() {
        return taught.map(Taught::shiftDb).orElse(0.0);
    }

    /** What the standing falls by at the pessimistic end of the doubt that is common to all places. */
    double pessimism() {
        return Interval.COVERAGE_95 * commonDoubtDb() / (budget.isBackWeaker() ? backSpreadDb : thereSpreadDb);
    }

    private double commonDoubtDb() {
        return taught.map(known -> known.lesson().commonDoubtDb(budget.commonDoubtDb()))
                .orElseGet(budget::commonDoubtDb);
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
