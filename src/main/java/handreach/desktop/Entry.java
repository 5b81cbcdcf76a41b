package handreach.desktop;

import handreach.plan.PlanText;
import java.util.Optional;

/**
 * A part of the plan's text: a section, or one of several of a kind by its name.
 *
 * @param section such as {@code channel} or {@code radio}
 * @param name of the entry, where there are several
 */
record Entry(String section, Optional<String> name) {
    static Entry of(String section) {
        return new Entry(section, Optional.empty());
    }

    static Entry of(String section, String name) {
        return new Entry(section, Optional.of(name));
    }

    /** What a key says, as it stands in the text. */
    Optional<String> value(String text, String key) {
        return name.isPresent()
                ? PlanText.entryValue(text, section, name.get(), key)
                : PlanText.value(text, section, key);
    }

    String with(String text, String key, String value) {
        return name.isPresent()
                ? PlanText.withEntryValue(text, section, name.get(), key, value)
                : PlanText.withValue(text, section, key, value);
    }

    String without(String text, String key) {
        return name.isPresent()
                ? PlanText.withoutEntryValue(text, section, name.get(), key)
                : PlanText.withoutValue(text, section, key);
    }

    /** What a value in quotes says; a number or a word without them as it is. */
    static String plain(String value) {
        boolean isQuoted = value.length() >= 2
                && (value.charAt(0) == '"' || value.charAt(0) == '\'')
                && value.charAt(value.length() - 1) == value.charAt(0);
        if (!isQuoted) return value;
        String inner = value.substring(1, value.length() - 1);
        return value.charAt(0) == '\'' ? inner : inner.replace("\\\"", "\"").replace("\\\\", "\\");
    }
}
