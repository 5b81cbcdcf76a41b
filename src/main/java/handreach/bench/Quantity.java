package handreach.bench;

import handreach.input.Faults;
import handreach.input.NearestWord;
import handreach.input.Range;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** What a row of the bench file measured, with the one unit it is written in. */
public enum Quantity {
    RECEIVED_LEVEL(
            new Range("received_level", -200, 60, "dBm"), "level", "received_signal", "signal_level", "rx_level"),
    FIELD_METER(new Range("field_meter", 0, 1e6, "uA"), "field_strength", "field_strength_meter", "meter"),
    SWR(new Range("swr", 1, 10_000, ":1"), "vswr"),
    RETURN_LOSS(new Range("return_loss", -100, 100, "dB")),
    RESONANCE(new Range("resonance", 1, 10_000, "MHz"), "resonant_frequency"),
    BANDWIDTH(new Range("bandwidth", 0.001, 10_000, "MHz"));

    private final Range allowed;
    private final List<String> alsoCalled;

    Quantity(Range allowed, String... alsoCalled) {
        this.allowed = allowed;
        this.alsoCalled = List.of(alsoCalled);
    }

    /** Whether it is read in turns with the control; what is not is read once for an antenna and mounting. */
    public boolean isReadInTurns() {
        return this == RECEIVED_LEVEL || this == FIELD_METER;
    }

    /** By the words that a bench file may use; a fault names what was found and what is allowed. */
    public static List<Quantity> namedBy(String option, List<String> typed) {
        Faults faults = new Faults();
        Set<Quantity> found = new LinkedHashSet<>();
        for (String word : typed)
            named(word)
                    .ifPresentOrElse(
                            found::add,
                            () -> faults.add(
                                    option,
                                    0,
                                    "is \"" + word + "\", allowed are " + String.join(", ", keys()) + "."
                                            + NearestWord.hint(word, keys())));
        faults.throwIfAny();
        return List.copyOf(found);
    }

    /** The word in the column {@code quantity}. */
    public String key() {
        return allowed.key();
    }

    /** The unit in the column {@code unit}. */
    public String unit() {
        return allowed.unit();
    }

    /** What a reading of it may be, in the unit in which it is written. */
    Range allowed() {
        return allowed;
    }

    boolean isWrittenIn(String typed) {
        String plain = plain(typed);
        return switch (this) {
            case RECEIVED_LEVEL -> plain.equals("dbm");
            case FIELD_METER ->
                List.of("ua", "microamp", "microamps", "microampere").contains(plain);
            case SWR -> List.of("", ":1", "1", "ratio").contains(plain);
            case RETURN_LOSS -> plain.equals("db");
            case RESONANCE -> plain.equals("mhz");
            case BANDWIDTH -> List.of("mhz", "mhzat3:1").contains(plain);
        };
    }

    /** By its own word, or by another that people write for it. */
    static Optional<Quantity> named(String typed) {
        String plain = typed.strip().toLowerCase(Locale.ROOT).replaceAll("[ -]+", "_");
        return Arrays.stream(values())
                .filter(q -> q.key().equals(plain) || q.alsoCalled.contains(plain))
                .findFirst();
    }

    /** Other words that are read for it. */
    List<String> alsoCalled() {
        return alsoCalled;
    }

    /** What a unit by itself says was read; nothing where it could be several. */
    static Optional<Quantity> writtenIn(String unit) {
        if (unit.isBlank()) return Optional.empty();
        List<Quantity> found =
                Arrays.stream(values()).filter(q -> q.isWrittenIn(unit)).toList();
        return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
    }

    static List<String> keys() {
        return Arrays.stream(values()).map(Quantity::key).toList();
    }

    /** Lower case, no blanks, either micro sign as u. */
    private static String plain(String typed) {
        return typed.strip()
                .toLowerCase(Locale.ROOT)
                .replace('\u00B5', 'u')
                .replace('\u03BC', 'u')
                .replaceAll("\\s+", "");
    }
}
