package handreach.report.card;

/**
 * One line of a field card.
 *
 * @param strong what stands in bold at its start, may be empty
 * @param words the rest
 */
public record CardLine(String strong, String words) {
    /** An empty line to be filled in by hand. */
    static final CardLine BLANK = new CardLine("", "");

    public static CardLine of(String words) {
        return new CardLine("", words);
    }
}
