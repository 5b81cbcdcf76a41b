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
    private final Scene scene;
    private final TalkBook book;
    private final List<PlacesAnswer.Place> places;
    private final Optional<Places.PositionEntry> middle;

    PlacesCount(Scene scene, TalkBook book, List<PlacesAnswer.Place> places) {
        this.scene = scene;
        this.book = book;
        Optional<String> from = scene.plan().questions().reach().from();
        this.middle = from.isPresent() ? Optional.of(scene.position(from.get())) : scene.base();
        this.places = new ArrayList<>();
        for (PlacesAnswer.Place place : places)
            if (!place.points().isEmpty() && !isInMiddle(place)) this.places.add(place);
    }

    private boolean isInMiddle(PlacesAnswer.Place place) {
        return place.kind() == PlacesAnswer.Kind.POSITION
                && middle.isPresent()
                && middle.get().name().equals(place.name());
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
        double shiftDb = Interval.COVERAGE_95
                * book.budget(end(other), second.end()).differenceDoubtDb(book.budget(end(control), first.end()));
        return new Reached(a >= 0, b >= 0, b >= shiftDb, b >= -shiftDb);
    }

    private double spareDb(Party point, Loadout carried) {
        String name = middle.isPresent() ? middle.get().name() : "the middle";
        Optional<TalkBook.Talk> talk = book.talk(new Party(name, at(), end(carried)).asBase(), point);
        return talk.isPresent() ? talk.get().spareDb() : Double.NEGATIVE_INFINITY;
    }

    private Party carrying(Party point, Loadout loadout) {
        return point.end().loadout().carry().carry().isAtBody() ? point.carrying(scene.end(loadout)) : point;
    }

    private Position at() {
        return middle.isPresent() ? middle.get().at() : scene.middle();
    }

    private LinkEnd end(Loadout carried) {
        Questions.ReachQuestion asked = scene.plan().questions().reach();
        Optional<String> stays = asked.with().isPresent() || asked.alike() || middle.isEmpty()
                ? asked.with()
                : middle.get().loadout();
        return scene.end(stays.isPresent() ? scene.loadout(stays.get()) : carried);
    }
}
