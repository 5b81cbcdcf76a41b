package handreach.cli;

import handreach.input.Target;
import handreach.plan.PlanFile;
import handreach.report.AssignComposer;
import handreach.report.ReachFiles;
import handreach.report.RelayComposer;
import handreach.report.WalkComposer;
import handreach.report.page.Section;
import handreach.study.AssignStudy;
import handreach.study.ReachAnswer;
import handreach.study.ReachOptions;
import handreach.study.ReachStudy;
import handreach.study.RelayStudy;
import handreach.study.Scene;
import handreach.study.WalkAnswer;
import handreach.study.WalkStudy;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The full report. */
@Command(
        name = "report",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description = {
            "The full report: one self-contained HTML file that prints well.",
            "Where the plan names walks, they stand in it beside the prediction."
        },
        footer = {
            "",
            "Worked example:",
            "  handreach report elevation-samples/forest-hills --out report.html",
            "",
            "The report shows odds, not promises: carry a second means of calling for help."
        })
final class ReportCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "PLAN", description = "Plan file, or a folder with plan.toml.")
    private Path plan;

    @Option(names = "--out", paramLabel = "FILE.html", description = "Where to write it. Default: report.html.")
    private Path out = Path.of("report.html");

    @Option(names = "--relay", description = "Also answer whether a relay is needed, and where.")
    private boolean relay;

    @Option(names = "--assign", description = "Also answer who must carry what.")
    private boolean assign;

    @Mixin
    private JsonOption json;

    private record Answer(String file, List<String> warnings) {}

    @Override
    public Integer call() {
        PlanFile file = PlanFile.open(plan);
        Target.look(out, ".html", file.sources());
        Scene scene = Scene.open(file);
        MarchAhead.tell(scene, ReachOptions.ofPlan(true), json);
        ReachAnswer answer;
        List<Section> more = new ArrayList<>();
        List<String> warnings = new ArrayList<>();
        try (ConsoleProgress progress = ConsoleProgress.on(json.err())) {
            if (!scene.plan().questions().walks().isEmpty()) {
                WalkAnswer walk = WalkStudy.run(scene, progress);
                more.addAll(WalkComposer.sections(walk, Instant.now()));
                warnings.addAll(walk.warnings());
            }
            answer = ReachStudy.run(scene, true, progress);
            if (assign) more.addAll(0, new AssignComposer(AssignStudy.run(scene, progress)).sections());
            if (relay)
                more.addAll(0, new RelayComposer(RelayStudy.run(scene, progress)).sectionsBesideReach(Instant.now()));
        }
        warnings.addAll(0, answer.warnings());
        List<String> told = warnings.stream().distinct().toList();
        json.warn(told);
        ReachFiles.writeReport(answer, more, out);
        if (json.isWanted()) json.print(new Answer(out.toString(), told));
        else json.written(out);
        return 0;
    }
}
