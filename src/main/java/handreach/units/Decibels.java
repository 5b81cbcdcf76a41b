package handreach.units;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Levels, and other numbers with a sign, as they are written: so many decimals, and never a negative zero. */
public final class Decibels {
    private Decibels() {}

    /** A number for people, with a true minus sign: {@code −7.2}, {@code 0.0}. */
    public static String number(double value, int decimals) {
        return plain(value, decimals).replace('-', '\u2212');
    }

    /** The same, always with its sign unless it reads nought: {@code +0.3}, {@code −7.2}, {@code 0.0}. */
    public static String signed(double value, int decimals) {
        String text = plain(value, decimals);
        return Double.isFinite(value) && Double.parseDouble(text) > 0 ? "+" + text : text.replace('-', '\u2212');
    }

    /** A number for files that programs read, and for degrees that are typed again, with a plain hyphen: {@code -7.2}. */
    public static String plain(double value, int decimals) {
        if (!Double.isFinite(value)) return String.valueOf(value);
        return BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
    }

    /** Decibels to a tenth with their unit, for a sentence: {@code 0.1 dB}, {@code −7.2 dB}. */
    public static String text(double db) {
        return number(db, 1) + " dB";
    }
}
