package handreach.bench;

import handreach.bench.Declarations.DeclaredDoubt;
import handreach.bench.Declarations.EarlierScatter;
import handreach.bench.Declarations.Instrument;
import handreach.bench.Declarations.TrialOrder;
import handreach.input.Faults;
import handreach.input.FillIn;
import handreach.input.NearestWord;
import handreach.input.NumberText;
import handreach.input.Range;
import handreach.uncertainty.UncertaintyPart;
import handreach.uncertainty.UncertaintyPart.Shape;
import handreach.units.Polarization;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the lines {@code # key = value} above the header of a bench file. */
final class DeclarationReader {
    private static final Range NOISE_FLOOR = new Range("noise_floor_dbm", -200, 60, "dBm");
    private static final Range OVERLOAD = new Range("overload_dbm", -200, 60, "dBm");
    private static final Range RESOLUTION = new Range("resolution_db", 0, 20, "dB");
    private static final Range EARLIER_SCATTER = new Range("earlier_scatter_db", 1e-6, 60, "dB");
    private static final Range EARLIER_TRIALS = new Range("earlier_scatter_trials", 2, 1e6, "");
    private static final Range DISTANCE = new Range("distance_m", 0.1, 100_000, "m");
    private static final Range TX_HEIGHT = new Range("tx_height_m", 0.05, 1000, "m");
    private static final Range RX_HEIGHT = new Range("rx_height_m", 0.05, 1000, "m");
    private static final Range ANTENNA_SIZE = new Range("antenna_size_m", 0.01, 100, "m");
    private static final Range PERMITTIVITY = new Range("permittivity", 1, 100, "");
    private static final Range CONDUCTIVITY = new Range("conductivity_s_per_m", 0, 10, "S/m");
    private static final Pattern KEY = Pattern.compile("[A-Za-z][A-Za-z0-9_]*");
    /** Key and antenna, blanks between them tidied to one. */
    private static final Pattern KEY_FOR = Pattern.compile("([A-Za-z][A-Za-z0-9_]*) for (.+)");

    /** A line as it was written: key, the antenna it holds for, value. */
    private record Written(String key, Optional<String> antenna, String value) {
        /** In time that grows with the length of the line, whatever stands in it. */
        static Optional<Written> of(String line) {
            int equals = line.indexOf('=');
            if (!line.startsWith("#") || equals < 0) return Optional.empty();
            String left = BLANKS.matcher(line.substring(1, equals).strip()).replaceAll(" ");
            String value = line.substring(equals + 1).strip();
            if (KEY.matcher(left).matches()) return Optional.of(new Written(left, Optional.empty(), value));
            Matcher matcher = KEY_FOR.matcher(left);
            return matcher.matches()
                    ? Optional.of(new Written(matcher.group(1), Optional.of(matcher.group(2)), value))
                    : Optional.empty();
        }
    }

    private static final Pattern BLANKS = Pattern.compile("\\s+");
    private static final Pattern DOUBT = Pattern.compile("(\\S+)(?:\\s+([a-z-]+))?(?:\\s+([0-9.]+)\\s*%)?");

    /** How a doubt is taken where its line gives only a number. */
    private enum DoubtKey {
        INSTRUMENT_REPEATABILITY_DB("instrument repeatability", Shape.STANDARD, 0.10),
        LINEARITY_DB("linearity of the instrument", Shape.RECTANGULAR, 0.10),
        PHASE_CENTRE_DB("height of the radiating centre over reflecting ground", Shape.RECTANGULAR, 0.25),
        DRIFT_DB("drift during the session", Shape.RECTANGULAR, 0.25),
        MISMATCH_RIPPLE_DB("mismatch ripple", Shape.U_SHAPED, 0.25),
        OTHER_DOUBT_DB("other declared doubt", Shape.RECTANGULAR, 0.25);

        private final String words;
        private final Shape shape;
        private final double relativeDoubt;

        DoubtKey(String words, Shape shape, double relativeDoubt) {
            this.words = words;
            this.shape = shape;
            this.relativeDoubt = relativeDoubt;
        }

        String key() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    private record Entry(String key, String value, int line) {}

    private static final List<String> SINGLE_KEYS = List.of(
            "control",
            "order",
            "resolution_db",
            "earlier_scatter_db",
            "earlier_scatter_trials",
            "detector_law",
            "meter_calibration",
            "distance_m",
            "tx_height_m",
            "rx_height_m",
            "polarization",
            "ground",
            "permittivity",
            "conductivity_s_per_m",
            "antenna_size_m",
            "noise_floor_dbm",
            "overload_dbm");
    private static final Map<String, RangeGround> GROUNDS =
            Map.of("average", RangeGround.AVERAGE, "wet", RangeGround.WET, "dry", RangeGround.DRY);

    private final String source;
    private final Faults faults;
    private final List<String> notes;
    private final Map<String, Entry> entries = new LinkedHashMap<>();
    private final List<DeclaredDoubt> doubts = new ArrayList<>();

    DeclarationReader(String source, Faults faults, List<String> notes) {
        this.source = source;
        this.faults = faults;
        this.notes = notes;
    }

    static List<String> keys() {
        List<String> keys = new ArrayList<>(SINGLE_KEYS);
        for (DoubtKey key : DoubtKey.values()) keys.add(key.key());
        return keys;
    }

    Declarations read(List<String> lines, int header) {
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).indexOf('#') < 0) continue;
            int line = i + 1;
            Written.of(bare(lines.get(i))).ifPresent(written -> take(written, line, line <= header));
        }
        return new Declarations(
                Optional.ofNullable(entries.get("control")).map(Entry::value),
                order(),
                doubts,
                meter(),
                range(),
                new Instrument(number(NOISE_FLOOR), number(OVERLOAD), earlierScatter(), resolution()));
    }

    /** Without what a spreadsheet adds: quotation marks around the line and separators behind it. */
    private static String bare(String line) {
        int end = line.length();
        while (end > 0 && (Character.isWhitespace(line.charAt(end - 1)) || ",;".indexOf(line.charAt(end - 1)) >= 0))
            end--;
        String text = line.substring(0, end).strip();
        if (text.startsWith("\"") && text.endsWith("\"") && text.length() > 1)
            text = text.substring(1, text.length() - 1).replace("\"\"", "\"");
        return text.strip();
    }

    private void take(Written written, int line, boolean isAboveHeader) {
        String key = written.key().toLowerCase(Locale.ROOT);
        String value = written.value();
        Optional<String> antenna = written.antenna();
        if (!keys().contains(key)) {
            if (NearestWord.of(key, keys()).isPresent())
                fault(
                        line,
                        "there is no declaration \"" + written.key() + "\"." + NearestWord.hint(key, keys())
                                + " A remark is better written without an equals sign.");
            else if (key.contains("_"))
                notes.add("The line \"# " + written.key() + " = …\" is no known declaration and is taken as a remark.");
            return;
        }
        if (!isAboveHeader) {
            fault(line, "the declaration " + key + " stands below the header. Move it above the header line.");
            return;
        }
        if (value.isEmpty()) {
            fault(line, key + " has no value. Write # " + key + " = VALUE, or drop the line.");
            return;
        }
        if (FillIn.isIn(value)) return;
        for (DoubtKey doubt : DoubtKey.values()) {
            if (!doubt.key().equals(key)) continue;
            doubt(doubt, antenna, value, line);
            return;
        }
        if (antenna.isPresent())
            fault(line, key + " holds for the whole file. Leave out \"for " + antenna.get() + "\".");
        else if (entries.putIfAbsent(key, new Entry(key, value, line)) != null)
            fault(line, key + " is declared twice. Keep one line.");
    }

    private void doubt(DoubtKey key, Optional<String> antenna, String value, int line) {
        Matcher matcher =
                DOUBT.matcher(BLANKS.matcher(value.toLowerCase(Locale.ROOT)).replaceAll(" "));
        OptionalDouble number = matcher.matches() ? parsed(matcher.group(1)) : OptionalDouble.empty();
        Optional<Shape> shape = matcher.matches() ? shape(matcher.group(2), key.shape) : Optional.empty();
        OptionalDouble percent = !matcher.matches() || matcher.group(3) == null
                ? OptionalDouble.of(100 * key.relativeDoubt)
                : NumberText.parse(matcher.group(3));
        if (number.isEmpty()
                || shape.isEmpty()
                || percent.isEmpty()
                || !(number.getAsDouble() >= 0 && number.getAsDouble() <= 60)
                || percent.getAsDouble() > 100) {
            fault(
                    line,
                    key.key() + " is \"" + value
                            + "\"; expected are decibels from 0 to 60, then if wanted standard, rectangular, triangular or"
                            + " u-shaped, then how well that is known, such as 25 %. For example # " + key.key()
                            + " = 0.5 rectangular 10 %.");
            return;
        }
        doubts.add(new DeclaredDoubt(
                antenna,
                UncertaintyPart.declared(key.words, number.getAsDouble(), shape.get(), percent.getAsDouble() / 100)));
    }

    private static Optional<Shape> shape(String typed, Shape usual) {
        if (typed == null) return Optional.of(usual);
        return switch (typed) {
            case "standard" -> Optional.of(Shape.STANDARD);
            case "rectangular" -> Optional.of(Shape.RECTANGULAR);
            case "triangular" -> Optional.of(Shape.TRIANGULAR);
            case "u-shaped" -> Optional.of(Shape.U_SHAPED);
            default -> Optional.empty();
        };
    }

    private OptionalDouble resolution() {
        OptionalDouble step = number(RESOLUTION);
        return step.isPresent() && step.getAsDouble() > 0 ? step : OptionalDouble.empty();
    }

    private Optional<TrialOrder> order() {
        Entry entry = entries.get("order");
        if (entry == null) return Optional.empty();
        switch (entry.value().toLowerCase(Locale.ROOT)) {
            case "interleaved":
                return Optional.of(TrialOrder.INTERLEAVED);
            case "blocks":
                return Optional.of(TrialOrder.BLOCKS);
            default:
                fault(
                        entry.line(),
                        "order is \"" + entry.value()
                                + "\", allowed are interleaved (antennas taken in turns) and blocks (one after the other).");
                return Optional.empty();
        }
    }

    private Optional<EarlierScatter> earlierScatter() {
        OptionalDouble db = number(EARLIER_SCATTER);
        OptionalDouble trials = number(EARLIER_TRIALS);
        trials.ifPresent(value -> {
            if (!EARLIER_TRIALS.acceptsWhole(value)) {
                Entry entry = entries.get(EARLIER_TRIALS.key());
                fault(entry.line(), EARLIER_TRIALS.key() + " " + EARLIER_TRIALS.wholeFault(entry.value()));
            }
        });
        if (db.isPresent() && trials.isPresent())
            return Optional.of(new EarlierScatter(db.getAsDouble(), (int) trials.getAsDouble()));
        Entry lone = entries.containsKey("earlier_scatter_db")
                ? entries.get("earlier_scatter_db")
                : entries.get("earlier_scatter_trials");
        if (lone != null
                && (entries.containsKey("earlier_scatter_db") != entries.containsKey("earlier_scatter_trials")))
            fault(
                    lone.line(),
                    lone.key()
                            + " stands alone; earlier_scatter_db and earlier_scatter_trials are needed together. Add the other.");
        return Optional.empty();
    }

    private MeterScale meter() {
        Entry law = entries.get("detector_law");
        Entry table = entries.get("meter_calibration");
        if (law != null && table != null) {
            fault(
                    law.line(),
                    "detector_law and meter_calibration are both declared. Keep the calibration, drop the law.");
            return MeterScale.undeclared();
        }
        if (table != null) return calibration(table);
        if (law == null) return MeterScale.undeclared();
        switch (law.value().toLowerCase(Locale.ROOT)) {
            case "square":
                return MeterScale.squareLaw();
            case "linear":
                return MeterScale.linearLaw();
            default:
                fault(
                        law.line(),
                        "detector_law is \"" + law.value()
                                + "\", allowed are square (current follows power) and linear (current follows voltage).");
                return MeterScale.undeclared();
        }
    }

    private MeterScale calibration(Entry entry) {
        TreeMap<Double, Double> steps = new TreeMap<>();
        for (String pair : entry.value().split("[,;]")) {
            String[] halves = pair.split(":", -1);
            OptionalDouble current = halves.length == 2 ? parsed(halves[0]) : OptionalDouble.empty();
            OptionalDouble level = halves.length == 2 ? parsed(halves[1]) : OptionalDouble.empty();
            if (current.isEmpty() || level.isEmpty() || !(current.getAsDouble() > 0)) {
                fault(
                        entry.line(),
                        "meter_calibration has the step \"" + pair.strip()
                                + "\"; expected is microamps above zero, a colon, decibels: 10:-30, 20:-27.");
                return MeterScale.undeclared();
            }
            if (steps.put(current.getAsDouble(), level.getAsDouble()) != null) {
                fault(entry.line(), "meter_calibration gives " + halves[0].strip() + " uA twice. Keep one step.");
                return MeterScale.undeclared();
            }
        }
        double last = Double.NEGATIVE_INFINITY;
        for (double level : steps.values()) {
            if (level <= last) {
                fault(
                        entry.line(),
                        "meter_calibration falls or stands still at " + level
                                + " dB; more microamps must mean more level. Check the steps.");
                return MeterScale.undeclared();
            }
            last = level;
        }
        if (steps.size() < 2) {
            fault(entry.line(), "meter_calibration has one step; at least two are needed: 10:-30, 20:-27.");
            return MeterScale.undeclared();
        }
        return MeterScale.calibrated(steps);
    }

    private Optional<TestRange> range() {
        OptionalDouble distanceM = number(DISTANCE);
        OptionalDouble txM = number(TX_HEIGHT);
        OptionalDouble rxM = number(RX_HEIGHT);
        Optional<Polarization> polarization = polarization();
        Optional<RangeGround> ground = ground();
        OptionalDouble sizeM = number(ANTENNA_SIZE);
        List<String> given = List.of("distance_m", "tx_height_m", "rx_height_m").stream()
                .filter(entries::containsKey)
                .toList();
        if (given.isEmpty()) return Optional.empty();
        if (given.size() < 3) {
            Entry first = entries.get(given.get(0));
            fault(
                    first.line(),
                    String.join(" and ", given)
                            + " alone do not give the test range; distance_m, tx_height_m and rx_height_m are needed together.");
            return Optional.empty();
        }
        if (distanceM.isEmpty() || txM.isEmpty() || rxM.isEmpty()) return Optional.empty();
        return Optional.of(new TestRange(
                distanceM.getAsDouble(),
                txM.getAsDouble(),
                rxM.getAsDouble(),
                polarization.orElse(Polarization.VERTICAL),
                ground.orElse(RangeGround.AVERAGE),
                sizeM));
    }

    private Optional<Polarization> polarization() {
        Entry entry = entries.get("polarization");
        if (entry == null) return Optional.empty();
        switch (entry.value().toLowerCase(Locale.ROOT)) {
            case "vertical":
                return Optional.of(Polarization.VERTICAL);
            case "horizontal":
                return Optional.of(Polarization.HORIZONTAL);
            default:
                fault(entry.line(), "polarization is \"" + entry.value() + "\", allowed are vertical and horizontal.");
                return Optional.empty();
        }
    }

    private Optional<RangeGround> ground() {
        OptionalDouble permittivity = number(PERMITTIVITY);
        OptionalDouble conductivity = number(CONDUCTIVITY);
        Entry named = entries.get("ground");
        boolean constants = entries.containsKey("permittivity") || entries.containsKey("conductivity_s_per_m");
        if (named != null && constants) {
            fault(named.line(), "ground is given by name and by constants. Keep one of the two.");
            return Optional.empty();
        }
        if (constants) {
            if (permittivity.isPresent() && conductivity.isPresent())
                return Optional.of(new RangeGround(permittivity.getAsDouble(), conductivity.getAsDouble()));
            Entry lone = entries.containsKey("permittivity")
                    ? entries.get("permittivity")
                    : entries.get("conductivity_s_per_m");
            if (!(entries.containsKey("permittivity") && entries.containsKey("conductivity_s_per_m")))
                fault(lone.line(), "permittivity and conductivity_s_per_m are needed together. Add the other.");
            return Optional.empty();
        }
        if (named == null) return Optional.empty();
        RangeGround ground = GROUNDS.get(named.value().toLowerCase(Locale.ROOT));
        if (ground == null)
            fault(named.line(), "ground is \"" + named.value() + "\", allowed are average, wet and dry.");
        return Optional.ofNullable(ground);
    }

    private OptionalDouble number(Range range) {
        Entry entry = entries.get(range.key());
        if (entry == null) return OptionalDouble.empty();
        OptionalDouble value = parsed(entry.value());
        if (value.isPresent() && range.accepts(value.getAsDouble())) return value;
        fault(
                entry.line(),
                range.key() + " is \"" + entry.value() + "\", a number from " + NumberText.plain(range.low()) + " to "
                        + NumberText.plain(range.high()) + " is expected, without a unit.");
        return OptionalDouble.empty();
    }

    /** A declaration stands alone in its line, so a decimal comma cannot be mistaken. */
    private static OptionalDouble parsed(String typed) {
        return NumberText.parse(NumberText.hasDecimalComma(typed) ? typed.replace(',', '.') : typed);
    }

    private void fault(int line, String text) {
        faults.add(source, line, text);
    }
}
