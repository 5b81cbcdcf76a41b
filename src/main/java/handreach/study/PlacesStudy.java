package handreach.study;

import handreach.geodesy.GeodesicLine;
import handreach.loadout.Loadout;
import handreach.plan.Places;
import handreach.reach.Progress;
import handreach.relay.HopPath;
import handreach.relay.Party;
import handreach.relay.TalkBook;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.ToDoubleFunction;

/** Computes who of a plan reaches whom: one exact path a pair of points, as a relay study does for talks without a relay. */
final class PlacesStudy {
    /** Paths between others than the base; more would keep the first answer waiting. */
    private static final int MOST_PATHS = 800;

    private final Scene scene;
    private final TalkBook book;
    private final Progress progress;
    private final List<PlacesAnswer.Place> places;

    private PlacesStudy(Scene scene, TalkBook book, Progress progress) {
        this.scene = scene;
        this.book = book;
        this.progress = progress;
        this.places = places(scene);
    }

    static PlacesAnswer run(Scene scene, TalkBook book, Progress progress) {
        return new PlacesStudy(scene, book, progress).answer();
    }

    /** Positions, then routes, then sectors; one over unknown ground has no points. */
    static List<PlacesAnswer.Place> places(Scene scene) {
        List<Party> all = RelayDemands.all(scene, new ArrayList<>());
        Places said = scene.plan().places();
        List<PlacesAnswer.Place> places = new ArrayList<>();
        for (Places.PositionEntry entry : said.positions())
            places.add(new PlacesAnswer.Place(
                    entry.name(),
                    PlacesAnswer.Kind.POSITION,
                    loadout(scene, entry.loadout()),
                    standing(all, entry.name())));
        for (Places.RouteEntry entry : said.routes())
            places.add(group(scene, all, entry.name(), PlacesAnswer.Kind.ROUTE, entry.loadout()));
        for (Places.SectorEntry entry : said.sectors())
            places.add(group(scene, all, entry.name(), PlacesAnswer.Kind.SECTOR, entry.loadout()));
        return places;
    }

    private static List<Party> standing(List<Party> all, String name) {
        List<Party> there = new ArrayList<>();
        for (Party one : all) if (one.group().isEmpty() && one.name().equals(name)) there.add(one);
        return there;
    }

    private static PlacesAnswer.Place group(
            Scene scene, List<Party> all, String name, PlacesAnswer.Kind kind, Optional<String> carried) {
        return new PlacesAnswer.Place(
                name,
                kind,
                loadout(scene, carried),
                all.stream()
                        .filter(one -> one.group().equals(Optional.of(name)))
                        .toList());
    }

    private static Loadout loadout(Scene scene, Optional<String> name) {
        return name.isPresent() ? scene.loadout(name.get()) : scene.controlLoadout();
    }

    private PlacesAnswer answer() {
        OptionalInt base = base();
        int budget = MOST_PATHS;
        int omitted = 0;
        List<PlacesAnswer.Pair> pairs = new ArrayList<>();
        for (int a = 0; a < places.size(); a++)
            for (int b = a + 1; b < places.size(); b++) {
                int paths =
                        places.get(a).points().size() * places.get(b).points().size();
                boolean isWithBase = base.isPresent() && (base.getAsInt() == a || base.getAsInt() == b);
                if (!isWithBase && paths > budget) {
                    omitted++;
                    continue;
                }
                if (!isWithBase) budget -= paths;
                pairs.add(pair(a, b));
            }
        return new PlacesAnswer(places, pairs, base, omitted);
    }

    private OptionalInt base() {
        Optional<String> name = scene.base().map(Places.PositionEntry::name);
        for (int i = 0; name.isPresent() && i < places.size(); i++)
            if (places.get(i).kind() == PlacesAnswer.Kind.POSITION
                    && places.get(i).name().equals(name.get())) return OptionalInt.of(i);
        return OptionalInt.empty();
    }

    private PlacesAnswer.Pair pair(int a, int b) {
        List<HopPath.HopOdds> odds = new ArrayList<>();
        double nearestM = Double.POSITIVE_INFINITY;
        double farthestM = 0;
        int paths = 0;
        for (Party one : places.get(a).points())
            for (Party other : places.get(b).points()) {
                progress.goOn();
                paths++;
                Optional<TalkBook.Talk> talk = book.talk(one, other);
                if (talk.isPresent()) odds.add(talk.get().odds());
                double distanceM = GeodesicLine.distanceM(one.at(), other.at());
                nearestM = Math.min(nearestM, distanceM);
                farthestM = Math.max(farthestM, distanceM);
            }
        return new PlacesAnswer.Pair(
                a,
                b,
                paths > 0 && odds.size() == paths ? Optional.of(odds(odds)) : Optional.empty(),
                paths == 0 ? new PlacesAnswer.Span(0, 0) : new PlacesAnswer.Span(nearestM, farthestM));
    }

    static PlacesAnswer.Odds odds(List<HopPath.HopOdds> all) {
        return new PlacesAnswer.Odds(
                span(all, HopPath.HopOdds::there),
                span(all, HopPath.HopOdds::back),
                span(all, HopPath.HopOdds::weaker),
                span(all, HopPath.HopOdds::pessimistic));
    }

    private static PlacesAnswer.Span span(List<HopPath.HopOdds> all, ToDoubleFunction<HopPath.HopOdds> figure) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (HopPath.HopOdds one : all) {
            least = Math.min(least, figure.applyAsDouble(one));
            most = Math.max(most, figure.applyAsDouble(one));
        }
        return new PlacesAnswer.Span(least, most);
    }
}
