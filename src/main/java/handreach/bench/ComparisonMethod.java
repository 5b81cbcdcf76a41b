package handreach.bench;

/** How two antennas were compared. */
public enum ComparisonMethod {
    /** Differences within trials, the two read in turns. */
    PAIRED,
    /** Differences within trials, the two read in turns, the drift of the session taken out. */
    PAIRED_DRIFT_CORRECTED,
    /** Two independent sets of readings (Welch). */
    WELCH,
    /** Two independent sets of readings (Welch), the control's drift taken out. */
    WELCH_DRIFT_CORRECTED,
    /** Too few trials for a scatter of their own; the declared earlier scatter is used. */
    EARLIER_SCATTER,
    /** One trial: a difference, and nothing known about its scatter. */
    NO_SCATTER
}
