package handreach.study;

import handreach.loadout.Loadout;
import handreach.relay.Party;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Who of a plan reaches whom without a relay, each carrying what the plan gives them. It holds for one channel; what stands or moves
 * otherwise joins as another kind of place.
 *
 * @param places positions, then routes, then sectors, in the plan's order
 * @param pairs every two places, by their numbers in order
 * @param base number of the place that is called first of all; empty where the plan has neither a base nor a position in the middle
 * @param omitted pairs that were left out because they would be too many; those with the base are never among them
 */
public record PlacesAnswer(List<Place> places, List<Pair> pairs, OptionalInt base, int omitted) {
    /** What a place is. */
    public enum Kind {
        POSITION,
        ROUTE,
        SECTOR,
        /** What stands already and is talked with; in lists of who talks alone. */
        STATION;

        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * Where somebody is.
     *
     * @param name in the plan
     * @param kind what it is
     * @param loadout what is carried there
     * @param points the place itself, or points spread over a route or sector; those on unknown ground are left out
     */
    public record Place(String name, Kind kind, Loadout loadout, List<Party> points) {
        public Place {
            points = List.copyOf(points);
        }
    }

    /**
     * Two places.
     *
     * @param a number of the first
     * @param b number of the second, the higher one
     * @param odds what they get; empty where ground between some of their points is unknown
     * @param distanceM least and greatest distance between their points, m
     */
    public record Pair(int a, int b, Optional<Odds> odds, Span distanceM) {}

    /**
     * Odds of copy between two places, over all points of both.
     *
     * @param there that the second copies the first
     * @param back that the first copies the second
     * @param weaker of the weaker way
     * @param pessimistic of the weaker way at the pessimistic end of what is uncertain everywhere
     */
    public record Odds(Span there, Span back, Span weaker, Span pessimistic) {}

    /** From the least to the greatest. */
    public record Span(double low, double high) {}

    public PlacesAnswer {
        places = List.copyOf(places);
        pairs = List.copyOf(pairs);
    }
}
