package handreach.report.page;

/**
 * A paragraph.
 *
 * @param words plain text
 * @param weight how it stands out
 */
public record Paragraph(String words, Weight weight) implements Block {
    /** How a paragraph stands out. */
    public enum Weight {
        /** The answer to the question of the page. */
        ANSWER,
        PLAIN,
        /** Small print. */
        QUIET,
        /** Something to be heeded. */
        WARNING
    }

    public static Paragraph of(String words) {
        return new Paragraph(words, Weight.PLAIN);
    }

    public static Paragraph answer(String words) {
        return new Paragraph(words, Weight.ANSWER);
    }

    public static Paragraph quiet(String words) {
        return new Paragraph(words, Weight.QUIET);
    }

    public static Paragraph warning(String words) {
        return new Paragraph(words, Weight.WARNING);
    }

    @Override
    public void appendTo(Html html) {
        String look = weight.name().toLowerCase(java.util.Locale.ROOT);
        if (weight == Weight.PLAIN) html.element("p", words);
        else html.element("p", words, "class", look);
    }
}
