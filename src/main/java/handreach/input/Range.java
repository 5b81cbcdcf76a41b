package handreach.input;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a number of the user's may be: owned once, beside the thing it limits, and told from there by whoever reads, asks or explains.
 *
 * @param key name of the number in files, such as {@code height_m}
 * @param low least value allowed
 * @param high largest value allowed
 * @param unit unit of both, empty for a plain number
 * @param advice what to do with a number outside, a sentence
 */
public record Range(String key, double low, double high, String unit, String advice) {
    private static final String USUAL_ADVICE = "Correct the value.";

    public Range {
        if (!(low <= high)) throw new IllegalArgumentException(key + " from " + low + " to " + high);
    }

    public Range(String key, double low, double high, String unit) {
        this(key, low, high, unit, USUAL_ADVICE);
    }

    /** Whether the number lies within, both ends included. */
    public boolean accepts(double number) {
        return number >= low && number <= high;
    }

    /** Whether the number is a whole one that lies within. */
    public boolean acceptsWhole(double number) {
        return number == Math.rint(number) && accepts(number);
    }

    /** What is allowed, such as {@code 0.2 to 120 km}. */
    public String words() {
        return NumberText.plain(low) + " to " + NumberText.plain(high) + (unit.isEmpty() ? "" : " " + unit);
    }

    /** What to say of a number outside, as it was typed; follows the name that the user knows it by. */
    public String fault(String found) {
        return "is " + found + ", allowed is " + words() + ". "
                + smallerUnit(found).orElse(advice);
    }

    /** What to say of a number that is outside or no whole one, as it was typed. */
    public String wholeFault(String found) {
        return "is " + found + ", allowed are whole numbers from " + words() + ". " + advice;
    }

    /** What to say of megahertz that were written in kilohertz or hertz. */
    private Optional<String> smallerUnit(String found) {
        OptionalDouble number = NumberText.parse(found);
        if (!unit.equals("MHz") || number.isEmpty() || number.getAsDouble() <= high) return Optional.empty();
        if (accepts(number.getAsDouble() / 1e3)) return Optional.of(looksLike("kilohertz"));
        return accepts(number.getAsDouble() / 1e6) ? Optional.of(looksLike("hertz")) : Optional.empty();
    }

    private static String looksLike(String unit) {
        return "It looks like " + unit + ". Write it in megahertz.";
    }

    /** Notes a number that an option sets, if it lies outside. */
    public void check(Faults faults, String option, double number) {
        if (!accepts(number)) faults.add(option, 0, fault(NumberText.plain(number)));
    }
}
