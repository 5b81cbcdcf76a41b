package handreach.report;

/** How words become a sentence. */
final class Sentences {
    private Sentences() {}

    /** The words with a capital at their start. */
    static String begun(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
