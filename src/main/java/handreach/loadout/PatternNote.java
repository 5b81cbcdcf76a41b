package handreach.loadout;

/**
 * Something to be said about a pattern.
 *
 * @param words one sentence
 * @param isWarning whether the reader should take heed; if not, it tells what the gain includes
 */
record PatternNote(String words, boolean isWarning) {
    /** What the gain includes, and what not. */
    static PatternNote basis(String words) {
        return new PatternNote(words, false);
    }

    static PatternNote warning(String words) {
        return new PatternNote(words, true);
    }
}
