package handreach.report.page;

import handreach.geodesy.PlaceForm;

/** Words with no-break blanks where a line must not end: within a place, and between a number and its per cent sign. */
public final class Unbroken {
    private Unbroken() {}

    /** The same words; what need not be joined is left as it is. */
    public static String words(String words) {
        String places = PlaceForm.unbroken(words);
        int sign = places.indexOf(" %");
        if (sign < 0) return places;
        StringBuilder joined = new StringBuilder(places);
        for (; sign >= 0; sign = joined.indexOf(" %", sign + 1))
            if (sign > 0 && Character.isDigit(joined.charAt(sign - 1))) joined.setCharAt(sign, PlaceForm.NO_BREAK);
        return joined.toString();
    }

    /** The same with plain blanks again. */
    public static String plain(String unbroken) {
        return unbroken.replace(PlaceForm.NO_BREAK, ' ');
    }
}
