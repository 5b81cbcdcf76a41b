package handreach.relay;

/** A search over who carries what would take longer than anybody waits. */
public final class TooManyChoices extends RuntimeException {
    private static final long serialVersionUID = 1;

    TooManyChoices() {
        super("too many choices");
    }
}
