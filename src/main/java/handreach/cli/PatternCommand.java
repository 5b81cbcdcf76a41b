package handreach.cli;

import handreach.input.Faults;
import handreach.input.Range;
import handreach.loadout.ElevationPattern;
import handreach.loadout.PatternMount;
import handreach.loadout.Radiator;
import handreach.plan.Channel;
import handreach.report.page.Column;
import handreach.report.page.PlainText;
import handreach.report.page.Table;
import handreach.units.Decibels;
import handreach.units.Frequency;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Shows the elevation pattern that the ledger uses for a radiator on a mounting. */
@Command(
        name = "pattern",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description = "Elevation pattern of a radiator on a mounting, as used in the ledger.",
        footer = {
            "",
            "Worked example:",
            "  handreach pattern --radiator five-eighths --mount chassis --frequency-mhz 146 --step-deg 10",
            "",
            "Gains are matched gains in dBi with the losses of the model in them; no hand, no body, no mismatch."
        })
final class PatternCommand implements Callable<Integer> {
    private static final Range LENGTH = new Range("length_wavelengths", 0.01, 1.5, "wavelengths");
    private static final Range STEP = new Range("step_deg", 0.1, 45, "degrees");

    @Option(
            names = "--radiator",
            required = true,
            paramLabel = "WORD",
            description = "short-helical, quarter-wave, half-wave-end-fed, five-eighths, half-wave-dipole, monopole.")
    private String radiator;

    @Option(
            names = "--length-wavelengths",
            paramLabel = "L",
            description =
                    "Length, 0.01 to 1.5 wavelengths (end to end for the dipole). Default: the usual one of the radiator.")
    private Double lengthWavelengths;

    @Option(
            names = "--mount",
            paramLabel = "WORD",
            description = "perfect-ground, free-space, chassis (default), chassis+counterpoise.")
    private String mount = "chassis";

    @Option(names = "--frequency-mhz", required = true, paramLabel = "MHZ", description = "Frequency, 30 to 1000 MHz.")
    private double frequencyMhz;

    @Option(names = "--step-deg", paramLabel = "DEG", description = "Step in elevation, 0.1 to 45 degrees. Default: 5.")
    private double stepDeg = 5;

    @Mixin
    private JsonOption json;

    private record Gain(double elevationDeg, double gainDbi) {}

    private record Answer(
            String radiator,
            String mount,
            double lengthWavelengths,
            double maxGainDbi,
            List<Gain> gain,
            List<String> warnings) {}

    @Override
    public Integer call() {
        checkOptions();
        Radiator wire = Radiator.KEYWORD.find(radiator).orElseThrow();
        PatternMount place = PatternMount.KEYWORD.find(mount).orElseThrow();
        double length = lengthWavelengths == null ? wire.usualLengthWavelengths() : lengthWavelengths;
        ElevationPattern pattern = ElevationPattern.of(wire, length, place, new Frequency(frequencyMhz));
        double lowest = place == PatternMount.PERFECT_GROUND ? 0 : -90;
        List<Gain> gains = new ArrayList<>();
        for (int i = (int) Math.ceil(lowest / stepDeg - 1e-9); i * stepDeg <= 90 + 1e-9; i++)
            gains.add(new Gain(i * stepDeg + 0.0, pattern.gainDbi(i * stepDeg)));
        Answer answer = new Answer(wire.word(), place.word(), length, pattern.maxGainDbi(), gains, pattern.notes());
        json.warn(answer.warnings());
        if (json.isWanted()) json.print(answer);
        else print(answer);
        return 0;
    }

    private void checkOptions() {
        Faults faults = new Faults();
        Radiator.KEYWORD.read(radiator, refused -> faults.add("--radiator", 0, refused));
        PatternMount.KEYWORD.read(mount, refused -> faults.add("--mount", 0, refused));
        if (lengthWavelengths != null) LENGTH.check(faults, "--length-wavelengths", lengthWavelengths);
        Channel.FREQUENCY.check(faults, "--frequency-mhz", frequencyMhz);
        STEP.check(faults, "--step-deg", stepDeg);
        faults.throwIfAny();
    }

    private void print(Answer answer) {
        Table<Gain> table = Table.of(
                "",
                answer.gain(),
                List.of(
                        Column.number("elevation, degrees", gain -> Decibels.number(gain.elevationDeg(), 1)),
                        Column.number("gain, dBi", gain -> Decibels.number(gain.gainDbi(), 2))));
        json.say(answer.radiator() + " on " + answer.mount() + ", "
                + String.format(
                        Locale.ROOT,
                        "%.3f wavelengths at %.3f MHz, maximum %s dBi",
                        answer.lengthWavelengths(),
                        frequencyMhz,
                        Decibels.number(answer.maxGainDbi(), 2)));
        json.page(PlainText.of(table, TerminalWidth.columns()));
    }
}
