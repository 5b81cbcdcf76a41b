package handreach.desktop;

import handreach.geodesy.Position;
import handreach.loadout.Loadout;
import handreach.plan.Places;
import handreach.study.PathAnswer;
import handreach.study.Scene;
import java.util.Optional;

/**
 * A line between two places on the map.
 *
 * @param from where it was taken up
 * @param to where the hand is
 * @param isFinished whether the hand has let go
 * @param given the answer, where it is known already because an end is no place where people carry something
 */
record PulledPath(End from, End to, boolean isFinished, Optional<Given> given) {
    /**
     * An answer that came with the path.
     *
     * @param scene the plan it was computed for
     * @param answer the path itself
     * @param from what it was computed with at its start
     * @param to the same at its end
     */
    record Given(Scene scene, PathAnswer answer, Loadout from, Loadout to) {}

    PulledPath(End from, End to, boolean isFinished) {
        this(from, to, isFinished, Optional.empty());
    }

    /**
     * One end.
     *
     * @param at where
     * @param name of the position there, if one was hit
     * @param loadout what that position carries, if the plan says
     */
    record End(Position at, Optional<String> name, Optional<String> loadout) {
        /** An end at a position snaps to it. */
        static End of(Position at, Optional<Places.PositionEntry> entry) {
            return new End(
                    entry.map(Places.PositionEntry::at).orElse(at),
                    entry.map(Places.PositionEntry::name),
                    entry.flatMap(Places.PositionEntry::loadout));
        }
    }

    PulledPath finished() {
        return new PulledPath(from, to, true);
    }
}
