package handreach.story;

import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Well-formed and damaged files through the commands a person types, in one process. Whatever comes, the exit code is 0 or 2, nothing
 * calls itself a defect, no Java word and no number that is none is printed, and the thread that asked was not busy beyond its bound. The
 * number over all commands is set by {@code -Dfuzz.commands=N}; what was found before stands in src/test/resources and is run first.
 */
class S19CommandFuzzTest {
    private static final int COMMANDS = Integer.getInteger("fuzz.commands", 300);
    private static final long SEED = Long.getLong("fuzz.seed", 20261129);
    private static final Path SAMPLES = Path.of("elevation-samples").toAbsolutePath();
    private static final Path FOUND = Path.of("src/test/resources/handreach/story/found");
    private static final Pattern NOT_SAID = Pattern.compile("defect of the program|Exception|java\\.|javax\\.|\\tat ");
    private static final Pattern NO_NUMBER =
            Pattern.compile("(?<![\\w'\"-])(-?Infinity|NaN)(?!\\w)|: \"(-?Infinity|NaN)\"");
    private static final long LIMIT_NS = TimeUnit.SECONDS.toNanos(2);
    /** An atlas is reckoned anew whatever its files are: whole ones take 1.2 s, and 2.9 by the first compiler alone. */
    private static final long ATLAS_NS = TimeUnit.SECONDS.toNanos(5);

    private static final Duration HANG = Duration.ofHours(6);

    @TempDir
    Path folder;

    /** A file that is made anew each time, and the commands that read it, one after another in turn. */
    private record Target(String name, String file, double share, Maker maker, List<String[]> commands) {}

    /** The next file. */
    private interface Maker {
        byte[] next(Random random);
    }

    @TestFactory
    Stream<DynamicTest> everyCommandAnswersOrTellsAFault() throws IOException {
        String only = System.getProperty("fuzz.only", "");
        List<Target> targets = targets().stream()
                .filter(target -> only.isEmpty() || List.of(only.split(",")).contains(target.name()))
                .toList();
        double all = targets.stream().mapToDouble(Target::share).sum();
        return targets.stream()
                .map(target -> DynamicTest.dynamicTest(
                        target.name(),
                        () -> assertTimeoutPreemptively(
                                HANG, () -> run(target, (int) Math.ceil(COMMANDS * target.share() / all)))));
    }

    private void run(Target target, int inputs) throws IOException {
        Random random = new Random(SEED + target.name().hashCode());
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        Path file = folder.resolve(target.file());
        Files.createDirectories(file.getParent());
        List<byte[]> found = found(target.name());
        long[] codes = new long[3];
        long slowest = 0;
        long began = System.nanoTime();
        for (int i = -found.size() * target.commands().size(); i < inputs; i++) {
            byte[] bytes = i < 0
                    ? found.get((-i - 1) / target.commands().size())
                    : target.maker().next(random);
            Files.write(file, bytes);
            String[] command =
                    target.commands().get(Math.floorMod(i, target.commands().size()));
            long before = threads.getCurrentThreadCpuTime();
            CommandRun run = CommandRun.of(command);
            long taken = threads.getCurrentThreadCpuTime() - before;
            // What a library does at its first use is no part of what a file costs.
            long limit = command[0].equals("atlas") ? ATLAS_NS : LIMIT_NS;
            if (taken > limit) {
                before = threads.getCurrentThreadCpuTime();
                run = CommandRun.of(command);
                taken = threads.getCurrentThreadCpuTime() - before;
            }
            slowest = Math.max(slowest, taken);
            String wrong = wrong(run, taken > limit, taken, new String(bytes, StandardCharsets.UTF_8));
            if (!wrong.isEmpty()) fail(told(target, command, i, bytes) + "\n" + wrong);
            if (i >= 0) codes[run.code()]++;
        }
        System.out.printf(
                Locale.ROOT,
                "fuzz by command %-12s %8d inputs, %8d answered, %8d refused; slowest %5d ms, %7.1f s%n",
                target.name(),
                inputs,
                codes[0],
                codes[2],
                slowest / 1_000_000,
                (System.nanoTime() - began) / 1e9);
        assertTrue(inputs < 100 || codes[0] > 0 && codes[2] > 0, target.name() + ": the damage tells nothing");
    }

    private static String wrong(CommandRun run, boolean isTooLong, long taken, String given) {
        if (run.code() != 0 && run.code() != 2) return "exit code " + run.code() + ": " + shown(run.err());
        if (run.code() == 2 && run.err().isBlank()) return "refused without a word";
        if (NOT_SAID.matcher(run.err()).find()) return shown(run.err());
        // A name out of the file may be such a word.
        boolean isNamed = given.contains("NaN") || given.contains("Infinity");
        if (!isNamed && NO_NUMBER.matcher(run.out()).find()) return shown(run.out());
        if (isTooLong) return "took " + taken / 1_000_000 + " ms";
        return "";
    }

    private static String shown(String text) {
        return text.length() > 1500 ? text.substring(0, 1500) : text;
    }

    private static String told(Target target, String[] command, int number, byte[] bytes) {
        return target.name() + " input " + number + ", " + String.join(" ", command) + ", base64 "
                + Base64.getEncoder().encodeToString(bytes.length > 9000 ? Arrays.copyOf(bytes, 9000) : bytes);
    }

    private static List<byte[]> found(String target) throws IOException {
        Path place = FOUND.resolve(target);
        if (!Files.isDirectory(place)) return List.of();
        List<byte[]> all = new ArrayList<>();
        try (Stream<Path> files = Files.list(place)) {
            for (Path file : files.sorted().toList()) {
                byte[] bytes = Files.readAllBytes(file);
                // Binary ones hold no such mark, and byte for byte this character set loses nothing.
                String text = new String(bytes, StandardCharsets.ISO_8859_1);
                all.add(text.replace("@SAMPLES@", SAMPLES.toString().replace('\\', '/'))
                        .getBytes(StandardCharsets.ISO_8859_1));
            }
        }
        return all;
    }

    /** Mostly by the grammar of the format, at times bytes alone. */
    private static Maker maker(Grammar.Form form, byte[]... seeds) {
        return random -> random.nextInt(5) == 0
                ? new Damage(random, List.of(seeds)).next()
                : new Grammar(random, form).next(seeds[random.nextInt(seeds.length)]);
    }

    private List<Target> targets() throws IOException {
        String plan = plan();
        String small = plan.replace("radius_km = 5", "radius_km = 1").replace("cell_m = 30", "cell_m = 100");
        String[] positions = {"--from", "spike camp", "--to", "north spur"};
        return Arrays.asList(
                new Target(
                        "plan",
                        "plan.toml",
                        3,
                        maker(Grammar.Form.TOML, bytes(small), bytes(plan)),
                        by(
                                path("plan.toml", positions),
                                path("plan.toml", positions),
                                path("plan.toml", positions),
                                command("reach", "plan.toml", "--json"),
                                path("plan.toml", positions),
                                command("reach", "plan.toml"))),
                new Target(
                        "files",
                        "files.toml",
                        0.2,
                        maker(Grammar.Form.TOML, bytes(small)),
                        by(
                                command("relay", "files.toml", "--json"),
                                command("walk", "files.toml"),
                                with(command("card", "files.toml"), "--out", at("card.pdf")),
                                with(command("reach", "files.toml"), "--out", at("out")))),
                new Target(
                        "stations",
                        "stations.toml",
                        2,
                        maker(Grammar.Form.TOML, bytes(stations(small))),
                        by(
                                command("reach", "stations.toml"),
                                command("reach", "stations.toml", "--json"),
                                command("assign", "stations.toml"),
                                with(command("reach", "stations.toml"), "--channel", "high", "--json"),
                                command("assign", "stations.toml", "--json"),
                                path("stations.toml", positions),
                                command("relay", "stations.toml", "--json"))),
                new Target(
                        "route",
                        "route.gpx",
                        0.5,
                        maker(Grammar.Form.XML, track()),
                        by(command(
                                "reach",
                                named(
                                        small + "[[route]]\nname = \"patrol\"\nfile = \"route.gpx\"\n"
                                                + "loadout = \"half-wave at face\"\ntimed = true\n",
                                        "route.toml",
                                        "")))),
                new Target(
                        "waypoints",
                        "marks.gpx",
                        0.5,
                        maker(Grammar.Form.XML, waypoints()),
                        by(command("walk", walked(small, "walk-reports.csv", "marks.gpx", "marks.toml")))),
                new Target(
                        "region",
                        "region.geojson",
                        0.1,
                        maker(Grammar.Form.JSON, region()),
                        by(atlas("region-out", small, "--region", at("region.geojson")))),
                new Target(
                        "block",
                        "atlas-out/positions/block-000000.jsonl",
                        0.1,
                        maker(Grammar.Form.JSON, block(small)),
                        by(atlas("atlas-out", small))),
                new Target(
                        "calibration",
                        "calibration.toml",
                        2,
                        maker(Grammar.Form.TOML, calibration()),
                        by(path(
                                named(plan, "calibrated.toml", "[calibration]\nfile = \"calibration.toml\"\n"),
                                positions))),
                new Target(
                        "bench",
                        "bench.csv",
                        4,
                        maker(Grammar.Form.TABLE, bench()),
                        by(command("bench", "bench.csv"), with(command("bench", "bench.csv"), "--json"))),
                new Target(
                        "match",
                        "m.s1p",
                        4,
                        maker(Grammar.Form.TABLE, sweep()),
                        by(
                                with(command("match", "m.s1p"), "--channel-mhz", "155.16", "--json"),
                                with(command("match", "m.s1p"), "--channel-mhz", "155.16"))),
                new Target(
                        "profile",
                        "p.csv",
                        6,
                        maker(Grammar.Form.TABLE, profile()),
                        by(
                                profile("handheld"),
                                profile("p1812"),
                                profile("all"),
                                profile("street-level"),
                                profile("deygout"))),
                new Target(
                        "pattern",
                        "pattern.csv",
                        2,
                        maker(
                                Grammar.Form.TABLE,
                                bytes(
                                        "elevation_deg,gain_dbi\n-90,-20\n-45,-3\n-10,1\n0,2.1\n10,1.5\n45,-3\n90,-20\n")),
                        by(path(
                                named(
                                        plan.replace("radiator = \"half-wave-end-fed\"", "pattern = \"pattern.csv\""),
                                        "pattern.toml",
                                        ""),
                                "--from",
                                "spike camp",
                                "--to",
                                "north spur",
                                "--to-loadout",
                                "half-wave at face"))),
                new Target(
                        "gpx",
                        "track.gpx",
                        0.5,
                        maker(Grammar.Form.XML, track()),
                        by(command("walk", walked(small, "walk-track.gpx", "track.gpx", "gpx.toml")))),
                new Target(
                        "reports",
                        "reports.csv",
                        0.5,
                        maker(Grammar.Form.TABLE, reports()),
                        by(command("walk", walked(small, "walk-reports.csv", "reports.csv", "reports.toml")))),
                new Target(
                        "area",
                        "area.geojson",
                        2,
                        maker(Grammar.Form.JSON, area()),
                        by(path(
                                named(plan.replace("[area]", "[area]\npolygon = \"area.geojson\""), "area.toml", ""),
                                positions))),
                new Target(
                        "cover",
                        "cover.geojson",
                        2,
                        maker(Grammar.Form.JSON, cover()),
                        by(path(
                                named(
                                        plan.replace("[ground]", "[ground]\ncover_areas = \"cover.geojson\""),
                                        "cover.toml",
                                        ""),
                                positions))),
                new Target(
                        "tiff",
                        "tiff/a.tif",
                        4,
                        random -> new Grammar(random, Grammar.Form.TABLE).tiff(),
                        tiles("tiff")),
                new Target("grid", "grid/g.asc", 3, maker(Grammar.Form.TABLE, grid()), tiles("grid")),
                new Target("prj", "prj/g.prj", 0.5, prj(), tiles("prj")));
    }

    private static List<String[]> by(String[]... commands) {
        return Arrays.asList(commands);
    }

    private String at(String name) {
        return folder.resolve(name).toString();
    }

    private String[] command(String verb, String file) {
        return new String[] {verb, at(file)};
    }

    private static String[] with(String[] command, String... more) {
        return Stream.concat(Stream.of(command), Stream.of(more)).toArray(String[]::new);
    }

    private String[] command(String verb, String file, String more) {
        return with(command(verb, file), more);
    }

    private String[] path(String plan, String... ends) {
        return with(new String[] {"path", "--plan", at(plan)}, ends);
    }

    private String[] profile(String model) {
        return new String[] {"path", "--profile", at("p.csv"), "--frequency-mhz", "155", "--model", model};
    }

    private List<String[]> tiles(String name) {
        return by(new String[] {"tiles", at(name), "--at", "46.5,8.1"}, new String[] {"tiles", at(name)}, new String[] {
            "tiles", at(name), "--json"
        });
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static String plan() throws IOException {
        Path sample = SAMPLES.resolve("forest-hills");
        String text =
                Files.readString(sample.resolve("plan.toml")).replace("bearing_step_deg = 5", "bearing_step_deg = 30");
        for (String named : List.of("tiles", "../invented-bench/bench.csv", "walk-track.gpx", "walk-reports.csv"))
            text = text.replace(
                    '"' + named + '"',
                    '"' + sample.resolve(named).normalize().toString().replace('\\', '/') + '"');
        return text;
    }

    /** The parts of a plan that not every plan has. */
    private static String stations(String plan) {
        String track = SAMPLES.resolve("forest-hills/walk-track.gpx").toString().replace('\\', '/');
        return plan.replaceAll("(?s)\\[channel\\].*?\\[target\\]", """
                declination_deg = -4.5
                [[channel]]
                name = "low"
                frequency_mhz = 155.16
                [[channel]]
                name = "high"
                frequency_mhz = 446.1
                [target]""")
                        .replace("noise = \"rural\"", "noise = \"rural\"\nfoliage = \"wet\"\nroof_height_m = 9")
                        .replace("sensitivity_dbm = -119", """
                                sensitivity_dbm = -119
                                battery_mah = 2200
                                send_ma = 1500
                                receive_ma = 250
                                wait_ma = 60
                                [[power_step]]
                                power_w = 1
                                send_ma = 700
                                """)
                        .replace("base = true", "base = true\nheading_deg = 30\nweight = 2")
                        .replaceAll("(?s)\\[\\[walk\\]\\].*", "")
                + """
                [[delta]]
                antenna = "end-fed half-wave"
                channel = "high"
                delta_db = 4
                delta_uncertainty_db = 1
                delta_mount = "in hand"
                [[station]]
                name = "hut"
                at = "36.2600, -84.2300"
                power_w = 25
                sensitivity_uv = 0.25
                sensitivity_across = "50-ohm"
                gain_dbi = 2.15
                gain_uncertainty_db = 1
                height_m = 6
                feed_loss_db = 1.5
                noise_floor_dbm = -120
                noise_bandwidth_khz = 8.5
                [[station]]
                name = "ridge"
                at = "36.2800, -84.2000"
                power_w = 10
                sensitivity_dbm = -118
                gain_dbd = 0
                receive_mhz = 156.0
                transmit_mhz = 151.5
                relay = true
                mode = "two-frequency"
                [[route]]
                name = "patrol"
                file = "TRACK"
                loadout = "half-wave at face"
                start = "08:00"
                pace_kmh = 3
                weight = 1
                [decide]
                by = "places"
                felt_places = 1
                felt_ground = 0.1
                felt_reach_m = 100
                [assign]
                keep = ["north spur"]
                loadouts = ["factory at face", "half-wave at face"]
                [doubt]
                model_common_db = 6
                place_spread_db = 8
                """.replace("TRACK", track);
    }

    private String[] atlas(String out, String plan, String... more) throws IOException {
        Path file = folder.resolve("atlas.toml");
        Files.writeString(
                file,
                plan.replaceAll("(?s)\\[\\[walk\\]\\].*", "")
                        .replace("bearing_step_deg = 30", "bearing_step_deg = 90"));
        return with(new String[] {"atlas", file.toString(), "--grid", "700m", "--cores", "1", "--out", at(out)}, more);
    }

    /** What the command itself wrote of one block. */
    private byte[] block(String plan) throws IOException {
        CommandRun run = CommandRun.of(atlas("atlas-out", plan));
        assertTrue(run.code() == 0, run.err());
        return Files.readAllBytes(folder.resolve("atlas-out/positions/block-000000.jsonl"));
    }

    private static byte[] region() {
        return bytes(
                "{\"type\":\"Polygon\",\"coordinates\":[[[-84.22,36.26],[-84.2,36.26],[-84.2,36.28],[-84.22,36.28],[-84.22,36.26]]]}");
    }

    private static byte[] waypoints() {
        return bytes(
                "<?xml version=\"1.0\"?>\n<gpx version=\"1.1\" creator=\"x\" xmlns=\"http://www.topografix.com/GPX/1/1\">\n"
                        + "<wpt lat=\"36.271\" lon=\"-84.212\"><time>2026-05-04T09:30:00Z</time><name>copy</name></wpt>\n"
                        + "<wpt lat=\"36.272\" lon=\"-84.213\"><time>2026-05-04T09:31:00Z</time><name>a</name><cmt>-104 dBm to base</cmt></wpt>\n"
                        + "<wpt lat=\"36.273\" lon=\"-84.214\"><name>b</name><desc>SINAD 12</desc></wpt>\n"
                        + "<wpt lat=\"36.274\" lon=\"-84.215\"><name>no copy</name></wpt>\n"
                        + "<wpt lat=\"36.275\" lon=\"-84.216\"><name>R4</name></wpt>\n"
                        + "<wpt lat=\"36.276\" lon=\"-84.217\"><name>&lt; -120 dBm</name></wpt>\n</gpx>\n");
    }

    /** A plan that names the file which changes. */
    private String named(String plan, String as, String more) throws IOException {
        Files.writeString(folder.resolve(as), plan.replace("[calibration]", "[ignored]") + more);
        return as;
    }

    private String walked(String plan, String before, String now, String as) throws IOException {
        Path sample = SAMPLES.resolve("forest-hills").resolve(before);
        return named(plan.replace(sample.toString().replace('\\', '/'), now), as, "");
    }

    private byte[] calibration() throws IOException {
        Path out = folder.resolve("learned");
        CommandRun run = CommandRun.of("walk", SAMPLES.resolve("forest-hills").toString(), "--out", out.toString());
        assertTrue(run.code() == 0, run.err());
        return Files.readAllBytes(out.resolve("calibration.toml"));
    }

    private static byte[] head(String sample, int lines) throws IOException {
        try (Stream<String> all = Files.lines(SAMPLES.resolve(sample))) {
            return bytes(String.join("\n", all.limit(lines).toList()) + "\n");
        }
    }

    private static byte[] bench() throws IOException {
        return head("invented-bench/bench.csv", 70);
    }

    private static byte[] sweep() throws IOException {
        return head("invented-bench/quarter-wave-whip.s1p", 60);
    }

    private static byte[] profile() {
        return bytes(
                "distance_km,height_m,clutter_m,zone\n0,10,0,inland\n0.5,12,15,inland\n1,40,0,coastal\n1.5,-1,0,sea\n2,3,0,sea\n");
    }

    private static byte[] track() throws IOException {
        String text = new String(head("forest-hills/walk-track.gpx", 60), StandardCharsets.UTF_8);
        return bytes(text.substring(0, text.lastIndexOf("</trkpt>")) + "</trkpt></trkseg></trk></gpx>");
    }

    private static byte[] reports() throws IOException {
        return head("forest-hills/walk-reports.csv", 25);
    }

    private static byte[] area() {
        return bytes(
                "{\"type\":\"Polygon\",\"coordinates\":[[[-84.3,36.2],[-84.1,36.2],[-84.1,36.4],[-84.3,36.4],[-84.3,36.2]],"
                        + "[[-84.25,36.25],[-84.24,36.25],[-84.24,36.26],[-84.25,36.25]]]}");
    }

    private static byte[] cover() {
        return bytes(
                "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":{\"cover\":\"woodland\"},"
                        + "\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[[[-84.3,36.2],[-84.1,36.2],[-84.1,36.4],[-84.3,36.2]]]}},"
                        + "{\"type\":\"Feature\",\"properties\":{\"cover\":\"urban\"},\"geometry\":{\"type\":\"MultiPolygon\",\"coordinates\":"
                        + "[[[[-84.22,36.26],[-84.2,36.26],[-84.2,36.28],[-84.22,36.26]]]]}}]}");
    }

    private static byte[] grid() {
        return bytes("ncols 5\nnrows 4\nxllcorner 8.0\nyllcorner 46.45\ncellsize 0.05\nNODATA_value -9999\n"
                + "1 2 3 4 5\n6 7 8 9 10\n-9999 1.5 2e2 -3 4\n1 2 3 4 5\n");
    }

    private Maker prj() throws IOException {
        Files.createDirectories(folder.resolve("prj"));
        Files.writeString(
                folder.resolve("prj/g.asc"),
                "ncols 2\nnrows 2\nxllcorner 430000\nyllcorner 5150000\ncellsize 9000\n1 2\n3 4\n");
        return maker(
                Grammar.Form.TABLE,
                bytes(
                        "PROJCS[\"WGS_1984_UTM_Zone_32N\",GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\",SPHEROID[\"WGS_1984\",6378137.0,"
                                + "298.257223563]],PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]],PROJECTION[\"Transverse_Mercator\"],"
                                + "PARAMETER[\"False_Easting\",500000.0],PARAMETER[\"False_Northing\",0.0],PARAMETER[\"Central_Meridian\",9.0],"
                                + "PARAMETER[\"Scale_Factor\",0.9996],PARAMETER[\"Latitude_Of_Origin\",0.0],UNIT[\"Meter\",1.0]]"),
                bytes(
                        "PROJCS[\"own\",GEOGCS[\"GCS\",DATUM[\"D\",SPHEROID[\"Bessel_1841\",6377397.155,299.1528128]],PRIMEM[\"Greenwich\",0.0],"
                                + "UNIT[\"Degree\",0.0174532925199433]],PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"False_Easting\",500000.0],"
                                + "PARAMETER[\"False_Northing\",0.0],PARAMETER[\"Central_Meridian\",9.0],PARAMETER[\"Scale_Factor\",1.0],"
                                + "PARAMETER[\"Latitude_Of_Origin\",0.0],UNIT[\"Meter\",1.0]]"));
    }
}
