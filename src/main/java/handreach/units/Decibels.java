package handreach.units;

import java.util.Locale;

/** Levels, and other numbers with a sign, as they are written: so many decimals, and never a negative zero. */
public final class Decibels {
    private Decibels() {}

    /** A number for a table of the terminal: {@code -7.2}, {@code 0.0}. */
    public static String number(double value, int decimals) {
        String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
        boolean isNegativeZero = text.startsWith("-") && text.chars().noneMatch(c -> c >= '1' && c <= '9');
        return isNegativeZero ? text.substring(1) : text;
    }

    /** The same, always with its sign unless it reads nought: {@code +0.3}, {@code -7.2}, {@code 0.0}. */
    public static String signed(double value, int decimals) {
        String text = number(value, decimals);
        boolean isNought = text.chars().noneMatch(c -> c >= '1' && c <= '9');
        return text.startsWith("-") || isNought ? text : "+" + text;
    }

    /** Decibels to a tenth with their unit, for a sentence, with the minus sign that ledgers have: {@code 0.1 dB}, {@code −7.2 dB}. */
    public static String text(double db) {
        return number(db, 1).replace('-', '\u2212') + " dB";
    }
}
