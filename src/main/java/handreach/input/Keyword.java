package handreach.input;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * The words by which files and options name the values of one kind: which there are, which value a typed one means, and what to
 * say when it means none. Case and blanks around a word do not matter.
 *
 * @param <E> kind of value, mostly an enum
 */
public final class Keyword<E> {
    private final List<String> words;
    private final Map<String, E> meanings;

    private Keyword(List<String> words, Map<String, E> meanings) {
        this.words = words;
        this.meanings = meanings;
    }

    /** Each value by its own word, in the order in which they are to be shown. */
    public static <E> Keyword<E> of(Collection<E> values, Function<? super E, String> word) {
        Map<String, E> meanings = new LinkedHashMap<>();
        for (E value : values) put(meanings, word.apply(value), value);
        return new Keyword<>(List.copyOf(meanings.keySet()), meanings);
    }

    private static <E> void put(Map<String, E> meanings, String word, E value) {
        if (!word.equals(plain(word)))
            throw new IllegalArgumentException("\"" + word + "\" is not in plain lower case");
        if (meanings.put(word, value) != null) throw new IllegalArgumentException("\"" + word + "\" means two things");
    }

    private static String plain(String typed) {
        return typed.strip().toLowerCase(Locale.ROOT);
    }

    /** The same with another word in use for a value, which is read but not shown. */
    public Keyword<E> also(String word, E value) {
        Map<String, E> more = new LinkedHashMap<>(meanings);
        put(more, word, value);
        return new Keyword<>(words, more);
    }

    /** The values' own words, in order. */
    public List<String> words() {
        return words;
    }

    /** The value that a typed word means. */
    public Optional<E> find(String typed) {
        return Optional.ofNullable(meanings.get(plain(typed)));
    }

    /** What is wrong with a word that means nothing here: found, allowed, and the nearest right one. */
    public String fault(String typed) {
        return "is \"" + typed + "\", allowed is " + String.join(", ", words) + "."
                + NearestWord.hint(plain(typed), meanings.keySet());
    }

    /** The value that a typed word means; what is wrong with it goes to the listener. */
    public Optional<E> read(String typed, Consumer<String> refused) {
        Optional<E> found = find(typed);
        if (found.isEmpty()) refused.accept(fault(typed));
        return found;
    }

    /** The value that a typed word means; a fault of that file or option, if it means none. */
    public E parse(String source, String typed) {
        return read(typed, text -> {
                    throw new InputFault(source, 0, text);
                })
                .orElseThrow();
    }
}
