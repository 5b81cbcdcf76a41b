package handreach.relay;

import handreach.budget.TwoWayLedger;
import handreach.budget.Ways;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.profile.Profile;
import handreach.propagation.PathGeometry;
import handreach.propagation.PathLoss;
import handreach.propagation.Terminals;
import java.util.Comparator;
import java.util.Optional;

/**
 * One path computed exactly: its ground, its loss, both ledgers, its odds. Ends nearer than 50 m count as 50 m apart.
 *
 * @param line over the ground
 * @param profile heights and cover along it
 * @param geometry clearance, obstacles, angles
 * @param loss by the chosen model
 * @param ledger both directions, line by line, desense of a relay and what walks have taught among them
 * @param odds of copy
 */
public record HopPath(
        GeodesicLine line, Profile profile, PathGeometry geometry, PathLoss loss, TwoWayLedger ledger, HopOdds odds) {
    /**
     * Odds of one path.
     *
     * @param there from the first end to the second
     * @param back the other way
     * @param marginDb of the weaker direction at the median place
     * @param standing margin over spread of the direction with the lower odds
     * @param pessimistic odds of the weaker direction at the pessimistic end of the doubt that is common to all places
     * @param siteShiftDb what walks have taught to add to the loss, dB; a line of the ledger
     * @param needed which directions must work: the weaker of them is meant wherever the weaker is spoken of
     */
    public record HopOdds(
            double there,
            double back,
            double marginDb,
            double standing,
            double pessimistic,
            double siteShiftDb,
            Ways needed) {
        /** The same path from the other end. */
        public HopOdds turned() {
            return new HopOdds(back, there, marginDb, standing, pessimistic, siteShiftDb, needed.turned());
        }

        /** The way there of one and the way back of another, each asked for that way alone. */
        static HopOdds answered(HopOdds up, HopOdds down, Ways ways) {
            return new HopOdds(
                    up.there,
                    down.back,
                    ways.least(up.marginDb, down.marginDb),
                    ways.least(up.standing, down.standing),
                    ways.least(up.pessimistic, down.pessimistic),
                    ways == Ways.BOTH
                            ? Math.max(up.siteShiftDb, down.siteShiftDb)
                            : ways.least(up.siteShiftDb, down.siteShiftDb),
                    ways);
        }

        /** Odds of the weaker direction. */
        public double weaker() {
            return needed.least(there, back);
        }
    }

    /** Straight between two people. */
    public static Optional<HopPath> direct(RelayRequest.Setting setting, Party a, Party b) {
        HopBudget budget = HopBudget.direct(setting, a, b);
        return between(setting, a.at(), b.at(), new Terminals(a.heightM(), b.heightM()), budget);
    }

    /** From somebody to a relay; empty where the ground is unknown. */
    public static Optional<HopPath> toRelay(RelayRequest question, int demand, Position site, RelayEquipment relay) {
        RelayRequest.Setting setting = question.hops();
        Party party = question.demands().get(demand);
        if (relay.twoWays().isEmpty()) return toRelay(setting, party, site, relay);
        RelayEquipment.Split split = relay.twoWays().get();
        Optional<HopPath> up = oneWay(split.in(), demand, site, relay.hearing(), Ways.THERE);
        Optional<HopPath> down = oneWay(split.out(), demand, site, relay.sending(), Ways.BACK);
        return up.flatMap(in -> down.map(out -> answered(in, out, setting.toRelay(party))));
    }

    private static Optional<HopPath> oneWay(
            RelayEquipment.Side side, int demand, Position site, RelayEquipment relay, Ways way) {
        Party party = side.people().get(demand);
        HopBudget budget = HopBudget.toRelay(side.setting(), party, relay, way);
        return between(side.setting(), party.at(), site, new Terminals(party.heightM(), relay.mastM()), budget);
    }

    /** Up on one frequency and down on another; ground and loss are those of the way that rules. */
    private static HopPath answered(HopPath up, HopPath down, Ways ways) {
        TwoWayLedger ledger = new TwoWayLedger(up.ledger.there(), down.ledger.back(), ways);
        HopOdds odds = HopOdds.answered(up.odds, down.odds, ways);
        HopPath rules = ledger.weaker().equals(ledger.back()) ? down : up;
        return new HopPath(rules.line, rules.profile, rules.geometry, rules.loss, ledger, odds);
    }

    static Optional<HopPath> toRelay(RelayRequest.Setting setting, Party demand, Position site, RelayEquipment relay) {
        HopBudget budget = HopBudget.toRelay(setting, demand, relay);
        return between(setting, demand.at(), site, new Terminals(demand.heightM(), relay.mastM()), budget);
    }

    static Optional<HopPath> betweenRelays(
            RelayRequest.Setting setting, Position one, Position other, RelayEquipment relay) {
        HopBudget budget = HopBudget.betweenRelays(setting, relay);
        return between(setting, one, other, new Terminals(relay.mastM(), relay.mastM()), budget);
    }

    private static Optional<HopPath> between(
            RelayRequest.Setting setting, Position from, Position to, Terminals terminals, HopBudget budget) {
        return HopGround.of(setting, HopGround.cut(setting, from, to), terminals)
                .map(ground -> {
                    double departure = ground.geometry().departureDeg();
                    double arrival = ground.geometry().arrivalDeg();
                    TwoWayLedger ledger = budget.ledger(ground.loss(), departure, arrival);
                    HopOdds computed = budget.odds(ground.loss().lossDb(), departure, arrival);
                    HopOdds odds = new HopOdds(
                            ledger.there().odds(),
                            ledger.back().odds(),
                            ledger.marginDb(),
                            computed.standing(),
                            computed.pessimistic(),
                            computed.siteShiftDb(),
                            computed.needed());
                    return new HopPath(ground.line(), ground.profile(), ground.geometry(), ground.loss(), ledger, odds);
                });
    }

    /** The ground that stands highest into the ray, if any does. */
    public Optional<PathGeometry.Obstacle> worstEdge() {
        return geometry.obstacles().stream().max(Comparator.comparingDouble(PathGeometry.Obstacle::nu));
    }
}
