package handreach.atlas.spread;

import handreach.input.InputFault;
import handreach.reach.Progress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CancellationException;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import org.apache.spark.SparkConf;
import org.apache.spark.api.java.JavaSparkContext;
import scala.reflect.ClassTag$;
import scala.runtime.AbstractFunction2;
import scala.runtime.BoxedUnit;

/** One run of blocks by the engine. What comes back is handed over by the thread that asked, block by block, in any order. */
public final class SpreadRun {
    /** What is said where the engine cannot go on. */
    private static final String GO_ON = " What is done is kept: the same command goes on from there.";

    /** The engine's own name for how long workers may take to come. */
    private static final String PATIENCE = "spark.scheduler.maxRegisteredResourcesWaitingTime";

    private static final long LOOK_MS = 200;

    private final ClusterAddress cluster;
    private final OptionalInt cores;
    private final Progress progress;
    /** Outcomes that nobody has taken yet. */
    private final BlockingQueue<BlockOutcome[]> arrived = new LinkedBlockingQueue<>();

    private final AtomicReference<Throwable> failed = new AtomicReference<>();

    private SpreadRun(ClusterAddress cluster, OptionalInt cores, Progress progress) {
        this.cluster = cluster;
        this.cores = cores;
        this.progress = progress;
    }

    /**
     * Runs the blocks and returns when all are there. What {@code done} throws ends the run.
     *
     * @param cores of the cluster at most; empty for all it gives
     * @param archive a zip of what the errand needs
     */
    public static void run(
            ClusterAddress cluster,
            OptionalInt cores,
            Path archive,
            Errand errand,
            List<Integer> blocks,
            Consumer<BlockOutcome> done,
            Progress progress) {
        new SpreadRun(cluster, cores, progress).run(archive, errand, blocks, done);
    }

    private void run(Path archive, Errand errand, List<Integer> blocks, Consumer<BlockOutcome> done) {
        String run = "atlas-" + UUID.randomUUID();
        try (JavaSparkContext engine = started()) {
            engine.sc().addArchive(archive.toUri() + "#" + run);
            Thread job = new Thread(() -> job(engine, new BlockTask(run, errand), blocks), "atlas-job");
            job.setDaemon(true);
            job.start();
            take(engine, job, blocks.size(), done);
        } finally {
            BlockTask.forget(run);
        }
    }

    private JavaSparkContext started() {
        String own = cluster.ownAddress();
        SparkConf settings = new SparkConf()
                .setAppName("Handreach atlas")
                .setMaster(cluster.master())
                .set("spark.driver.host", own)
                .set("spark.driver.bindAddress", own)
                // every block is a result, and all of them together may be larger than the engine expects of results
                .set("spark.driver.maxResultSize", "0")
                .setIfMissing("spark.ui.enabled", "false")
                .setIfMissing("spark.log.level", "ERROR")
                .setIfMissing(PATIENCE, "120s")
                .setIfMissing("spark.task.maxFailures", "8");
        Path jar = home();
        if (!cluster.isLocal() && Files.isRegularFile(jar)) settings.setJars(new String[] {jar.toString()});
        cores.ifPresent(most -> settings.set("spark.cores.max", String.valueOf(most)));
        try {
            return new JavaSparkContext(settings);
        } catch (RuntimeException e) {
            throw new InputFault(
                    "--cluster",
                    0,
                    "the engine does not start for " + cluster.master() + " (" + firstLine(e)
                            + "). Is its master a master of this engine, and of a version that docs/atlas.md names? Nothing was changed.");
        }
    }

    /** The jar that this class came in, or the folder. */
    private static Path home() {
        try {
            return Path.of(SpreadRun.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI());
        } catch (java.net.URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    private void job(JavaSparkContext engine, BlockTask task, List<Integer> blocks) {
        try {
            engine.sc()
                    .runJob(
                            engine.parallelize(blocks, blocks.size()).rdd(),
                            task,
                            new Arrival(arrived),
                            ClassTag$.MODULE$.apply(BlockOutcome[].class));
        } catch (Throwable e) {
            failed.set(e);
        }
    }

    /** Hands over what the engine brings, on the driver. */
    private static final class Arrival extends AbstractFunction2<Object, BlockOutcome[], BoxedUnit> {
        private final BlockingQueue<BlockOutcome[]> arrived;

        Arrival(BlockingQueue<BlockOutcome[]> arrived) {
            this.arrived = arrived;
        }

        @Override
        public BoxedUnit apply(Object task, BlockOutcome[] outcomes) {
            arrived.add(outcomes);
            return BoxedUnit.UNIT;
        }
    }

    private void take(JavaSparkContext engine, Thread job, int count, Consumer<BlockOutcome> done) {
        int taken = 0;
        long patienceNanos = TimeUnit.SECONDS.toNanos(engine.getConf().getTimeAsSeconds(PATIENCE));
        long alone = System.nanoTime();
        while (taken < count) {
            progress.goOn();
            boolean isOver = !job.isAlive();
            BlockOutcome[] outcomes = next();
            if (outcomes == null) {
                if (engine.sc().isStopped()) throw gone();
                if (isOver) throw ended();
                if (hasWorkers(engine)) alone = System.nanoTime();
                else if (System.nanoTime() - alone > patienceNanos) throw noWorkers();
                continue;
            }
            alone = System.nanoTime();
            for (BlockOutcome outcome : outcomes) {
                done.accept(outcome);
                progress.done("blocks of the atlas", ++taken / (double) count);
            }
        }
    }

    private BlockOutcome[] next() {
        try {
            return arrived.poll(LOOK_MS, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new CancellationException("stopped");
        }
    }

    private boolean hasWorkers(JavaSparkContext engine) {
        return cluster.isLocal() || engine.sc().getExecutorMemoryStatus().size() > 1;
    }

    /** The engine shuts itself down once it has asked a master in vain for a minute, or lost it. */
    private InputFault gone() {
        return new InputFault(
                "--cluster",
                0,
                cluster.master() + " is gone, or is no master of this engine. Look at its log, or start it again."
                        + GO_ON);
    }

    private InputFault noWorkers() {
        return new InputFault(
                "--cluster",
                0,
                cluster.master()
                        + " gives no worker. Start one with a free core and the memory asked for (1 GB unless you set"
                        + " spark.executor.memory), that this machine can be reached from." + GO_ON);
    }

    private InputFault ended() {
        Throwable why = failed.get();
        return new InputFault(
                "--cluster",
                0,
                cluster.master() + " gave the work up (" + (why == null ? "no reason given" : firstLine(why))
                        + "). Look at the logs of its workers." + GO_ON);
    }

    private static String firstLine(Throwable e) {
        String words = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
        return words.lines().findFirst().orElse(words).strip();
    }
}
