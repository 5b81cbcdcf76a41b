package handreach.bench;

import handreach.input.NearestWord;
import handreach.input.NumberText;
import handreach.input.Range;
import handreach.input.Table;
import handreach.input.TableRow;
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

/** Turns the cells of a row into a reading, or says all that is wrong with them. */
final class RowReader {
    /** A billionth of what moves the needle of a sensitive meter. */
    private static final double LEAST_MICROAMPS = 1e-6;

    private static final String GAIN_NEEDS_REFERENCE =
            "A gain has no meaning without its reference: over isotropic (dBi), over a half-wave dipole (dBd), or over the"
                    + " control in a named mounting. ";
    private static final Range TRIAL = new Range("trial", 0, 1_000_000, "", "Number the trials 1, 2, 3 and so on.");

    /** What people put into a cell that was not read. */
    private static final Set<String> NOT_READ =
            Set.of("", "n/a", "na", "n.a.", "-", "\u2013", "\u2014", "?", "none", "not read");

    /**
     * Where a reading stands within its row.
     *
     * @param column head of its column, for faults
     * @param trial as written
     */
    private record Cells(String quantity, String value, String column, String unit, String trial) {}

    private final Table table;
    private final BenchHeads heads;
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
    private final Set<Integer> skippedLines = new TreeSet<>();
    private int skipped;
    private final Set<String> otherSpellings = new TreeSet<>();

    RowReader(Table table, BenchHeads heads, List<String> notes) {
        this.table = table;
        this.heads = heads;
        this.notes = notes;
        for (Quantity quantity : Quantity.values()) units.put(quantity, new HashMap<>());
    }

    /** The one reading of a row; nothing if it was left out, nothing and a fault if something is wrong. */
    Optional<Reading> read(TableRow row) {
        String value = row.text("value");
        String unit = row.text("unit");
        if (table.isPartedByCommas()
                && !unit.isEmpty()
                && Character.isDigit(unit.charAt(0))
                && unit.matches("\\d+")
                && value.matches("[-+\u2212]?\\d+")) {
            row.fault(commaFault("value", value + "," + unit));
            return Optional.empty();
        }
        String quantity = row.text("quantity");
        return read(
                row,
                new Cells(
                        quantity.isBlank() ? heads.quantity().map(Quantity::key).orElse("") : quantity,
                        value,
                        "value",
                        unit.isBlank() ? heads.unit() : unit,
                        row.text("trial")));
    }

    /** The reading of one trial in a row that holds several. */
    Optional<Reading> read(TableRow row, BenchHeads.TrialColumn trial) {
        String unit = trial.unit().isEmpty() ? row.text("unit") : trial.unit();
        String quantity = row.text("quantity");
        if (quantity.isBlank())
            quantity = trial.quantity()
                    .or(() -> Quantity.writtenIn(unit))
                    .map(Quantity::key)
                    .orElse("");
        return read(
                row, new Cells(quantity, row.text(trial.head()), trial.head(), unit, String.valueOf(trial.trial())));
    }

    private Optional<Reading> read(TableRow row, Cells cells) {
        if (NOT_READ.contains(cells.value().strip().toLowerCase(Locale.ROOT))) {
            skipped++;
            skippedLines.add(row.line());
            return Optional.empty();
        }
        String antenna = word(row, "antenna", "the name of the antenna");
        String mount = word(row, "mount", "what the antenna stood on");
        Optional<Quantity> quantity = quantity(row, cells);
        Optional<Reading.Measured> measured = quantity.flatMap(q -> measured(q, row, cells));
        OptionalDouble frequency = frequency(row);
        OptionalInt trial = trial(row, cells.trial());
        if (!row.isSound() || measured.isEmpty()) return Optional.empty();
        Reading reading = new Reading(
                spelled(antenna),
                mounting(mount),
                measured.get(),
                frequency,
                trial,
                new Reading.Row(row.line(), row.text("note")));
        if (isDuplicate(reading, row)) return Optional.empty();
        return Optional.of(reading);
    }

    /** Notes that are told once for the whole file. */
    void finish() {
        if (!commaLines.isEmpty())
            notes.add("Decimal commas were read as decimal points (" + linesText(commaLines) + ").");
        if (skipped > 0)
            notes.add(skipped + (skipped == 1 ? " reading is" : " readings are")
                    + " empty or marked as not read and left out (" + linesText(skippedLines) + ").");
        if (!signLines.isEmpty())
            notes.add("A negative return loss was taken as its positive value: a loss is positive when it weakens ("
                    + linesText(signLines) + ").");
        for (String text : otherSpellings) notes.add(text);
        mountings.values().stream()
                .sorted((a, b) -> a.name().compareTo(b.name()))
                .forEach(mounting -> mounting.treatedAs().ifPresent(notes::add));
    }

    private static String linesText(Set<Integer> lines) {
        List<Integer> all = List.copyOf(lines);
        if (all.size() == 1) return "line " + all.get(0);
        if (all.size() <= 4)
            return "lines "
                    + String.join(", ", all.stream().map(String::valueOf).toList());
        return all.size() + " lines from line " + all.get(0);
    }

    private Optional<Quantity> quantity(TableRow row, Cells cells) {
        String typed = cells.quantity();
        Optional<Quantity> quantity = quantities.computeIfAbsent(typed, Quantity::named);
        if (quantity.isPresent()) return quantity;
        String plain = typed.toLowerCase(Locale.ROOT);
        if (plain.contains("gain")) {
            row.fault(
                    "quantity is \"" + typed + "\" (" + cells.value() + " " + cells.unit() + "). "
                            + GAIN_NEEDS_REFERENCE
                            + "Give the received_level of this antenna and of the control instead; the delta follows from them.");
        } else if (typed.isBlank() && heads.isWide()) {
            row.fault(
                    "nothing says what was read. Head the trials with the unit, such as trial 1 (dBm), or add a column quantity: "
                            + String.join(", ", Quantity.keys()) + ".");
        } else if (typed.isBlank()) {
            row.fault("quantity is missing. Allowed are " + String.join(", ", Quantity.keys()) + ".");
        } else {
            row.fault("quantity is \"" + typed + "\", allowed are " + String.join(", ", Quantity.keys()) + "."
                    + NearestWord.hint(typed, Quantity.keys()));
        }
        return Optional.empty();
    }

    private Optional<Reading.Measured> measured(Quantity quantity, TableRow row, Cells cells) {
        String unit = cells.unit();
        if (!units.get(quantity).computeIfAbsent(unit, quantity::isWrittenIn)) {
            row.fault(unitFault(quantity, unit));
            return Optional.empty();
        }
        String typed = cells.value();
        OptionalDouble number = number(row, typed, cells.column());
        if (number.isEmpty()) return Optional.empty();
        double value = number.getAsDouble();
        if (quantity == Quantity.FIELD_METER && value > 0 && value < LEAST_MICROAMPS) {
            row.fault("field_meter is " + typed
                    + " uA; no meter shows less than 0.000001. Write 0 where the needle did not"
                    + " move, or check the number.");
            return Optional.empty();
        }
        if (!quantity.allowed().accepts(value)) {
            row.fault(rangeFault(quantity, typed));
            return Optional.empty();
        }
        if (quantity == Quantity.RETURN_LOSS && value < 0) {
            signLines.add(row.line());
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
            return "swr is " + typed + ", but SWR is never below 1 (at most "
                    + (int) quantity.allowed().high() + " is read). Check the column order, or drop the row.";
        return String.format(
                Locale.ROOT,
                "%s is %s, allowed is %s. Check the value and its unit.",
                quantity.key(),
                typed,
                quantity.allowed().words());
    }

    private OptionalDouble frequency(TableRow row) {
        String typed = row.text("frequency_mhz");
        if (typed.isBlank()) return OptionalDouble.empty();
        OptionalDouble value = number(row, typed, "frequency_mhz");
        if (value.isEmpty()) return value;
        if (BenchFile.FREQUENCY.accepts(value.getAsDouble())) return value;
        row.fault("frequency_mhz " + BenchFile.FREQUENCY.fault(typed));
        return OptionalDouble.empty();
    }

    private static OptionalInt trial(TableRow row, String typed) {
        if (typed.isBlank()) return OptionalInt.empty();
        OptionalDouble value = NumberText.parse(typed);
        if (value.isPresent() && TRIAL.acceptsWhole(value.getAsDouble()))
            return OptionalInt.of((int) value.getAsDouble());
        row.fault("trial " + TRIAL.wholeFault("\"" + typed + "\""));
        return OptionalInt.empty();
    }

    private OptionalDouble number(TableRow row, String typed, String column) {
        if (typed.isBlank()) {
            row.fault(column + " is missing. Fill it in, or drop the row.");
            return OptionalDouble.empty();
        }
        if (typed.indexOf(',') >= 0 && NumberText.hasDecimalComma(typed)) {
            if (!table.isPartedByCommas()) {
                commaLines.add(row.line());
                return NumberText.parse(typed.replace(',', '.'));
            }
            row.fault(commaFault(column, typed));
            return OptionalDouble.empty();
        }
        OptionalDouble value = NumberText.parse(typed);
        if (value.isEmpty())
            row.fault(column + " is \"" + typed
                    + "\", a number is expected. Keep the unit out of it, and drop rows that were"
                    + " not read.");
        return value;
    }

    private static String commaFault(String column, String typed) {
        return column + " is " + typed
                + ", written with a decimal comma in a file separated by commas. Write a decimal point, or separate by"
                + " semicolons.";
    }

    private boolean isDuplicate(Reading reading, TableRow row) {
        if (reading.trial().isEmpty()) return false;
        String key = String.join(
                "\u0000",
                reading.antenna().toLowerCase(Locale.ROOT),
                reading.mounting().identity(),
                reading.quantity().key(),
                String.valueOf(reading.frequencyMhz().orElse(0)),
                String.valueOf(reading.trial().getAsInt()));
        Integer first = lineOfKey.putIfAbsent(key, reading.line());
        if (first == null) return false;
        row.fault("trial " + reading.trial().getAsInt() + " of " + reading.antenna() + ", "
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

    private String word(TableRow row, String column, String meaning) {
        String typed = row.text(column);
        if (typed.isBlank()) row.fault(column + " is missing: " + meaning + ". Fill it in, or drop the row.");
        return typed;
    }

    /** The step in which a number is written: 0.1 for "-41.8", 1 for "-42". */
    private static double step(String typed) {
        int point = Math.max(typed.indexOf('.'), typed.indexOf(','));
        if (point < 0) return 1;
        int end = point + 1;
        while (end < typed.length() && Character.isDigit(typed.charAt(end))) end++;
        return Math.pow(10, -(end - point - 1));
    }
}
