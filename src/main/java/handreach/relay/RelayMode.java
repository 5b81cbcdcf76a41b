package handreach.relay;

import handreach.input.Keyword;
import java.util.List;

/** How a relay passes speech on. */
public enum RelayMode {
    /** In on one frequency and out on another at the same time: needs the licence, filters, and costs a little desense. */
    TWO_FREQUENCY("two-frequency", 1),
    /** One channel; it repeats when the talker has stopped: no desense, twice the time on the air. */
    STORE_AND_FORWARD("store-and-forward", 0);

    /** How files and options name them. */
    public static final Keyword<RelayMode> KEYWORD = Keyword.of(List.of(values()), RelayMode::word);

    private final String word;
    private final double desenseDb;

    RelayMode(String word, double desenseDb) {
        this.word = word;
        this.desenseDb = desenseDb;
    }

    public String word() {
        return word;
    }

    /** What its own transmitter takes from its receiver when the isolation is as large as needed, dB; our suggestion. */
    public double desenseDb() {
        return desenseDb;
    }
}
