package handreach.bench.match;

import handreach.bench.SessionKey;
import handreach.input.Faults;
import handreach.input.InputFault;
import handreach.input.NumberText;
import handreach.input.Range;
import handreach.input.SourceText;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.math3.complex.Complex;

/** Reads Touchstone text, line by line, and collects all faults. */
final class TouchstoneReader {
    private static final Map<String, Double> MHZ_PER_UNIT = Map.of("HZ", 1e-6, "KHZ", 1e-3, "MHZ", 1.0, "GHZ", 1e3);
    private static final Pattern KEYWORD = Pattern.compile("\\[([^\\]]*)\\]\\s*(.*)");
    private static final Pattern PORTS = Pattern.compile(".*\\.s(\\d+)p", Pattern.CASE_INSENSITIVE);
    private static final Range FREQUENCY = new Range("frequency", 1e-6, 1e6, "MHz");
    /** No line is made outside; beyond, nothing is left of the reflection but rounding. */
    private static final Range REFERENCE = new Range("R", 0.1, 10_000, "ohm");

    private static final double BEYOND_TOTAL = 1 + 1e-9;
    private static final double FAR_BEYOND_TOTAL = 1.1;
    private static final int NOISE_NUMBERS = 5;
    /** Column heads of a table: words parted by commas, semicolons or tabs, on a line that is no remark. */
    private static final Pattern HEADS = Pattern.compile("^\\s*\"?[A-Za-z][^!#\\[,;\t]*[,;\t]\\s*\"?[A-Za-z]");

    private static final int MOST_ABOVE_HEADS = 60;

    /** How a pair of numbers is meant. */
    private enum Pair {
        RI,
        MA,
        DB;

        Complex of(double first, double second) {
            return switch (this) {
                case RI -> new Complex(first, second);
                case MA -> polar(first, second);
                case DB -> polar(Math.pow(10, first / 20), second);
            };
        }

        private static Complex polar(double magnitude, double degrees) {
            double angle = Math.toRadians(degrees);
            return new Complex(magnitude * Math.cos(angle), magnitude * Math.sin(angle));
        }
    }

    /** One frequency with its numbers. */
    private record Row(int line, double mhz, List<Double> numbers) {}

    private final String source;
    private final List<String> lines;
    private final Faults faults = new Faults();
    private final List<String> warnings = new ArrayList<>();
    private final List<Double> references = new ArrayList<>();
    private final List<Row> rows = new ArrayList<>();

    private boolean version2 = false;
    private boolean optionsSeen = false;
    private boolean inData = false;
    private boolean afterData = false;
    private boolean inInformation = false;
    private boolean awaitsReferences = false;
    private int ports = 0;
    private int expectedRows = -1;
    private int expectedRowsLine = 0;
    private double mhzPerUnit = MHZ_PER_UNIT.get("GHZ");
    private char parameter = 'S';
    private Pair pair = Pair.MA;
    private double optionOhm = 50;
    private final List<Double> pending = new ArrayList<>();
    private int pendingLine = 0;

    TouchstoneReader(SourceText source) {
        this.source = source.name();
        this.lines = source.lines();
        Matcher matcher = PORTS.matcher(source.name());
        if (matcher.matches()) ports = parsedPorts(matcher.group(1));
    }

    private static int parsedPorts(String digits) {
        return digits.length() > 4 ? Integer.MAX_VALUE : Integer.parseInt(digits);
    }

    Touchstone read() {
        requireFewPorts(0);
        refuseTable();
        for (int i = 0; i < lines.size() && !afterData; i++)
            take(lines.get(i).split("!", 2)[0].strip(), i + 1);
        if (!pending.isEmpty()) shortRow();
        if (rows.isEmpty() && faults.isEmpty())
            faults.add(
                    source,
                    0,
                    "holds no data row. Expected is an option line such as # MHz S RI R 50, then rows of frequency and a pair.");
        if (expectedRows >= 0 && faults.isEmpty() && expectedRows != rows.size())
            fault(
                    expectedRowsLine,
                    "[Number of Frequencies] says " + expectedRows + ", but " + rows.size()
                            + " rows follow. Correct the number, or save the file again.");
        faults.throwIfAny();
        return converted();
    }

    /** Bench readings and other tables come here by mistake; every line of them would be a fault. */
    private void refuseTable() {
        for (int i = 0; i < Math.min(lines.size(), MOST_ABOVE_HEADS); i++)
            if (HEADS.matcher(lines.get(i)).find())
                throw new InputFault(source, i + 1, "is a table with column heads, no sweep. Give readings to bench.");
    }

    private void take(String text, int line) {
        if (text.isEmpty()) return;
        if (inInformation) {
            if (text.toLowerCase(Locale.ROOT).startsWith("[end information]")) inInformation = false;
            return;
        }
        Matcher keyword = KEYWORD.matcher(text);
        if (keyword.matches()) keyword(keyword.group(1), keyword.group(2).strip(), line);
        else if (text.startsWith("#")) options(text.substring(1), line);
        else if (awaitsReferences && !inData) references(text, line);
        else data(text, line);
    }

    private void keyword(String typed, String value, int line) {
        awaitsReferences = false;
        switch (typed.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ")) {
            case "version" -> version(value, line);
            case "number of ports" -> {
                ports = whole(value, line, "[Number of Ports]");
                requireFewPorts(line);
            }
            case "number of frequencies" -> {
                expectedRows = whole(value, line, "[Number of Frequencies]");
                expectedRowsLine = line;
            }
            case "two-port data order", "two-port order" -> {
                if (!value.equals("12_21") && !value.equals("21_12"))
                    fault(line, "[Two-Port Data Order] is \"" + value + "\", allowed are 12_21 and 21_12.");
            }
            case "reference" -> {
                awaitsReferences = true;
                if (!value.isEmpty()) references(value, line);
            }
            case "matrix format" -> {
                if (ports > 1 && !value.equalsIgnoreCase("full"))
                    fault(
                            line,
                            "[Matrix Format] is \"" + value
                                    + "\"; of two ports only Full is read. Save the file as a full matrix, or with one port.");
            }
            case "begin information" -> inInformation = true;
            case "network data" -> {
                inData = true;
                if (ports == 0) {
                    fault(line, "[Network Data] comes before [Number of Ports]. Add the number of ports above it.");
                    ports = 1;
                }
            }
            case "noise data", "end" -> afterData = true;
            case "number of noise frequencies", "end information" -> {}
            case "mixed-mode order" ->
                fault(line, "[Mixed-Mode Order] is for balanced ports, which are not read. Save a single-ended file.");
            default ->
                fault(
                        line,
                        "the keyword [" + typed.strip()
                                + "] is not known in Touchstone 1 or 2.0. Drop the line, or save the file in one of these versions.");
        }
    }

    private void version(String value, int line) {
        version2 = true;
        if (!value.equals("2.0"))
            fault(
                    line,
                    "[Version] is \"" + value + "\", versions 1 (without this line) and 2.0 are read. Save it as one of"
                            + " these.");
    }

    private int whole(String value, int line, String what) {
        if (value.matches("\\d{1,7}")) return Integer.parseInt(value);
        fault(line, what + " is \"" + value + "\", a whole number is expected.");
        return 1;
    }

    private void requireFewPorts(int line) {
        if (ports >= 0 && ports <= 2) return;
        throw new InputFault(
                source,
                line,
                "has " + (ports == Integer.MAX_VALUE ? "very many" : ports)
                        + " ports; an antenna has one, and of two the first is used. Save port 1 alone as .s1p.");
    }

    private void options(String text, int line) {
        if (optionsSeen) return;
        optionsSeen = true;
        if (!rows.isEmpty() || !pending.isEmpty())
            fault(line, "the option line stands below data. Move it above the first row.");
        String[] words = text.strip().toUpperCase(Locale.ROOT).split("\\s+");
        for (int i = 0; i < words.length; i++) {
            String word = words[i];
            if (word.isEmpty()) continue;
            if (MHZ_PER_UNIT.containsKey(word)) mhzPerUnit = MHZ_PER_UNIT.get(word);
            else if (word.equals("S") || word.equals("Y") || word.equals("Z")) parameter = word.charAt(0);
            else if (word.equals("G") || word.equals("H"))
                fault(
                        line,
                        "the option line says " + word
                                + " parameters (hybrid), which a single antenna does not have. Save S parameters.");
            else if (word.equals("RI") || word.equals("MA") || word.equals("DB")) pair = Pair.valueOf(word);
            else if (word.equals("R")) {
                OptionalDouble ohm = i + 1 < words.length ? NumberText.parse(words[++i]) : OptionalDouble.empty();
                if (ohm.isPresent() && REFERENCE.accepts(ohm.getAsDouble())) optionOhm = ohm.getAsDouble();
                else
                    fault(
                            line,
                            "the option line gives R " + (i < words.length ? words[i] : "")
                                    + "; after R the reference impedance is expected, " + REFERENCE.words()
                                    + ", such as R 50.");
            } else
                fault(
                        line,
                        "the option line has the word \"" + word
                                + "\"; allowed are Hz, kHz, MHz or GHz, then S, Y or Z, then RI, MA or DB, then R and ohms.");
        }
    }

    private void references(String text, int line) {
        for (String word : text.split("\\s+")) {
            OptionalDouble ohm = NumberText.parse(word);
            if (ohm.isPresent() && REFERENCE.accepts(ohm.getAsDouble())) references.add(ohm.getAsDouble());
            else {
                fault(
                        line,
                        "[Reference] has \"" + word + "\"; an impedance of " + REFERENCE.words()
                                + " is expected for each port.");
                return;
            }
        }
    }

    private void data(String text, int line) {
        if (version2 && !inData) {
            fault(line, "numbers stand before [Network Data]. Add that keyword above the first row.");
            inData = true;
        }
        if (ports == 0) ports = 1;
        List<Double> numbers = new ArrayList<>();
        for (String word : text.split("\\s+")) {
            OptionalDouble number = NumberText.parse(word);
            if (number.isEmpty()) {
                faults.addLike(
                        source,
                        line,
                        "has \"" + word + "\" where a number is expected"
                                + (NumberText.hasDecimalComma(word) ? "; decimals are written with a point" : "")
                                + ". Correct it, or put remarks behind an exclamation mark.");
                return;
            }
            numbers.add(number.getAsDouble());
        }
        if (!version2 && isNoise(numbers)) {
            afterData = true;
            return;
        }
        if (version2) {
            wrapped(numbers, line);
            return;
        }
        if (numbers.size() != perRow()) {
            fault(
                    line,
                    "has " + numbers.size() + " numbers, but a row of " + ports
                            + (ports == 1 ? " port" : " ports") + " has " + perRow()
                            + ": frequency, then a pair for each parameter. Check the row and the file's extension.");
            return;
        }
        row(numbers, line);
    }

    /** Noise rows of a version 1 two-port follow the network rows and start again at a lower frequency. */
    private boolean isNoise(List<Double> numbers) {
        return ports == 2
                && numbers.size() == NOISE_NUMBERS
                && !rows.isEmpty()
                && numbers.get(0) * mhzPerUnit <= rows.get(rows.size() - 1).mhz();
    }

    private int perRow() {
        return 1 + 2 * ports * ports;
    }

    /** Version 2 lets a row run over several lines. */
    private void wrapped(List<Double> numbers, int line) {
        if (pending.isEmpty()) pendingLine = line;
        pending.addAll(numbers);
        if (pending.size() > perRow()) {
            fault(
                    line,
                    "has more numbers than a row of " + perRow()
                            + " has room for. Start each frequency on a new line.");
            pending.clear();
        } else if (pending.size() == perRow()) {
            row(List.copyOf(pending), pendingLine);
            pending.clear();
        }
    }

    private void shortRow() {
        fault(
                pendingLine,
                "has " + pending.size() + " numbers, " + perRow() + " are needed. The file seems to be cut off.");
    }

    private void row(List<Double> numbers, int line) {
        double mhz = numbers.get(0) * mhzPerUnit;
        if (!FREQUENCY.accepts(mhz)) {
            faults.addLike(
                    source,
                    line,
                    "the frequency is \"" + SessionKey.plain(numbers.get(0)) + "\", allowed is " + FREQUENCY.words()
                            + ". Check the unit in the option line"
                            + (optionsSeen ? "." : ", which is missing: without it gigahertz are assumed."));
            return;
        }
        double last = rows.isEmpty() ? 0 : rows.get(rows.size() - 1).mhz();
        if (mhz <= last) {
            faults.addLike(
                    source,
                    line,
                    "the frequency of \"" + SessionKey.plain(mhz) + "\" MHz does not rise above \""
                            + SessionKey.plain(last) + "\" MHz before it. Sort the rows, and drop doubles.");
            return;
        }
        rows.add(new Row(line, mhz, numbers));
    }

    private Touchstone converted() {
        double ohm1 = references.isEmpty() ? optionOhm : references.get(0);
        double ohm2 = references.size() < 2 ? ohm1 : references.get(1);
        if (!references.isEmpty() && references.size() != ports)
            warnings.add("[Reference] gives " + references.size() + " impedances for " + ports + " port"
                    + (ports == 1 ? "" : "s") + "; the first is used for port 1.");
        if (ports == 2)
            warnings.add("The file has two ports: S11 is used, which is the antenna only if it sat at port 1.");
        if (!optionsSeen) warnings.add("The option line is missing: GHz, S, magnitude and angle, 50 ohms are assumed.");
        double[] frequencies = new double[rows.size()];
        Complex[] reflections = new Complex[rows.size()];
        int beyond = 0;
        for (int i = 0; i < rows.size(); i++) {
            frequencies[i] = rows.get(i).mhz();
            reflections[i] = reflection(rows.get(i), ohm1, ohm2);
            if (reflections[i].isNaN() || reflections[i].isInfinite() || reflections[i].abs() > FAR_BEYOND_TOTAL)
                fault(
                        rows.get(i).line(),
                        "reflects more than it receives (|S11| "
                                + (reflections[i].isNaN() || reflections[i].isInfinite()
                                        ? "without bound"
                                        : String.format(Locale.ROOT, "%.3f", reflections[i].abs()))
                                + "), which no antenna does; at most " + FAR_BEYOND_TOTAL
                                + " is put down to calibration. Check the number format in the option line, or calibrate again.");
            else if (reflections[i].abs() > BEYOND_TOTAL) beyond++;
        }
        faults.throwIfAny();
        if (beyond > 0)
            warnings.add("In " + beyond + " of " + rows.size()
                    + " rows a little more comes back than was sent (|S11| above 1: noise or calibration); taken as total"
                    + " reflection.");
        return new Touchstone(source, frequencies, reflections, ohm1, warnings);
    }

    private Complex reflection(Row row, double ohm1, double ohm2) {
        Complex first = value(row, 0);
        if (parameter == 'S') return first;
        Complex z11 = normalised(first, ohm1, ohm1);
        Complex one = Complex.ONE;
        boolean admittance = parameter == 'Y';
        if (ports == 1) {
            Complex gamma = z11.subtract(one).divide(z11.add(one));
            return admittance ? gamma.negate() : gamma;
        }
        Complex z22 = normalised(value(row, 3), ohm2, ohm2);
        Complex cross = normalised(value(row, 1), ohm1, ohm2).multiply(normalised(value(row, 2), ohm1, ohm2));
        Complex denominator = z11.add(one).multiply(z22.add(one)).subtract(cross);
        return admittance
                ? one.subtract(z11).multiply(one.add(z22)).add(cross).divide(denominator)
                : z11.subtract(one).multiply(z22.add(one)).subtract(cross).divide(denominator);
    }

    private Complex value(Row row, int index) {
        return pair.of(row.numbers().get(1 + 2 * index), row.numbers().get(2 + 2 * index));
    }

    /** Version 1 writes Y and Z over the reference, version 2.0 in siemens and ohms (from memory). */
    private Complex normalised(Complex value, double ohmA, double ohmB) {
        if (!version2) return value;
        double scale = Math.sqrt(ohmA * ohmB);
        return parameter == 'Z' ? value.divide(scale) : value.multiply(scale);
    }

    private void fault(int line, String text) {
        faults.add(source, line, text);
    }
}
