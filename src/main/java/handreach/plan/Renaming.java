package handreach.plan;

import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.tomlj.Toml;

/** Another name for one entry of a plan's text, in the entry itself and wherever a {@link Reference} names it; all else stays. */
final class Renaming {
    private static final Pattern KEY = Pattern.compile("\\s*([A-Za-z0-9_-]+)\\s*=");

    private final NameKind kind;
    private final String from;
    private final String to;
    private String section = "";
    private boolean isName;
    /** Lists that are open at the end of the line. */
    private int depth;

    Renaming(NameKind kind, String from, String to) {
        this.kind = kind;
        this.from = from;
        this.to = to;
    }

    /** The text with the other name; lines end in a plain line feed. */
    String of(String text) {
        StringBuilder out = new StringBuilder();
        text.lines().forEach(line -> out.append(renamed(line)).append('\n'));
        return out.toString();
    }

    private String renamed(String line) {
        if (depth > 0) return value(line, 0);
        Matcher header = PlanText.HEADER.matcher(line);
        if (header.matches()) {
            section = header.group(2);
            return line;
        }
        Matcher key = KEY.matcher(line);
        if (!key.lookingAt()) return line;
        isName = holdsTheName(key.group(1));
        return value(line, key.end());
    }

    private boolean holdsTheName(String key) {
        if (key.equals("name")) return section.equals(kind.section());
        return Arrays.stream(Reference.values())
                .anyMatch(one -> one.key().equals(key)
                        && one.kinds().contains(kind)
                        && one.sections().contains(section));
    }

    /** A line from the start of a value, or of its rest, on. */
    private String value(String line, int start) {
        StringBuilder out = new StringBuilder(line.substring(0, start));
        int at = start;
        while (at < line.length() && line.charAt(at) != '#') {
            char c = line.charAt(at);
            int end = c == '"' || c == '\'' ? PlanText.endOfText(line, at) : at + 1;
            String token = line.substring(at, end);
            if (c == '[') depth++;
            if (c == ']') depth--;
            out.append(isName && end > at + 1 && isOld(token) ? PlanText.quoted(to) : token);
            at = end;
        }
        return out.append(line.substring(at)).toString();
    }

    private boolean isOld(String token) {
        String text = Toml.parse("text = " + token).getString("text");
        return text != null && text.strip().equals(from);
    }
}
