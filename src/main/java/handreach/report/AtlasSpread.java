package handreach.report;

import handreach.atlas.AtlasBlock;
import handreach.atlas.spread.ClusterAddress;
import handreach.atlas.spread.SpreadRun;
import handreach.input.InputFault;
import handreach.input.SourceText;
import handreach.plan.PlanFile;
import handreach.reach.Progress;
import handreach.study.BlockFault;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** The blocks of an atlas by the engine that spreads them over machines; their rows come back here and are kept as those of one machine. */
public final class AtlasSpread {
    private final ClusterAddress cluster;
    private final OptionalInt cores;

    private AtlasSpread(ClusterAddress cluster, OptionalInt cores) {
        this.cluster = cluster;
        this.cores = cores;
    }

    /**
     * Looks at the address, whether the engine is here and whether the cluster answers.
     *
     * @param typed address of the cluster
     * @param cores of it at most
     * @param threads of this machine, where no number is typed
     */
    public static AtlasSpread of(String typed, OptionalInt cores, int threads) {
        ClusterAddress cluster = ClusterAddress.of(typed, cores.orElse(threads));
        if (AtlasSpread.class.getResource("/org/apache/spark/SparkConf.class") == null)
            throw new InputFault(
                    "--cluster",
                    0,
                    "needs the engine Apache Spark, which does not travel with this program. Start handreach-atlas.jar by spark-submit, or"
                            + " leave --cluster out to work on this machine; docs/atlas.md tells how.");
        cluster.ownAddress();
        return new AtlasSpread(cluster, cores);
    }

    /** Runs the blocks. Those that failed come back, the others are kept in the folder. */
    public List<BlockFault> run(AtlasFolder folder, List<AtlasBlock> blocks, Progress progress) {
        Path aside = null;
        try {
            aside = Files.createTempDirectory("handreach-atlas");
            Path all = Files.createDirectory(aside.resolve("all"));
            return run(folder, blocks, laidOut(folder, all, progress), progress);
        } catch (IOException e) {
            throw new InputFault(
                    "the plan and what it names",
                    0,
                    "cannot be packed for the workers (" + SourceText.reason(e)
                            + "). Check the free space for temporary files; another place for them is named by -Djava.io.tmpdir=DIR.");
        } finally {
            if (aside != null) remove(aside);
        }
    }

    /** Packs what was laid out and runs the blocks. */
    List<BlockFault> run(AtlasFolder folder, List<AtlasBlock> blocks, Laid laid, Progress progress) throws IOException {
        List<BlockFault> faults = new ArrayList<>();
        folder.requireColumns();
        SpreadRun.run(
                cluster,
                cores,
                packed(laid.folder()),
                folder.errand(laid.digest()),
                blocks.stream().map(AtlasBlock::number).toList(),
                outcome -> {
                    AtlasBlock block = folder.study().positions().blocks().get(outcome.block());
                    if (outcome.isFaulty()) faults.add(new BlockFault(outcome.block(), outcome.fault()));
                    else folder.put(block, outcome.rows());
                },
                progress);
        faults.sort(Comparator.comparingInt(BlockFault::block));
        return faults;
    }

    /** Writes the blocks of an answer as columns, those too that threads of this machine have reckoned, or an earlier run. */
    public void addColumns(AtlasFolder folder, Progress progress) {
        for (AtlasBlock block : folder.withoutColumns()) {
            progress.goOn();
            folder.putColumns(block);
        }
    }

    /**
     * What is to travel.
     *
     * @param folder where it lies as it will lie on a worker
     * @param digest by which a worker knows that all of it came
     */
    record Laid(Path folder, String digest) {}

    /** The plan, every file that it names and the polygons of the region, as they will lie on a worker. */
    static Laid laidOut(AtlasFolder folder, Path all, Progress progress) throws IOException {
        PlanFile plan = folder.study()
                .scene()
                .file()
                .saveAs(all.resolve(AtlasErrand.PLAN), PlanFile.Named.TAKEN_ALONG, () -> !progress.isCancelled());
        Optional<Path> drawn = folder.study().wish().region();
        Optional<Path> region = drawn.map(file -> all.resolve(AtlasErrand.REGION));
        if (drawn.isPresent()) Files.copy(drawn.get(), region.get());
        return new Laid(all, AtlasErrand.digest(plan, region));
    }

    private static Path packed(Path all) throws IOException {
        Path archive = all.resolveSibling("plan.zip");
        try (OutputStream out = Files.newOutputStream(archive);
                ZipOutputStream zip = new ZipOutputStream(out);
                Stream<Path> files = Files.walk(all)) {
            for (Path file : (Iterable<Path>) files.filter(Files::isRegularFile).sorted()::iterator) {
                zip.putNextEntry(new ZipEntry(all.relativize(file).toString().replace('\\', '/')));
                Files.copy(file, zip);
                zip.closeEntry();
            }
        }
        return archive;
    }

    private static void remove(Path folder) {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : (Iterable<Path>) files.sorted(Comparator.reverseOrder())::iterator)
                Files.deleteIfExists(file);
        } catch (IOException | UncheckedIOException e) {
            // what is left lies among temporary files
            return;
        }
    }
}
