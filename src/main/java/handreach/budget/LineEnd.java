package handreach.budget;

/** Whose antenna a line of a ledger is about. */
public enum LineEnd {
    SENDER("tx-", "sender: "),
    RECEIVER("rx-", "receiver: "),
    /** Neither's: the line stands once in a ledger. */
    NEITHER("", "");

    private final String mark;
    private final String label;

    LineEnd(String mark, String label) {
        this.mark = mark;
        this.label = label;
    }

    /** The same antenna as the other way of the link sees it. */
    public LineEnd opposite() {
        return switch (this) {
            case SENDER -> RECEIVER;
            case RECEIVER -> SENDER;
            case NEITHER -> NEITHER;
        };
    }

    /** In front of the word of a line. */
    String mark() {
        return mark;
    }

    /** In front of the label of a line. */
    String label() {
        return label;
    }
}
