package handreach.cli;

import handreach.bench.BenchAnalysis;
import handreach.bench.BenchFile;
import handreach.report.BenchText;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Deltas against the control per mounting, with uncertainty. */
@Command(
        name = "bench",
        mixinStandardHelpOptions = true,
        description = "Deltas against the control per mounting, with uncertainty, and what can be told apart.",
        footer = {
            "",
            "Worked example:",
            "  handreach bench elevation-samples/invented-bench/bench.csv --control \"factory helical\"",
            "",
            "Keep the antenna away from eyes and skin while transmitting, and test within your licence."
        })
final class BenchCommand implements Callable<Integer> {
    @Parameters(
            index = "0",
            paramLabel = "FILE.csv",
            description = "Readings: antenna,mount,quantity,value,unit,frequency_mhz,trial,note.")
    private Path file;

    @Option(names = "--control", paramLabel = "NAME", description = "The antenna all others are compared with.")
    private String control;

    @Option(
            names = "--settle-db",
            paramLabel = "DB",
            description = "Say how many trials would settle a true difference of this size. Default: 1 dB.")
    private double settleDb = 1;

    @Mixin
    private JsonChoice json;

    @Override
    public Integer call() {
        BenchFile readings = BenchFile.read(file);
        BenchAnalysis analysis = control == null ? BenchAnalysis.of(readings) : BenchAnalysis.of(readings, control);
        json.warn(analysis.warnings());
        if (json.isWanted()) json.print(BenchText.json(analysis, settleDb));
        else json.out().print(BenchText.text(analysis, settleDb));
        return 0;
    }
}
