package handreach.cli;

import handreach.bench.match.MatchAnalysis;
import handreach.bench.match.Touchstone;
import handreach.input.Faults;
import handreach.input.NumberText;
import handreach.input.Range;
import handreach.plan.PlanFile;
import handreach.report.MatchComposer;
import handreach.report.MatchJson;
import handreach.report.page.PlainText;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What a one-port sweep says about an antenna. */
@Command(
        name = "match",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description =
                "One-port sweep: resonance, SWR, return loss and mismatch over the channels, bandwidth, too long or short.",
        footer = {
            "",
            "Worked example:",
            "  handreach match elevation-samples/invented-bench/quarter-wave-whip.s1p --channel-mhz 155.16",
            "",
            "SWR says nothing about efficiency: a resistor has SWR 1."
        })
final class MatchCommand implements Callable<Integer> {
    private static final String CHANNEL = "--channel-mhz";
    private static final Range CHANNEL_RANGE = new Range("channel_mhz", 0.1, 10_000, "MHz");
    private static final Range SYSTEM = new Range("system_ohm", 1, 1000, "ohm");

    @Parameters(
            index = "0",
            arity = "1..*",
            paramLabel = "FILE.s1p",
            description = "Touchstone files, version 1 or 2; several are compared with the first.")
    private List<Path> files;

    @Option(
            names = CHANNEL,
            paramLabel = "MHZ[,MHZ]",
            description =
                    "Channels to look at, 0.1 to 10000 MHz, with a point as in 155.16; several with commas between.")
    private List<String> channelsMhz = List.of();

    @Option(names = "--plan", paramLabel = "PLAN", description = "Take the channel from this plan.")
    private Path plan;

    @Option(
            names = "--system-ohm",
            paramLabel = "OHM",
            description = "Impedance of the radio, 1 to 1000 ohm. Default: 50.")
    private double systemOhm = 50;

    @Mixin
    private JsonOption json;

    @Override
    public Integer call() {
        Faults faults = new Faults();
        SYSTEM.check(faults, "--system-ohm", systemOhm);
        List<Double> channels = new ArrayList<>();
        for (String written : channelsMhz) channels.addAll(channels(faults, written));
        faults.throwIfAny();
        if (plan != null)
            channels.add(PlanFile.open(plan).plan().channel().frequency().mhz());
        List<MatchAnalysis> sweeps = files.stream()
                .map(file -> MatchAnalysis.of(Touchstone.read(file), channels, systemOhm))
                .toList();
        json.answer(
                sweeps.stream().flatMap(sweep -> sweep.warnings().stream()).toList(),
                () -> MatchJson.of(sweeps),
                columns -> PlainText.of(MatchComposer.page(sweeps), columns));
        return 0;
    }

    /** Channels with commas between; two whole numbers in a row may as well be one with a decimal comma, and are not guessed at. */
    private static List<Double> channels(Faults faults, String written) {
        List<Double> channels = new ArrayList<>();
        String before = "";
        for (String word : written.split(",", -1)) {
            String text = word.strip();
            OptionalDouble mhz = NumberText.parse(text);
            if (mhz.isEmpty())
                faults.add(
                        CHANNEL, 0, "is " + written + ", numbers of MHz such as 155.16 or 155.16,446.05 are expected.");
            else if (isWhole(before) && isWhole(text))
                faults.add(
                        CHANNEL,
                        0,
                        "is " + written + ", which may mean " + before + "." + text + " or the channels " + before
                                + " and " + text + ". Write " + before + "." + text + ", or " + before + ".0," + text
                                + ".0.");
            else {
                CHANNEL_RANGE.check(faults, CHANNEL, mhz.getAsDouble());
                channels.add(mhz.getAsDouble());
            }
            if (!faults.isEmpty()) return channels;
            before = text;
        }
        return channels;
    }

    private static boolean isWhole(String text) {
        return text.matches("\\d+");
    }
}
