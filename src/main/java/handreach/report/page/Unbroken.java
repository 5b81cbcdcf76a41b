package handreach.report.page;

import handreach.geodesy.PlaceForm;

/** Words with no-break blanks where a line must not end: within a place, and between a number, its bound and its per cent sign. */
public final class Unbroken {
    private static final String[] BOUNDS = {"under", "over"};

    private Unbroken() {}

    /** The same words; what need not be joined is left as it is. */
    public static String words(String words) {
        String places = PlaceForm.unbroken(words);
        int sign = places.indexOf(" %");
        if (sign < 0) return places;
        StringBuilder joined = new StringBuilder(places);
        for (; sign >= 0; sign = joined.indexOf(" %", sign + 1))
            if (sign > 0 && Character.isDigit(joined.charAt(sign - 1))) {
                joined.setCharAt(sign, PlaceForm.NO_BREAK);
                joinBound(joined, sign - 1);
            }
        return joined.toString();
    }

    /** What bounds a share stays with its number: {@code under 1 %}. */
    private static void joinBound(StringBuilder words, int lastDigit) {
        int blank = lastDigit;
        while (blank >= 0 && (Character.isDigit(words.charAt(blank)) || words.charAt(blank) == '.')) blank--;
        if (blank < 0 || words.charAt(blank) != ' ') return;
        for (String bound : BOUNDS)
            if (blank >= bound.length() && bound.contentEquals(words.subSequence(blank - bound.length(), blank)))
                words.setCharAt(blank, PlaceForm.NO_BREAK);
    }

    /** The same with plain blanks again. */
    public static String plain(String unbroken) {
        return unbroken.replace(PlaceForm.NO_BREAK, ' ');
    }
}
