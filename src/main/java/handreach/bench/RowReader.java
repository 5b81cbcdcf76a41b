package handreach.bench;

import handreach.input.Faults;
import handreach.input.NearestWord;
import handreach.input.NumberText;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/** Turns the fields of a row into a reading, or says all that is wrong with them. */
final class RowReader {
    /** A billionth of what moves the needle of a sensitive meter. */
    private static final double LEAST_MICROAMPS = 1e-6;

    private static final String GAIN_NEEDS_REFERENCE =
            "A gain has no meaning without its reference: over isotropic (dBi), over a half-wave dipole (dBd), or over the"
                    + " control in a named mounting. ";
    private static final double LOWEST_MHZ = 1;
    private static final double HIGHEST_MHZ = 10_000;
    private static final int HIGHEST_TRIAL = 1_000_000;

    private final String source;
    private final Map<String, Integer> columns;
    private final int width;
    private final char separator;
    private final Faults faults;
    private final List<String> notes;
    private final Map<String, String> antennaSpellings = new HashMap<>();
    private final Map<String, Mounting> mountings = new HashMap<>();
    private final Map<String, Mounting> mountingsAsTyped = new HashMap<>();
    private final Map<String, String> names = new HashMap<>();
    private final Map<String, Optional<Quantity>> quantities = new HashMap<>();
    private final Map<Quantity, Map<String, Boolean>> units = new EnumMap<>(Quantity.class);
    private final Map<String, Integer> lineOfKey = new HashMap<>();
    private final Set<Integer> commaLines = new TreeSet<>();
    private final Set<Integer> signLines = new TreeSet<>();
    private final Set<String> otherSpellings = new TreeSet<>();

    RowReader(
            String source, Map<String, Integer> columns, int width, char separator, Faults faults, List<String> notes) {
        this.source = source;
        this.columns = Map.copyOf(columns);
        this.width = width;
        this.separator = separator;
        this.faults = faults;
        this.notes = notes;
        for (Quantity quantity : Quantity.values()) units.put(quantity, new HashMap<>());
    }

    Optional<Reading> read(List<String> fields, int line) {
        int before = faults.list().size();
        if (fields.size() > width
                && fields.subList(width, fields.size()).stream().anyMatch(f -> !f.isBlank())) {
            fault(
                    line,
                    "has " + fields.size() + " fields, the header names " + width
                            + ". A decimal comma, or a comma in a note, splits a field: write decimals with a point, put text in"
                            + " quotation marks, or separate by semicolons.");
            return Optional.empty();
        }
        String value = field(fields, "value");
        String unit = field(fields, "unit");
        if (separator == ','
                && !unit.isEmpty()
                && Character.isDigit(unit.charAt(0))
                && value.matches("[-+\u2212]?\\d+")
                && unit.matches("\\d+")) {
            fault(line, commaFault("value", value + "," + unit));
            return Optional.empty();
        }
        String antenna = word(fields, "antenna", line, "the name of the antenna");
        String mount = word(fields, "mount", line, "what the antenna stood on");
        Optional<Quantity> quantity = quantity(fields, line);
        Optional<Reading.Measured> measured = quantity.flatMap(q -> measured(q, fields, line));
        OptionalDouble frequency = frequency(fields, line);
        OptionalInt trial = trial(fields, line);
        if (faults.list().size() > before || measured.isEmpty()) return Optional.empty();
        Reading reading = new Reading(
                spelled(antenna),
                mounting(mount),
                measured.get(),
                frequency,
                trial,
                new Reading.Row(line, field(fields, "note")));
        if (isDuplicate(reading)) return Optional.empty();
        return Optional.of(reading);
    }

    /** Notes that are told once for the whole file. */
    void finish() {
        if (!commaLines.isEmpty())
            notes.add("Decimal commas were read as decimal points (" + linesText(commaLines) + ").");
        if (!signLines.isEmpty())
            notes.add("A negative return loss was taken as its positive value: a loss is positive when it weakens ("
                    + linesText(signLines) + ").");
        for (String text : otherSpellings) notes.add(text);
        for (Mounting mounting : mountings.values().stream()
                .filter(m -> !m.known())
                .sorted((a, b) -> a.name().compareTo(b.name()))
                .toList())
            notes.add(
                    "The mounting \"" + mounting.name()
                            + "\" is not a known word and is treated as a chassis: its readings are taken to hold neither hand nor body.");
    }

    private static String linesText(Set<Integer> lines) {
        List<Integer> all = List.copyOf(lines);
        if (all.size() == 1) return "line " + all.get(0);
        if (all.size() <= 4)
            return "lines "
                    + String.join(", ", all.stream().map(String::valueOf).toList());
        return all.size() + " lines from line " + all.get(0);
    }

    private Optional<Quantity> quantity(List<String> fields, int line) {
        String typed = field(fields, "quantity");
        Optional<Quantity> quantity = quantities.computeIfAbsent(typed, Quantity::named);
        if (quantity.isPresent()) return quantity;
        String plain = typed.toLowerCase(Locale.ROOT);
        if (plain.contains("gain")) {
            fault(
                    line,
                    "quantity is \"" + typed + "\" (" + field(fields, "value") + " " + field(fields, "unit") + "). "
                            + GAIN_NEEDS_REFERENCE
                            + "Give the received_level of this antenna and of the control instead; the delta follows from them.");
        } else if (typed.isBlank()) {
            fault(line, "quantity is missing. Allowed are " + String.join(", ", Quantity.keys()) + ".");
        } else {
            fault(
                    line,
                    "quantity is \"" + typed + "\", allowed are " + String.join(", ", Quantity.keys()) + "."
                            + NearestWord.hint(typed, Quantity.keys()));
        }
        return Optional.empty();
    }

    private Optional<Reading.Measured> measured(Quantity quantity, List<String> fields, int line) {
        String unit = field(fields, "unit");
        if (!units.get(quantity).computeIfAbsent(unit, quantity::isWrittenIn)) {
            fault(line, unitFault(quantity, unit));
            return Optional.empty();
        }
        String typed = field(fields, "value");
        OptionalDouble number = number(typed, line, "value");
        if (number.isEmpty()) return Optional.empty();
        double value = number.getAsDouble();
        if (quantity == Quantity.FIELD_METER && value > 0 && value < LEAST_MICROAMPS) {
            fault(
                    line,
                    "field_meter is " + field(fields, "value")
                            + " uA; no meter shows less than 0.000001. Write 0 where the needle did not"
                            + " move, or check the number.");
            return Optional.empty();
        }
        if (value < quantity.lowest() || value > quantity.highest()) {
            fault(line, rangeFault(quantity, typed));
            return Optional.empty();
        }
        if (quantity == Quantity.RETURN_LOSS && value < 0) {
            signLines.add(line);
            value = -value;
        }
        return Optional.of(new Reading.Measured(quantity, value, step(typed)));
    }

    private static String unitFault(Quantity quantity, String unit) {
        String plain = unit.toLowerCase(Locale.ROOT).replaceAll("\\s", "");
        String needed = quantity.key() + " is written in " + quantity.unit();
        if (unit.isBlank()) return "unit is missing: " + needed + ". Fill in the column unit.";
        if (quantity == Quantity.RECEIVED_LEVEL && plain.equals("db"))
            return "unit is \"" + unit + "\", but " + needed
                    + ". Decibels alone have no reference: give the level over one milliwatt (dBm); the difference between two"
                    + " antennas is worked out from their levels.";
        if (plain.equals("dbi") || plain.equals("dbd"))
            return "unit is \"" + unit + "\", but " + needed + ". " + GAIN_NEEDS_REFERENCE
                    + "A reading on the bench is a level, not a gain.";
        if (quantity == Quantity.RECEIVED_LEVEL && Quantity.FIELD_METER.isWrittenIn(unit))
            return "unit is \"" + unit + "\", but " + needed
                    + ". Microamps of a field meter belong to the quantity field_meter.";
        if (quantity == Quantity.FIELD_METER && plain.startsWith("db"))
            return "unit is \"" + unit + "\", but " + needed
                    + ". A level in dBm belongs to the quantity received_level.";
        if (quantity == Quantity.RECEIVED_LEVEL && plain.matches("db(\u00B5|\u03BC|u)v?"))
            return "unit is \"" + unit + "\", but " + needed + ". Across 50 ohms, dBm is dBuV less 107.";
        return "unit is \"" + unit + "\", but " + needed + ". Convert the value, or correct the unit.";
    }

    private static String rangeFault(Quantity quantity, String typed) {
        if (quantity == Quantity.SWR)
            return "swr is " + typed + ", but SWR is never below 1 (at most " + (int) quantity.highest()
                    + " is read). Check the column order, or drop the row.";
        return String.format(
                Locale.ROOT,
                "%s is %s, allowed is %s to %s %s. Check the value and its unit.",
                quantity.key(),
                typed,
                plain(quantity.lowest()),
                plain(quantity.highest()),
                quantity.unit());
    }

    private OptionalDouble frequency(List<String> fields, int line) {
        String typed = field(fields, "frequency_mhz");
        if (typed.isBlank()) return OptionalDouble.empty();
        OptionalDouble value = number(typed, line, "frequency_mhz");
        if (value.isEmpty()) return value;
        double mhz = value.getAsDouble();
        if (mhz >= LOWEST_MHZ && mhz <= HIGHEST_MHZ) return value;
        String looks = mhz >= 1e6 ? " It looks like hertz." : mhz > HIGHEST_MHZ ? " It looks like kilohertz." : "";
        fault(
                line,
                "frequency_mhz is " + typed + ", allowed is " + plain(LOWEST_MHZ) + " to " + plain(HIGHEST_MHZ)
                        + " MHz." + looks + " Write it in megahertz.");
        return OptionalDouble.empty();
    }

    private OptionalInt trial(List<String> fields, int line) {
        String typed = field(fields, "trial");
        if (typed.isBlank()) return OptionalInt.empty();
        OptionalDouble value = NumberText.parse(typed);
        if (value.isPresent()
                && value.getAsDouble() == Math.rint(value.getAsDouble())
                && value.getAsDouble() >= 0
                && value.getAsDouble() <= HIGHEST_TRIAL) return OptionalInt.of((int) value.getAsDouble());
        fault(
                line,
                "trial is \"" + typed + "\", a whole number from 0 is expected. Number the trials 1, 2, 3 and so on.");
        return OptionalInt.empty();
    }

    private OptionalDouble number(String typed, int line, String column) {
        if (typed.isBlank()) {
            fault(line, column + " is missing. Fill it in, or drop the row.");
            return OptionalDouble.empty();
        }
        if (typed.indexOf(',') >= 0 && NumberText.hasDecimalComma(typed)) {
            if (separator != ',') {
                commaLines.add(line);
                return NumberText.parse(typed.replace(',', '.'));
            }
            fault(line, commaFault(column, typed));
            return OptionalDouble.empty();
        }
        OptionalDouble value = NumberText.parse(typed);
        if (value.isEmpty())
            fault(
                    line,
                    column + " is \"" + typed
                            + "\", a number is expected. Keep the unit out of it, and drop rows that were"
                            + " not read.");
        return value;
    }

    private static String commaFault(String column, String typed) {
        return column + " is " + typed
                + ", written with a decimal comma in a file separated by commas. Write a decimal point, or separate by"
                + " semicolons.";
    }

    private boolean isDuplicate(Reading reading) {
        if (reading.trial().isEmpty()) return false;
        String key = String.join(
                "\u0000",
                reading.antenna().toLowerCase(Locale.ROOT),
                reading.mounting().identity(),
                reading.quantity().key(),
                reading.frequencyMhz().toString(),
                reading.trial().toString());
        Integer first = lineOfKey.putIfAbsent(key, reading.line());
        if (first == null) return false;
        fault(
                reading.line(),
                "trial " + reading.trial().getAsInt() + " of " + reading.antenna() + ", "
                        + reading.mounting().name()
                        + ", " + reading.quantity().key() + " stands already in line " + first
                        + ". Number each trial once, or drop one row.");
        return true;
    }

    private String spelled(String antenna) {
        return names.computeIfAbsent(antenna, this::firstSpelling);
    }

    private String firstSpelling(String antenna) {
        String name = antenna.replaceAll("\\s+", " ");
        String first = antennaSpellings.putIfAbsent(name.toLowerCase(Locale.ROOT), name);
        if (first != null && !first.equals(name))
            otherSpellings.add("\"" + name + "\" is taken as the same antenna as \"" + first + "\".");
        return first == null ? name : first;
    }

    private Mounting mounting(String mount) {
        return mountingsAsTyped.computeIfAbsent(mount, typed -> {
            Mounting found = Mounting.of(typed);
            return mountings.computeIfAbsent(found.identity(), key -> found);
        });
    }

    private String word(List<String> fields, String column, int line, String meaning) {
        String typed = field(fields, column);
        if (typed.isBlank()) fault(line, column + " is missing: " + meaning + ". Fill it in, or drop the row.");
        return typed;
    }

    private String field(List<String> fields, String column) {
        Integer index = columns.get(column);
        return index == null || index >= fields.size() ? "" : fields.get(index).strip();
    }

    /** The step in which a number is written: 0.1 for "-41.8", 1 for "-42". */
    private static double step(String typed) {
        int point = Math.max(typed.indexOf('.'), typed.indexOf(','));
        if (point < 0) return 1;
        int end = point + 1;
        while (end < typed.length() && Character.isDigit(typed.charAt(end))) end++;
        return Math.pow(10, -(end - point - 1));
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
    }

    private void fault(int line, String text) {
        faults.add(source, line, text);
    }
}
