package handreach.study;

import handreach.geodesy.Position;
import handreach.relay.DirectVerdict;
import handreach.relay.RelayChoice;
import handreach.relay.RelayEquipment;
import handreach.relay.RelayRequest;
import handreach.relay.ServiceLevel;
import handreach.relay.SiteCheck;
import handreach.relay.SiteMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * Whether a relay is needed, and where.
 *
 * @param scene the plan, opened
 * @param question who talks to whom
 * @param equipment the relay
 * @param direct what everybody gets without one
 * @param already what stands already, and what the talks get with it
 * @param found sites; empty where nobody needs a new relay as they are loaded
 * @param summary verdict first, and everything that was doubtful
 */
public record RelayAnswer(
        Scene scene,
        RelayRequest question,
        RelayEquipment equipment,
        DirectVerdict direct,
        Already already,
        Optional<Found> found,
        Summary summary) {
    private static final double SAME = 1e-9;

    /**
     * The answer in sentences.
     *
     * @param verdict the answer, the most important sentence first
     * @param warnings what was doubtful
     */
    public record Summary(List<String> verdict, List<String> warnings) {
        public Summary {
            verdict = List.copyOf(verdict);
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * What stands already.
     *
     * @param stations all of it
     * @param verdict the talks by the better of the straight path and a relay that stands; as without one where none does
     * @param via the relay that serves each talk better than the straight path, in the question's order
     */
    public record Already(StationsAnswer stations, DirectVerdict verdict, List<Optional<String>> via) {
        public Already {
            via = List.copyOf(via);
        }

        /** Talks that reach the wanted odds only by way of a relay that stands. */
        public long carried(DirectVerdict direct, double wanted) {
            return IntStream.range(0, via.size())
                    .filter(t -> DirectVerdict.odds(direct.links().get(t)) < wanted
                            && DirectVerdict.odds(verdict.links().get(t)) >= wanted)
                    .count();
        }
    }

    /**
     * What the search found.
     *
     * @param sites for one relay, best first, each apart from the others; computed exactly
     * @param together several relays, where the plan allows them and one does not serve all
     * @param front cells for one relay that trade the share served against the worst talk; as swept
     * @param unserved whom the best answer does not serve, and why
     * @param search how it was searched
     */
    public record Found(
            List<Site> sites, Optional<Together> together, List<Trade> front, List<Unserved> unserved, Search search) {
        public Found {
            sites = List.copyOf(sites);
            front = List.copyOf(front);
            unserved = List.copyOf(unserved);
        }
    }

    /**
     * Extent of the search.
     *
     * @param cellM side of a cell
     * @param allowed cells in which a relay may stand
     * @param cells all cells within the radius and on known ground
     * @param map how one relay in each cell would do, as swept; empty where none may stand
     */
    public record Search(double cellM, int allowed, int cells, Optional<SiteMap> map) {}

    /**
     * A place for a relay.
     *
     * @param at where
     * @param access ground height, slope, walk
     * @param check odds of every hop and talk
     * @param otherMode how the talks do in the other mode of relaying
     */
    public record Site(Position at, Access access, SiteCheck check, ServiceLevel otherMode) {}

    /**
     * What it is like to get there and stand there.
     *
     * @param heightM ground above sea level
     * @param slopeDeg steepness
     * @param minutes one way on foot, where a start is named
     */
    public record Access(OptionalDouble heightM, double slopeDeg, OptionalDouble minutes) {}

    /**
     * Several relays.
     *
     * @param choice cells, bound, what happens if one fails; as swept
     * @param access of each
     * @param check all together, computed exactly
     */
    public record Together(RelayChoice choice, List<Access> access, SiteCheck check) {
        public Together {
            access = List.copyOf(access);
        }
    }

    /**
     * A point of the trade-off.
     *
     * @param at where
     * @param service as swept
     */
    public record Trade(Position at, ServiceLevel service) {}

    /**
     * Somebody the best answer leaves without copy.
     *
     * @param demand number
     * @param bestOdds best odds of the hop to a relay anywhere on the allowed ground, as swept
     * @param reason in words, with the ground that stands in the way
     */
    public record Unserved(int demand, double bestOdds, String reason) {}

    /** Relays of the recommended answer: several where they are needed, else the best single site; none that helps nobody. */
    public Optional<SiteCheck> recommended() {
        return best().filter(check -> helps(check.service(), already.verdict().service()));
    }

    /** Whether more talks have the wanted odds with a relay than without it. */
    static boolean helps(ServiceLevel with, ServiceLevel without) {
        return with.share() > without.share() + SAME;
    }

    /** The best that was found, whether it helps or not. */
    public Optional<SiteCheck> best() {
        if (found.isEmpty()) return Optional.empty();
        if (found.get().together().isPresent()) return found.get().together().map(Together::check);
        return found.get().sites().stream().findFirst().map(Site::check);
    }
}
