package handreach.study;

import handreach.geodesy.Position;
import handreach.loadout.Loadout;
import handreach.plan.Places;
import handreach.plan.Questions;
import java.util.List;
import java.util.Optional;

/**
 * Who is called on a walk.
 *
 * @param name as the plan names the place; empty for the middle of the rose
 * @param at where
 * @param loadout what is carried there
 */
public record WalkBase(Optional<String> name, Position at, Loadout loadout) {
    /** Who is called on the plan's walks; where it names none, who would be. */
    static List<WalkBase> all(Scene scene) {
        List<Questions.WalkEntry> walks = scene.plan().questions().walks();
        if (walks.isEmpty()) return List.of(of(scene, Optional.empty()));
        return walks.stream()
                .map(Questions.WalkEntry::base)
                .distinct()
                .map(base -> of(scene, base))
                .toList();
    }

    /** The named position, else the plan's base, else the middle of the rose. */
    static WalkBase of(Scene scene, Optional<String> name) {
        List<Places.PositionEntry> all = scene.plan().places().positions();
        Optional<Places.PositionEntry> entry = name.map(scene::position)
                .or(() -> all.stream().filter(Places.PositionEntry::base).findFirst());
        Optional<String> loadout = entry.flatMap(Places.PositionEntry::loadout)
                .or(() -> scene.plan().questions().reach().with());
        return new WalkBase(
                entry.map(Places.PositionEntry::name),
                entry.map(Places.PositionEntry::at).orElse(scene.middle()),
                loadout.map(scene::loadout).orElse(scene.controlLoadout()));
    }
}
