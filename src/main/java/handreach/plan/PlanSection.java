package handreach.plan;

import handreach.input.Faults;
import handreach.input.FillIn;
import handreach.input.Keyword;
import handreach.input.NearestWord;
import handreach.input.NumberText;
import handreach.input.Range;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/** One table of the plan file while it is read: hands out checked values and notes every key that was asked for. */
final class PlanSection {
    /** Of titles and names: what still fits a line of the card, and with what stands around it a file name. */
    private static final int LONGEST_NAME = 120;

    private static final int LONGEST_TEXT = 4000;

    /** How many entries of a kind are taken: a file of a few lines for each must not ask for hours of work. */
    static final Map<String, Integer> MOST_ENTRIES = Map.ofEntries(
            Map.entry("channel", 12),
            Map.entry("radio", 100),
            Map.entry("power_step", 100),
            Map.entry("antenna", 200),
            Map.entry("delta", 1000),
            Map.entry("loadout", 100),
            Map.entry("carry_loss", 20),
            Map.entry("position", 500),
            Map.entry("route", 60),
            Map.entry("sector", 60),
            Map.entry("station", 60),
            Map.entry("walk", 60),
            Map.entry("cover", 20),
            Map.entry("carry", 20));

    private final String source;
    private final String name;
    private final TomlTable table;
    private final int startLine;
    private final Faults faults;
    private final Set<String> asked = new LinkedHashSet<>();
    private final Set<String> refused = new LinkedHashSet<>();

    /** Whether files that are named need not be there yet. */
    private final boolean isBeforeFiles;

    PlanSection(String source, String name, TomlTable table, int startLine, Faults faults, boolean isBeforeFiles) {
        this.isBeforeFiles = isBeforeFiles;
        this.source = source;
        this.name = name;
        this.table = table;
        this.startLine = startLine;
        this.faults = faults;
    }

    boolean isBeforeFiles() {
        return isBeforeFiles;
    }

    String source() {
        return source;
    }

    int line() {
        return startLine;
    }

    int lineOf(String key) {
        TomlPosition at = table.inputPositionOf(List.of(key));
        return at == null ? startLine : at.line();
    }

    boolean has(String key) {
        asked.add(key);
        return table.contains(List.of(key));
    }

    /** Whether the value is still to be put in. */
    boolean isToBeFilledIn(String key) {
        return value(key) instanceof String text && FillIn.isIn(text);
    }

    /** A key that is never taken, with what to do instead; it is not told among the known ones. */
    void refuse(String key, String text) {
        if (!table.contains(List.of(key))) return;
        refused.add(key);
        fault(key, text);
    }

    void fault(String key, String text) {
        faults.add(source, lineOf(key), key + " " + text);
    }

    private Object value(String key) {
        asked.add(key);
        return table.get(List.of(key));
    }

    Optional<String> text(String key) {
        return text(key, LONGEST_TEXT);
    }

    /** What people call something. */
    Optional<String> name(String key) {
        return text(key, LONGEST_NAME);
    }

    private Optional<String> text(String key, int longest) {
        Object value = value(key);
        if (value == null) return Optional.empty();
        if (value instanceof String text) {
            String stripped = text.strip();
            int letters = stripped.codePointCount(0, stripped.length());
            if (letters > longest)
                fault(key, "has " + letters + " letters, at most " + longest + " are taken. Shorten it.");
            else if (letters > 0) return Optional.of(stripped);
            else fault(key, "is empty, a text in quotes is expected. Write one, or remove the line.");
        } else {
            fault(key, "is " + shown(value) + ", a text in quotes is expected. Put it in quotes.");
        }
        return Optional.empty();
    }

    /** A text that must be there; a stand-in comes back after the fault is noted, so that reading goes on. */
    String required(String key, String example) {
        return required(key, example, text(key));
    }

    /** The same of what people call something. */
    String requiredName(String key, String example) {
        return required(key, example, name(key));
    }

    private String required(String key, String example, Optional<String> text) {
        boolean present = has(key);
        if (!present)
            faults.add(
                    source,
                    startLine,
                    label() + " has no " + key + ". Add a line such as " + key + " = \"" + example + "\".");
        return text.orElse("");
    }

    OptionalDouble number(Range range) {
        return number(range, false);
    }

    /** A number of things; 1.5 of them is a fault. */
    OptionalInt whole(Range range) {
        OptionalDouble number = number(range, true);
        return number.isPresent() ? OptionalInt.of((int) number.getAsDouble()) : OptionalInt.empty();
    }

    private OptionalDouble number(Range range, boolean isWhole) {
        String key = range.key();
        Object value = value(key);
        if (value == null) return OptionalDouble.empty();
        double number;
        if (value instanceof Long whole) number = whole;
        else if (value instanceof Double real) number = real;
        else {
            fault(
                    key,
                    "is " + shown(value) + ", a number" + (range.unit().isEmpty() ? "" : " in " + range.unit())
                            + " is expected. Write it without quotes.");
            return OptionalDouble.empty();
        }
        String found = value instanceof Long ? value.toString() : NumberText.plain(number);
        if (isWhole && !range.acceptsWhole(number)) fault(key, range.wholeFault(found));
        else if (!range.accepts(number)) fault(key, range.fault(found));
        else return OptionalDouble.of(number);
        return OptionalDouble.empty();
    }

    double number(Range range, double otherwise) {
        return number(range).orElse(otherwise);
    }

    double requiredNumber(Range range) {
        requires(range);
        return number(range, range.low());
    }

    int requiredWhole(Range range) {
        requires(range);
        return whole(range).orElse((int) range.low());
    }

    private void requires(Range range) {
        if (!has(range.key()))
            faults.add(source, startLine, label() + " has no " + range.key() + ". Add it, from " + range.words() + ".");
    }

    boolean flag(String key, boolean otherwise) {
        Object value = value(key);
        if (value == null) return otherwise;
        if (value instanceof Boolean flag) return flag;
        fault(key, "is " + shown(value) + ", true or false is expected. Write it without quotes.");
        return otherwise;
    }

    /** The value that a word means. */
    <E> E word(String key, Keyword<E> keyword, E otherwise) {
        return text(key)
                .flatMap(typed -> keyword.read(typed, refused -> fault(key, refused)))
                .orElse(otherwise);
    }

    /** The name of something that stands elsewhere in the plan, which has these. */
    Optional<String> reference(Reference reference, Collection<String> known) {
        String key = keyOf(reference);
        Optional<String> text = name(key);
        if (text.isEmpty() || known.contains(text.get())) return text;
        String kinds = reference.kinds().stream()
                .map(kind -> "[[" + kind.section() + "]]")
                .sorted()
                .collect(Collectors.joining(" or "));
        fault(
                key,
                "is \"" + text.get() + "\", but the plan has no " + kinds + " of that name."
                        + NearestWord.hint(text.get(), known)
                        + (known.isEmpty() ? "" : " It has: " + String.join(", ", known) + "."));
        return Optional.empty();
    }

    /** A list of such names; none where the key is left out. */
    List<String> references(Reference reference, Collection<String> known) {
        String key = keyOf(reference);
        Object value = value(key);
        if (value == null) return List.of();
        if (!(value instanceof TomlArray array) || !array.toList().stream().allMatch(String.class::isInstance)) {
            fault(key, "is " + shown(value) + ", a list of names is expected. Write it as [\"a\", \"b\"].");
            return List.of();
        }
        List<String> names = new ArrayList<>();
        for (Object one : array.toList()) {
            String name = ((String) one).strip();
            if (known.contains(name)) names.add(name);
            else
                fault(
                        key,
                        "names \"" + name + "\", which the plan does not have." + NearestWord.hint(name, known)
                                + (known.isEmpty() ? "" : " It has: " + String.join(", ", known) + "."));
        }
        return names;
    }

    /** The key of a reference, which must be declared for this section. */
    String keyOf(Reference reference) {
        if (!reference.sections().contains(name))
            throw new IllegalArgumentException(reference + " is not declared for [" + name + "]");
        return reference.key();
    }

    /** Refuses a key that saving elsewhere would not follow. */
    void checkIsFile(String key) {
        if (!FileKey.isOne(name, key)) throw new IllegalArgumentException(key + " is no file of [" + name + "]");
    }

    /** A list of pairs of texts, such as {@code [["a", "b"], ["a", "c"]]}. */
    List<List<String>> pairs(String key) {
        Object value = value(key);
        if (value == null) return List.of();
        List<List<String>> pairs = new ArrayList<>();
        if (value instanceof TomlArray array) {
            for (Object item : array.toList()) {
                if (item instanceof TomlArray two
                        && two.size() == 2
                        && two.toList().stream().allMatch(String.class::isInstance))
                    pairs.add(List.of(two.getString(0).strip(), two.getString(1).strip()));
            }
            if (pairs.size() == array.size()) return pairs;
        }
        fault(key, "is not a list of pairs. Write it as [[\"a\", \"b\"], [\"a\", \"c\"]].");
        return List.of();
    }

    PlanSection table(String key) {
        Object value = value(key);
        if (value instanceof TomlTable inner)
            return new PlanSection(source, key, inner, lineOf(key), faults, isBeforeFiles);
        if (value != null) fault(key, "is " + shown(value) + ", a table [" + key + "] is expected.");
        return new PlanSection(source, key, org.tomlj.Toml.parse(""), startLine, faults, isBeforeFiles);
    }

    /** Entries that may be one table [key] or several [[key]]; at least one, which is empty where there is none. */
    List<PlanSection> tableOrTables(String key) {
        if (!(value(key) instanceof TomlArray)) return List.of(table(key));
        List<PlanSection> several = tables(key);
        return several.isEmpty() ? List.of(table("")) : several;
    }

    List<PlanSection> tables(String key) {
        Object value = value(key);
        if (value == null) return List.of();
        List<PlanSection> sections = new ArrayList<>();
        if (value instanceof TomlArray array) {
            int most = MOST_ENTRIES.get(key);
            if (array.size() > most)
                faults.add(
                        source,
                        array.inputPositionOf(most).line(),
                        "[[" + key + "]] has " + array.size() + " entries, at most " + most
                                + " are taken. Leave some out, or make several plans.");
            int count = Math.min(array.size(), most);
            for (int i = 0; i < count; i++)
                if (array.get(i) instanceof TomlTable inner)
                    sections.add(new PlanSection(
                            source, key, inner, array.inputPositionOf(i).line(), faults, isBeforeFiles));
            if (sections.size() == count) return sections;
        }
        fault(key, "is " + shown(value) + ", entries that start with [[" + key + "]] are expected.");
        return sections;
    }

    /** Notes a fault for every key that nobody asked for. */
    void refuseUnknownKeys() {
        for (String key : table.keySet()) {
            if (asked.contains(key) || refused.contains(key)) continue;
            if (faults.isFull()) faults.add(source, startLine, "");
            else
                faults.add(
                        source,
                        lineOf(key),
                        "unknown key " + key + " in " + label() + "." + NearestWord.hint(key, asked) + " Known here: "
                                + String.join(", ", asked) + ".");
        }
    }

    private String label() {
        return name.isEmpty() ? "the plan" : "[" + name + "]";
    }

    private static String shown(Object value) {
        if (value instanceof String text) return "\"" + text + "\"";
        if (value instanceof TomlTable) return "a table";
        if (value instanceof TomlArray) return "a list";
        return String.valueOf(value);
    }
}
