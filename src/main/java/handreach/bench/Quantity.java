package handreach.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a row of the bench file measured, with the one unit it is written in. */
public enum Quantity {
    RECEIVED_LEVEL("received_level", "dBm", -200, 60, "level", "received_signal", "signal_level", "rx_level"),
    FIELD_METER("field_meter", "uA", 0, 1e6, "field_strength", "field_strength_meter", "meter"),
    SWR("swr", ":1", 1, 10_000, "vswr"),
    RETURN_LOSS("return_loss", "dB", -100, 100),
    RESONANCE("resonance", "MHz", 1, 10_000, "resonant_frequency"),
    BANDWIDTH("bandwidth", "MHz", 0.001, 10_000);

    private final String key;
    private final String unit;
    private final double lowest;
    private final double highest;
    private final List<String> alsoCalled;

    Quantity(String key, String unit, double lowest, double highest, String... alsoCalled) {
        this.key = key;
        this.unit = unit;
        this.lowest = lowest;
        this.highest = highest;
        this.alsoCalled = List.of(alsoCalled);
    }

    /** The word in the column {@code quantity}. */
    public String key() {
        return key;
    }

    /** The unit in the column {@code unit}. */
    public String unit() {
        return unit;
    }

    double lowest() {
        return lowest;
    }

    double highest() {
        return highest;
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
                .filter(q -> q.key.equals(plain) || q.alsoCalled.contains(plain))
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
