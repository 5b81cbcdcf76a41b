package handreach.walk;

import handreach.geodesy.Position;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One report of a walk.
 *
 * @param origin where it stands in its file, when and where it was made
 * @param heard what was heard
 * @param way in which direction
 * @param loadout loadout of the walker, if the report names it
 * @param headingDeg where the walker faced, degrees from north, if noted
 * @param note words of the person
 */
public record WalkReport(
        Origin origin,
        Reception heard,
        Direction way,
        Optional<String> loadout,
        OptionalDouble headingDeg,
        String note) {
    /**
     * Line, time and place of a report; at least one of the last two is there.
     *
     * @param line line number in the file
     * @param time when
     * @param at where
     */
    public record Origin(int line, Optional<Instant> time, Optional<Position> at) {}
}
