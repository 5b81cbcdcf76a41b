package handreach.relay;

import handreach.budget.LinkBudget;
import handreach.budget.LinkEnd;
import handreach.budget.Ways;
import handreach.geodesy.Position;
import handreach.profile.PathCut;
import handreach.propagation.NoAnswer;
import handreach.propagation.Terminals;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Straight talks between people who may carry this or that: each path is cut once, its loss computed once for each pair of antenna
 * heights, each budget once for each pair of loadouts. The odds are those of {@link HopPath#direct}. For one thread.
 */
public final class TalkBook {
    private final RelayRequest.Setting setting;
    private final double wanted;
    private final Map<Way, PathCut> cuts = new HashMap<>();
    private final Map<Raised, Optional<Found>> losses = new HashMap<>();
    private final Map<Carried, LinkBudget> budgets = new HashMap<>();

    // Equality is written out: the generated one is linked at its first use, which the first answer would wait for.

    private record Way(Position from, Position to) {
        @Override
        public boolean equals(Object other) {
            return other instanceof Way way && isSame(from, way.from) && isSame(to, way.to);
        }

        private static boolean isSame(Position one, Position other) {
            return one.latitudeDeg() == other.latitudeDeg() && one.longitudeDeg() == other.longitudeDeg();
        }

        @Override
        public int hashCode() {
            return 31 * hash(from) + hash(to);
        }

        private static int hash(Position at) {
            return 31 * Double.hashCode(at.latitudeDeg()) + Double.hashCode(at.longitudeDeg());
        }
    }

    private record Raised(Way way, Terminals terminals) {
        @Override
        public boolean equals(Object other) {
            return other instanceof Raised raised
                    && way.equals(raised.way)
                    && terminals.txHeightM() == raised.terminals.txHeightM()
                    && terminals.rxHeightM() == raised.terminals.rxHeightM();
        }

        @Override
        public int hashCode() {
            return 31 * way.hashCode()
                    + 7 * Double.hashCode(terminals.txHeightM())
                    + Double.hashCode(terminals.rxHeightM());
        }
    }

    /** By the very ends: equal ones that are not the same are computed again, which costs time alone. */
    private record Carried(LinkEnd a, LinkEnd b) {
        @Override
        @SuppressWarnings("ReferenceEquality")
        public boolean equals(Object other) {
            return other instanceof Carried carried && a == carried.a && b == carried.b;
        }

        @Override
        public int hashCode() {
            return 31 * System.identityHashCode(a) + System.identityHashCode(b);
        }
    }

    private record Found(double lossDb, double departureDeg, double arrivalDeg) {}

    /**
     * A talk with certain loadouts.
     *
     * @param odds both ways; there is from the first to the second
     * @param spareDb by how much the margins could fall and both ways still have the wanted odds, dB; below 0 it is what they lack
     * @param sureDb the same at the pessimistic end of the doubt that is common to all places
     */
    public record Talk(HopPath.HopOdds odds, double spareDb, double sureDb) {}

    private TalkBook(RelayRequest.Setting setting) {
        this.setting = setting;
        this.wanted = HopBudget.wanted(setting.terms().odds());
    }

    public static TalkBook of(RelayRequest.Setting setting) {
        return new TalkBook(setting);
    }

    /**
     * One talk, both ways.
     *
     * @shape  two people in, one talk out; O(samples of the path) the first time, then O(1)
     * @unit   odds 0 to 1, decibels
     * @valid  any two people; empty where the ground between them is unknown, or the model has no answer for it
     * @error  that of the model and of the ledger
     * @source {@link HopPath#direct}
     */
    public Optional<Talk> talk(Party a, Party b) {
        Way way = new Way(a.at(), b.at());
        Raised raised = new Raised(way, new Terminals(a.heightM(), b.heightM()));
        Optional<Found> path = losses.computeIfAbsent(raised, this::found);
        if (path.isEmpty()) return Optional.empty();
        Found found = path.get();
        HopBudget hop = HopBudget.direct(setting, budget(a, b), a, b);
        return Optional.of(new Talk(
                hop.odds(found.lossDb(), found.departureDeg(), found.arrivalDeg()),
                hop.spareDb(found.lossDb(), found.departureDeg(), found.arrivalDeg(), wanted),
                hop.spareDb(found.lossDb(), found.departureDeg(), found.arrivalDeg(), wanted + hop.pessimism())));
    }

    /** As people face; whoever faces a way has an end of their own towards each place, which is not kept. */
    private LinkBudget budget(Party a, Party b) {
        return a.headingDeg().isEmpty() && b.headingDeg().isEmpty()
                ? budget(a.end(), b.end())
                : LinkBudget.between(a.endTowards(b.at()), b.endTowards(a.at()), setting.terms());
    }

    /** One hop, with its budget. */
    record Hop(HopBudget budget, double lossDb, double departureDeg, double arrivalDeg) {
        HopPath.HopOdds odds() {
            return budget.odds(lossDb, departureDeg, arrivalDeg);
        }

        /** There by the first, back by the second. */
        static HopPath.HopOdds split(Hop up, Hop down) {
            return HopBudget.split(up, down);
        }
    }

    /** To a station; towards a relay people are free to turn, at a base they face as the plan says. */
    Optional<Hop> hop(Party a, Position site, LinkEnd station, Ways ways, boolean isRelay) {
        Raised raised = new Raised(
                new Way(a.at(), site),
                new Terminals(a.heightM(), station.loadout().heightM()));
        Optional<Found> path = losses.computeIfAbsent(raised, this::found);
        boolean isFree = isRelay || a.headingDeg().isEmpty();
        return path.map(found -> new Hop(
                HopBudget.toStation(
                        setting,
                        (isFree
                                        ? budget(a.end(), station)
                                        : LinkBudget.between(a.endTowards(site), station, setting.terms()))
                                .asking(ways),
                        a,
                        site,
                        station,
                        isRelay),
                found.lossDb(),
                found.departureDeg(),
                found.arrivalDeg()));
    }

    private Optional<Found> found(Raised raised) {
        PathCut cut = cuts.computeIfAbsent(raised.way(), way -> HopGround.cut(setting, way.from(), way.to()));
        try {
            return HopGround.of(setting, cut, raised.terminals())
                    .map(ground -> new Found(
                            ground.loss().lossDb(),
                            ground.geometry().departureDeg(),
                            ground.geometry().arrivalDeg()));
        } catch (NoAnswer refused) {
            return Optional.empty();
        }
    }

    /** The budget between what two people carry. */
    public LinkBudget budget(LinkEnd a, LinkEnd b) {
        return budgets.computeIfAbsent(
                new Carried(a, b), ends -> LinkBudget.between(ends.a(), ends.b(), setting.terms()));
    }
}
