package handreach.study;

import handreach.loadout.Loadout;
import handreach.plan.Places;
import java.util.List;
import java.util.Optional;

/**
 * What stands already, and whom it serves.
 *
 * @param stations in the plan's order
 * @param warnings what was doubtful about them
 */
public record StationsAnswer(List<Station> stations, List<String> warnings) {
    /**
     * A station.
     *
     * @param entry as the plan has it
     * @param receiveMhz what it hears
     * @param transmitMhz what it sends
     * @param places who reaches it, in the order of the plan's places
     * @param pairs of a relay: who reaches whom by way of it; none of another station
     */
    public record Station(
            Places.StationEntry entry, double receiveMhz, double transmitMhz, List<Reached> places, List<Pair> pairs) {
        public Station {
            places = List.copyOf(places);
            pairs = List.copyOf(pairs);
        }
    }

    /**
     * A place and a station.
     *
     * @param place of the plan
     * @param odds as loaded, there to the station; over all points of the place; empty where the ground to some is unknown
     * @param distanceM least and greatest, m
     * @param with loadouts carried on the body with which all points reach it both ways, from the least burden up; none for a place
     *     at which nothing else can be carried
     */
    public record Reached(
            PlacesAnswer.Place place,
            Optional<PlacesAnswer.Odds> odds,
            PlacesAnswer.Span distanceM,
            List<Loadout> with) {
        public Reached {
            with = List.copyOf(with);
        }
    }

    /**
     * Two places by way of a relay.
     *
     * @param a name of the first
     * @param b name of the second
     * @param odds each way by its weaker hop; empty where the ground of some hop is unknown
     */
    public record Pair(String a, String b, Optional<PlacesAnswer.Odds> odds) {}

    public StationsAnswer {
        stations = List.copyOf(stations);
        warnings = List.copyOf(warnings);
    }

    static StationsAnswer none() {
        return new StationsAnswer(List.of(), List.of());
    }

    /** Those that pass speech on. */
    public List<Station> relays() {
        return stations.stream().filter(one -> one.entry().relay().isPresent()).toList();
    }
}
