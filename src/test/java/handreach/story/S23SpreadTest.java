package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import handreach.geodesy.Position;
import handreach.plan.PlanFile;
import handreach.reach.CellGrid;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.ServerSocket;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import java.util.zip.InflaterInputStream;
import org.apache.hadoop.conf.Configuration;
import org.apache.parquet.example.data.Group;
import org.apache.parquet.hadoop.ParquetFileReader;
import org.apache.parquet.hadoop.ParquetReader;
import org.apache.parquet.hadoop.example.GroupReadSupport;
import org.apache.parquet.hadoop.util.HadoopInputFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;

/** The same rows by plain threads and by the engine: in this process, on a cluster, after a worker and after a driver was killed. */
class S23SpreadTest {
    /** A machine may be busy with other things. */
    private static final long PATIENCE_S = 1200;

    /** Where the logs of a cluster stay, to be looked into when it fails. */
    private static final Path LOGS = Path.of("target", "cluster-of-two").toAbsolutePath();

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
        return Files.writeString(folder.resolve("plan.toml"), withTwoLoadouts(text));
    }

    /** Each further loadout costs all runs alike and proves nothing more. */
    private static String withTwoLoadouts(String text) {
        List<String> kept = new ArrayList<>();
        int seen = 0;
        for (String part : text.split("\n\n"))
            if (!part.strip().startsWith("[[loadout]]") || ++seen <= 2) kept.add(part);
        return String.join("\n\n", kept).replaceAll("(?m)^loadout = .*", "loadout = \"factory at face\"") + "\n";
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

    private JsonNode summary(String out) throws IOException {
        return new ObjectMapper().readTree(Files.readString(folder.resolve(out).resolve("atlas.json")));
    }

    private String digest(String out) throws IOException {
        return summary(out).get("digest").asText();
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

    /**
     * Columns of what plain threads have reckoned, read back by the library's own reader of examples: places and figures are those of the
     * rows. That a general reader of tables opens them was tried by hand, see docs/atlas.md.
     */
    @Test
    void blocksAreColumnsToo() throws IOException {
        plan();
        assertEquals(0, atlas("out", "700m", "--cores", "1").code());
        assertFalse(Files.exists(folder.resolve("out/geoparquet")));
        CommandRun run = atlas("out", "700m", "--cluster", "local[1]");
        assertEquals(0, run.code(), run.err());
        String[] lines = Files.readString(folder.resolve("out/positions/block-000000.jsonl"))
                .split("\n");
        int loadouts = new ObjectMapper().readTree(lines[0]).get("loadouts").size();
        JsonNode box = summary("out").get("box");
        CellGrid cells = CellGrid.over(
                box.get("south").asDouble(),
                box.get("west").asDouble(),
                box.get("north").asDouble(),
                box.get("east").asDouble(),
                700);
        int rows = 0;
        org.apache.hadoop.fs.Path file = new org.apache.hadoop.fs.Path(
                folder.resolve("out/geoparquet/block-000000.parquet").toUri());
        try (ParquetReader<Group> reader =
                ParquetReader.builder(new GroupReadSupport(), file).build()) {
            for (Group row = reader.read(); row != null; row = reader.read()) {
                JsonNode line = new ObjectMapper().readTree(lines[1 + rows / loadouts]);
                JsonNode figures = line.get("loadouts").get(rows % loadouts);
                ByteBuffer place = row.getBinary("geometry", 0).toByteBuffer().order(ByteOrder.LITTLE_ENDIAN);
                assertEquals(line.get("cell").asInt(), row.getInteger("cell", 0));
                assertEquals(1, place.get());
                assertEquals(1, place.getInt());
                assertEquals(line.get("longitude").asDouble(), place.getDouble());
                assertEquals(line.get("latitude").asDouble(), place.getDouble());
                assertEquals(figures.get("median_m").get(0).asDouble(), row.getDouble("median_m", 0));
                assertEquals(figures.get("share").get(2).asDouble(), row.getDouble("share_high", 0));
                assertEquals(
                        reached(lines, cells, line.get("cell").asInt(), rows % loadouts), row.getInteger("targets", 0));
                rows++;
            }
        }
        assertEquals((lines.length - 2) * loadouts, rows);
        try (ParquetFileReader foot =
                ParquetFileReader.open(HadoopInputFile.fromPath(file, new Configuration(false)))) {
            Map<String, String> about = foot.getFileMetaData().getKeyValueMetaData();
            JsonNode geo = new ObjectMapper().readTree(about.get("geo"));
            assertEquals("1.1.0", geo.get("version").asText());
            assertEquals("WKB", geo.at("/columns/geometry/encoding").asText());
            assertEquals(4, geo.at("/columns/geometry/bbox").size());
            assertTrue(about.get("handreach.rows").matches("[0-9a-f]{64}"));
        }
    }

    /** Positions that one reaches: those after it by its own line, those before it by theirs. */
    private static int reached(String[] lines, CellGrid cells, int cell, int loadout) throws IOException {
        int count = 0;
        for (String text : List.of(lines).subList(1, lines.length - 1)) {
            JsonNode line = new ObjectMapper().readTree(text);
            JsonNode figures = line.get("loadouts").get(loadout);
            BitSet later;
            try (InflaterInputStream bits = new InflaterInputStream(new ByteArrayInputStream(
                    Base64.getDecoder().decode(figures.get("heard_later").asText())))) {
                later = BitSet.valueOf(bits.readAllBytes());
            }
            JsonNode window = figures.get("window");
            int down = cells.rowOf(cell) - window.get(0).asInt();
            int along = cells.columnOf(cell) - window.get(1).asInt();
            if (line.get("cell").asInt() == cell) count += later.cardinality();
            else if (down >= 0
                    && down < window.get(2).asInt()
                    && along >= 0
                    && along < window.get(3).asInt()
                    && later.get(down * window.get(3).asInt() + along)) count++;
        }
        return count;
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

    /**
     * Nine processes, so asked for by name, once the job is packed: mvn -Patlas, see DEVELOPERS.md. Their start takes longer than the
     * positions do. That the engine runs in one process with two threads is proved above, without a job.
     */
    @Test
    @EnabledIfSystemProperty(named = "handreach.cluster", matches = "true")
    void aKilledDriverAndAKilledWorkerLoseNothing() throws Exception {
        plan();
        Map<String, String> settings = settings();
        settings.forEach(System::setProperty);
        try (ClusterOfTwo cluster = ClusterOfTwo.start(LOGS)) {
            assertEquals(
                    0, CommandRun.of(many("threads").toArray(new String[0])).code());
            long all = blocks("threads");
            assertTrue(all >= 12, all + " blocks");
            Process driver = driver("cluster", cluster.address(), settings);
            awaitBlocks("cluster", 1);
            assertTrue(driver.isAlive(), () -> "driver ended: " + LOGS.resolve("driver-log"));
            driver.destroyForcibly().waitFor();
            long there = blocks("cluster");
            assertTrue(there < all, "the driver was killed before the end");

            CompletableFuture<CommandRun> second = CompletableFuture.supplyAsync(() -> CommandRun.of(
                    many("cluster", "--cluster", cluster.address()).toArray(new String[0])));
            awaitBlocks("cluster", there + 2);
            long before = blocks("cluster");
            assertTrue(cluster.killOneWorker(), "an executor was running");
            assertTrue(before < all, "the worker was killed before the end");
            CommandRun run = second.get(PATIENCE_S, TimeUnit.SECONDS);
            assertEquals(0, run.code(), run.err());
            assertTrue(run.err().startsWith(there + " of " + all + " blocks are there already."), run.err());
            assertEquals(all, blocks("cluster"));
            assertEquals(digest("threads"), digest("cluster"));

            // The packed job by the engine's own launcher, on the worker that is left, with the engine's jars alone.
            assertEquals(0, CommandRun.of(few("few").toArray(new String[0])).code());
            Process packed = packed(cluster, settings);
            assertTrue(packed.waitFor(PATIENCE_S, TimeUnit.SECONDS), LOGS::toString);
            assertEquals(0, packed.exitValue(), LOGS::toString);
            assertEquals(digest("few"), digest("packed"));
        } finally {
            settings.keySet().forEach(System::clearProperty);
        }
    }

    /** A region of many blocks, so that there is a middle to be killed in. */
    private List<String> many(String out, String... more) {
        List<String> words = words(out, "150m", "--targets", "300m");
        words.addAll(List.of(more));
        return words;
    }

    /** Of the engine: small processes that start soon, and patience. */
    private static Map<String, String> settings() {
        return Map.of(
                "spark.executor.extraClassPath",
                ClusterOfTwo.classPath(),
                "spark.executor.memory",
                "700m",
                "spark.executor.extraJavaOptions",
                String.join(" ", ClusterOfTwo.QUICK_START),
                "spark.scheduler.maxRegisteredResourcesWaitingTime",
                PATIENCE_S + "s");
    }

    /** A few blocks, where the middle does not matter. */
    private List<String> few(String out, String... more) {
        return words(out, "300m", more);
    }

    private Process packed(ClusterOfTwo cluster, Map<String, String> settings) throws IOException {
        List<String> own = settings.entrySet().stream()
                .filter(one -> !one.getKey().endsWith("ClassPath"))
                .map(one -> one.getKey() + "=" + one.getValue())
                .toList();
        return cluster.submit(
                        Path.of(System.getProperty("handreach.job")),
                        own,
                        few("packed", "--cluster", cluster.address()))
                .redirectErrorStream(true)
                .redirectOutput(LOGS.resolve("packed-log").toFile())
                .start();
    }

    private Process driver(String out, String where, Map<String, String> settings) throws IOException {
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx700m"));
        command.addAll(ClusterOfTwo.QUICK_START);
        settings.forEach((name, value) -> command.add("-D" + name + "=" + value));
        command.addAll(List.of("-cp", ClusterOfTwo.classPath(), "handreach.Handreach"));
        // one core, so one worker process: it is there to be left alone
        command.addAll(many(out, "--cluster", where, "--cores", "1"));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(LOGS.resolve("driver-log").toFile())
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
        for (String wrong : List.of(
                "spark://127.0.0.1:" + closed, "spark://no-such-host.invalid:7077", "mesos://x:1", "local[0]")) {
            CommandRun run = atlas("wrong", "300m", "--cluster", wrong);
            assertEquals(2, run.code(), run.err());
            assertEquals(1, run.err().lines().count(), run.err());
            assertTrue(run.err().contains("--cluster: "), run.err());
            assertFalse(Files.exists(folder.resolve("wrong")), "nothing was made");
        }
    }
}
