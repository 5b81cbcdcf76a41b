package handreach.report;

import handreach.geodesy.Position;
import handreach.plan.Plan;
import handreach.relay.Conversation;
import handreach.relay.HopPath;
import handreach.relay.Party;
import handreach.relay.SiteCheck;
import handreach.report.card.CardPeople;
import handreach.report.card.CardPerson;
import handreach.report.figure.MapPlace;
import handreach.report.figure.RoseWay;
import handreach.study.RelayAnswer;
import handreach.study.Whereabouts;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/** Who is where on a field card: rows of its table, and the places, routes and sectors on its rose. */
final class CardWho {
    /** More places than this go onto the rose by number, the names stay in the table. */
    private static final int MOST_NAMES = 6;

    private final Whereabouts whereabouts;
    private final Optional<RelayAnswer> relay;
    private final Plan plan;
    private final boolean byNumber;

    CardWho(Whereabouts whereabouts, Optional<RelayAnswer> relay, Plan plan) {
        this.whereabouts = whereabouts;
        this.relay = relay;
        this.plan = plan;
        int places = whereabouts.people().size() + whereabouts.moving().size() + sites().size();
        this.byNumber = places > MOST_NAMES;
    }

    private List<Position> sites() {
        return relay.flatMap(RelayAnswer::recommended).map(SiteCheck::sites).orElse(List.of());
    }

    /** What bearings and distances start from. */
    private String from() {
        return whereabouts.base().map(base -> base.name()).orElse("the middle");
    }

    private double wanted() {
        return plan.channel().wish().odds();
    }

    CardPeople people() {
        List<CardPerson> rows = new ArrayList<>();
        for (Whereabouts.Person person : whereabouts.people()) rows.add(row(person, number(rows.size())));
        for (Whereabouts.Moving moving : whereabouts.moving()) rows.add(row(moving, number(rows.size())));
        boolean hasOdds =
                rows.stream().anyMatch(row -> !row.odds().calls().words().isBlank());
        return new CardPeople(from(), ((hasOdds ? note(rows) : "") + norths()).strip(), rows, List.of());
    }

    /** Where a compass or a grid is at hand, how its north lies to the true one of the bearings. */
    private String norths() {
        Position from = whereabouts.from();
        boolean isTrueAlone = plan.header().bearings().declinationDeg().isEmpty()
                && plan.header().placeForm().convergenceDeg(from).isEmpty();
        return isTrueAlone ? "" : " Bearings " + NorthNote.words(plan.header(), from, from()) + ".";
    }

    private String note(List<CardPerson> rows) {
        String weak = rows.stream()
                        .map(CardPerson::odds)
                        .anyMatch(odds -> odds.calls().isWeak()
                                || odds.hears().isWeak()
                                || odds.byRelay().isWeak())
                ? " Bold: below the wanted " + Shares.wanted(wanted()) + "."
                : "";
        String byRelay =
                rows.stream().anyMatch(person -> !person.odds().byRelay().equals(CardPerson.Share.NONE))
                        ? " By relay: the weakest hop; where calls and hears are higher, talk straight."
                        : "";
        return "Calls: odds that " + from() + " copies them without a relay; hears: that they copy it." + byRelay
                + weak;
    }

    private String number(int row) {
        return byNumber ? String.valueOf(row + 1) : "";
    }

    private CardPerson row(Whereabouts.Person person, String number) {
        boolean isBase = whereabouts.isBase(person);
        return new CardPerson(
                number,
                person.name(),
                person.loadout().name(),
                plan.header().placeForm().format(person.at()),
                isBase ? "" : way(person.bearingDeg(), lengths().text(person.distanceM())),
                isBase ? CardPerson.Odds.NONE : odds(List.of(person)));
    }

    private CardPerson row(Whereabouts.Moving moving, String number) {
        List<Whereabouts.Person> points = moving.points();
        String nearest = distance(
                points.stream().mapToDouble(Whereabouts.Person::distanceM).min());
        String farthest = distance(
                points.stream().mapToDouble(Whereabouts.Person::distanceM).max());
        return new CardPerson(
                number,
                moving.name(),
                moving.loadout().name(),
                (moving.isArea() ? "sector, " : "route, ")
                        + points.size()
                        + (points.size() == 1 ? " point" : " points"),
                nearest.equals(farthest) ? nearest : nearest + " to " + farthest,
                odds(points));
    }

    private String distance(OptionalDouble metres) {
        return metres.isPresent() ? lengths().text(metres.getAsDouble()) : "";
    }

    private Lengths lengths() {
        return plan.header().lengths();
    }

    private String way(double bearingDeg, String distance) {
        return plan.header().bearings().brief(bearingDeg) + ", " + distance;
    }

    /** Odds of somebody, or the span over the points of a route or sector; a point over unknown ground makes it unknown. */
    private CardPerson.Odds odds(List<Whereabouts.Person> points) {
        if (whereabouts.base().isEmpty() || points.isEmpty()) return CardPerson.Odds.NONE;
        List<HopPath.HopOdds> known =
                points.stream().flatMap(person -> person.odds().stream()).toList();
        CardPerson.Share byRelay = byRelay(points);
        if (known.size() < points.size())
            return new CardPerson.Odds(CardPerson.Share.UNKNOWN, CardPerson.Share.UNKNOWN, byRelay);
        return new CardPerson.Odds(
                share(known.stream().mapToDouble(HopPath.HopOdds::there)),
                share(known.stream().mapToDouble(HopPath.HopOdds::back)),
                byRelay);
    }

    private CardPerson.Share share(DoubleStream odds) {
        double[] sorted = odds.sorted().toArray();
        return new CardPerson.Share(
                Shares.oddsRange(sorted[0], sorted[sorted.length - 1], wanted()), sorted[0] < wanted());
    }

    /** Odds of the talk with the base over the recommended relays, by the weakest hop; empty where none are, or where that talk was not asked for. */
    private CardPerson.Share byRelay(List<Whereabouts.Person> points) {
        Optional<SiteCheck> best = relay.flatMap(RelayAnswer::recommended);
        if (best.isEmpty()) return CardPerson.Share.NONE;
        List<Conversation> talks = relay.get().question().talks();
        List<Party> demands = relay.get().question().demands();
        List<Double> odds = new ArrayList<>();
        for (int t = 0; t < talks.size(); t++) {
            String a = demands.get(talks.get(t).a()).name();
            String b = demands.get(talks.get(t).b()).name();
            String base = whereabouts.base().orElseThrow().name();
            if (!a.equals(base) && !b.equals(base)) continue;
            String other = a.equals(base) ? b : a;
            if (points.stream().anyMatch(point -> point.name().equals(other)))
                odds.add(best.get().talks().get(t).overRelays());
        }
        return odds.isEmpty() ? CardPerson.Share.NONE : share(odds.stream().mapToDouble(Double::doubleValue));
    }

    List<MapPlace> places() {
        List<MapPlace> places = new ArrayList<>();
        for (Whereabouts.Person person : whereabouts.people()) {
            boolean isBase = whereabouts.isBase(person)
                    || plan.places().positions().stream()
                            .anyMatch(entry -> entry.base() && entry.name().equals(person.name()));
            places.add(new MapPlace(
                    person.at(),
                    isBase ? MapPlace.Kind.BASE : MapPlace.Kind.PERSON,
                    byNumber ? number(places.size()) : person.name()));
        }
        relay.map(RelaySite::of).orElse(List.of()).stream()
                .filter(RelaySite::isAdvised)
                .forEach(site -> places.add(new MapPlace(site.at(), MapPlace.Kind.RELAY, site.name())));
        plan.places()
                .stations()
                .forEach(station -> places.add(new MapPlace(
                        station.at(),
                        station.relay().isPresent() ? MapPlace.Kind.RELAY : MapPlace.Kind.BASE,
                        station.name())));
        return places;
    }

    List<RoseWay> ways() {
        List<RoseWay> ways = new ArrayList<>();
        int row = whereabouts.people().size();
        for (Whereabouts.Moving moving : whereabouts.moving())
            ways.add(new RoseWay(byNumber ? number(row++) : moving.name(), moving.shape()));
        return ways;
    }
}
