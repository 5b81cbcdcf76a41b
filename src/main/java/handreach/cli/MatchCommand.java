package handreach.cli;

import handreach.bench.MatchAnalysis;
import handreach.bench.Touchstone;
import handreach.input.Faults;
import handreach.plan.PlanFile;
import handreach.report.MatchText;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What a one-port sweep says about an antenna. */
@Command(
        name = "match",
        mixinStandardHelpOptions = true,
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
    @Parameters(
            index = "0",
            arity = "1..*",
            paramLabel = "FILE.s1p",
            description = "Touchstone files, version 1 or 2; several are compared with the first.")
    private List<Path> files;

    @Option(names = "--channel-mhz", paramLabel = "MHZ", split = ",", description = "Channels to look at, in MHz.")
    private List<Double> channelsMhz = new ArrayList<>();

    @Option(names = "--plan", paramLabel = "PLAN", description = "Take the channel from this plan.")
    private Path plan;

    @Option(names = "--system-ohm", paramLabel = "OHM", description = "Impedance of the radio. Default: 50.")
    private double systemOhm = 50;

    @Mixin
    private JsonChoice json;

    @Override
    public Integer call() {
        Faults faults = new Faults();
        AirOptions.check(faults, "--system-ohm", systemOhm, 1, 1000, "ohm");
        for (double mhz : channelsMhz) AirOptions.check(faults, "--channel-mhz", mhz, 0.1, 10_000, "MHz");
        faults.throwIfAny();
        List<Double> channels = new ArrayList<>(channelsMhz);
        if (plan != null)
            channels.add(PlanFile.open(plan).plan().channel().frequency().mhz());
        List<MatchAnalysis> sweeps = files.stream()
                .map(file -> MatchAnalysis.of(Touchstone.read(file), channels, systemOhm))
                .toList();
        sweeps.forEach(sweep -> json.warn(sweep.warnings()));
        if (json.isWanted()) json.print(MatchText.json(sweeps));
        else json.out().print(MatchText.text(sweeps));
        return 0;
    }
}
