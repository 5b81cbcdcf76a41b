package handreach.desktop;

import handreach.geodesy.Position;
import handreach.plan.Places;
import java.util.Optional;

/**
 * A line between two places on the map.
 *
 * @param from where it was taken up
 * @param to where the hand is
 * @param isFinished whether the hand has let go
 */
record PulledPath(End from, End to, boolean isFinished) {
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
