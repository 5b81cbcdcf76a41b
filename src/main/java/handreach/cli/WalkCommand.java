package handreach.cli;

import handreach.input.Range;
import handreach.input.Sources;
import handreach.input.Target;
import handreach.plan.PlanFile;
import handreach.report.WalkComposer;
import handreach.report.WalkFiles;
import handreach.report.WalkJson;
import handreach.report.WalkNextComposer;
import handreach.report.WalkNextFiles;
import handreach.report.WalkNextJson;
import handreach.report.page.PlainText;
import handreach.study.Scene;
import handreach.study.WalkAnswer;
import handreach.study.WalkNextAnswer;
import handreach.study.WalkNextStudy;
import handreach.study.WalkStudy;
import handreach.walk.NextWalk;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What was walked against what was predicted, what it teaches, and which walk would teach most next. */
@Command(
        name = "walk",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description = {
            "Compare the walks of a plan with the prediction, and learn a site calibration from them.",
            "With --next: where the reports of another walk would teach most, along given tracks."
        },
        footer = {
            "",
            "Worked examples:",
            "  handreach walk elevation-samples/forest-hills --out walk-forest",
            "  handreach walk elevation-samples/forest-hills --next elevation-samples/forest-hills/walk-track.gpx",
            "",
            "A calibration changes nothing until the plan names it: [calibration] file = \"calibration.toml\".",
            "",
            "A walk is where contact may be lost: carry a second means of calling for help."
        })
final class WalkCommand implements Callable<Integer> {
    private static final Range REPORTS = new Range("reports", 1, 40, "");

    @Spec
    private CommandSpec command;

    @Parameters(index = "0", paramLabel = "PLAN", description = "Plan file, or a folder with plan.toml.")
    private Path plan;

    @Parameters(
            index = "1..*",
            arity = "0..*",
            paramLabel = "TRACK.gpx",
            description =
                    "With --next: tracks or routes that could be walked. None: straight lines to the plan's places.")
    private List<Path> tracks = new ArrayList<>();

    @Option(names = "--next", description = "Propose places where a report would teach most.")
    private boolean next;

    @Option(
            names = "--decision",
            paramLabel = "WHAT",
            description = "With --next: what is to be decided, loadout or relay. Default: loadout.")
    private WalkNextAnswer.Decision decision = WalkNextAnswer.Decision.LOADOUT;

    @Option(
            names = "--instrument",
            paramLabel = "WHAT",
            description = "With --next: what a report says, copy or level. Default: copy.")
    private NextWalk.Instrument instrument = NextWalk.Instrument.COPY;

    @Option(names = "--reports", paramLabel = "N", description = "With --next: how many reports, 1 to 40. Default: 6.")
    private int reports = 6;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description =
                    "Write the comparison, residuals, waypoints with odds and the calibration into this folder; with"
                            + " --next the proposal, its waypoints, and the odds along the tracks.")
    private Path out;

    @Option(
            names = "--replace",
            description = "Write over calibration.toml even where the plan names it: its answers then change.")
    private boolean replace;

    @Mixin
    private JsonOption json;

    @Override
    public Integer call() {
        if (next) return proposed();
        if (!tracks.isEmpty())
            throw new ParameterException(
                    command.commandLine(),
                    "tracks are for --next; the walks to compare stand in the plan as [[walk]].");
        PlanFile file = PlanFile.open(plan);
        Sources sources = out == null ? file.sources() : WalkFiles.sources(file, out, replace);
        if (out != null) Target.lookFolder(out, List.of(), sources);
        Scene scene = Scene.open(file);
        WalkAnswer answer;
        try (ConsoleProgress progress = ConsoleProgress.on(json.err())) {
            answer = WalkStudy.run(scene, progress);
        }
        json.answer(
                answer.warnings(),
                () -> WalkJson.of(answer),
                columns -> PlainText.of(WalkComposer.screen(answer), columns));
        if (out != null) json.written(WalkFiles.write(answer, Instant.now(), out, sources));
        return 0;
    }

    private int proposed() {
        if (!REPORTS.accepts(reports))
            throw new ParameterException(command.commandLine(), "--reports " + REPORTS.fault(String.valueOf(reports)));
        PlanFile file = PlanFile.open(plan);
        Sources sources = file.sources().and(tracks);
        if (out != null) Target.lookFolder(out, List.of(), sources);
        Scene scene = Scene.open(file);
        WalkNextAnswer answer;
        try (ConsoleProgress progress = ConsoleProgress.on(json.err())) {
            answer = WalkNextStudy.run(scene, decision, instrument, tracks, reports, progress);
        }
        json.answer(
                answer.warnings(),
                () -> WalkNextJson.of(answer),
                columns -> PlainText.of(WalkNextComposer.page(answer), columns));
        if (out != null) json.written(WalkNextFiles.write(answer, out, sources));
        return 0;
    }
}
