package handreach.cli;

import handreach.atlas.AtlasBlock;
import handreach.input.Faults;
import handreach.plan.PlanFile;
import handreach.report.AtlasComposer;
import handreach.report.AtlasFolder;
import handreach.report.AtlasSpread;
import handreach.study.AtlasAnswer;
import handreach.study.AtlasLayer;
import handreach.study.AtlasOptions;
import handreach.study.AtlasStudy;
import handreach.study.BlockFault;
import handreach.study.Scene;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Every place of a region. */
@Command(
        name = "atlas",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description =
                "Every place of a region: reach and least loadout from each, who hears whom over others, where nobody is heard.",
        footer = {
            "",
            "Worked example, a few minutes:",
            "  handreach atlas elevation-samples/invented-valley --grid 1km --relays 3 --out atlas-valley",
            "",
            "Ctrl-C stops it; the same command goes on where it was. These are odds, not a promise: carry a",
            "second means of calling for help. Whether a relay may be used is for your licence and local rules",
            "to say."
        })
final class AtlasCommand implements Callable<Integer> {
    private static final int SOME_FAILED = 1;

    @Parameters(index = "0", paramLabel = "PLAN", description = "Plan file, or a folder with plan.toml.")
    private Path plan;

    @Option(
            names = "--grid",
            required = true,
            paramLabel = "LENGTH",
            description = "From position to position, such as 300m; 30 to 20000 m.")
    private String grid;

    @Option(
            names = "--targets",
            paramLabel = "LENGTH",
            description = "From target to target, 30 to 20000 m. Default: the grid of the positions.")
    private String targets;

    @Option(
            names = "--region",
            paramLabel = "FILE",
            description = "Polygons of the region (GeoJSON). Default: the area of the plan.")
    private Path region;

    @Option(
            names = "--layers",
            paramLabel = "WORD",
            split = ",",
            description = "What is told of the region: reach, talk, shadow. Default: all.")
    private List<String> layers;

    @Option(
            names = "--relays",
            paramLabel = "N",
            description = "The places that together reach the most, 0 to 50. Default: 0.")
    private int relays;

    @Option(
            names = "--serves",
            paramLabel = "LENGTH",
            description = "Median reach from which a loadout serves, 50 to 120000 m. Default: a quarter of the radius.")
    private String serves;

    @Option(
            names = "--cores",
            paramLabel = "N",
            description = "Threads, or cores of the cluster, 1 to 256. Default: all.")
    private Integer cores;

    @Option(
            names = "--cluster",
            paramLabel = "WHERE",
            description =
                    "The engine that does it: spark://HOST:PORT, or local[N]. Default: threads of this machine, no engine."
                            + " See docs/atlas.md.")
    private String cluster;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "DIR",
            description = "Folder of the atlas, one question a folder.")
    private Path out;

    @Mixin
    private JsonOption json;

    @Override
    public Integer call() throws IOException {
        AtlasOptions wish = wish();
        int threads = threads();
        Optional<AtlasSpread> spread = Optional.ofNullable(cluster)
                .map(where ->
                        AtlasSpread.of(where, cores == null ? OptionalInt.empty() : OptionalInt.of(cores), threads));
        PlanFile file = PlanFile.open(plan);
        AtlasStudy study = AtlasStudy.of(Scene.open(file), wish);
        try (AtlasFolder folder = AtlasFolder.open(study, out)) {
            List<BlockFault> faults = run(study, folder, threads, spread);
            AtlasAnswer answer = folder.answer(faults);
            try (ConsoleProgress progress = ConsoleProgress.on(json.err())) {
                spread.ifPresent(one -> one.addColumns(folder, progress));
            }
            AtlasComposer.faults(faults).forEach(json::tell);
            if (json.isWanted()) json.print(folder.json(answer));
            else json.page(new AtlasComposer(answer).text(TerminalWidth.columns()));
            try (ConsoleProgress progress = ConsoleProgress.on(json.err())) {
                json.written(folder.write(answer, Instant.now(), progress));
            }
            return faults.isEmpty() ? 0 : SOME_FAILED;
        }
    }

    private List<BlockFault> run(AtlasStudy study, AtlasFolder folder, int threads, Optional<AtlasSpread> spread) {
        List<AtlasBlock> todo = folder.todo();
        int there = study.positions().blocks().size() - todo.size();
        if (there > 0) json.tell(there + " of " + study.positions().blocks().size() + " blocks are there already.");
        if (todo.isEmpty()) return List.of();
        // A bound reference would set management up for every run of the program.
        json.tell(folder.cost(
                        study.trial(
                                todo, () -> ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime()),
                        threads)
                + " Ctrl-C stops it; the same command goes on from there.");
        try (ConsoleProgress progress = ConsoleProgress.on(json.err())) {
            return spread.isPresent()
                    ? spread.get().run(folder, todo, progress)
                    : study.run(todo, threads, folder::put, progress);
        }
    }

    private AtlasOptions wish() {
        return new AtlasOptions(
                AtlasOptions.metres("--grid", grid),
                metres("--targets", targets),
                Optional.ofNullable(region),
                layers(),
                relays,
                metres("--serves", serves));
    }

    private static OptionalDouble metres(String option, String typed) {
        return typed == null ? OptionalDouble.empty() : OptionalDouble.of(AtlasOptions.metres(option, typed));
    }

    private Set<AtlasLayer> layers() {
        if (layers == null) return EnumSet.allOf(AtlasLayer.class);
        Set<AtlasLayer> wanted = EnumSet.noneOf(AtlasLayer.class);
        for (String word : layers) wanted.add(AtlasLayer.KEYWORD.parse("--layers", word));
        return wanted;
    }

    private int threads() {
        if (cores == null) return Scene.threads();
        Faults faults = new Faults();
        AtlasOptions.CORES.check(faults, "--cores", cores);
        faults.throwIfAny();
        return cores;
    }
}
