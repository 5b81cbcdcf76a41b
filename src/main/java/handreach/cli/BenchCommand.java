package handreach.cli;

import handreach.bench.BenchAnalysis;
import handreach.bench.BenchFile;
import handreach.input.Sources;
import handreach.input.Target;
import handreach.plan.PlanFile;
import handreach.report.BenchComposer;
import handreach.report.BenchFiles;
import handreach.report.BenchJson;
import handreach.report.page.Notes;
import handreach.report.page.PlainText;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
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

    @Option(
            names = "--report",
            paramLabel = "FILE.html",
            description = "Write a bench report, one self-contained file.")
    private Path report;

    @Option(
            names = "--sweep",
            paramLabel = "FILE.s1p",
            description = "One-port sweep to look at beside the readings; may be given several times.")
    private List<Path> sweeps = List.of();

    @Option(
            names = "--plan",
            paramLabel = "PLAN",
            description = "Plan with channel, mounting of use and antenna burden.")
    private Path plan;

    @Mixin
    private JsonOption json;

    @Override
    public Integer call() {
        Optional<PlanFile> planFile = Optional.ofNullable(plan).map(PlanFile::open);
        Sources sources = planFile.map(PlanFile::sources)
                .orElse(Sources.NONE)
                .and(List.of(file))
                .and(sweeps);
        if (report != null) Target.look(report, sources);
        BenchFile readings = BenchFile.read(file);
        BenchAnalysis analysis = control == null ? BenchAnalysis.of(readings) : BenchAnalysis.of(readings, control);
        json.warn(Notes.once(analysis.warnings()));
        BenchComposer composer = BenchFiles.composer(analysis, settleDb, sweeps, planFile);
        if (json.isWanted()) json.print(BenchJson.of(analysis, settleDb));
        else json.page(composer.text(PlainText.USUAL_WIDTH));
        if (report != null) {
            BenchFiles.write(composer, report, sources);
            json.tell("Written: " + report);
        }
        return 0;
    }
}
