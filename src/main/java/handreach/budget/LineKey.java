package handreach.budget;

import java.util.Locale;

/** What a line of a ledger is about. */
public enum LineKey {
    POWER,
    ANTENNA,
    DELTA,
    /** What becomes of the delta at another place than it was measured at. */
    MOVE,
    CARRY,
    HEADING,
    COUNTERPOISE,
    MISMATCH,
    /** A further line that the user states. */
    EXTRA,
    PATTERN,
    POLARISATION,
    PATH,
    /** What walks have taught about the site. */
    SITE,
    SENSITIVITY,
    NOISE,
    QUALITY,
    DESENSE;

    /** Stable word, without the end. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
