package handreach.study;

import handreach.budget.LinkEnd;
import handreach.geodesy.Position;
import handreach.loadout.Loadout;
import handreach.plan.Places;
import handreach.plan.Questions;
import handreach.relay.Party;
import handreach.relay.TalkBook;
import handreach.uncertainty.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Counts who is reached both ways if everybody who carries a radio on the body carries a certain loadout. The other end is the
 * position in the middle of the rose, else the base, else the bare middle.
 */
final class PlacesCount {
    /** Half-width of a 95 % interval in standard uncertainties, normal law. */
    private static final double COVERAGE_95 = 1.96;

    private final Scene scene;
    private final TalkBook book;
    private final List<PlacesAnswer.Place> places;
    private final Optional<Places.PositionEntry> middle;

    PlacesCount(Scene scene, TalkBook book, List<PlacesAnswer.Place> places) {
        this.scene = scene;
        this.book = book;
        this.middle =
                scene.plan().questions().reach().from().map(scene::position).or(scene::base);
        this.places = places.stream()
                .filter(place -> !place.points().isEmpty())
                .filter(place -> place.kind() != PlacesAnswer.Kind.POSITION
                        || middle.filter(entry -> entry.name().equals(place.name()))
                                .isEmpty())
                .toList();
    }

    /** What a loadout adds to the control; empty where there is nobody but the one in the middle. */
    Optional<PlacesGain> gain(Loadout control, Loadout other) {
        if (places.isEmpty()) return Optional.empty();
        double[] sum = new double[4];
        double all = 0;
        List<PlacesGain.Change> changes = new ArrayList<>();
        for (PlacesAnswer.Place place : places) {
            int before = 0;
            int now = 0;
            for (Party point : place.points()) {
                Reached reached = reached(point, control, other);
                all += point.weight();
                if (reached.control) before++;
                if (reached.other) now++;
                if (reached.control) sum[0] += point.weight();
                if (reached.other) sum[1] += point.weight();
                if (reached.low) sum[2] += point.weight();
                if (reached.high) sum[3] += point.weight();
            }
            if (before != now)
                changes.add(new PlacesGain.Change(
                        place.name(), before, now, place.points().size()));
        }
        return Optional.of(
                new PlacesGain(sum[0], sum[1], new Interval(sum[2] - sum[0], sum[3] - sum[0]), all, changes));
    }

    private record Reached(boolean control, boolean other, boolean low, boolean high) {}

    private Reached reached(Party point, Loadout control, Loadout other) {
        Party first = carrying(point, control);
        Party second = carrying(point, other);
        double a = spareDb(first, control);
        double b = spareDb(second, other);
        double shiftDb = COVERAGE_95
                * book.budget(end(other), second.end()).differenceDoubtDb(book.budget(end(control), first.end()));
        return new Reached(a >= 0, b >= 0, b >= shiftDb, b >= -shiftDb);
    }

    private double spareDb(Party point, Loadout carried) {
        Party other =
                new Party(middle.map(Places.PositionEntry::name).orElse("the middle"), at(), end(carried)).asBase();
        return book.talk(other, point).map(TalkBook.Talk::spareDb).orElse(Double.NEGATIVE_INFINITY);
    }

    private Party carrying(Party point, Loadout loadout) {
        return point.end().loadout().carry().carry().isAtBody() ? point.carrying(scene.end(loadout)) : point;
    }

    private Position at() {
        return middle.map(Places.PositionEntry::at).orElseGet(scene::middle);
    }

    private LinkEnd end(Loadout carried) {
        Questions.ReachQuestion asked = scene.plan().questions().reach();
        Optional<String> stays = asked.with().isPresent() || asked.alike()
                ? asked.with()
                : middle.flatMap(Places.PositionEntry::loadout);
        return scene.end(stays.map(scene::loadout).orElse(carried));
    }
}
