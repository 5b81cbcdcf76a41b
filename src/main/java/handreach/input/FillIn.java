package handreach.input;

/** What stands in a blank file where a value is to be put in, and what a reader takes for no value yet. */
public final class FillIn {
    public static final String WORDS = "FILL IN";

    private FillIn() {}

    /** Whether a value is still to be put in. */
    public static boolean isIn(String value) {
        return WORDS.equalsIgnoreCase(value.strip());
    }
}
