package handreach.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Small edits of a plan's text that leave every other line, and every comment, as it is: set a value in a section, add a
 * section, remove a named entry. The text must be valid TOML in the plan's own form (one key a line).
 */
public final class PlanText {
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

    /** Whether a plain section such as {@code [relay]} stands in the text. */
    public static boolean hasSection(String text, String section) {
        return headerOf(text.lines().toList(), "[", section, 0) >= 0;
    }

    /** What a key of a plain section says, as TOML; nothing where it is not there. */
    public static Optional<String> value(String text, String section, String key) {
        List<String> lines = text.lines().toList();
        return valueOf(lines, headerOf(lines, "[", section, 0), key);
    }

    /** The same of the entry with this name. */
    public static Optional<String> entryValue(String text, String section, String name, String key) {
        List<String> lines = text.lines().toList();
        return valueOf(lines, entryOf(lines, section, name), key);
    }

    private static Optional<String> valueOf(List<String> lines, int header, String key) {
        int at = header < 0 ? -1 : keyLine(lines, header, key);
        if (at < 0) return Optional.empty();
        String line = lines.get(at);
        String comment = commentOf(line);
        String value = line.substring(line.indexOf('=') + 1, line.length() - comment.length());
        return Optional.of(value.strip());
    }

    /** Takes a key out of a plain section. */
    public static String withoutValue(String text, String section, String key) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        return without(text, lines, headerOf(lines, "[", section, 0), key);
    }

    /** Takes a key out of the entry with this name. */
    public static String withoutEntryValue(String text, String section, String name, String key) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        return without(text, lines, entryOf(lines, section, name), key);
    }

    private static String without(String text, List<String> lines, int header, String key) {
        int at = header < 0 ? -1 : keyLine(lines, header, key);
        if (at < 0) return text;
        lines.remove(at);
        return joined(lines);
    }

    /** Index of the line with this key in the section that starts here, or -1. */
    private static int keyLine(List<String> lines, int header, String key) {
        Pattern line = Pattern.compile("\\s*" + Pattern.quote(key) + "\\s*=.*");
        for (int i = header + 1; i < endOf(lines, header); i++)
            if (line.matcher(lines.get(i)).matches()) return i;
        return -1;
    }

    /** Sets a key of a plain section such as {@code [target]}; adds the section if it is not there. */
    public static String withValue(String text, String section, String key, String value) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        int header = headerOf(lines, "[", section, 0);
        if (header < 0) {
            if (!lines.isEmpty() && !lines.get(lines.size() - 1).isBlank()) lines.add("");
            lines.add("[" + section + "]");
            header = lines.size() - 1;
        }
        setKey(lines, header, key, value);
        return joined(lines);
    }

    /** Sets a key above all sections, such as the title. */
    public static String withTopValue(String text, String key, String value) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        setKey(lines, -1, key, value);
        return joined(lines);
    }

    /** Sets a key of the entry with this name among sections such as {@code [[position]]}. */
    public static String withEntryValue(String text, String section, String name, String key, String value) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        int header = entryOf(lines, section, name);
        if (header < 0) throw new IllegalArgumentException("no [[" + section + "]] named " + name);
        setKey(lines, header, key, value);
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
        int header = entryOf(lines, section, name);
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
        int header = entryOf(lines, kind.section(), from);
        if (header < 0) throw new IllegalArgumentException("no [[" + kind.section() + "]] named " + from);
        boolean isBenchNamed =
                lines.subList(header, endOf(lines, header)).stream().anyMatch(line -> line.matches("\\s*bench\\s*=.*"));
        String renamed = new Renaming(kind, from, to).of(text);
        return kind != NameKind.ANTENNA || isBenchNamed
                ? renamed
                : withEntryValue(renamed, kind.section(), to, "bench", quoted(from));
    }

    private static void setKey(List<String> lines, int header, String key, String value) {
        int at = keyLine(lines, header, key);
        if (at < 0) {
            lines.add(endOf(lines, header), key + " = " + value);
            return;
        }
        String comment = commentOf(lines.get(at));
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
        return -1;
    }

    private static int headerOf(List<String> lines, String bracket, String section, int from) {
        for (int i = from; i < lines.size(); i++) {
            Matcher header = HEADER.matcher(lines.get(i));
            if (header.matches()
                    && header.group(1).equals(bracket)
                    && header.group(2).equals(section)) return i;
        }
        return -1;
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
        return lineOf(lines, headerOf(lines, "[", section, 0), key);
    }

    /** The same in the entry with this name. */
    static int lineOfEntry(String text, String section, String name, String key) {
        List<String> lines = text.lines().toList();
        return lineOf(lines, entryOf(lines, section, name), key);
    }

    private static int lineOf(List<String> lines, int header, String key) {
        if (header < 0) return 0;
        int at = keyLine(lines, header, key);
        return at < 0 ? header + 1 : at + 1;
    }

    private static String joined(List<String> lines) {
        return String.join("\n", lines) + "\n";
    }
}
