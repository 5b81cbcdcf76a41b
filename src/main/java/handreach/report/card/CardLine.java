package handreach.report.card;

/**
 * One line of a field card.
 *
 * @param strong what stands in bold at its start, may be empty
 * @param words the rest
 * @param brief the rest in short, for a front that has no room for it in full; the same where there is nothing shorter
 */
public record CardLine(String strong, String words, String brief) {
    /** An empty line to be filled in by hand. */
    static final CardLine BLANK = new CardLine("", "");

    public CardLine(String strong, String words) {
        this(strong, words, words);
    }

    public static CardLine of(String words) {
        return new CardLine("", words);
    }

    boolean hasBrief() {
        return !brief.equals(words);
    }

    CardLine inBrief() {
        return new CardLine(strong, brief);
    }
}
