package handreach.story;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.sun.management.ThreadMXBean;
import handreach.bench.BenchAnalysis;
import handreach.bench.BenchFile;
import handreach.bench.match.MatchAnalysis;
import handreach.bench.match.Touchstone;
import handreach.geodesy.Place;
import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.input.SourceText;
import handreach.loadout.ElevationPattern;
import handreach.plan.CalibrationFile;
import handreach.plan.PlanFile;
import handreach.profile.ProfileFile;
import handreach.reach.CellGrid;
import handreach.reach.Progress;
import handreach.report.BenchFiles;
import handreach.report.BenchJson;
import handreach.report.MatchComposer;
import handreach.report.MatchJson;
import handreach.report.file.GeoTiff;
import handreach.report.file.Georaster;
import handreach.report.file.Json;
import handreach.report.page.PlainText;
import handreach.terrain.AreaPolygons;
import handreach.terrain.Cover;
import handreach.terrain.CoverLegend;
import handreach.terrain.CoverPolygons;
import handreach.terrain.CoverRaster;
import handreach.terrain.LandCover;
import handreach.terrain.TileFolder;
import handreach.walk.GpxTrack;
import handreach.walk.ReportFile;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryType;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;

/**
 * Damaged files in great number to every reader. Whatever comes, the outcome is a value or an {@link InputFault} in words; never
 * another exception, never more than a stated time or memory. The number over all readers is set by {@code -Dfuzz.inputs=N}; the
 * long run is {@code mvn -Pfuzz test}.
 */
class S09FuzzTest {
    private static final int INPUTS = Integer.getInteger("fuzz.inputs", 5_000);
    private static final long SEED = Long.getLong("fuzz.seed", 20261125);

    /** What one input of at most some 200 kB may take: processor time, and memory asked for in passing. */
    private static final long LIMIT_NS = TimeUnit.SECONDS.toNanos(2);

    private static final long LIMIT_BYTES = 512L << 20;
    private static final Duration HANG = Duration.ofHours(3);

    /** How long a reader is at it before the next one's turn, where all get the same time. */
    private static final long TURN_NS = TimeUnit.MILLISECONDS.toNanos(500);

    @TempDir
    Path folder;

    /** What takes a file's bytes and either answers or tells a fault. */
    @FunctionalInterface
    interface Reader {
        void read(byte[] bytes) throws IOException;
    }

    /** A reader with valid files to start from and its share of the inputs. */
    private record Target(String name, double share, Reader reader, List<byte[]> seeds) {}

    @TestFactory
    Stream<DynamicTest> everyReaderAnswersOrTellsAFault() throws IOException {
        List<Target> targets = targets();
        double all = targets.stream().mapToDouble(Target::share).sum();
        return targets.stream().map(target -> {
            int inputs = (int) Math.ceil(INPUTS * target.share() / all);
            return DynamicTest.dynamicTest(
                    target.name(), () -> assertTimeoutPreemptively(HANG, () -> run(target, inputs)));
        });
    }

    /**
     * The longest run: all readers by turns, until {@code -Dfuzz.total=N} inputs were read or {@code -Dfuzz.minutes=M} are over. A reader
     * gets inputs as its cost to the power −1.5, so that cheap ones get many, though none more than a sixth of all, and dear ones few; the
     * split is printed.
     */
    @Test
    @EnabledIfSystemProperty(named = "fuzz.total", matches = "\\d+")
    void cheapReadersOftenDearOnesSeldom() throws Exception {
        long total = Long.getLong("fuzz.total");
        long end = System.nanoTime() + TimeUnit.MINUTES.toNanos(Integer.getInteger("fuzz.minutes", 600));
        List<Run> runs = new ArrayList<>();
        for (Target target : targets()) runs.add(new Run(target));
        List<Run> waiting = new ArrayList<>(runs);
        AtomicLong given = new AtomicLong();
        ExecutorService threads = Executors.newFixedThreadPool(Integer.getInteger("fuzz.threads", 2));
        List<Future<Void>> workers = new ArrayList<>();
        for (int i = Integer.getInteger("fuzz.threads", 2); i > 0; i--)
            workers.add(threads.submit(() -> {
                while (given.get() < total && System.nanoTime() < end) {
                    Run run;
                    synchronized (waiting) {
                        run = Collections.min(waiting, Comparator.comparingDouble(Run::rank));
                        waiting.remove(run);
                    }
                    for (long until = run.processorNs() + TURN_NS; run.processorNs() < until; run.give(20))
                        given.addAndGet(20);
                    synchronized (waiting) {
                        if (run.inputs < total / 6) waiting.add(run);
                    }
                }
                return null;
            }));
        threads.shutdown();
        while (!threads.awaitTermination(1, TimeUnit.MINUTES)) {
            System.out.printf("fuzz %d inputs so far, at most %d MiB of memory%n", given.get(), heapMib());
            if (workers.stream().anyMatch(S09FuzzTest::isDead)) break;
        }
        runs.forEach(Run::tell);
        System.out.printf("fuzz %d inputs over all, %d MiB of memory%n", given.get(), heapMib());
        for (Future<Void> worker : workers) worker.get();
        assertTrue(given.get() >= total, given + " inputs in the time that was given");
    }

    /** The largest that the pieces of memory have been, added up. */
    private static long heapMib() {
        return ManagementFactory.getMemoryPoolMXBeans().stream()
                        .filter(pool -> pool.getType() == MemoryType.HEAP)
                        .mapToLong(pool -> pool.getPeakUsage().getUsed())
                        .sum()
                >> 20;
    }

    private static boolean isDead(Future<Void> worker) {
        try {
            if (worker.isDone()) worker.get();
            return false;
        } catch (ExecutionException | InterruptedException failed) {
            return true;
        }
    }

    private static void run(Target target, int inputs) throws IOException {
        Run run = new Run(target);
        run.give(inputs);
        run.tell();
        assertTrue(inputs < 200 || run.faults > 0 && run.faults < inputs, target.name() + ": the damage tells nothing");
    }

    /** How a reader fares over its damaged files. */
    private static final class Run {
        private final Target target;
        private final Damage damage;
        private final ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        private int inputs;
        private int faults;
        private long processorNs;
        private long slowest;
        private long largest;

        Run(Target target) throws IOException {
            this.target = target;
            damage = new Damage(new Random(SEED + target.name().hashCode()), target.seeds());
            for (byte[] seed : target.seeds()) target.reader().read(seed);
        }

        long processorNs() {
            return processorNs;
        }

        /** Grows with what was spent here, the faster the dearer an input is. */
        double rank() {
            return processorNs * Math.sqrt((double) processorNs / Math.max(1, inputs));
        }

        void give(int more) throws IOException {
            long before = threads.getCurrentThreadCpuTime();
            for (int i = 0; i < more; i++) give(damage.next());
            processorNs += threads.getCurrentThreadCpuTime() - before;
        }

        private void give(byte[] bytes) throws IOException {
            long memory = threads.getCurrentThreadAllocatedBytes();
            long began = System.nanoTime();
            try {
                target.reader().read(bytes);
            } catch (InputFault fault) {
                faults++;
                inWords(target, inputs, bytes, fault);
            } catch (Throwable other) {
                fail(told(target, inputs, bytes) + " died of " + other, other);
            }
            largest = Math.max(largest, threads.getCurrentThreadAllocatedBytes() - memory);
            // Asking for the processor time takes longer than most inputs do.
            if (System.nanoTime() - began > slowest) slowest = Math.max(slowest, again(target, bytes, threads));
            if (slowest > LIMIT_NS || largest > LIMIT_BYTES)
                fail(told(target, inputs, bytes) + " took " + slowest / 1_000_000 + " ms and " + (largest >> 20)
                        + " MiB");
            inputs++;
        }

        void tell() {
            System.out.printf(
                    Locale.ROOT,
                    "fuzz %-16s %8d inputs, %8d read, %8d refused; slowest %5d ms, most memory %4d MiB, %7.1f s%n",
                    target.name(),
                    inputs,
                    inputs - faults,
                    faults,
                    slowest / 1_000_000,
                    largest >> 20,
                    processorNs / 1e9);
        }
    }

    /** What a library does at its first use, such as unpacking a list, is no part of what a file costs. */
    private static long again(Target target, byte[] bytes, ThreadMXBean threads) throws IOException {
        long cpu = threads.getCurrentThreadCpuTime();
        try {
            target.reader().read(bytes);
        } catch (InputFault told) {
            return threads.getCurrentThreadCpuTime() - cpu;
        }
        return threads.getCurrentThreadCpuTime() - cpu;
    }

    private static void inWords(Target target, int number, byte[] bytes, InputFault fault) {
        String told = fault.getMessage();
        assertFalse(
                told.isBlank() || told.contains("Exception") || told.contains("java."),
                () -> told(target, number, bytes) + ": " + told);
        fault.faults().forEach(each -> assertTrue(each.message().lines().count() == 1, each.message()));
    }

    private static String told(Target target, int number, byte[] bytes) {
        byte[] head = bytes.length > 6000 ? java.util.Arrays.copyOf(bytes, 6000) : bytes;
        return target.name() + " input " + number + " of " + bytes.length + " bytes, base64 "
                + Base64.getEncoder().encodeToString(head);
    }

    private List<Target> targets() throws IOException {
        Path samples = Path.of("elevation-samples");
        PlanFile base = PlanFile.open(samples.resolve("forest-hills"));
        byte[] sweep = Files.readAllBytes(samples.resolve("invented-bench/quarter-wave-whip.s1p"));
        return List.of(
                new Target(
                        "bench", 0.5, S09FuzzTest::bench, List.of(head("invented-bench/bench.csv", 60), benchRows())),
                new Target("touchstone", 2, S09FuzzTest::touchstone, List.of(sweep, touchstone2())),
                new Target("plan", 0.3, bytes -> base.withText(text(bytes)), plans()),
                new Target("calibration", 0.5, S09FuzzTest::calibration, List.of(calibrationSeed())),
                new Target("profile", 2, bytes -> ProfileFile.read(source(bytes)), List.of(profileSeed())),
                new Target("pattern", 1.5, bytes -> ElevationPattern.read(source(bytes)), List.of(patternSeed())),
                new Target(
                        "reports",
                        1.5,
                        bytes -> ReportFile.read(source(bytes), Progress.SILENT),
                        List.of(head("forest-hills/walk-reports.csv", 40))),
                new Target("gpx", 1, file("t.gpx", GpxTrack::read), List.of(gpxSeed(), gpxTrack())),
                new Target("geojson area", 0.7, file("a.geojson", AreaPolygons::read), List.of(areaSeed())),
                new Target("geojson cover", 0.7, S09FuzzTest::coverPolygons, List.of(coverSeed())),
                new Target("place", 2, S09FuzzTest::place, placeSeeds()),
                new Target("text file", 0.3, file("t.csv", SourceText::read), List.of(benchRows())),
                new Target("geotiff", 0.2, file("t.tif", S09FuzzTest::tile), tiffs()),
                new Target("cover raster", 0.15, file("c.tif", S09FuzzTest::coverRaster), List.of(codes())),
                new Target("ascii grid", 0.3, file("g.asc", S09FuzzTest::tile), List.of(gridSeed())),
                new Target("hgt gzip", 0.01, file("N46E008.hgt.gz", S09FuzzTest::tile), List.of(gzip())),
                new Target("hgt zip", 0.01, file("N37W105.hgt.zip", S09FuzzTest::tile), List.of(zip())));
    }

    /** Hands a reader of files a file. */
    private Reader file(String name, java.util.function.Consumer<Path> reader) {
        Path file = folder.resolve(name);
        return bytes -> {
            Files.write(file, bytes);
            reader.accept(file);
        };
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    private static SourceText source(byte[] bytes) {
        return SourceText.of("input", text(bytes));
    }

    private static void bench(byte[] bytes) {
        BenchAnalysis analysis = BenchAnalysis.of(BenchFile.of(source(bytes)));
        Json.text(BenchJson.of(analysis, 1));
        BenchFiles.composer(analysis, 1, List.of(), Optional.empty()).text(PlainText.USUAL_WIDTH);
    }

    private static void touchstone(byte[] bytes) {
        Touchstone sweep = Touchstone.of(source(bytes));
        List<MatchAnalysis> one = List.of(MatchAnalysis.of(sweep, List.of(155.16), 50));
        Json.text(MatchJson.of(one));
        PlainText.of(MatchComposer.page(one), PlainText.USUAL_WIDTH);
    }

    private static void calibration(byte[] bytes) {
        CalibrationFile file = CalibrationFile.of(source(bytes));
        assertTrue(Double.isFinite(file.site().lossShiftDb(Cover.WOODLAND, "face", "face")));
        assertTrue(
                CalibrationFile.of(SourceText.of("again", file.text())).text().equals(file.text()), file.text());
    }

    private static void coverPolygons(byte[] bytes) {
        CoverPolygons.read(source(bytes), LandCover.uniform(Cover.OPEN)).coverAt(46.2, 8.5);
    }

    private static void coverRaster(Path file) {
        CoverRaster.open(file, CoverLegend.WORLD_COVER, Cover.OPEN).coverAt(46.5, 8.1);
    }

    private static void place(byte[] bytes) {
        Position at = Place.parse("--at", text(bytes));
        assertTrue(Math.abs(at.latitudeDeg()) <= 90 && Math.abs(at.longitudeDeg()) <= 180, at.toString());
    }

    private static void tile(Path file) {
        TileFolder tiles = TileFolder.open(file);
        tiles.at(new Position(46.5, 8.1))
                .heightM()
                .ifPresent(heightM -> assertTrue(Double.isFinite(heightM), "height " + heightM));
    }

    private static byte[] head(String sample, int lines) throws IOException {
        return Files.readAllLines(Path.of("elevation-samples").resolve(sample)).stream()
                .limit(lines)
                .collect(Collectors.joining("\n"))
                .getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] benchRows() {
        return ascii("# control = a\nantenna,mount,quantity,value,unit,frequency_mhz,trial,note\n"
                + "a,in hand,received_level,-40.5,dBm,155,1,\nb,in hand,received_level,-38,dBm,155,1,\na,in hand,received_level,-41,dBm,155,2,x\n"
                + "b,in hand,received_level,-38.5,dBm,155,2,\na,chassis,swr,1.5,:1,155,1,\nb,chassis,return_loss,12,dB,155,1,\n"
                + "a,in hand,field_meter,40,uA,155,1,\nb,in hand,field_meter,55,uA,155,1,\n");
    }

    private static byte[] touchstone2() {
        return ascii("! invented\n[Version] 2.0\n# MHz S MA R 50\n[Number of Ports] 1\n[Number of Frequencies] 3\n"
                + "[Reference] 50\n[Network Data]\n150 0.5 10\n155 0.2 -20\n160 0.6 90\n[End]\n");
    }

    private static List<byte[]> plans() throws IOException {
        return List.of(
                Files.readAllBytes(Path.of("elevation-samples/forest-hills/plan.toml")),
                Files.readAllBytes(Path.of("elevation-samples/invented-valley/plan.toml")),
                Files.readAllBytes(Path.of("elevation-samples/urban-coast/plan.toml")));
    }

    private byte[] calibrationSeed() throws IOException {
        Path out = folder.resolve("walk");
        CommandRun run = CommandRun.of("walk", "elevation-samples/forest-hills", "--out", out.toString());
        assertTrue(run.code() == 0, run.err());
        return Files.readAllBytes(out.resolve("calibration.toml"));
    }

    private static byte[] profileSeed() {
        return ascii(
                "# invented\ndistance_km,height_m,clutter_m,zone\n0,10,0,inland\n0.5,12,15,inland\n1,40,0,coastal\n"
                        + "1.5,-1,0,sea\n2,3,0,sea\n");
    }

    private static byte[] patternSeed() {
        return ascii("elevation_deg,gain_dbi\n-90,-20\n-45,-3\n-10,1\n0,2.1\n10,1.5\n45,-3\n90,-20\n");
    }

    private static byte[] gpxSeed() {
        return ascii("<?xml version=\"1.0\"?>\n"
                + "<gpx version=\"1.1\" creator=\"x\" xmlns=\"http://www.topografix.com/GPX/1/1\">\n"
                + "<wpt lat=\"46.5\" lon=\"8.1\"><ele>900</ele><time>2026-06-01T08:00:00Z</time><name>camp</name></wpt>\n"
                + "<rte><rtept lat=\"46.5\" lon=\"8.1\"/><rtept lat=\"46.6\" lon=\"8.2\"/></rte>\n"
                + "<trk><trkseg><trkpt lat=\"46.5\" lon=\"8.1\"><time>2026-06-01T08:00:00.5+02:00</time></trkpt>"
                + "<trkpt lat=\"46.51\" lon=\"8.11\"/></trkseg></trk></gpx>\n");
    }

    private static byte[] gpxTrack() throws IOException {
        return ascii(text(head("forest-hills/walk-track.gpx", 50)).replaceAll("(?s)</trkpt>(?!.*</trkpt>).*", "")
                + "</trkpt></trkseg></trk></gpx>");
    }

    private static byte[] areaSeed() {
        return ascii(
                "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":{},\"geometry\":"
                        + "{\"type\":\"Polygon\",\"coordinates\":[[[8,46],[9,46],[9,47],[8,47],[8,46]],"
                        + "[[8.2,46.2],[8.4,46.2],[8.4,46.4],[8.2,46.2]]]}},{\"type\":\"Feature\",\"geometry\":"
                        + "{\"type\":\"MultiPolygon\",\"coordinates\":[[[[8.5,46.5],[9.5,46.5],[9.5,47.5],[8.5,46.5]]]]}}]}");
    }

    private static byte[] coverSeed() {
        return ascii("{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":"
                + "{\"cover\":\"woodland\",\"height_m\":12},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":"
                + "[[[8,46],[9,46],[9,47],[8,46]]]}},{\"type\":\"Feature\",\"properties\":{\"cover\":\"urban\"},"
                + "\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[[[8.1,46],[9,46],[9,46.5],[8.1,46]]]}}]}");
    }

    private static List<byte[]> placeSeeds() {
        return Stream.of(
                        "46.5, 8.1",
                        "46\u00b030.000'N 8\u00b006.000'E",
                        "46 30 00 N, 8 6 0 E",
                        "32T 430000 5150000",
                        "32TMS3000050000",
                        "46.5 8.1",
                        "-8.025,-34.87")
                .map(S09FuzzTest::ascii)
                .toList();
    }

    private static List<byte[]> tiffs() throws IOException {
        CellGrid grid = CellGrid.around(new Position(46.5, 8.1), 300, 25);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        GeoTiff.content(new Georaster(grid, Georaster.Layer.of("height", "m", Map.of()), cell -> 10 * (cell % 9)))
                .writeTo(out);
        // As from another program: what this one wrote is no ground.
        String foreign = out.toString(StandardCharsets.ISO_8859_1).replace("Handreach", "Paperland");
        return List.of(
                foreign.getBytes(StandardCharsets.ISO_8859_1),
                Files.readAllBytes(Path.of("elevation-samples/urban-coast/tiles/olinda-coast-utm25s-90m.tif")));
    }

    /** Class codes in bytes, one strip, in degrees: TIFF 6.0 with the keys of OGC 19-008r4, laid out by hand. */
    private static byte[] codes() {
        java.nio.ByteBuffer tiff = java.nio.ByteBuffer.allocate(400).order(java.nio.ByteOrder.LITTLE_ENDIAN);
        tiff.put((byte) 'I').put((byte) 'I').putShort((short) 42).putInt(8);
        int[][] fields = {
            {256, 3, 1, 8}, {257, 3, 1, 8}, {258, 3, 1, 8}, {259, 3, 1, 1}, {262, 3, 1, 1}, {273, 4, 1, 300},
            {277, 3, 1, 1}, {278, 3, 1, 8}, {279, 4, 1, 64}, {339, 3, 1, 1}, {33550, 12, 3, 172}, {33922, 12, 6, 196},
            {34735, 3, 12, 244}
        };
        tiff.putShort((short) fields.length);
        for (int[] field : fields) {
            tiff.putShort((short) field[0]).putShort((short) field[1]).putInt(field[2]);
            if (field[1] == 3 && field[2] == 1) tiff.putShort((short) field[3]).putShort((short) 0);
            else tiff.putInt(field[3]);
        }
        tiff.position(172);
        for (double scale : new double[] {0.1, 0.1, 0}) tiff.putDouble(scale);
        for (double tie : new double[] {0, 0, 0, 8, 47, 0}) tiff.putDouble(tie);
        for (int key : new int[] {1, 1, 0, 2, 1024, 0, 1, 2, 2048, 0, 1, 4326}) tiff.putShort((short) key);
        tiff.position(300);
        for (int i = 0; i < 64; i++) tiff.put((byte) (10 * (1 + i % 9)));
        return java.util.Arrays.copyOf(tiff.array(), 364);
    }

    private static byte[] gridSeed() {
        return ascii("ncols 5\nnrows 4\nxllcorner 8.0\nyllcorner 46.45\ncellsize 0.05\nNODATA_value -9999\n"
                + "1 2 3 4 5\n6 7 8 9 10\n-9999 1.5 2e2 -3 4\n1 2 3 4 5\n");
    }

    private static byte[] gzip() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
            gzip.write(new byte[2 * 1201 * 1201]);
        }
        return out.toByteArray();
    }

    private static byte[] zip() throws IOException {
        return Files.readAllBytes(Path.of("elevation-samples/high-mountains/tiles/N37W105.hgt.zip"));
    }
}
