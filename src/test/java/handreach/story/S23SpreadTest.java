package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import handreach.geodesy.Position;
import handreach.plan.PlanFile;
import java.io.File;
import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;

/** The same rows by plain threads and by the engine: in this process, on a cluster, after a worker and after a driver was killed. */
class S23SpreadTest {
    /** A machine may be busy with other things. */
    private static final long PATIENCE_S = 400;

    @TempDir
    Path folder;

    private Path plan() throws IOException {
        Path from = Path.of("elevation-samples", "forest-hills").toAbsolutePath();
        String text = Files.readString(from.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + from.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + from.resolve("../invented-bench/bench.csv") + "'")
                .replaceAll("(?s)\\[\\[walk\\]\\].*", "")
                .replaceFirst("radius_km = \\S+", "radius_km = 2")
                .replaceFirst("bearing_step_deg = \\S+", "bearing_step_deg = 45");
        return Files.writeString(folder.resolve("plan.toml"), text);
    }

    private List<String> words(String out, String grid, String... more) {
        List<String> words = new ArrayList<>(List.of(
                "atlas",
                folder.resolve("plan.toml").toString(),
                "--layers",
                "reach",
                "--grid",
                grid,
                "--out",
                folder.resolve(out).toString()));
        words.addAll(List.of(more));
        return words;
    }

    private CommandRun atlas(String out, String grid, String... more) {
        return CommandRun.of(words(out, grid, more).toArray(new String[0]));
    }

    private String digest(String out) throws IOException {
        return new ObjectMapper()
                .readTree(Files.readString(folder.resolve(out).resolve("atlas.json")))
                .get("digest")
                .asText();
    }

    private long blocks(String out) {
        try (Stream<Path> files = Files.list(folder.resolve(out).resolve("positions"))) {
            return files.filter(file -> file.toString().endsWith(".jsonl")).count();
        } catch (IOException notYet) {
            return 0;
        }
    }

    @Test
    void threadsAndTheEngineInThisProcessGiveTheSameRows() throws IOException {
        plan();
        Path region = Files.writeString(folder.resolve("wedge.geojson"), wedge());
        String[] asked = {"--region", region.toString(), "--targets", "400m"};
        assertEquals(0, atlas("threads", "300m", asked).code());
        assertTrue(blocks("threads") >= 2, blocks("threads") + " blocks");
        for (String where : List.of("local[1]", "local[2]")) {
            List<String> words = new ArrayList<>(List.of(asked));
            words.addAll(List.of("--cluster", where));
            CommandRun run = atlas(where, "300m", words.toArray(new String[0]));
            assertEquals(0, run.code(), run.err());
            assertEquals(digest("threads"), digest(where));
        }
    }

    /** A part of the sample's area that is no circle. */
    private String wedge() {
        Position centre = PlanFile.open(folder.resolve("plan.toml"))
                .plan()
                .places()
                .area()
                .centre();
        double north = centre.latitudeDeg();
        double east = centre.longitudeDeg();
        return String.format(
                Locale.ROOT,
                "{\"type\":\"Polygon\",\"coordinates\":[[[%f,%f],[%f,%f],[%f,%f],[%f,%f]]]}",
                east - 0.02,
                north - 0.01,
                east + 0.02,
                north - 0.01,
                east,
                north + 0.015,
                east - 0.02,
                north - 0.01);
    }

    /** Some 40 s on two quiet cores, so asked for by name: mvn -Patlas, see DEVELOPERS.md. */
    @Test
    @EnabledIfSystemProperty(named = "handreach.cluster", matches = "true")
    void aKilledDriverAndAKilledWorkerLoseNothing() throws Exception {
        plan();
        assertEquals(0, atlas("threads", "130m").code());
        long all = blocks("threads");
        System.setProperty("spark.executor.extraClassPath", ClusterOfTwo.classPath());
        System.setProperty("spark.executor.memory", "700m");
        try (ClusterOfTwo cluster = ClusterOfTwo.start(folder)) {
            Process driver = driver("cluster", cluster.address());
            awaitBlocks("cluster", 1);
            driver.destroyForcibly().waitFor();
            long there = blocks("cluster");
            assertTrue(there < all, "the driver was killed before the end");

            CompletableFuture<CommandRun> second = CompletableFuture.supplyAsync(
                    () -> atlas("cluster", "130m", "--cluster", cluster.address()));
            awaitBlocks("cluster", there + 2);
            long before = blocks("cluster");
            assertTrue(cluster.killOneWorker(), "an executor was running");
            assertTrue(before < all, "the worker was killed before the end");
            CommandRun run = second.get(PATIENCE_S, TimeUnit.SECONDS);
            assertEquals(0, run.code(), run.err());
            assertTrue(run.err().startsWith(there + " of " + all + " blocks are there already."), run.err());
            assertEquals(all, blocks("cluster"));
            assertEquals(digest("threads"), digest("cluster"));
        } finally {
            System.clearProperty("spark.executor.extraClassPath");
            System.clearProperty("spark.executor.memory");
        }
    }

    private Process driver(String out, String cluster) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx700m",
                "-Dspark.executor.extraClassPath=" + ClusterOfTwo.classPath(),
                "-Dspark.executor.memory=700m",
                "-cp",
                ClusterOfTwo.classPath(),
                "handreach.Handreach"));
        command.addAll(words(out, "130m", "--cluster", cluster));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(new File(folder.toFile(), "driver.log"))
                .start();
    }

    private void awaitBlocks(String out, long count) throws InterruptedException {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_S);
        while (blocks(out) < count) {
            assertTrue(System.nanoTime() < end, blocks(out) + " blocks of " + count + " in time");
            Thread.sleep(20);
        }
    }

    @Test
    void aClusterThatCannotBeIsOneLine() throws IOException {
        plan();
        int closed;
        try (ServerSocket free = new ServerSocket(0)) {
            closed = free.getLocalPort();
        }
        for (String wrong : List.of("spark://127.0.0.1:" + closed, "spark://no-such-host.invalid:7077", "mesos://x:1", "local[0]")) {
            CommandRun run = atlas("wrong", "300m", "--cluster", wrong);
            assertEquals(2, run.code(), run.err());
            assertEquals(1, run.err().lines().count(), run.err());
            assertTrue(run.err().contains("--cluster: "), run.err());
            assertFalse(Files.exists(folder.resolve("wrong")), "nothing was made");
        }
    }
}
