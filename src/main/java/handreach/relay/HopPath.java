package handreach.relay;

import handreach.budget.TwoWayLedger;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.profile.PathCut;
import handreach.profile.Profile;
import handreach.propagation.PathGeometry;
import handreach.propagation.PathLoss;
import handreach.propagation.Terminals;
import handreach.uncertainty.Odds;
import java.util.Comparator;
import java.util.Optional;

/**
 * One path reckoned exactly: its ground, its loss, both ledgers, its odds. Ends nearer than 50 m count as 50 m apart.
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
    private static final double NEAREST_M = 50;

    /**
     * Odds of one path.
     *
     * @param there from the first end to the second
     * @param back the other way
     * @param marginDb of the weaker direction at the median place
     * @param standing margin over spread of the direction with the lower odds
     * @param pessimistic odds of the weaker direction at the pessimistic end of the doubt that is common to all places
     * @param siteShiftDb what walks have taught to add to the loss, dB; a line of the ledger
     */
    public record HopOdds(
            double there, double back, double marginDb, double standing, double pessimistic, double siteShiftDb) {
        /** Odds of the weaker direction. */
        public double weaker() {
            return Math.min(there, back);
        }
    }

    /** Straight between two people. */
    public static Optional<HopPath> direct(RelayQuestion.Setting setting, Party a, Party b) {
        HopBudget budget = HopBudget.direct(setting, a, b);
        return between(setting, a.at(), b.at(), new Terminals(a.heightM(), b.heightM()), budget);
    }

    /** From somebody to a relay; empty where the ground is unknown. */
    public static Optional<HopPath> toRelay(
            RelayQuestion.Setting setting, Party demand, Position site, RelayEquipment relay) {
        HopBudget budget = HopBudget.toRelay(setting, demand, relay);
        return between(setting, demand.at(), site, new Terminals(demand.heightM(), relay.mastM()), budget);
    }

    static Optional<HopPath> betweenRelays(
            RelayQuestion.Setting setting, Position one, Position other, RelayEquipment relay) {
        HopBudget budget = HopBudget.betweenRelays(setting, relay);
        return between(setting, one, other, new Terminals(relay.mastM(), relay.mastM()), budget);
    }

    private static Optional<HopPath> between(
            RelayQuestion.Setting setting, Position from, Position to, Terminals terminals, HopBudget budget) {
        Position end = to;
        if (GeodesicLine.distanceM(from, to) < NEAREST_M) {
            double azimuth = GeodesicLine.distanceM(from, to) < 0.01
                    ? 0
                    : GeodesicLine.between(from, to).azimuthDeg();
            end = GeodesicLine.destination(from, azimuth, NEAREST_M + 0.001);
        }
        PathCut cut = PathCut.between(
                setting.ground().elevation(),
                setting.ground().landCover(),
                from,
                end,
                setting.ground().settings());
        if (cut.profile().isEmpty()) return Optional.empty();
        Profile profile = cut.profile().get();
        PathGeometry geometry = PathGeometry.of(
                profile,
                terminals,
                setting.conditions().atmosphere(),
                setting.conditions().frequency());
        PathLoss loss = setting.model().loss(profile, terminals, setting.conditions());
        double departure = geometry.departureDeg();
        double arrival = geometry.arrivalDeg();
        TwoWayLedger ledger = budget.ledger(loss, departure, arrival);
        double standing = budget.standing(loss.lossDb(), departure, arrival);
        HopOdds odds = new HopOdds(
                ledger.there().odds(),
                ledger.back().odds(),
                ledger.marginDb(),
                standing,
                Odds.ofMargin(standing - budget.pessimism(), 1),
                budget.siteShiftDb());
        return Optional.of(new HopPath(cut.line(), profile, geometry, loss, ledger, odds));
    }

    /** The ground that stands highest into the ray, if any does. */
    public Optional<PathGeometry.Obstacle> worstEdge() {
        return geometry.obstacles().stream().max(Comparator.comparingDouble(PathGeometry.Obstacle::nu));
    }
}
