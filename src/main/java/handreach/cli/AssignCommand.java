package handreach.cli;

import handreach.input.Target;
import handreach.plan.PlanFile;
import handreach.report.AssignComposer;
import handreach.report.AssignFiles;
import handreach.report.AssignJson;
import handreach.study.AssignAnswer;
import handreach.study.AssignStudy;
import handreach.study.Scene;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Who must carry what. */
@Command(
        name = "assign",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description =
                "Who of a plan must carry what, with the least burden in all, so that every wanted talk works without a relay.",
        footer = {
            "",
            "Worked example:",
            "  handreach assign elevation-samples/urban-coast --out assign-coast",
            "",
            "These are odds, not a promise: carry a second means of calling for help. Keep antennas away from",
            "eyes and skin while transmitting. Power and antenna follow your licence and local rules."
        })
final class AssignCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "PLAN", description = "Plan file, or a folder with plan.toml.")
    private Path plan;

    @Option(names = "--out", paramLabel = "DIR", description = "Write report, text and JSON into this folder.")
    private Path out;

    @Mixin
    private JsonOption json;

    @Override
    public Integer call() {
        PlanFile file = PlanFile.open(plan);
        if (out != null) Target.lookFolder(out, List.of(), file.sources());
        Scene scene = Scene.open(file);
        AssignAnswer answer;
        try (ConsoleProgress progress = ConsoleProgress.on(json.err())) {
            answer = AssignStudy.run(scene, progress);
        }
        json.answer(
                answer.warnings(), () -> AssignJson.of(answer), columns -> new AssignComposer(answer).text(columns));
        if (out != null) json.written(AssignFiles.write(answer, out));
        return 0;
    }
}
