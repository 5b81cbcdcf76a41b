package handreach.desktop;

import handreach.input.Keyword;
import handreach.input.Range;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A key of the plan as a line of a form.
 *
 * @param words what it is called
 * @param key its name in the plan
 * @param kind what it holds
 * @param range limits of a number
 * @param choices words it can be, or names of other entries
 * @param ties how it stands to other keys
 */
record EntryKey(String words, String key, Kind kind, Optional<Range> range, List<String> choices, Ties ties) {
    /** What a key holds. */
    enum Kind {
        NUMBER,
        TEXT,
        /** A name that other entries of the plan may use. */
        NAME,
        /** A place in any form. */
        PLACE,
        CHOICE,
        /** True, or not said. */
        FLAG,
        /** True on one entry of its kind alone. */
        MARK,
        /** True, false, or not said. */
        EITHER,
        FILE,
        FOLDER,
        /** A list of names. */
        NAMES,
        /** A list of pairs of names. */
        PAIRS
    }

    /**
     * Keys that belong to this one.
     *
     * @param needs each a group of which one stands together with it, or it does not stand at all
     * @param instead those that say the same and go when it comes
     */
    record Ties(List<Set<String>> needs, List<String> instead) {
        private static final Ties NONE = new Ties(List.of(), List.of());
    }

    private static EntryKey of(String words, String key, Kind kind, List<String> choices) {
        return new EntryKey(words, key, kind, Optional.empty(), choices, Ties.NONE);
    }

    static EntryKey number(String words, Range range) {
        return new EntryKey(words, range.key(), Kind.NUMBER, Optional.of(range), List.of(), Ties.NONE);
    }

    static EntryKey text(String words, String key) {
        return of(words, key, Kind.TEXT, List.of());
    }

    static EntryKey name(String words, String key) {
        return of(words, key, Kind.NAME, List.of());
    }

    static EntryKey place(String words, String key) {
        return of(words, key, Kind.PLACE, List.of());
    }

    static EntryKey file(String words, String key) {
        return of(words, key, Kind.FILE, List.of());
    }

    static EntryKey folder(String words, String key) {
        return of(words, key, Kind.FOLDER, List.of());
    }

    static EntryKey choice(String words, String key, List<String> choices) {
        return of(words, key, Kind.CHOICE, choices);
    }

    static EntryKey word(String words, String key, Keyword<?> keyword) {
        return choice(words, key, keyword.words());
    }

    static EntryKey flag(String words, String key) {
        return of(words, key, Kind.FLAG, List.of());
    }

    static EntryKey mark(String words, String key) {
        return of(words, key, Kind.MARK, List.of());
    }

    static EntryKey either(String words, String key) {
        return of(words, key, Kind.EITHER, List.of("true", "false"));
    }

    static EntryKey names(String words, String key, List<String> choices) {
        return of(words, key, Kind.NAMES, choices);
    }

    static EntryKey pairs(String words, String key, List<String> choices) {
        return of(words, key, Kind.PAIRS, choices);
    }

    /** The same, which means nothing without these. */
    EntryKey with(String... keys) {
        EntryKey tied = this;
        for (String other : keys) tied = tied.withOneOf(other);
        return tied;
    }

    /** The same, which means nothing without one of these. */
    EntryKey withOneOf(String... keys) {
        List<Set<String>> needs = new ArrayList<>(ties.needs);
        needs.add(Set.of(keys));
        return tied(new Ties(List.copyOf(needs), ties.instead));
    }

    /** The same, which takes the place of these. */
    EntryKey insteadOf(String... keys) {
        return tied(new Ties(ties.needs, List.of(keys)));
    }

    private EntryKey tied(Ties other) {
        return new EntryKey(words, key, kind, range, choices, other);
    }
}
