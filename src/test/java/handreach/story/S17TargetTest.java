package handreach.story;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.InputFault;
import handreach.plan.PlanFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A target is looked at before it is written: nothing that was read is written over, no device replaced, no link, no protection. */
class S17TargetTest {
    private static final String BOX =
            "{\"type\": \"Polygon\", \"coordinates\": [[[-84.4, 36.1], [-84.1, 36.1], [-84.1, 36.4], [-84.4, 36.4], [-84.4, 36.1]]]}";

    @TempDir
    Path folder;

    private Path plan;

    /** The sample of the forest hills, small, with everything that a plan can name. */
    @BeforeEach
    void copied() throws IOException {
        Path sample = Path.of("elevation-samples/forest-hills");
        Path bench = Path.of("elevation-samples/invented-bench");
        Files.createDirectory(folder.resolve("tiles"));
        copy(sample.resolve("tiles"), folder.resolve("tiles"));
        for (String name : List.of("walk-reports.csv", "walk-track.gpx"))
            Files.copy(sample.resolve(name), folder.resolve(name));
        Files.copy(bench.resolve("bench.csv"), folder.resolve("bench.csv"));
        Files.copy(bench.resolve("quarter-wave-whip.s1p"), folder.resolve("sweep.s1p"));
        for (String name : List.of("area", "sector", "inside", "outside", "cover"))
            Files.writeString(
                    folder.resolve(name + ".geojson"),
                    name.equals("outside") || name.equals("cover")
                            ? BOX.replace("36.4", "36.15").replace("\"Polygon\"", "\"Polygon\"")
                            : BOX);
        plan = folder.resolve("plan.toml");
        Files.writeString(
                plan,
                Files.readString(sample.resolve("plan.toml"))
                        .replace("../invented-bench/bench.csv", "bench.csv")
                        .replace("radius_km = 5", "radius_km = 1")
                        .replace("bearing_step_deg = 5", "bearing_step_deg = 45"));
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> files = Files.list(from)) {
            for (Path file : files.toList()) Files.copy(file, to.resolve(file.getFileName()));
        }
    }

    private Map<Path, byte[]> everything() throws IOException {
        Map<Path, byte[]> all = new TreeMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) all.put(file, Files.readAllBytes(file));
        }
        return all;
    }

    private void assertRefused(String why, String... words) throws IOException {
        Map<Path, byte[]> before = everything();
        CommandRun run = CommandRun.of(words);
        String what = String.join(" ", words);
        assertEquals(2, run.code(), what + ": " + run.out() + run.err());
        assertTrue(run.err().contains(why), what + ": " + run.err());
        assertEquals(
                1, run.err().lines().filter(line -> !line.startsWith("Note: ")).count(), what + ": " + run.err());
        assertFalse(run.out().contains("Written"), run.out());
        Map<Path, byte[]> after = everything();
        assertEquals(before.keySet(), after.keySet(), what);
        before.forEach((file, bytes) -> assertArrayEquals(bytes, after.get(file), what + " changed " + file));
    }

    private String in(String name) {
        return folder.resolve(name).toString();
    }

    @Test
    void aLinkToNowhereIsRefusedAsAFolderBeforeAnythingIsReckoned() throws IOException {
        Files.createSymbolicLink(folder.resolve("gone"), folder.resolve("nowhere"));
        assertRefused("leads to no folder", "reach", plan.toString(), "--no-area", "--out", in("gone"));
    }

    @Test
    void noCommandWritesOverAFileThatItRead() throws IOException {
        String read = "is one of the files that the answer is made from";
        for (String name : List.of("plan.toml", "bench.csv", "walk-track.gpx", "walk-reports.csv"))
            assertRefused(read, "report", plan.toString(), "--out", in(name));
        assertRefused(read, "card", folder.toString(), "--out", in("bench.csv"));
        assertRefused(read, "bench", in("bench.csv"), "--control", "factory helical", "--report", in("bench.csv"));
        assertRefused(
                read,
                "bench",
                in("bench.csv"),
                "--control",
                "factory helical",
                "--sweep",
                in("sweep.s1p"),
                "--report",
                in("sweep.s1p"));
        assertRefused(
                read,
                "bench",
                in("bench.csv"),
                "--control",
                "factory helical",
                "--plan",
                plan.toString(),
                "--report",
                plan.toString());
        List<String> path = List.of("path", "--plan", plan.toString(), "--from", "36.27,-84.21", "--to", "36.28,-84.2");
        assertRefused(read, with(path, "--figure", in("walk-track.gpx")));
        Path tile = Files.list(folder.resolve("tiles")).sorted().toList().get(0);
        assertRefused(read, with(path, "--figure", tile.toString()));
        assertRefused(
                read,
                "path",
                "--tiles",
                in("tiles"),
                "--from",
                "36.27,-84.21",
                "--to",
                "36.28,-84.2",
                "--frequency-mhz",
                "155",
                "--figure",
                tile.toString());
        Files.writeString(folder.resolve("profile.csv"), "distance_km,height_m\n0,10\n1,20\n2,10\n3,15\n");
        assertRefused(
                read, "path", "--profile", in("profile.csv"), "--frequency-mhz", "155", "--figure", in("profile.csv"));
    }

    private static String[] with(List<String> words, String... more) {
        List<String> all = new ArrayList<>(words);
        all.addAll(List.of(more));
        return all.toArray(String[]::new);
    }

    /** Every kind of file that a plan can name, each under another name and by a link. */
    @Test
    void everyFileThatAPlanNamesIsKnownWhateverNameLeadsToIt() throws IOException {
        String text = Files.readString(plan);
        text = text.replace("[area]\n", "[area]\npolygon = \"area.geojson\"\n")
                .replace("[ground]\n", "[ground]\ncover_areas = \"cover.geojson\"\n");
        text += """

                [[route]]
                name = "along"
                file = "route.gpx"
                [[sector]]
                name = "a sector"
                polygon = "sector.geojson"
                [calibration]
                file = "calibration.toml"
                """;
        Files.copy(folder.resolve("walk-track.gpx"), folder.resolve("route.gpx"));
        assertEquals(0, CommandRun.of("walk", plan.toString(), "--out", in("w")).code());
        Files.copy(folder.resolve("w/calibration.toml"), folder.resolve("calibration.toml"));
        if (!text.contains("[relay]")) text += "[relay]\ninside = \"inside.geojson\"\noutside = \"outside.geojson\"\n";
        else text = text.replace("[relay]\n", "[relay]\ninside = \"inside.geojson\"\noutside = \"outside.geojson\"\n");
        Files.writeString(plan, text);
        List<String> names = List.of(
                "plan.toml",
                "bench.csv",
                "area.geojson",
                "cover.geojson",
                "route.gpx",
                "sector.geojson",
                "inside.geojson",
                "outside.geojson",
                "calibration.toml",
                "walk-track.gpx",
                "walk-reports.csv");
        Files.createDirectory(folder.resolve("links"));
        for (String name : names) {
            assertRefused("is one of the files", "report", plan.toString(), "--out", in("tiles/../" + name));
            Path link = folder.resolve("links").resolve(name);
            Files.createSymbolicLink(link, folder.resolve(name));
            assertRefused("is one of the files", "card", plan.toString(), "--out", link.toString());
            assertTrue(Files.isSymbolicLink(link));
        }
    }

    @Test
    void aPlanIsNotSavedAsOneOfTheFilesThatItNames() throws IOException {
        PlanFile opened = PlanFile.open(plan);
        byte[] before = Files.readAllBytes(folder.resolve("bench.csv"));
        InputFault fault = assertThrows(
                InputFault.class,
                () -> opened.saveAs(folder.resolve("bench.csv"), PlanFile.Named.WHERE_THEY_ARE, () -> true));
        assertTrue(fault.getMessage().contains("is one of the files"), fault.getMessage());
        assertArrayEquals(before, Files.readAllBytes(folder.resolve("bench.csv")));
        opened.saveAs(folder.resolve("other.toml"), PlanFile.Named.WHERE_THEY_ARE, () -> true);
        assertEquals(Files.readString(plan), Files.readString(folder.resolve("other.toml")));
    }

    @Test
    void theFolderOfTheTilesTakesNoResult() throws IOException {
        String tiles = in("tiles");
        String why = "is the folder that the ground is read from";
        assertRefused(why, "reach", plan.toString(), "--out", tiles);
        assertRefused(why, "relay", plan.toString(), "--out", in("tiles/."));
        assertRefused(why, "walk", plan.toString(), "--out", tiles);
        assertRefused(why, "walk", plan.toString(), "--next", "--out", tiles);
        Path link = Files.createSymbolicLink(folder.resolve("link"), folder.resolve("tiles"));
        assertRefused(why, "reach", plan.toString(), "--no-area", "--out", link.toString());
    }

    @Test
    void anAcceptedCalibrationIsReplacedOnlyOnDemand() throws IOException {
        String[] walk = {"walk", plan.toString(), "--out", folder.toString()};
        assertEquals(0, CommandRun.of(walk).code());
        assertEquals(0, CommandRun.of(walk).code(), "not accepted yet");
        String accepted = Files.readString(folder.resolve("calibration.toml"));
        Files.writeString(plan, Files.readString(plan) + "\n[calibration]\nfile = \"calibration.toml\"\n");
        assertRefused("is the calibration that the plan names", walk);
        List<String> log = Files.readAllLines(folder.resolve("walk-reports.csv"));
        Files.write(folder.resolve("walk-reports.csv"), log.subList(0, log.size() - 4));
        assertEquals(
                0, CommandRun.of("walk", plan.toString(), "--out", in("other")).code());
        assertEquals(accepted, Files.readString(folder.resolve("calibration.toml")));
        CommandRun run = CommandRun.of(with(List.of(walk), "--replace"));
        assertEquals(0, run.code(), run.err());
        assertFalse(accepted.equals(Files.readString(folder.resolve("calibration.toml"))), "it was replaced");
    }

    @Test
    void devicesAndPipesAreLeftAlone() throws Exception {
        String why = "is a device or a pipe, a file is expected";
        String[] figure = {
            "path", "--plan", plan.toString(), "--from", "36.27,-84.21", "--to", "36.28,-84.2", "--figure"
        };
        Path pipe = folder.resolve("pipe");
        Assumptions.assumeTrue(made("mkfifo", pipe.toString()), "no mkfifo here");
        assertRefused(why, with(List.of(figure), pipe.toString()));
        assertRefused(why, "report", plan.toString(), "--out", pipe.toString());
        assertTrue(!Files.isRegularFile(pipe) && Files.exists(pipe));
        // one of our own: those of the machine would be lost to all its programs should this fail
        Path device = folder.resolve("null");
        if (!made("mknod", device.toString(), "c", "1", "3")) return;
        assertRefused(why, with(List.of(figure), device.toString()));
        assertTrue(!Files.isRegularFile(device) && Files.exists(device));
    }

    private static boolean made(String... command) throws Exception {
        return new ProcessBuilder(command).start().waitFor() == 0;
    }

    @Test
    void aLinkStaysAndTheFileThatItLeadsToIsWritten() throws IOException {
        Path real = Files.createDirectory(folder.resolve("real"));
        Path link = Files.createSymbolicLink(folder.resolve("card.pdf"), Path.of("real/kept.pdf"));
        for (int run = 0; run < 2; run++) {
            assertEquals(
                    0,
                    CommandRun.of("card", plan.toString(), "--out", link.toString())
                            .code());
            assertTrue(Files.isSymbolicLink(link));
            assertTrue(Files.readString(real.resolve("kept.pdf"), java.nio.charset.StandardCharsets.ISO_8859_1)
                    .startsWith("%PDF"));
        }
        Path loop = Files.createSymbolicLink(folder.resolve("loop"), Path.of("loop"));
        assertRefused("is a symbolic link that", "card", plan.toString(), "--out", loop.toString());
        Path named = Files.createSymbolicLink(folder.resolve("named.toml"), Path.of("plan.toml"));
        PlanFile opened = PlanFile.open(named);
        opened.withText(opened.text() + "\n# edited\n").save();
        assertTrue(Files.isSymbolicLink(named));
        assertTrue(Files.readString(plan).endsWith("# edited\n"));
        assertTrue(Files.exists(folder.resolve("plan.toml.bak")), "the former text lies beside the plan itself");
    }

    @Test
    void aWriteProtectedFileStaysForTheAdministratorToo() throws IOException {
        Path file = Files.writeString(folder.resolve("report.html"), "kept");
        Assumptions.assumeTrue(
                Files.getFileStore(file).supportsFileAttributeView("posix"), "rights as owner and others");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r--r--"));
        assertRefused("is write-protected", "report", plan.toString(), "--out", file.toString());
        Files.setPosixFilePermissions(plan, PosixFilePermissions.fromString("r--r--r--"));
        PlanFile opened = PlanFile.open(plan);
        InputFault fault = assertThrows(
                InputFault.class,
                () -> opened.withText(opened.text() + "\n# edited\n").save());
        assertTrue(fault.getMessage().contains("is write-protected"), fault.getMessage());
        assertEquals("kept", Files.readString(file));
    }
}
