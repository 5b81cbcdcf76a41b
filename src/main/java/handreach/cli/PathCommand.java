package handreach.cli;

import handreach.geodesy.Place;
import handreach.geodesy.Position;
import handreach.input.Faults;
import handreach.input.InputFault;
import handreach.input.Keyword;
import handreach.input.NearestWord;
import handreach.input.Sources;
import handreach.input.Target;
import handreach.loadout.Loadout;
import handreach.plan.Places;
import handreach.plan.PlanFile;
import handreach.plan.PlanHeader;
import handreach.profile.CutSettings;
import handreach.profile.Profile;
import handreach.profile.ProfileFile;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.Standing;
import handreach.propagation.Terminals;
import handreach.report.PathComposer;
import handreach.report.PathJson;
import handreach.report.draw.Svg;
import handreach.report.file.AnswerFile;
import handreach.report.page.Notes;
import handreach.report.page.PlainText;
import handreach.study.PathAnswer;
import handreach.study.PathStudy;
import handreach.study.Scene;
import handreach.terrain.Cover;
import handreach.terrain.LandCover;
import handreach.terrain.Surface;
import handreach.terrain.TileFolder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** One path: profile, obstacles, loss by parts, and the ledger where a plan says who stands at the ends. */
@Command(
        name = "path",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description = "One path: profile, obstacles, loss by parts, ledger.",
        footer = {
            "",
            "Worked examples:",
            "  handreach path --tiles elevation-samples/high-mountains/tiles --from 37.42,-105.015 --to 37.395,-105.06"
                    + " --frequency-mhz 155",
            "  handreach path elevation-samples/forest-hills --from \"spike camp\" --to \"north spur\"",
            "  handreach path --profile ridge.csv --frequency-mhz 155 --model all",
            "",
            "A loss is a model's answer over coarse ground, not a measurement. Carry a second means of",
            "calling for help."
        })
final class PathCommand implements Callable<Integer> {
    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "PLAN",
            description = "Plan file, or a folder with plan.toml; the same as --plan.")
    private Path planWord;

    @Option(
            names = "--profile",
            paramLabel = "FILE.csv",
            description = "Profile: columns distance_km,height_m and optionally clutter_m, zone (inland|coastal|sea).")
    private Path profileFile;

    @Option(
            names = "--from",
            paramLabel = "PLACE",
            description = "First end: a place, or with --plan the name of a position.")
    private String from;

    @Option(names = "--to", paramLabel = "PLACE", description = "Other end, likewise.")
    private String to;

    @Option(names = "--tiles", paramLabel = "DIR", description = "Folder with elevation tiles.")
    private Path tiles;

    @Option(names = "--plan", paramLabel = "PLAN", description = "Plan that knows ground, loadouts and positions.")
    private Path plan;

    @Option(names = "--from-loadout", paramLabel = "NAME", description = "Loadout at the first end, of the plan.")
    private String fromLoadout;

    @Option(names = "--to-loadout", paramLabel = "NAME", description = "Loadout at the other end, of the plan.")
    private String toLoadout;

    @Option(
            names = "--tx-height-m",
            paramLabel = "M",
            description = "First antenna above ground, 0.1 to 3000 m. Default: 1.5.")
    private Double txHeightM;

    @Option(
            names = "--rx-height-m",
            paramLabel = "M",
            description = "Other antenna above ground, 0.1 to 3000 m. Default: 1.5.")
    private Double rxHeightM;

    @Option(
            names = "--cover",
            paramLabel = "WORD",
            description = "What stands everywhere: open (default), woodland, suburban, ...")
    private String cover = "open";

    @Option(
            names = "--surface",
            paramLabel = "WORD",
            description = "What the tiles describe: bare-earth (default), radar, surface-model.")
    private String surface = "bare-earth";

    @Option(
            names = "--model",
            paramLabel = "WORD",
            description =
                    "Loss model (default the plan's, else handheld), or all: that one first, and by it the ledger.")
    private String model;

    @Option(
            names = "--woods-and-towns",
            paramLabel = "WORD",
            description =
                    "Where full-wave counts woods and towns: at-ends or on-the-way (default the plan's, else at-ends).")
    private String woodsAndTowns;

    @Option(names = "--explain", description = "Show every intermediate value of the model.")
    private boolean explain;

    @Option(
            names = "--figure",
            paramLabel = "FILE.svg",
            description = "Draw the profile, with the field over it for full-wave.")
    private Path figure;

    @Mixin
    private ConditionOptions air;

    @Mixin
    private JsonOption json;

    private Sources sources = Sources.NONE;

    /** What has been printed before the answer was at hand. */
    private List<String> told = List.of();

    /** Of the plan; without one nothing says that anybody thinks in miles or carries a compass. */
    private PlanHeader header = PlanHeader.NONE;

    @Override
    public Integer call() {
        if (planWord != null && plan != null)
            throw new InputFault(
                    "--plan",
                    0,
                    "already names the plan: \"" + planWord
                            + "\" is one word too many. Put a name with blanks in quotes.");
        if (planWord != null) plan = planWord;
        PathAnswer answer = plan != null ? inPlan() : profileFile != null ? overProfile() : betweenPlaces();
        json.answer(
                Notes.once(answer.warnings().stream()
                        .filter(warning -> !told.contains(warning))
                        .toList()),
                () -> PathJson.of(answer, explain),
                columns -> PlainText.of(PathComposer.page(answer, header, explain), columns));
        if (figure != null) {
            AnswerFile.write(figure, Svg.file(PathComposer.figure(answer)), sources);
            json.tell("Figure written to " + figure);
        }
        return 0;
    }

    private PathAnswer overProfile() {
        Faults faults = new Faults();
        if (from != null || to != null || tiles != null)
            faults.add("--profile", 0, "stands in place of --from, --to and --tiles. Give one or the other.");
        checkHeights(faults);
        List<LossModel> models = models(faults, LossModels.HANDHELD);
        Optional<Standing> standing = standing(faults, models);
        faults.throwIfAny();
        PathConditions conditions = air.conditions(45).with(standing.orElse(Standing.AT_ENDS));
        madeFrom(Sources.NONE.and(List.of(profileFile)));
        Profile profile = ProfileFile.read(profileFile);
        return PathStudy.over(profile, terminals(), conditions, sayingFirst(models));
    }

    private PathAnswer betweenPlaces() {
        Faults faults = new Faults();
        if (from == null || to == null || tiles == null)
            faults.add(
                    "path",
                    0,
                    "give --profile FILE.csv, or --from PLACE --to PLACE --tiles DIR, or PLAN --from NAME --to NAME.");
        checkHeights(faults);
        List<LossModel> models = models(faults, LossModels.HANDHELD);
        Optional<Standing> standing = standing(faults, models);
        Optional<Cover> everywhere = Cover.KEYWORD.read(cover, refused -> faults.add("--cover", 0, refused));
        Optional<Surface> heights = Surface.KEYWORD.read(surface, refused -> faults.add("--surface", 0, refused));
        faults.throwIfAny();
        Position a = Place.parse("--from", from);
        Position b = Place.parse("--to", to);
        PathConditions conditions =
                air.conditions((a.latitudeDeg() + b.latitudeDeg()) / 2).with(standing.orElse(Standing.AT_ENDS));
        madeFrom(Sources.NONE.and(List.of(tiles)).andFolder(tiles, TileFolder::isRead));
        PathStudy.CutGround ground = new PathStudy.CutGround(
                TileFolder.open(tiles),
                LandCover.uniform(everywhere.orElseThrow()),
                CutSettings.of(heights.orElseThrow()));
        return PathStudy.between(ground, a, b, terminals(), conditions, sayingFirst(models));
    }

    private PathAnswer inPlan() {
        Faults faults = new Faults();
        if (from == null || to == null)
            faults.add("--plan", 0, "needs --from and --to: names of positions, or places.");
        if (profileFile != null || tiles != null)
            faults.add("--plan", 0, "knows its own ground. Leave out --profile and --tiles.");
        if (txHeightM != null || rxHeightM != null)
            faults.add(
                    "--plan", 0, "takes antenna heights from the loadouts. Leave out --tx-height-m and --rx-height-m.");
        faults.throwIfAny();
        PlanFile file = PlanFile.open(plan);
        madeFrom(file.sources());
        Scene planned = Scene.open(file);
        List<LossModel> models = models(faults, planned.model());
        Optional<Standing> standing = standing(faults, models);
        faults.throwIfAny();
        Scene scene = standing.map(planned::counting).orElse(planned);
        header = scene.plan().header();
        told = scene.warnings();
        json.warn(told);
        Loadout near = loadout(scene, from, fromLoadout);
        Loadout far = loadout(scene, to, toLoadout);
        return PathStudy.compared(PathStudy.between(
                scene, place(scene, from, "--from"), near, place(scene, to, "--to"), far, sayingFirst(models)));
    }

    /** Looks at the figure's target as soon as it is known what is read. */
    private void madeFrom(Sources files) {
        sources = files;
        if (figure != null) Target.look(figure, files);
    }

    private static Position place(Scene scene, String text, String option) {
        return scene.plan().places().positions().stream()
                .filter(entry -> entry.name().equals(text))
                .map(Places.PositionEntry::at)
                .findFirst()
                .orElseGet(() -> parsed(scene, text, option));
    }

    private static Position parsed(Scene scene, String text, String option) {
        try {
            return Place.parse(option, text);
        } catch (InputFault fault) {
            List<String> names = scene.plan().places().positions().stream()
                    .map(Places.PositionEntry::name)
                    .toList();
            throw new InputFault(
                    option,
                    0,
                    "\"" + text + "\" is neither a position of the plan nor a place." + NearestWord.hint(text, names)
                            + " Positions: " + String.join(", ", names) + ".");
        }
    }

    private static Loadout loadout(Scene scene, String end, String chosen) {
        if (chosen != null) return scene.loadout(chosen);
        return scene.plan().places().positions().stream()
                .filter(entry -> entry.name().equals(end))
                .flatMap(entry -> entry.loadout().stream())
                .map(scene::loadout)
                .findFirst()
                .orElseGet(scene::controlLoadout);
    }

    private void checkHeights(Faults faults) {
        if (txHeightM != null) Terminals.HEIGHT.check(faults, "--tx-height-m", txHeightM);
        if (rxHeightM != null) Terminals.HEIGHT.check(faults, "--rx-height-m", rxHeightM);
    }

    private Terminals terminals() {
        return new Terminals(txHeightM == null ? 1.5 : txHeightM, rxHeightM == null ? 1.5 : rxHeightM);
    }

    private List<LossModel> models(Faults faults, LossModel usual) {
        if (model == null) return List.of(usual);
        List<LossModel> usualFirst = Stream.concat(
                        Stream.of(usual), LossModels.all().stream().filter(one -> one != usual))
                .toList();
        List<List<LossModel>> choices = new ArrayList<>(List.of(usualFirst));
        for (LossModel one : LossModels.all()) choices.add(List.of(one));
        return Keyword.of(choices, chosen -> chosen.size() == 1 ? chosen.get(0).name() : "all")
                .read(
                        model,
                        refused -> faults.add(
                                "--model",
                                0,
                                model.equals("auto")
                                        ? "\"auto\" works in a plan, and is what a plan means that names no model. Leave --model out, or name a model."
                                        : refused))
                .orElse(List.of());
    }

    private Optional<Standing> standing(Faults faults, List<LossModel> models) {
        if (woodsAndTowns == null) return Optional.empty();
        if (!models.isEmpty() && !models.contains(LossModels.FULL_WAVE))
            faults.add(
                    "--woods-and-towns", 0, "is for full-wave alone. Add --model full-wave or all, or leave it out.");
        return Standing.KEYWORD.read(woodsAndTowns, refused -> faults.add("--woods-and-towns", 0, refused));
    }

    private List<LossModel> sayingFirst(List<LossModel> models) {
        return models.stream()
                .map(one -> LossModels.sayingFirst(one, cost -> json.err().println(cost + " Ctrl-C stops it.")))
                .toList();
    }
}
