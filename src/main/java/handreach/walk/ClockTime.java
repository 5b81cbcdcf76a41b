package handreach.walk;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Optional;

/** A moment as the clock of a receiver or a watch can have written it. */
final class ClockTime {
    /** Satellite positioning counts its time from 6 January 1980 (IS-GPS-200): no track is older. */
    private static final int FIRST_YEAR = 1980;

    private static final int LAST_YEAR = 2199;
    /** What is allowed, in words. */
    static final String YEARS = "years " + FIRST_YEAR + " to " + LAST_YEAR;

    private ClockTime() {}

    /** The moment a text tells with its offset; empty in a year that no such clock can have meant. */
    static Optional<Instant> parse(String text) {
        OffsetDateTime time = OffsetDateTime.parse(text);
        boolean isMeant = time.getYear() >= FIRST_YEAR && time.getYear() <= LAST_YEAR;
        return isMeant ? Optional.of(time.toInstant()) : Optional.empty();
    }
}
