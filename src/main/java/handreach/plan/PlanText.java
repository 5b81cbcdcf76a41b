package handreach.plan;

import handreach.geodesy.Position;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.tomlj.Toml;

/**
 * Small edits of a plan's text that leave every other line, and every comment, as it is: set a value in a section, add a
 * section, remove a named entry. The text must be valid TOML in the plan's own form (one key a line; a list may go on over several).
 * The name of a plain section is empty for the keys above all sections.
 */
public final class PlanText {
    /** Where the keys above all sections start. */
    private static final int TOP = -1;

    private static final int NOWHERE = -2;
    static final Pattern HEADER = Pattern.compile("\\s*(\\[\\[?)\\s*([A-Za-z0-9_.-]+)\\s*\\]\\]?\\s*(#.*)?");

    private PlanText() {}

    /** A text as a TOML value. */
    public static String quoted(String text) {
        StringBuilder out = new StringBuilder("\"");
        for (char c : text.toCharArray()) {
            if (c == '"' || c == '\\') out.append('\\').append(c);
            else if (c < 0x20 || c == 0x7F) out.append(String.format(Locale.ROOT, "\\u%04X", (int) c));
            else out.append(c);
        }
        return out.append('"').toString();
    }

    /** A number as a TOML value. */
    public static String number(double value) {
        if (value == Math.rint(value) && Math.abs(value) < 1e12) return Long.toString((long) value);
        return Double.toString(value);
    }

    /** A place as a TOML value, to a tenth of a metre or so. */
    public static String place(Position at) {
        return quoted(String.format(Locale.ROOT, "%.6f, %.6f", at.latitudeDeg(), at.longitudeDeg()));
    }

    /** Whether a plain section such as {@code [relay]} stands in the text. */
    public static boolean hasSection(String text, String section) {
        return headerOf(text.lines().toList(), "[", section, 0) >= 0;
    }

    /** How many entries such as {@code [[station]]} stand in the text. */
    public static int count(String text, String section) {
        List<String> lines = text.lines().toList();
        int count = 0;
        while (numbered(lines, section, count) != NOWHERE) count++;
        return count;
    }

    /** The texts in quotes of a value, such as those of a list, in their order. */
    public static List<String> texts(String value) {
        List<String> texts = new ArrayList<>();
        int at = 0;
        while (at < value.length()) {
            char c = value.charAt(at);
            int end = c == '"' || c == '\'' ? endOfText(value, at) : at + 1;
            if (end > at + 1) {
                String text = Toml.parse("text = " + value.substring(at, end)).getString("text");
                if (text != null) texts.add(text);
            }
            at = end;
        }
        return texts;
    }

    /** What a key of a plain section says, as TOML; nothing where it is not there. */
    public static Optional<String> value(String text, String section, String key) {
        List<String> lines = text.lines().toList();
        return valueOf(lines, plain(lines, section), key);
    }

    /** The same of the entry with this name. */
    public static Optional<String> entryValue(String text, String section, String name, String key) {
        List<String> lines = text.lines().toList();
        return valueOf(lines, entryOf(lines, section, name), key);
    }

    /** The same of the entry with this number, from 0. */
    public static Optional<String> entryValue(String text, String section, int number, String key) {
        List<String> lines = text.lines().toList();
        return valueOf(lines, numbered(lines, section, number), key);
    }

    private static Optional<String> valueOf(List<String> lines, int header, String key) {
        int at = keyLine(lines, header, key);
        if (at < 0) return Optional.empty();
        StringBuilder value = new StringBuilder();
        for (int i = at; i <= lastLine(lines, at); i++) {
            String line = lines.get(i);
            int start = i == at ? line.indexOf('=') + 1 : 0;
            value.append(line, start, line.length() - commentOf(line).length()).append(' ');
        }
        return Optional.of(value.toString().strip());
    }

    /** Index of the line on which the value that starts on this one ends: a list may go on over several. */
    private static int lastLine(List<String> lines, int start) {
        int depth = 0;
        for (int i = start; i < lines.size(); i++) {
            String line = lines.get(i);
            int end = line.length() - commentOf(line).length();
            int at = i == start ? line.indexOf('=') + 1 : 0;
            while (at < end) {
                char c = line.charAt(at);
                if (c == '[') depth++;
                if (c == ']') depth--;
                at = c == '"' || c == '\'' ? endOfText(line, at) : at + 1;
            }
            if (depth <= 0) return i;
        }
        return start;
    }

    /** Takes a key out of a plain section. */
    public static String withoutValue(String text, String section, String key) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        return without(text, lines, plain(lines, section), key);
    }

    /** Takes a key out of the entry with this name. */
    public static String withoutEntryValue(String text, String section, String name, String key) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        return without(text, lines, entryOf(lines, section, name), key);
    }

    /** Takes a key out of the entry with this number, from 0. */
    public static String withoutEntryValue(String text, String section, int number, String key) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        return without(text, lines, numbered(lines, section, number), key);
    }

    private static String without(String text, List<String> lines, int header, String key) {
        int at = keyLine(lines, header, key);
        if (at < 0) return text;
        lines.subList(at, lastLine(lines, at) + 1).clear();
        return joined(lines);
    }

    /** Index of the line with this key in the section that starts here, or -1. */
    private static int keyLine(List<String> lines, int header, String key) {
        if (header == NOWHERE) return -1;
        Pattern line = Pattern.compile("\\s*" + Pattern.quote(key) + "\\s*=.*");
        for (int i = header + 1; i < endOf(lines, header); i++)
            if (line.matcher(lines.get(i)).matches()) return i;
        return -1;
    }

    /** Sets a key of a plain section such as {@code [target]}; adds the section if it is not there. */
    public static String withValue(String text, String section, String key, String value) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        int header = plain(lines, section);
        if (header == NOWHERE) {
            if (!lines.isEmpty() && !lines.get(lines.size() - 1).isBlank()) lines.add("");
            lines.add("[" + section + "]");
            header = lines.size() - 1;
        }
        setKey(lines, header, key, value);
        return joined(lines);
    }

    /** Sets a key above all sections, such as the title. */
    public static String withTopValue(String text, String key, String value) {
        return withValue(text, "", key, value);
    }

    /** Sets a key of the entry with this name among sections such as {@code [[position]]}. */
    public static String withEntryValue(String text, String section, String name, String key, String value) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        int header = entryOf(lines, section, name);
        if (header < 0) throw new IllegalArgumentException("no [[" + section + "]] named " + name);
        setKey(lines, header, key, value);
        return joined(lines);
    }

    /** The same of the entry with this number, from 0. */
    public static String withEntryValue(String text, String section, int number, String key, String value) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        int header = numbered(lines, section, number);
        if (header < 0) throw new IllegalArgumentException("no [[" + section + "]] number " + number);
        setKey(lines, header, key, value);
        return joined(lines);
    }

    /** Makes a plain section such as {@code [channel]} the first of several. */
    public static String asEntries(String text, String section) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        int header = headerOf(lines, "[", section, 0);
        if (header < 0) return text;
        String comment = commentOf(lines.get(header));
        lines.set(header, "[[" + section + "]]" + (comment.isEmpty() ? "" : " " + comment));
        return joined(lines);
    }

    /** Adds an entry behind the last of its kind, or at the end. */
    public static String withEntry(String text, String section, List<String> keyValueLines) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        int last = -1;
        for (int at = headerOf(lines, "[[", section, 0); at >= 0; at = headerOf(lines, "[[", section, at + 1))
            last = at;
        int insert = last < 0 ? lines.size() : endOf(lines, last);
        List<String> block = new ArrayList<>();
        block.add("");
        block.add("[[" + section + "]]");
        block.addAll(keyValueLines);
        lines.addAll(insert, block);
        return joined(lines);
    }

    /** Removes the entry with this name. */
    public static String withoutEntry(String text, String section, String name) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        return cleared(text, lines, entryOf(lines, section, name));
    }

    /** Removes the entry with this number, from 0. */
    public static String withoutEntry(String text, String section, int number) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        return cleared(text, lines, numbered(lines, section, number));
    }

    /** Removes a plain section with all its keys. */
    public static String withoutSection(String text, String section) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        return cleared(text, lines, headerOf(lines, "[", section, 0));
    }

    private static String cleared(String text, List<String> lines, int header) {
        if (header < 0) return text;
        lines.subList(header, endOf(lines, header)).clear();
        return joined(lines);
    }

    /**
     * Another name for an entry; every key of the plan that names it follows. An antenna keeps its name in the bench file, which the
     * plan does not write.
     */
    public static String rename(String text, NameKind kind, String from, String to) {
        List<String> lines = text.lines().toList();
        int header = named(lines, kind.section(), from);
        if (header < 0) throw new IllegalArgumentException("no [[" + kind.section() + "]] named " + from);
        boolean isBenchNamed = keyLine(lines, header, "bench") >= 0;
        String renamed = new Renaming(kind, from, to).of(text);
        return kind != NameKind.ANTENNA || isBenchNamed
                ? renamed
                : withEntryValue(renamed, kind.section(), to, "bench", quoted(from));
    }

    /** Where the entry with this name starts, or the one section of its kind, such as {@code [channel]}. */
    private static int named(List<String> lines, String section, String name) {
        int entry = entryOf(lines, section, name);
        if (entry >= 0) return entry;
        int only = headerOf(lines, "[", section, 0);
        return valueOf(lines, only, "name").map(PlanText::texts).equals(Optional.of(List.of(name))) ? only : NOWHERE;
    }

    private static void setKey(List<String> lines, int header, String key, String value) {
        int at = keyLine(lines, header, key);
        if (at < 0) {
            lines.add(endOf(lines, header), key + " = " + value);
            return;
        }
        int last = lastLine(lines, at);
        String comment = commentOf(lines.get(last));
        lines.subList(at, last).clear();
        lines.set(at, key + " = " + value + (comment.isEmpty() ? "" : " " + comment));
    }

    /** The comment at the end of a line, outside any quotes. */
    private static String commentOf(String line) {
        int at = 0;
        while (at < line.length() && line.charAt(at) != '#') {
            char c = line.charAt(at);
            at = c == '"' || c == '\'' ? endOfText(line, at) : at + 1;
        }
        return line.substring(at);
    }

    /** Index behind the text in quotes that starts here; the end of the line if nothing ends it. */
    static int endOfText(String line, int start) {
        char quote = line.charAt(start);
        for (int i = start + 1; i < line.length(); i++) {
            if (line.charAt(i) == quote) return i + 1;
            if (quote == '"' && line.charAt(i) == '\\') i++;
        }
        return line.length();
    }

    private static int entryOf(List<String> lines, String section, String name) {
        Pattern nameLine = Pattern.compile(
                "\\s*name\\s*=\\s*(" + Pattern.quote(quoted(name)) + "|'" + Pattern.quote(name) + "')\\s*(#.*)?");
        for (int at = headerOf(lines, "[[", section, 0); at >= 0; at = headerOf(lines, "[[", section, at + 1)) {
            for (int i = at + 1; i < endOf(lines, at); i++)
                if (nameLine.matcher(lines.get(i)).matches()) return at;
        }
        return NOWHERE;
    }

    /** Where the entry with this number starts. */
    private static int numbered(List<String> lines, String section, int number) {
        int at = headerOf(lines, "[[", section, 0);
        for (int i = 0; i < number && at >= 0; i++) at = headerOf(lines, "[[", section, at + 1);
        return at;
    }

    /** Where a plain section starts. */
    private static int plain(List<String> lines, String section) {
        return section.isEmpty() ? TOP : headerOf(lines, "[", section, 0);
    }

    private static int headerOf(List<String> lines, String bracket, String section, int from) {
        for (int i = from; i < lines.size(); i++) {
            Matcher header = HEADER.matcher(lines.get(i));
            if (header.matches()
                    && header.group(1).equals(bracket)
                    && header.group(2).equals(section)) return i;
        }
        return NOWHERE;
    }

    /** Index behind the last line with content of the section that starts here. */
    private static int endOf(List<String> lines, int header) {
        int next = header + 1;
        while (next < lines.size() && !HEADER.matcher(lines.get(next)).matches()) next++;
        while (next > header + 1) {
            String before = lines.get(next - 1).strip();
            if (!before.isEmpty() && !before.startsWith("#")) break;
            next--;
        }
        return next;
    }

    /**
     * Line of a key in a plain section, from 1; where the section lacks the key, the line of its header, and 0 where there is no such
     * section.
     */
    static int lineOf(String text, String section, String key) {
        List<String> lines = text.lines().toList();
        return lineOf(lines, plain(lines, section), key);
    }

    /** The same in the entry with this name. */
    static int lineOfEntry(String text, String section, String name, String key) {
        List<String> lines = text.lines().toList();
        return lineOf(lines, entryOf(lines, section, name), key);
    }

    private static int lineOf(List<String> lines, int header, String key) {
        if (header == NOWHERE) return 0;
        int at = keyLine(lines, header, key);
        return at < 0 ? header + 1 : at + 1;
    }

    private static String joined(List<String> lines) {
        return String.join("\n", lines) + "\n";
    }
}
