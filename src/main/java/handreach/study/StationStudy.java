package handreach.study;

import handreach.budget.LinkEnd;
import handreach.budget.SiteNoise;
import handreach.geodesy.GeodesicLine;
import handreach.loadout.AntennaGain;
import handreach.loadout.Loadout;
import handreach.loadout.NeededWays;
import handreach.loadout.Radio;
import handreach.plan.Channel;
import handreach.plan.Places;
import handreach.reach.Progress;
import handreach.relay.Conversation;
import handreach.relay.HopPath;
import handreach.relay.Party;
import handreach.relay.RelayEquipment;
import handreach.relay.RelayMode;
import handreach.relay.StandingStation;
import handreach.relay.TalkBook;
import handreach.uncertainty.Doubt;
import handreach.units.Dbi;
import handreach.units.Dbm;
import handreach.units.Frequency;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** Computes whom the stations of a plan serve: one exact path from every place to each of them. */
final class StationStudy {
    /** From places to stations; more would keep the answer waiting. */
    static final int MOST_PATHS = 6000;

    private final Scene scene;
    private final Progress progress;
    private final Map<Double, TalkBook> books = new HashMap<>();
    private final Map<Double, Scene> scenes = new HashMap<>();
    private final Set<String> warnings = new LinkedHashSet<>();

    StationStudy(Scene scene, Progress progress) {
        this.scene = scene;
        this.progress = progress;
    }

    /** Everything about them; at once where there are none. */
    static StationsAnswer run(Scene scene, Progress progress) {
        if (scene.plan().places().stations().isEmpty()) return StationsAnswer.none();
        return new StationStudy(scene, progress).answer();
    }

    private StationsAnswer answer() {
        List<PlacesAnswer.Place> places = PlacesStudy.places(scene);
        int points = places.stream().mapToInt(place -> place.points().size()).sum();
        int stand = scene.plan().places().stations().size();
        if ((long) stand * points > MOST_PATHS)
            throw scene.file()
                    .fault(
                            "station",
                            "name",
                            "is one of " + stand + " stations, with " + points + " places to reach them from: "
                                    + (long) stand * points + " paths, at most " + MOST_PATHS
                                    + " are reckoned. Leave some out.");
        List<StationsAnswer.Station> stations = new ArrayList<>();
        for (Places.StationEntry entry : scene.plan().places().stations())
            if (isOnKnownGround(entry)) stations.add(station(entry, places));
        return new StationsAnswer(stations, List.copyOf(warnings));
    }

    private boolean isOnKnownGround(Places.StationEntry entry) {
        if (!scene.tiles().at(entry.at()).isVoid()) return true;
        warnings.add(
                entry.name()
                        + " stands where no elevation is known and is left out: add the tile, or correct its place. The rest is answered.");
        return false;
    }

    /** What stands already for the talks of a question: for each talk the relay that serves it best, with its odds. */
    List<Optional<Served>> talks(List<Party> demands, List<Conversation> talks) {
        List<Optional<Served>> best = new ArrayList<>();
        talks.forEach(talk -> best.add(Optional.empty()));
        for (Places.StationEntry entry : scene.plan().places().stations()) {
            if (entry.relay().isEmpty() || !isOnKnownGround(entry)) continue;
            Stands stands = new Stands(entry);
            List<Optional<HopPath.HopOdds>> hops =
                    demands.stream().map(stands::hop).toList();
            List<Optional<HopPath.HopOdds>> whole = needed() == NeededWays.BOTH
                    ? hops
                    : demands.stream().map(stands::wholeHop).toList();
            for (int t = 0; t < talks.size(); t++) {
                boolean isWhole = demands.get(talks.get(t).a()).isBase()
                        == demands.get(talks.get(t).b()).isBase();
                Optional<HopPath.HopOdds> a =
                        (isWhole ? whole : hops).get(talks.get(t).a());
                Optional<HopPath.HopOdds> b =
                        (isWhole ? whole : hops).get(talks.get(t).b());
                if (a.isEmpty() || b.isEmpty()) continue;
                HopPath.HopOdds over = StandingStation.talk(a.get(), b.get());
                if (best.get(t).isEmpty() || best.get(t).get().odds().standing() < over.standing())
                    best.set(t, Optional.of(new Served(entry.name(), over)));
            }
        }
        return best;
    }

    /** A talk by way of a relay that stands. */
    record Served(String relay, HopPath.HopOdds odds) {}

    private StationsAnswer.Station station(Places.StationEntry entry, List<PlacesAnswer.Place> places) {
        Stands stands = new Stands(entry);
        List<List<Optional<HopPath.HopOdds>>> hops = places.stream()
                .map(place -> place.points().stream().map(stands::hop).toList())
                .toList();
        List<StationsAnswer.Reached> reached = new ArrayList<>();
        for (int p = 0; p < places.size(); p++) {
            PlacesAnswer.Place place = places.get(p);
            DoubleSummaryStatistics distanceM = place.points().stream()
                    .mapToDouble(point -> GeodesicLine.distanceM(point.at(), entry.at()))
                    .summaryStatistics();
            reached.add(new StationsAnswer.Reached(
                    place,
                    odds(hops.get(p)),
                    distanceM.getCount() == 0
                            ? new PlacesAnswer.Span(0, 0)
                            : new PlacesAnswer.Span(distanceM.getMin(), distanceM.getMax()),
                    with(stands, place)));
        }
        List<List<Optional<HopPath.HopOdds>>> whole = entry.relay().isEmpty() || needed() == NeededWays.BOTH
                ? hops
                : places.stream()
                        .map(place ->
                                place.points().stream().map(stands::wholeHop).toList())
                        .toList();
        List<StationsAnswer.Pair> pairs = new ArrayList<>();
        if (entry.relay().isPresent())
            for (int a = 0; a < places.size(); a++)
                for (int b = a + 1; b < places.size(); b++) {
                    List<List<Optional<HopPath.HopOdds>>> asked =
                            isBase(places.get(a)) == isBase(places.get(b)) ? whole : hops;
                    pairs.add(new StationsAnswer.Pair(
                            places.get(a).name(), places.get(b).name(), odds(over(asked.get(a), asked.get(b)))));
                }
        return new StationsAnswer.Station(entry, stands.in.mhz(), stands.out.mhz(), reached, pairs);
    }

    private static boolean isBase(PlacesAnswer.Place place) {
        return place.points().stream().anyMatch(Party::isBase);
    }

    private NeededWays needed() {
        return scene.plan().channel().wish().ways();
    }

    private static List<Optional<HopPath.HopOdds>> over(
            List<Optional<HopPath.HopOdds>> a, List<Optional<HopPath.HopOdds>> b) {
        return a.stream()
                .flatMap(one -> b.stream().map(other -> one.flatMap(x -> other.map(y -> StandingStation.talk(x, y)))))
                .toList();
    }

    private static Optional<PlacesAnswer.Odds> odds(List<Optional<HopPath.HopOdds>> all) {
        List<HopPath.HopOdds> known = all.stream().flatMap(Optional::stream).toList();
        return known.isEmpty() || known.size() < all.size() ? Optional.empty() : Optional.of(PlacesStudy.odds(known));
    }

    /** What reaches it both ways from every point of a place, for people who can carry something else. */
    private List<Loadout> with(Stands stands, PlacesAnswer.Place place) {
        if (place.points().isEmpty() || !place.loadout().carry().carry().isAtBody()) return List.of();
        double wanted = scene.plan().channel().wish().odds();
        return scene.loadouts().stream()
                .filter(one -> one.carry().carry().isAtBody())
                .sorted(scene.leastFirst())
                .filter(one -> place.points().stream()
                        .map(point -> stands.hop(point.carrying(scene.end(one))))
                        .allMatch(hop ->
                                hop.filter(odds -> odds.weaker() >= wanted).isPresent()))
                .toList();
    }

    /** A station on its frequencies. */
    private final class Stands {
        private final Side in;
        private final Side out;
        private final StandingStation station;

        Stands(Places.StationEntry entry) {
            Optional<Channel.Split> split = entry.relay()
                    .filter(mode -> mode == RelayMode.TWO_FREQUENCY)
                    .flatMap(mode -> scene.plan().channel().split());
            this.in = new Side(entry, own(entry.tuning().receiveMhz(), split.map(Channel.Split::receive)));
            this.out = new Side(entry, own(entry.tuning().transmitMhz(), split.map(Channel.Split::transmit)));
            TalkBook heard = in.book();
            TalkBook sent = out.book();
            this.station = entry.relay()
                    .map(mode -> StandingStation.relay(
                            entry.at(),
                            heard,
                            new RelayEquipment(in.end, mode, false),
                            sent,
                            new RelayEquipment(out.end, mode, false)))
                    .orElseGet(() -> StandingStation.base(entry.at(), heard, in.end, sent, out.end));
        }

        /** The station's own frequency, else that of a relay on the channel. */
        private static OptionalDouble own(OptionalDouble mhz, Optional<Frequency> ofChannel) {
            return mhz.isPresent() || ofChannel.isEmpty()
                    ? mhz
                    : OptionalDouble.of(ofChannel.get().mhz());
        }

        Optional<HopPath.HopOdds> hop(Party point) {
            return hop(point, needed());
        }

        /** Both ways, whatever is needed with the base. */
        Optional<HopPath.HopOdds> wholeHop(Party point) {
            return hop(point, NeededWays.BOTH);
        }

        private Optional<HopPath.HopOdds> hop(Party point, NeededWays needed) {
            progress.goOn();
            return station.hop(in.tuned(point), out.tuned(point), needed);
        }
    }

    /** One of its frequencies. */
    private final class Side {
        private final Scene on;
        private final LinkEnd end;

        Side(Places.StationEntry entry, OptionalDouble mhz) {
            this.on = scene(mhz);
            this.end = end(on, entry);
        }

        double mhz() {
            return on.plan().channel().frequency().mhz();
        }

        TalkBook book() {
            return books.computeIfAbsent(mhz(), key -> TalkBook.of(RelayStudy.setting(on)));
        }

        /** The same person with what is carried taken at this frequency. */
        Party tuned(Party point) {
            return StationStudy.this.tuned(point, on);
        }
    }

    Set<String> warnings() {
        return warnings;
    }

    /** The same person or station with what is there taken on another channel. */
    Party tuned(Party point, Scene on) {
        if (on.plan().channel().frequency().mhz()
                == scene.plan().channel().frequency().mhz()) return point;
        String name = point.end().loadout().name();
        return scene.plan().places().stations().stream()
                .filter(entry ->
                        entry.name().equals(point.name()) && point.group().isEmpty())
                .findFirst()
                .map(entry -> point.carrying(end(on, entry)))
                .orElseGet(() -> point.carrying(on.end(on.loadout(name))));
    }

    Scene scene(OptionalDouble mhz) {
        Channel channel = scene.plan().channel();
        double asked = mhz.orElse(channel.frequency().mhz());
        return scenes.computeIfAbsent(
                asked, at -> at == channel.frequency().mhz() ? scene : told(scene.on(channelAt(at))));
    }

    /** The plan's own channel there, with what is declared for it. */
    private Channel channelAt(double mhz) {
        return scene.plan().channels().stream()
                .filter(one -> one.frequency().mhz() == mhz)
                .findFirst()
                .orElseGet(() -> scene.plan().channel().at(new Frequency(mhz)));
    }

    private Scene told(Scene other) {
        List<String> known = scene.warnings();
        other.warnings().stream().filter(note -> !known.contains(note)).forEach(warnings::add);
        return other;
    }

    static LinkEnd end(Scene on, Places.StationEntry entry) {
        Places.StationGear gear = entry.gear();
        Channel channel = on.plan().channel();
        Radio radio = new Radio(
                entry.name(), Dbm.ofWatts(gear.powerW()), new Dbm(gear.sensitivityDbm()), channel.modulation());
        AntennaGain gain = new AntennaGain.Absolute(
                new Dbi(gear.gain().dbi()),
                Doubt.common(gear.gain().uncertaintyDb()),
                gear.gain().source(),
                OptionalDouble.empty());
        SiteNoise noise = gear.noise().map(on::noise).orElseGet(on::noise);
        return RelayEquipment.end(
                entry.name(),
                radio,
                gain,
                new RelayEquipment.Mast(
                        gear.stand(), gear.heightM(), gear.feedLossDb(), RelayStudy.source(gear.feedIsStated())),
                noise,
                channel.frequency());
    }
}
