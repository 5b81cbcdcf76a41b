package handreach.input;

import java.math.BigDecimal;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/** How a number is written in a file, and told to people: ASCII digits, point as decimal sign, whatever the locale. */
public final class NumberText {
    private static final Pattern PLAIN = Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d{1,3})?", 0);
    private static final Pattern COMMA = Pattern.compile("[+-]?\\d+,\\d+");

    private NumberText() {}

    /** The number, or nothing if the text is not a finite number in plain form. */
    public static OptionalDouble parse(String text) {
        String t = text.strip().replace('\u2212', '-');
        if (t.length() > 40 || !PLAIN.matcher(t).matches()) return OptionalDouble.empty();
        double value = Double.parseDouble(t);
        return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    }

    /** A number as told to people: no needless digits, no exponent; what is no finite number by the word that plan files have for it. */
    public static String plain(double number) {
        if (Double.isNaN(number)) return "nan";
        if (Double.isInfinite(number)) return number > 0 ? "inf" : "-inf";
        return new BigDecimal(Double.toString(number)).stripTrailingZeros().toPlainString();
    }

    /** Whether the text is a number with a decimal comma. */
    public static boolean hasDecimalComma(String text) {
        return COMMA.matcher(text.strip().replace('\u2212', '-')).matches();
    }
}
