package handreach.cli;

import handreach.input.Faults;
import handreach.input.InputFault;
import handreach.input.Target;
import handreach.plan.ModelWish;
import handreach.plan.PlanFile;
import handreach.propagation.Standing;
import handreach.reach.MapEngine;
import handreach.reach.Progress;
import handreach.report.ReachComposer;
import handreach.report.ReachFiles;
import handreach.report.ReachNumbers;
import handreach.report.ReachPart;
import handreach.report.page.PlainText;
import handreach.study.GainQuestion;
import handreach.study.ReachAnswer;
import handreach.study.ReachOptions;
import handreach.study.ReachStudy;
import handreach.study.Scene;
import java.nio.file.Path;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The main job. */
@Command(
        name = "reach",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description =
                "Reach by loadout and bearing, odds, intervals, and whether the bigger antenna is worth carrying.",
        footer = {
            "",
            "Worked example:",
            "  handreach reach elevation-samples/forest-hills --out reach-forest",
            "Rasters alone, 10 km by a sweep:",
            "  handreach reach elevation-samples/invented-valley --radius-km 10 --engine sweep --only rasters --out maps",
            "",
            "These are odds, not a promise: carry a second means of calling for help. Keep antennas away from",
            "eyes and skin while transmitting. Power, antenna and relay use follow your licence and local rules."
        })
final class ReachCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "PLAN", description = "Plan file, or a folder with plan.toml.")
    private Path plan;

    @Option(names = "--out", paramLabel = "DIR", description = "Write report, maps and outlines into this folder.")
    private Path out;

    @Option(
            names = "--only",
            paramLabel = "WORD",
            split = ",",
            description =
                    "Write only these: report, numbers (JSON, CSV), outlines (GeoJSON), maps (PNG), rasters (GeoTIFF), overlay (KMZ), places (GPX).")
    private List<String> only;

    @Option(names = "--no-area", description = "Leave out the area maps, only the rose of bearings.")
    private boolean noArea;

    @Option(
            names = "--engine",
            paramLabel = "WORD",
            description =
                    "How the maps are reckoned: exact (one path per cell; the usual one while it takes seconds), sweep (cells off"
                            + " shared radials; its difference from exact is measured and printed), march (model full-wave along"
                            + " radials, also for the rose; takes seconds to minutes and says first how long; difference"
                            + " measured as the sweep's).")
    private String engine;

    @Option(
            names = "--loadout",
            paramLabel = "NAME",
            description = "Only this loadout beside the control; may be given several times.")
    private List<String> loadouts = List.of();

    @Option(
            names = "--model",
            paramLabel = "NAME",
            description =
                    "Loss model in place of the plan's; auto, which is also what a plan means that names none, takes full-wave over bare ground where its map takes seconds, else handheld.")
    private String model;

    @Option(
            names = "--woods-and-towns",
            paramLabel = "WORD",
            description = "Where full-wave counts woods and towns, in place of the plan's: at-ends or on-the-way.")
    private String woodsAndTowns;

    @Option(names = "--radius-km", paramLabel = "KM", description = "Radius in place of the plan's, 0.2 to 120 km.")
    private Double radiusKm;

    @Option(names = "--cell-m", paramLabel = "M", description = "Cell of the maps in place of the plan's, 5 to 2000 m.")
    private Double cellM;

    @Option(
            names = "--channel",
            paramLabel = "NAME",
            description = "Channel of the plan to answer for. Default: the first.")
    private String channel;

    @Mixin
    private JsonOption json;

    @Override
    public Integer call() {
        Set<ReachPart> parts = parts();
        ReachOptions options = options(parts);
        PlanFile file = opened();
        if (out != null) Target.lookFolder(out, List.of(), file.sources());
        Scene planned = Scene.unchosen(file);
        Scene scene = (channel == null ? planned : planned.onChannel("--channel", channel)).withOptions(options);
        MarchAhead.tell(scene, options, json);
        try (ConsoleProgress progress = ConsoleProgress.on(json.err())) {
            ReachAnswer answer = ReachStudy.run(scene, options, progress);
            progress.close();
            json.answer(
                    answer.warnings(),
                    () -> ReachNumbers.of(answer),
                    columns -> PlainText.of(ReachComposer.of(answer).page(), columns));
            if (out == null) return 0;
            json.written(ReachFiles.write(answer, parts, Instant.now(), out, progress));
        }
        return 0;
    }

    private PlanFile opened() {
        try {
            return PlanFile.open(plan);
        } catch (InputFault refused) {
            throw GainQuestion.answered(plan, refused, Progress.SILENT);
        }
    }

    private ReachOptions options(Set<ReachPart> parts) {
        Faults faults = new Faults();
        Optional<MapEngine> chosen = Optional.ofNullable(engine)
                .flatMap(word -> MapEngine.KEYWORD.read(word, refused -> faults.add("--engine", 0, refused)));
        Optional<ModelWish> by = Optional.ofNullable(model)
                .flatMap(name -> ModelWish.KEYWORD.read(name, refused -> faults.add("--model", 0, refused)));
        Optional<Standing> standing = Optional.ofNullable(woodsAndTowns)
                .flatMap(word -> Standing.KEYWORD.read(word, refused -> faults.add("--woods-and-towns", 0, refused)));
        faults.throwIfAny();
        boolean needsArea = parts.stream().anyMatch(part -> part != ReachPart.NUMBERS);
        return new ReachOptions(
                out != null && !noArea && needsArea, chosen, by, standing, number(radiusKm), number(cellM), loadouts);
    }

    private static OptionalDouble number(Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    private Set<ReachPart> parts() {
        if (only == null) return EnumSet.allOf(ReachPart.class);
        if (out == null)
            throw new InputFault("--only", 0, "says what to write, but not where. Add --out and a folder.");
        Set<ReachPart> parts = EnumSet.noneOf(ReachPart.class);
        for (String word : only) parts.add(ReachPart.KEYWORD.parse("--only", word));
        return parts;
    }
}
