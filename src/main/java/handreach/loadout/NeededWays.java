package handreach.loadout;

import handreach.input.Keyword;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Which ways of a talk with the base must work. Between others than the base both must, whatever is needed with it. */
public enum NeededWays {
    BOTH,
    /** The others call out: the base must copy them, and nobody needs the answer. */
    CALLS,
    /** The others listen: they must copy the base, which need not copy them. */
    HEARS;

    /** How files and options name them. */
    public static final Keyword<NeededWays> KEYWORD = Keyword.of(List.of(values()), NeededWays::word);

    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** What counts, in a sentence; nothing where both ways do. */
    public Optional<String> sentence() {
        return switch (this) {
            case BOTH -> Optional.empty();
            case CALLS ->
                Optional.of(
                        "Call-out only: with the base it counts that it copies the others; whether they copy its answer does not."
                                + " Among the others both ways count.");
            case HEARS ->
                Optional.of(
                        "Hearing only: with the base it counts that the others copy it; whether it copies their answer does not."
                                + " Among the others both ways count.");
        };
    }

    /** How a talk with somebody is told to work: "both ways", "calling the base". */
    public String towards(String base) {
        return switch (this) {
            case BOTH -> "both ways";
            case CALLS -> "calling " + base;
            case HEARS -> "hearing " + base;
        };
    }
}
