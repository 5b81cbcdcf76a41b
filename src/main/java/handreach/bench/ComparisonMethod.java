package handreach.bench;

/** How two antennas were compared. */
public enum ComparisonMethod {
    PAIRED("differences within trials, the two read in turns"),
    PAIRED_DRIFT_CORRECTED("differences within trials, the two read in turns, the drift of the session taken out"),
    WELCH("two independent sets of readings (Welch)"),
    WELCH_DRIFT_CORRECTED("two independent sets of readings (Welch), the control's drift taken out"),
    EARLIER_SCATTER("too few trials for a scatter of their own; the declared earlier scatter is used"),
    NO_SCATTER("one trial: a difference, and nothing known about its scatter");

    private final String words;

    ComparisonMethod(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
