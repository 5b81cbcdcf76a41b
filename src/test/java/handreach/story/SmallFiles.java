package handreach.story;

import handreach.cli.CommandLineRunner;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Small files that were made to take for ever, one command each, run in a process of its own with little memory: prints exit code,
 * processor time in ms, length of what was said, and its first line.
 */
final class SmallFiles {
    private static final Path SAMPLES = Path.of("elevation-samples").toAbsolutePath();

    private final Path folder;

    private SmallFiles(Path folder) {
        this.folder = folder;
    }

    /** The files are made in the folder that is named. */
    public static void main(String[] args) throws IOException {
        SmallFiles files = new SmallFiles(Path.of(args[0]));
        // Classes and the start of the projection library are no part of what a file costs.
        files.run("warm", "tiles", SAMPLES.resolve("urban-coast/tiles").toString(), "--at", "-8.025,-34.87");
        files.run("warm", "reach", SAMPLES.resolve("forest-hills").toString(), "--no-area");
        files.tags();
        files.run("prj", "tiles", files.projection().toString(), "--at", "46.5,8.1");
        files.run("declaration", "bench", files.declaration().toString());
        files.run("match", "match", files.sweep().toString(), "--channel-mhz", "155.16");
        files.plans();
        files.entries();
        files.sectors();
        files.run("cover", "path", "--plan", files.cover().toString(), "--from", "spike camp", "--to", "north spur");
    }

    private void run(String name, String... command) {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        PrintStream to = new PrintStream(said, true, StandardCharsets.UTF_8);
        long before = threads.getCurrentThreadCpuTime();
        int code = CommandLineRunner.run(command, to, to, plan -> {});
        long ms = (threads.getCurrentThreadCpuTime() - before) / 1_000_000;
        String first = said.toString(StandardCharsets.UTF_8).lines().findFirst().orElse("");
        System.out.printf(
                Locale.ROOT,
                "%s\t%d\t%d\t%d\t%s%n",
                name,
                code,
                ms,
                said.size(),
                first.length() > 300 ? first.substring(0, 300) : first);
    }

    private Path written(String name, CharSequence text) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        return Files.writeString(file, text);
    }

    /** Metadata of items that are never closed, and directories that name one large tag again and again. */
    private void tags() throws IOException {
        String items = "<Item ".repeat((4 << 20) / 6 - 1);
        Path one = folder.resolve("items/a.tif");
        Files.createDirectories(one.getParent());
        Files.write(
                one,
                tiff(
                        new int[][] {{42112, 2, items.length(), 8 + 2 + 6 * 12}},
                        6,
                        items.getBytes(StandardCharsets.UTF_8)));
        run("items", "tiles", one.getParent().toString(), "--at", "46.5,8.1");
        int[][] tags = new int[4000][];
        for (int i = 0; i < tags.length; i++) tags[i] = new int[] {60_000, 1, 32 << 20, 0};
        Path many = folder.resolve("tags/a.tif");
        Files.createDirectories(many.getParent());
        Files.write(many, tiff(tags, 0, new byte[0]));
        run("tags", "tiles", many.getParent().toString(), "--at", "46.5,8.1");
    }

    /** A header of 10 by 10 pixels with more tags, and bytes behind it. */
    private static byte[] tiff(int[][] more, int pad, byte[] behind) {
        int[][] usual = {{256, 3, 1, 10}, {257, 3, 1, 10}, {258, 3, 1, 16}, {259, 3, 1, 1}, {277, 3, 1, 1}};
        ByteBuffer out = ByteBuffer.allocate(8 + 2 + 12 * (usual.length + more.length) + 4 + behind.length + pad)
                .order(ByteOrder.LITTLE_ENDIAN);
        out.put((byte) 'I').put((byte) 'I').putShort((short) 42).putInt(8);
        out.putShort((short) (usual.length + more.length));
        for (int[][] fields : new int[][][] {usual, more})
            for (int[] field : fields)
                out.putShort((short) field[0])
                        .putShort((short) field[1])
                        .putInt(field[2])
                        .putInt(field[3]);
        out.putInt(0).put(behind);
        return out.array();
    }

    private Path projection() throws IOException {
        written("prj/a.asc", "ncols 2\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize 10\n1 2\n3 4\n");
        return written("prj/a.prj", "a".repeat(65_000)).getParent();
    }

    private Path declaration() throws IOException {
        return written(
                "bench.csv",
                "# control = a" + " ".repeat(200_000) + "x\n# range" + " ".repeat(200_000)
                        + "\nantenna,mount,quantity,value,unit,frequency_mhz,trial,note\na,in hand,received_level,-40,dBm,155,1,\n");
    }

    private Path sweep() throws IOException {
        String rows = IntStream.range(0, 100_000)
                .mapToObj(i -> String.format(
                        Locale.ROOT, "%.4f %.3f %d", 100 + i * 0.001, (i * 7 % 997) / 1000.0, i * 31 % 360))
                .collect(Collectors.joining("\n"));
        return written("sweep.s1p", "# MHz S MA R 50\n" + rows + "\n");
    }

    private String plan() throws IOException {
        Path sample = SAMPLES.resolve("forest-hills");
        String text = Files.readString(sample.resolve("plan.toml"));
        for (String named : List.of("tiles", "../invented-bench/bench.csv", "walk-track.gpx", "walk-reports.csv"))
            text = text.replace(
                    '"' + named + '"',
                    '"' + sample.resolve(named).normalize().toString().replace('\\', '/') + '"');
        return text;
    }

    private void plans() throws IOException {
        String unknown =
                IntStream.range(0, 300_000).mapToObj(i -> "key" + i + " = 1").collect(Collectors.joining("\n"));
        run("keys, 4 MB", "reach", written("keys.toml", unknown + "\n" + plan()).toString());
        run(
                "keys",
                "reach",
                written("few.toml", unknown.substring(0, unknown.lastIndexOf('\n', 190_000)) + "\n" + plan())
                        .toString());
        run(
                "ones, 4 MB",
                "reach",
                written("ones.toml", "ones = [" + "1,".repeat(1_900_000) + "1]\n" + plan())
                        .toString());
        run(
                "ones",
                "reach",
                written("fewer.toml", "ones = [" + "1,".repeat(100_000) + "1]\n" + plan())
                        .toString());
        run(
                "key",
                "reach",
                written("key.toml", "k".repeat(200_000) + " = 1\n" + plan()).toString());
        run(
                "title",
                "reach",
                written("title.toml", "title = \"" + "x".repeat(200_000) + "\"\n")
                        .toString());
    }

    /** Entries that each cost a whole answer, or a path to each of many others. */
    private void entries() throws IOException {
        String channels = IntStream.range(0, 2000)
                .mapToObj(i -> "[[channel]]\nname = \"c" + i + "\"\nfrequency_mhz = " + (30 + i * 0.4) + "\n")
                .collect(Collectors.joining());
        String several = plan().replaceAll("(?s)\\[channel\\].*?\\[target\\]", "@[target]")
                .replace("@", channels);
        run("channels", "reach", written("channels.toml", several).toString());
        String loadouts = IntStream.range(0, 3000)
                .mapToObj(i -> "[[loadout]]\nname = \"l" + i + "\"\nantenna = \"factory helical\"\n")
                .collect(Collectors.joining());
        run("loadouts", "reach", written("loadouts.toml", plan() + loadouts).toString());
        String positions = IntStream.range(0, 490)
                .mapToObj(i -> "[[position]]\nname = \"p" + i + "\"\nat = \"" + (36.25 + i * 1e-4) + ", -84.2\"\n")
                .collect(Collectors.joining());
        String stations = IntStream.range(0, 60)
                .mapToObj(i -> "[[station]]\nname = \"s" + i + "\"\nat = \"" + (36.25 + i * 1e-4)
                        + ", -84.21\"\npower_w = 5\nsensitivity_dbm = -118\ngain_dbd = 0\nrelay = true\n")
                .collect(Collectors.joining());
        String quick = plan().replace("bearing_step_deg = 5", "bearing_step_deg = 90");
        run(
                "stations",
                "reach",
                written("stations.toml", quick + positions + stations).toString(),
                "--no-area");
    }

    /** A sliver across half the world, and all of it, at a spacing of 30 m. */
    private void sectors() throws IOException {
        String quick = plan().replace("bearing_step_deg = 5", "bearing_step_deg = 90");
        Map<String, String> sectors = Map.of(
                "sliver", "[-170,-60],[170,60],[170,60.00001],[-170,-60]",
                "world", "[-180,-90],[180,-90],[180,90],[-180,90],[-180,-90]");
        for (Map.Entry<String, String> sector : sectors.entrySet()) {
            String name = "sector " + sector.getKey();
            written(
                    sector.getKey() + ".geojson",
                    "{\"type\":\"Polygon\",\"coordinates\":[[" + sector.getValue() + "]]}");
            String asked = "[[sector]]\nname = \"s\"\npolygon = \"" + sector.getKey() + ".geojson\"\nspacing_m = 30\n";
            run(name, "reach", written(sector.getKey() + ".toml", quick + asked).toString(), "--no-area");
        }
    }

    private Path cover() throws IOException {
        String world = IntStream.range(0, 5000)
                .mapToObj(i ->
                        "{\"type\":\"Feature\",\"properties\":{\"cover\":\"woodland\"},\"geometry\":{\"type\":\"Polygon\","
                                + "\"coordinates\":[[[-180,-90],[180,-90],[180," + (90 - i * 0.001)
                                + "],[-180,90],[-180,-90]]]}}")
                .collect(Collectors.joining(",", "{\"type\":\"FeatureCollection\",\"features\":[", "]}"));
        written("world.geojson", world);
        return written("cover.toml", plan().replace("[ground]", "[ground]\ncover_areas = \"world.geojson\""));
    }
}
