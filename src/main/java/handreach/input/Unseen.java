package handreach.input;

import java.util.Locale;
import java.util.function.IntFunction;
import java.util.regex.Pattern;

/**
 * Characters that are not seen but obeyed: they move the cursor of a terminal, turn the reading direction, begin a line, or are no
 * characters at all. Words out of files go to every output through here, so that no file can steer a terminal or forge a line.
 *
 * <p>These are the controls C0, delete and C1, the marks of direction (U+061C, U+200E and F, U+202A to E, U+2066 to 9), the
 * separators of lines and paragraphs, the byte-order mark, and halves of surrogate pairs.
 */
public final class Unseen {
    /** The usual sign for a character that cannot be shown. */
    private static final String MARK = "\uFFFD";

    private static final Pattern BREAKS = Pattern.compile("[\\t\\n\\u000B\\f\\r\\u0085\\u2028\\u2029]+");

    private Unseen() {}

    /** Whether a character is one of these; line feed, carriage return and tab are. */
    public static boolean is(int codePoint) {
        return codePoint < 0x20
                || codePoint >= 0x7F && codePoint <= 0x9F
                || codePoint == 0x061C
                || codePoint == 0x200E
                || codePoint == 0x200F
                || codePoint >= 0x2028 && codePoint <= 0x202E
                || codePoint >= 0x2066 && codePoint <= 0x2069
                || codePoint >= 0xD800 && codePoint <= 0xDFFF
                || codePoint == 0xFEFF;
    }

    /** Words as one line: where lines end a blank, for each other such character a mark. */
    public static String oneLine(String words) {
        return isPlain(words) ? words : replaced(BREAKS.matcher(words).replaceAll(" "), c -> MARK);
    }

    /** The text of a format that knows escapes by four hexadecimal digits within quotes, as JSON does; its lines and tabs stay. */
    public static String escaped(String text) {
        return isPlain(text)
                ? text
                : replaced(
                        text,
                        c -> c == '\n' || c == '\r' || c == '\t'
                                ? Character.toString(c)
                                : String.format(Locale.ROOT, "\\u%04X", c));
    }

    private static boolean isPlain(String words) {
        for (int i = 0; i < words.length(); i += Character.charCount(words.codePointAt(i)))
            if (is(words.codePointAt(i))) return false;
        return true;
    }

    private static String replaced(String words, IntFunction<String> sign) {
        StringBuilder out = new StringBuilder(words.length() + 16);
        words.codePoints().forEach(c -> {
            if (is(c)) out.append(sign.apply(c));
            else out.appendCodePoint(c);
        });
        return out.toString();
    }
}
