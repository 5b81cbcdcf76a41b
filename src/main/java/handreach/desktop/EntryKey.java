package handreach.desktop;

import handreach.input.Keyword;
import handreach.input.Range;
import java.util.List;
import java.util.Optional;

/**
 * A key of the plan as a line of a form.
 *
 * @param words what it is called
 * @param key its name in the plan
 * @param kind what it holds
 * @param range limits of a number
 * @param choices words it can be, or names of other entries
 * @param needs keys that stand together with it or not at all
 * @param instead keys that say the same and go when it comes
 */
record EntryKey(
        String words,
        String key,
        Kind kind,
        Optional<Range> range,
        List<String> choices,
        List<String> needs,
        List<String> instead) {
    enum Kind {
        NUMBER,
        TEXT,
        CHOICE,
        FLAG
    }

    static EntryKey number(String words, Range range) {
        return new EntryKey(words, range.key(), Kind.NUMBER, Optional.of(range), List.of(), List.of(), List.of());
    }

    static EntryKey text(String words, String key) {
        return new EntryKey(words, key, Kind.TEXT, Optional.empty(), List.of(), List.of(), List.of());
    }

    static EntryKey choice(String words, String key, List<String> choices) {
        return new EntryKey(words, key, Kind.CHOICE, Optional.empty(), choices, List.of(), List.of());
    }

    static EntryKey word(String words, String key, Keyword<?> keyword) {
        return choice(words, key, keyword.words());
    }

    static EntryKey flag(String words, String key) {
        return new EntryKey(words, key, Kind.FLAG, Optional.empty(), List.of(), List.of(), List.of());
    }

    /** The same, which means nothing without these. */
    EntryKey with(String... keys) {
        return new EntryKey(words, key, kind, range, choices, List.of(keys), instead);
    }

    /** The same, which takes the place of these. */
    EntryKey insteadOf(String... keys) {
        return new EntryKey(words, key, kind, range, choices, needs, List.of(keys));
    }

    /** Unit and limits, to stand beside the field. */
    String limits() {
        return range.map(Range::words).orElse("");
    }
}
