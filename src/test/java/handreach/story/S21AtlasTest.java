package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import handreach.input.WorkMark;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.DeflaterOutputStream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An atlas by the real command line: the same rows however it is run, stopped, gone on with and damaged. */
class S21AtlasTest {
    @TempDir
    Path folder;

    private Path plan(String radiusKm) throws IOException {
        Path from = Path.of("elevation-samples", "forest-hills").toAbsolutePath();
        String text = Files.readString(from.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + from.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + from.resolve("../invented-bench/bench.csv") + "'")
                .replaceAll("(?s)\\[\\[walk\\]\\].*", "")
                .replaceFirst("radius_km = \\S+", "radius_km = " + radiusKm)
                .replaceFirst("bearing_step_deg = \\S+", "bearing_step_deg = 45");
        return Files.writeString(folder.resolve("plan.toml"), text);
    }

    private CommandRun atlas(String out, String... more) {
        return CommandRun.of(words(out, more).toArray(new String[0]));
    }

    private List<String> words(String out, String... more) {
        List<String> words = new ArrayList<>(List.of(
                "atlas",
                folder.resolve("plan.toml").toString(),
                "--grid",
                "350m",
                "--out",
                folder.resolve(out).toString()));
        words.addAll(List.of(more));
        return words;
    }

    private JsonNode summary(String out) throws IOException {
        return new ObjectMapper().readTree(Files.readString(folder.resolve(out).resolve("atlas.json")));
    }

    private List<Path> blocks(String out) throws IOException {
        try (Stream<Path> files = Files.list(folder.resolve(out).resolve("positions"))) {
            return files.sorted().toList();
        }
    }

    private String bytes(String out) throws IOException {
        StringBuilder all = new StringBuilder();
        for (Path block : blocks(out))
            all.append(block.getFileName()).append('\n').append(Files.readString(block));
        return all.toString();
    }

    @Test
    void theRowsAreTheSameOnAnyNumberOfCoresAndAfterAStop() throws IOException {
        plan("2");
        CommandRun first = atlas("one", "--cores", "1", "--relays", "2");
        assertEquals(0, first.code(), first.err());
        assertTrue(
                first.err()
                        .matches(
                                "(?s)\\d+ positions in \\d+ blocks: about [0-9.]+ core-hours by a trial of 4 positions, .*"
                                        + " on the disk\\..*"),
                first.err());
        assertEquals(0, atlas("two", "--cores", "2").code());
        assertTrue(blocks("one").size() >= 4, blocks("one").size() + " blocks");
        assertEquals(bytes("one"), bytes("two"));
        String digest = summary("one").get("digest").asText();
        assertEquals(digest, summary("two").get("digest").asText());

        // A killed run left one block out, one cut short, and one changed by a hand.
        String before = bytes("two");
        Files.delete(blocks("two").get(0));
        Path cut = blocks("two").get(1);
        byte[] whole = Files.readAllBytes(cut);
        Files.write(cut, java.util.Arrays.copyOf(whole, whole.length / 2));
        Path changed = blocks("two").get(2);
        Files.writeString(changed, Files.readString(changed).replaceFirst("\"open_ended\":\\d", "\"open_ended\":9"));
        CommandRun again = atlas("two");
        assertEquals(0, again.code(), again.err());
        int all = blocks("two").size();
        assertTrue(again.err().startsWith((all - 3) + " of " + all + " blocks are there already."), again.err());
        assertEquals(before, bytes("two"));
        assertEquals(digest, summary("two").get("digest").asText());
    }

    /** Whole files with the right question and digest that are not what they are taken for: reckoned again, all of them. */
    @Test
    void blocksThatAreOthersOrForgedAreReckonedAgain() throws IOException {
        plan("2");
        assertEquals(0, atlas("out", "--layers", "reach").code());
        String before = bytes("out");
        List<Path> blocks = blocks("out");
        assertEquals(4, blocks.size());
        Files.copy(blocks.get(0), blocks.get(1), StandardCopyOption.REPLACE_EXISTING);
        forge(blocks.get(2), "\"window\":\\[[0-9,]*\\]", "\"window\":[0,0,30000,30000]");
        forge(blocks.get(3), "\"median_m\":\\[", "\"median_m\":[\"NaN\",");
        ByteArrayOutputStream bomb = new ByteArrayOutputStream();
        try (DeflaterOutputStream zipped = new DeflaterOutputStream(bomb)) {
            for (int i = 0; i < 100; i++) zipped.write(new byte[1 << 20]);
        }
        String bits = Base64.getEncoder().encodeToString(bomb.toByteArray());
        forge(blocks.get(0), "\"heard_later\":\"[^\"]*\"", "\"heard_later\":\"" + bits + "\"");
        CommandRun again = atlas("out", "--layers", "reach");
        assertEquals(0, again.code(), again.err());
        assertFalse(again.err().contains("are there already"), again.err());
        assertEquals(before, bytes("out"));
    }

    /** Changes the first line of positions and gives the file the digest that fits. */
    private static void forge(Path block, String what, String by) throws IOException {
        List<String> lines = new ArrayList<>(Files.readAllLines(block));
        String line = lines.get(1).replaceFirst(what, by);
        assertFalse(line.equals(lines.get(1)), what);
        lines.set(1, line);
        String rows = String.join("\n", lines.subList(1, lines.size() - 1)) + "\n";
        String foot = lines.get(lines.size() - 1).replaceFirst("[0-9a-f]{64}", sha256(rows));
        Files.writeString(block, lines.get(0) + "\n" + rows + foot + "\n");
    }

    private static String sha256(String text) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void aFolderOfAnotherQuestionAndASecondRunAreRefused() throws IOException {
        Path plan = plan("1");
        assertEquals(0, atlas("out").code());
        String before = bytes("out") + Files.readString(folder.resolve("out/atlas.json"));
        CommandRun other = atlas("out", "--targets", "500m", "--layers", "reach");
        assertEquals(2, other.code());
        assertTrue(other.err().contains("holds the atlas of another question"), other.err());
        assertEquals(1, other.err().lines().count(), other.err());
        Files.writeString(plan, Files.readString(plan).replace("power_w = 5", "power_w = 4"));
        assertEquals(2, atlas("out").code());
        Files.writeString(plan, Files.readString(plan).replace("power_w = 4", "power_w = 5"));
        try (WorkMark mark =
                WorkMark.take(folder.resolve("out/.atlas-run.lock")).orElseThrow()) {
            CommandRun second = atlas("out");
            assertEquals(2, second.code());
            assertTrue(second.err().contains("another run of atlas is working in this folder"), second.err());
        }
        assertEquals(before, bytes("out") + Files.readString(folder.resolve("out/atlas.json")));
        Files.writeString(folder.resolve("out/atlas.json"), "[]");
        assertTrue(atlas("out").err().contains("has an atlas.json that is not of this program"));
    }

    /** Layers and relays come out of the rows, so they are asked anew without reckoning, and those not asked go. */
    @Test
    void otherLayersOfTheSameRowsCostNothing() throws IOException {
        plan("1");
        assertEquals(0, atlas("out", "--relays", "1").code());
        for (String file : List.of(
                "atlas.html",
                "atlas.txt",
                "least-loadout.tif",
                "shadow.tif",
                "shadow.tif.aux.xml",
                "heard-by-factory-at-face.tif",
                "talk-factory-at-face.tif",
                "reach-factory-at-face-median.tif",
                "relays.gpx",
                "relays.geojson")) assertTrue(Files.exists(folder.resolve("out").resolve(file)), file);
        String html = Files.readString(folder.resolve("out/atlas.html"), StandardCharsets.UTF_8);
        assertTrue(
                html.indexOf("of the region has a median reach of") < html.indexOf("What the bigger antenna buys"),
                "answer first");
        // both maps: ground where nothing serves is told from ground that was not asked for
        List<String> maps = List.of(html.split("<svg"));
        assertEquals(
                2,
                maps.stream().filter(map -> map.contains("edge of the region")).count());
        assertTrue(html.contains("Bare relief inside the edge: none does."), "what bare relief means");
        CommandRun again = atlas("out", "--layers", "reach");
        assertEquals(0, again.code(), again.err());
        assertFalse(again.err().contains("core-hours"), again.err());
        assertFalse(Files.exists(folder.resolve("out/shadow.tif")));
        assertFalse(Files.exists(folder.resolve("out/relays.gpx")));
        assertTrue(Files.exists(folder.resolve("out/least-loadout.tif")));
    }

    /**
     * A bound on the size of files, which the system sets for a process of its own, stands for a disk that runs full: the first of the two
     * blocks of this region is half the size of the other and fits.
     */
    @Test
    void aDiskThatRunsFullInTheMiddleIsOneLineAndWhatIsDoneIsGoneOnWith() throws Exception {
        Assumptions.assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "a shell that bounds the size of files");
        plan("1");
        String[] asked = {
            "--layers",
            "reach",
            "--region",
            region("[-84.24,36.266],[-84.18,36.266],[-84.18,36.29],[-84.21,36.29],[-84.24,36.269],[-84.24,36.266]")
        };
        assertEquals(0, atlas("whole", asked).code());
        long first = Files.size(blocks("whole").get(0));
        long second = Files.size(blocks("whole").get(1));
        assertTrue(first + 4096 < second, first + " and " + second + " bytes");
        List<String> command = new ArrayList<>(List.of(
                "/bin/sh",
                "-c",
                "ulimit -f " + (first / 512 + 2) + "; exec \"$0\" \"$@\"",
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:-UsePerfData",
                "-cp",
                System.getProperty("java.class.path"),
                "handreach.Handreach"));
        List<String> wanted = new ArrayList<>(List.of(asked));
        wanted.addAll(List.of("--cores", "1"));
        command.addAll(words("full", wanted.toArray(new String[0])));
        Process run = new ProcessBuilder(command).start();
        String said = new String(run.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(2, run.waitFor(), said);
        List<String> lines = said.lines().toList();
        assertEquals(2, lines.size(), said);
        assertTrue(lines.get(0).contains("core-hours"), said);
        assertTrue(lines.get(1).contains("block-000001.jsonl: cannot be written ("), said);
        assertEquals(1, blocks("full").size(), "the first block, and nothing half written");

        CommandRun rest = atlas("full", asked);
        assertEquals(0, rest.code(), rest.err());
        assertTrue(rest.err().startsWith("1 of 2 blocks are there already."), rest.err());
        assertEquals(bytes("whole"), bytes("full"));
    }

    private String refusal(String... words) {
        List<String> all = new ArrayList<>(List.of(
                "atlas",
                folder.resolve("plan.toml").toString(),
                "--out",
                folder.resolve("wrong").toString()));
        all.addAll(List.of(words));
        CommandRun run = CommandRun.of(all.toArray(new String[0]));
        assertEquals(2, run.code(), run.err());
        assertEquals(1, run.err().lines().count(), run.err());
        assertFalse(Files.exists(folder.resolve("wrong")), "nothing was made");
        return run.err();
    }

    private String region(String ring) throws IOException {
        Path file = folder.resolve("region.geojson");
        Files.writeString(file, "{\"type\":\"Polygon\",\"coordinates\":[[" + ring + "]]}");
        return file.toString();
    }

    @Test
    void aRegionOrAGridThatDoesNotFitTheGroundIsOneLine() throws IOException {
        plan("1");
        String far = region("[0,0],[0.1,0],[0.1,0.1],[0,0.1],[0,0]");
        assertTrue(
                refusal("--grid", "900m", "--region", far).contains("lies where no elevation is known. Add the tiles"));
        assertTrue(refusal("--grid", "40m").startsWith("--grid: is finer than the posts of the ground, which stand "));
        String horseshoe = region("[-84.22,36.26],[-84.20,36.26],[-84.20,36.28],[-84.203,36.28],[-84.203,36.263],"
                + "[-84.217,36.263],[-84.217,36.28],[-84.22,36.28],[-84.22,36.26]");
        assertTrue(refusal("--grid", "300m", "--targets", "5km", "--layers", "reach", "--region", horseshoe)
                .contains("holds no target of a grid this coarse. Take finer --targets."));
    }

    /** One way is enough with the base, who is the one at the position; among people at positions it is not. */
    @Test
    void aPlanThatWantsOneWayIsRefusedWhereTheLayersCannotObey() throws IOException {
        Path plan = plan("1");
        String both = Files.readString(plan);
        Files.writeString(plan, both.replaceFirst("(?m)^\\[target]$", "[target]\nways = \"calls\""));
        assertTrue(refusal("--grid", "900m").contains("ways is \"calls\", so one way to the position is enough"));
        assertEquals(0, atlas("calls", "--layers", "reach,shadow").code());
        assertTrue(Files.readString(folder.resolve("calls/atlas.txt")).contains("calling the position"));
        Files.writeString(plan, both.replaceFirst("(?m)^\\[reach]$", "[reach]\none_way = true"));
        assertTrue(refusal("--grid", "900m")
                .contains("one_way asks where one way alone works, which an atlas does not tell."));
    }

    @Test
    void aWrongWishIsOneLine() throws IOException {
        plan("1");
        for (String[] wrong : new String[][] {
            {"--layers", "reach,tlak"}, {"--cores", "0"}, {"--serves", "far"}, {"--region", "no-such.geojson"}
        }) {
            CommandRun run = atlas("wrong", wrong);
            assertEquals(2, run.code(), run.err());
            assertEquals(1, run.err().lines().count(), run.err());
        }
        assertFalse(Files.exists(folder.resolve("wrong")), "nothing was made");
    }
}
