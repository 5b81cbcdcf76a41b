package handreach.cli;

import handreach.input.Target;
import handreach.plan.PlanFile;
import handreach.report.RelayComposer;
import handreach.report.RelayFiles;
import handreach.report.RelayJson;
import handreach.study.RelayAnswer;
import handreach.study.RelayStudy;
import handreach.study.Scene;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Is a relay needed, and where. */
@Command(
        name = "relay",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description =
                "Whether a relay is needed for the people of a plan, who is the weakest pair, and where a relay should stand.",
        footer = {
            "",
            "Worked example:",
            "  handreach relay elevation-samples/forest-hills --out relay-forest",
            "",
            "These are odds, not a promise: carry a second means of calling for help. No mast, no raised antenna",
            "and no visit to a relay while thunder can be heard; stay clear of power lines; keep people away from",
            "the antenna. Whether a relay may be used is for your licence and local rules to say."
        })
final class RelayCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "PLAN", description = "Plan file, or a folder with plan.toml.")
    private Path plan;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Write text, JSON, waypoints (GPX) and features (GeoJSON) into this folder.")
    private Path out;

    @Mixin
    private JsonOption json;

    @Override
    public Integer call() {
        PlanFile file = PlanFile.open(plan);
        if (out != null) Target.lookFolder(out, List.of(), file.sources());
        Scene scene = Scene.open(file);
        RelayAnswer answer;
        try (ConsoleProgress progress = ConsoleProgress.on(json.err())) {
            answer = RelayStudy.run(scene, progress);
        }
        json.answer(
                answer.summary().warnings(),
                () -> RelayJson.of(answer),
                columns -> new RelayComposer(answer).text(columns));
        if (out != null) json.written(RelayFiles.write(answer, Instant.now(), out));
        return 0;
    }
}
