package handreach.desktop;

import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.loadout.Loadout;
import handreach.plan.Places;
import handreach.study.PathAnswer;
import handreach.study.PathStudy;
import handreach.study.Scene;
import java.util.List;
import java.util.Optional;

/**
 * The two ends of a path as they stand in a plan: where, what they are called, who carries what.
 *
 * @param scene the plan
 * @param from where the path starts
 * @param to where it ends
 */
record PathEnds(Scene scene, Spot from, Spot to) {
    /**
     * One end.
     *
     * @param at where
     * @param words its name, or its place as the plan writes places
     * @param loadout what is carried there
     */
    record Spot(Position at, String words, Loadout loadout) {
        /** A loadout chosen by hand comes before the one of the position, and that before the one looked at. */
        static Spot of(Scene scene, PulledPath.End end, Optional<String> chosen, Loadout otherwise) {
            String words = end.name().orElse(scene.plan().header().placeForm().format(end.at()));
            Loadout loadout = chosen.or(end::loadout)
                    .flatMap(name -> scene.loadouts().stream()
                            .filter(each -> each.name().equals(name))
                            .findFirst())
                    .orElse(otherwise);
            return new Spot(end.at(), words, loadout);
        }
    }

    /** Ends with what a given answer was computed with. */
    static PathEnds of(Scene scene, PulledPath path, PulledPath.Given given) {
        Spot from = Spot.of(scene, path.from(), Optional.empty(), given.from());
        Spot to = Spot.of(scene, path.to(), Optional.empty(), given.to());
        return new PathEnds(
                scene, new Spot(from.at(), from.words(), given.from()), new Spot(to.at(), to.words(), given.to()));
    }

    PathAnswer answer() {
        return PathStudy.between(scene, from.at(), from.loadout(), to.at(), to.loadout(), List.of(scene.model()));
    }

    /** An end after an edit of the plan or under the hand: a named one stands where its position stands now. */
    static PulledPath.End followed(Scene scene, PulledPath.End end, Optional<Session.Moving> moving) {
        if (end.name().isEmpty()) return end;
        String name = end.name().get();
        Optional<Places.PositionEntry> entry = scene.plan().places().positions().stream()
                .filter(each -> each.name().equals(name))
                .findFirst();
        if (entry.isEmpty()) return new PulledPath.End(end.at(), Optional.empty(), Optional.empty());
        Position at = moving.filter(held -> held.name().equals(name))
                .map(Session.Moving::to)
                .orElse(entry.get().at());
        return new PulledPath.End(at, end.name(), entry.get().loadout());
    }

    /** A path between the stand, where it is a position, and the next one; a fault where the plan has fewer than two. */
    static PulledPath between(Scene scene) {
        List<Places.PositionEntry> all = scene.plan().places().positions();
        if (all.size() < 2)
            throw new InputFault(
                    "path",
                    0,
                    "the plan has " + (all.isEmpty() ? "no position" : "one position")
                            + ", a path needs two ends. Double-click the ground to put another one there.");
        Places.PositionEntry from = all.stream()
                .filter(each -> each.at().equals(scene.middle()))
                .findFirst()
                .orElse(all.get(0));
        Places.PositionEntry to =
                all.stream().filter(each -> !each.equals(from)).findFirst().orElseThrow();
        return new PulledPath(
                PulledPath.End.of(from.at(), Optional.of(from)), PulledPath.End.of(to.at(), Optional.of(to)), true);
    }
}
