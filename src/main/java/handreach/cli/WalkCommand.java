package handreach.cli;

import handreach.plan.PlanFile;
import handreach.report.WalkFiles;
import handreach.report.WalkText;
import handreach.study.Scene;
import handreach.study.WalkAnswer;
import handreach.study.WalkStudy;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What was walked against what was predicted, and what it teaches. */
@Command(
        name = "walk",
        mixinStandardHelpOptions = true,
        description = "Compare the walks of a plan with the prediction, and learn a site calibration from them.",
        footer = {
            "",
            "Worked example:",
            "  handreach walk elevation-samples/forest-hills --out walk-forest",
            "",
            "A calibration changes nothing until the plan names it: [calibration] file = \"calibration.toml\".",
            "",
            "A walk is where contact may be lost: carry a second means of calling for help."
        })
final class WalkCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "PLAN", description = "Plan file, or a folder with plan.toml.")
    private Path plan;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Write the comparison, residuals, waypoints with odds and the calibration into this folder.")
    private Path out;

    @Mixin
    private JsonChoice json;

    @Override
    public Integer call() {
        WalkAnswer answer = WalkStudy.run(Scene.open(PlanFile.open(plan)));
        json.warn(answer.warnings());
        if (json.isWanted()) json.print(WalkText.json(answer));
        else json.out().print(WalkText.text(answer));
        if (out != null)
            for (Path file : WalkFiles.write(answer, out))
                (json.isWanted() ? json.err() : json.out()).println("Written: " + file);
        return 0;
    }
}
