package handreach.bench;

import handreach.input.Fault;
import handreach.input.InputFault;
import handreach.input.SourceText;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Bench files written on paper, for tests. */
public final class Bench {
    static final String HEADER = "antenna,mount,quantity,value,unit,frequency_mhz,trial,note\n";
    static final double[] CONTROL = {-41.8, -42.3, -41.5, -42.0, -41.9, -42.6};
    static final double[] CANDIDATE = {-39.6, -39.9, -39.7, -39.4, -40.1, -39.9};
    static final double[] SECOND = {-41.6, -41.9, -41.1, -42.4};

    private final StringBuilder text = new StringBuilder();

    Bench declare(String line) {
        text.append("# ").append(line).append('\n');
        return this;
    }

    Bench header() {
        text.append(HEADER);
        return this;
    }

    Bench level(String antenna, String mount, double dbm, int trial) {
        return row(antenna, mount, "received_level", dbm, "dBm", trial);
    }

    Bench row(String antenna, String mount, String quantity, double value, String unit, int trial) {
        text.append(
                String.format(Locale.ROOT, "%s,%s,%s,%s,%s,155,%d,%n", antenna, mount, quantity, value, unit, trial));
        return this;
    }

    /** Control and antenna read in turns. */
    Bench inTurns(String control, double[] first, String antenna, double[] second) {
        for (int i = 0; i < Math.max(first.length, second.length); i++) {
            if (i < first.length) level(control, "hand", first[i], i + 1);
            if (i < second.length) level(antenna, "hand", second[i], i + 1);
        }
        return this;
    }

    Bench block(String antenna, double[] levels) {
        for (int i = 0; i < levels.length; i++) level(antenna, "hand", levels[i], i + 1);
        return this;
    }

    /** What a file declares that declares nothing. */
    static Declarations declaringNothing() {
        return new Declarations(
                Optional.empty(),
                Optional.empty(),
                List.of(),
                MeterScale.undeclared(),
                Optional.empty(),
                new Declarations.Instrument(
                        OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty()));
    }

    BenchFile file() {
        return read(text.toString());
    }

    BenchAnalysis against(String control) {
        return BenchAnalysis.of(file(), control);
    }

    static BenchFile read(String text) {
        return BenchFile.of(SourceText.of("bench.csv", text));
    }

    /** The faults of a text that must not be read. */
    static List<String> faults(String text) {
        try {
            read(text);
        } catch (InputFault fault) {
            return fault.faults().stream().map(Fault::message).toList();
        }
        throw new AssertionError("no fault found in\n" + text);
    }

    public static String together(List<String> lines) {
        return lines.stream().collect(Collectors.joining("\n"));
    }
}
