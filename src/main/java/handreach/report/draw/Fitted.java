package handreach.report.draw;

/** Words cut to a width, with an ellipsis where something is missing. */
public final class Fitted {
    private Fitted() {}

    public static String words(String words, TextStyle lettering, double widthPx) {
        Typeface face = Typeface.of(lettering.isBold());
        double sizePx = lettering.sizePx();
        if (face.widthPx(words, sizePx) <= widthPx) return words;
        int end = words.length();
        while (end > 0 && face.widthPx(words.substring(0, end) + "…", sizePx) > widthPx)
            end = words.offsetByCodePoints(end, -1);
        return words.substring(0, end).strip() + "…";
    }
}
