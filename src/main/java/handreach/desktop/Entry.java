package handreach.desktop;

import handreach.plan.PlanText;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A part of the plan's text: the keys above all sections, a section, or one of several of a kind by its name or else its number.
 *
 * @param section such as {@code channel} or {@code radio}; empty above all sections
 * @param name of the entry, where there are several that have names
 * @param number of the entry from 0, where there are several that need no name
 */
record Entry(String section, Optional<String> name, OptionalInt number) {
    static Entry of(String section) {
        return new Entry(section, Optional.empty(), OptionalInt.empty());
    }

    static Entry of(String section, String name) {
        return new Entry(section, Optional.of(name), OptionalInt.empty());
    }

    static Entry at(String section, int number) {
        return new Entry(section, Optional.empty(), OptionalInt.of(number));
    }

    /** What a key says, as it stands in the text. */
    Optional<String> value(String text, String key) {
        if (name.isPresent()) return PlanText.entryValue(text, section, name.get(), key);
        return number.isPresent()
                ? PlanText.entryValue(text, section, number.getAsInt(), key)
                : PlanText.value(text, section, key);
    }

    String with(String text, String key, String value) {
        if (name.isPresent()) return PlanText.withEntryValue(text, section, name.get(), key, value);
        return number.isPresent()
                ? PlanText.withEntryValue(text, section, number.getAsInt(), key, value)
                : PlanText.withValue(text, section, key, value);
    }

    String without(String text, String key) {
        if (name.isPresent()) return PlanText.withoutEntryValue(text, section, name.get(), key);
        return number.isPresent()
                ? PlanText.withoutEntryValue(text, section, number.getAsInt(), key)
                : PlanText.withoutValue(text, section, key);
    }

    /** The text without the whole of it. */
    String gone(String text) {
        if (name.isPresent()) return PlanText.withoutEntry(text, section, name.get());
        return number.isPresent()
                ? PlanText.withoutEntry(text, section, number.getAsInt())
                : PlanText.withoutSection(text, section);
    }

    /** What a value in quotes says; a number, a word without them or a list as it is. */
    static String plain(String value) {
        boolean isQuoted = value.startsWith("\"") || value.startsWith("'");
        List<String> texts = isQuoted ? PlanText.texts(value) : List.of();
        return texts.size() == 1 ? texts.get(0) : value;
    }
}
