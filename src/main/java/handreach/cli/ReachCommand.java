package handreach.cli;

import handreach.plan.PlanFile;
import handreach.report.ReachText;
import handreach.study.ReachAnswer;
import handreach.study.ReachStudy;
import handreach.study.Scene;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The main job. */
@Command(
        name = "reach",
        mixinStandardHelpOptions = true,
        description =
                "Reach by loadout and bearing, odds, intervals, and whether the bigger antenna is worth carrying.",
        footer = {
            "",
            "Worked example:",
            "  handreach reach elevation-samples/forest-hills --out reach-forest",
            "",
            "These are odds, not a promise: carry a second means of calling for help. Keep antennas away from eyes and skin while",
            "transmitting. Power, antenna and relay use follow your licence and local rules."
        })
final class ReachCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "PLAN", description = "Plan file, or a folder with plan.toml.")
    private Path plan;

    @Option(names = "--out", paramLabel = "DIR", description = "Write report, maps and outlines into this folder.")
    private Path out;

    @Option(names = "--no-area", description = "Leave out the area maps, only the rose of bearings.")
    private boolean noArea;

    @Mixin
    private JsonChoice json;

    @Override
    public Integer call() {
        Scene scene = Scene.open(PlanFile.open(plan));
        try (ConsoleProgress progress = ConsoleProgress.on(json.err())) {
            ReachAnswer answer = ReachStudy.run(scene, out != null && !noArea, progress);
            progress.close();
            json.warn(answer.warnings());
            if (json.isWanted()) json.print(ReachText.json(answer));
            else json.out().print(ReachText.text(answer));
            if (out != null) {
                List<Path> written = handreach.report.ReachFiles.write(answer, out);
                for (Path file : written) (json.isWanted() ? json.err() : json.out()).println("Written: " + file);
            }
        }
        return 0;
    }
}
