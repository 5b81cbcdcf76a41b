package handreach.report.draw;

import handreach.input.Unseen;

/** Words made safe to stand in XML and HTML, as text or inside a quoted attribute. */
public final class Markup {
    private Markup() {}

    /** The five reserved characters as entities; what is not allowed becomes the replacement character. */
    public static String escaped(String text) {
        StringBuilder out = new StringBuilder(text.length() + 16);
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                case '\r' -> out.append(' ');
                default -> out.appendCodePoint(isAllowed(c) ? c : 0xFFFD);
            }
        });
        return out.toString();
    }

    /** Blanks and line ends, and whatever XML 1.0 allows that is also seen: no control, no mark of direction. */
    public static boolean isAllowed(int c) {
        return c == '\t' || c == '\n' || c == '\r' || !Unseen.is(c) && (c <= 0xFFFD || c >= 0x10000);
    }
}
