package handreach.report.draw;

/** Words made safe to stand in XML and HTML, as text or inside a quoted attribute. */
public final class Markup {
    private Markup() {}

    /** The five reserved characters as entities; what XML 1.0 does not allow becomes the replacement character. */
    public static String escaped(String text) {
        StringBuilder out = new StringBuilder(text.length() + 16);
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                default -> out.appendCodePoint(isAllowed(c) ? c : 0xFFFD);
            }
        });
        return out.toString();
    }

    public static boolean isAllowed(int c) {
        return c == '\t'
                || c == '\n'
                || c == '\r'
                || (c >= 0x20 && c <= 0xD7FF)
                || (c >= 0xE000 && c <= 0xFFFD)
                || c >= 0x10000;
    }
}
