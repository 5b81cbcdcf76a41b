package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The main job on the bundled samples. */
class S04ReachTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"forest-hills", "high-mountains", "urban-coast"})
    void everySamplePlanGivesReach(String sample) throws IOException {
        CommandRun run = CommandRun.of("reach", "elevation-samples/" + sample, "--json");
        assertEquals(0, run.code(), run.err());
        JsonNode node = new ObjectMapper().readTree(run.out());
        assertTrue(node.get("loadouts").size() >= 4);
        for (JsonNode loadout : node.get("loadouts")) {
            assertTrue(
                    loadout.get("median_km").asDouble() > 0,
                    loadout.get("loadout").asText());
            assertEquals(72, loadout.get("bearings").size());
            JsonNode interval = loadout.get("median_interval_95_km");
            assertTrue(interval.get(0).asDouble() <= loadout.get("median_km").asDouble());
            assertTrue(interval.get(1).asDouble() >= loadout.get("median_km").asDouble());
        }
    }

    @ParameterizedTest
    @CsvSource({"handheld", "full-wave"})
    void whatTheModelDoubtsIsSaidOnceOnEveryFace(String model) throws IOException {
        String trees = "Trees and buildings count at the two ends only; those between are left out. On every bearing.";
        CommandRun text = CommandRun.of("reach", "elevation-samples/forest-hills", "--model", model);
        assertEquals(
                1,
                text.err().lines().filter(line -> line.equals("Note: " + trees)).count(),
                text.err());
        assertEquals(
                1,
                text.err().lines().filter(line -> line.startsWith("Note: Lost")).count(),
                text.err());
        JsonNode warnings = new ObjectMapper()
                .readTree(CommandRun.of("reach", "elevation-samples/forest-hills", "--model", model, "--json")
                        .out())
                .get("warnings");
        List<String> told = new ArrayList<>();
        warnings.forEach(one -> told.add(one.asText()));
        assertTrue(told.contains(trees), told.toString());
        assertTrue(
                told.stream()
                        .anyMatch(one -> one.matches(
                                "Lost: .*On [0-9]+ of 72 bearings, nearest at .* towards [0-9]{3}° true\\.")),
                told.toString());
    }

    @Test
    void theReportAndTheCardCarryTheDoubtsOfTheModel() throws IOException {
        Path report = folder.resolve("report.html");
        assertEquals(
                0,
                CommandRun.of("report", "elevation-samples/urban-coast", "--out", report.toString())
                        .code());
        assertTrue(Files.readString(report).contains("Trees and buildings count at the two ends only"));
        Path card = folder.resolve("card.pdf");
        CommandRun run = CommandRun.of("card", "elevation-samples/urban-coast", "--out", card.toString(), "--json");
        assertTrue(run.out().contains("Trees and buildings count at the two ends only"), run.out());
    }

    @Test
    void theHipNeverReachesFartherThanTheFace() throws IOException {
        JsonNode node = new ObjectMapper()
                .readTree(CommandRun.of("reach", "elevation-samples/forest-hills", "--json")
                        .out());
        JsonNode face = loadout(node, "factory at face");
        JsonNode hip = loadout(node, "factory at hip");
        assertTrue(hip.get("area_share").asDouble() < face.get("area_share").asDouble());
    }

    @Test
    void filesAreWrittenAndNamed() throws IOException {
        Path out = folder.resolve("out");
        CommandRun run = CommandRun.of("reach", "elevation-samples/urban-coast", "--out", out.toString());
        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("loadout") && run.out().contains("median"), run.out());
        long told =
                run.out().lines().filter(line -> line.startsWith("Written: ")).count();
        try (var files = Files.list(out)) {
            assertEquals(told, files.count());
        }
        JsonNode outlines = new ObjectMapper()
                .readTree(out.resolve("reach-outlines.geojson").toFile());
        assertEquals("FeatureCollection", outlines.get("type").asText());
        assertFalse(outlines.get("features").isEmpty());
    }

    @Test
    void rastersAloneByTheEngineAskedForWithItsDifferenceSaid() throws IOException {
        Path out = folder.resolve("rasters");
        CommandRun run = CommandRun.of(
                "reach",
                "elevation-samples/urban-coast",
                "--radius-km",
                "2",
                "--engine",
                "sweep",
                "--only",
                "rasters,numbers",
                "--out",
                out.toString());
        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("Within: 2.0 km"), run.out());
        assertTrue(unwrapped(run).contains("sweep against one exact path per cell"), run.out());
        try (var files = Files.list(out)) {
            assertTrue(files.map(file -> file.getFileName().toString())
                    .allMatch(name -> name.endsWith(".tif")
                            || List.of(
                                            "least-loadout.tif.aux.xml",
                                            "reach.json",
                                            "reach-by-bearing.csv",
                                            "reach-files.json")
                                    .contains(name)));
        }
        List<String> bearings = Files.readAllLines(out.resolve("reach-by-bearing.csv"));
        assertTrue(
                bearings.get(0)
                        .endsWith("plan,from,other_end,channel,counts_as_copy,model,calibration,made_on,program"),
                bearings.get(0));
        assertTrue(bearings.get(1).contains("155.1600 MHz"), bearings.get(1));
        JsonNode area =
                new ObjectMapper().readTree(out.resolve("reach.json").toFile()).get("area");
        assertEquals("sweep", area.get("engine").asText());
        for (JsonNode difference : area.get("sampling_differences"))
            assertTrue(difference.get("rms_db").asDouble() < 2, difference.toString());
    }

    @Test
    void withoutAskingASmallMapIsExact() throws IOException {
        Path out = folder.resolve("exact");
        CommandRun run = CommandRun.of(
                "reach",
                "elevation-samples/urban-coast",
                "--radius-km",
                "1",
                "--only",
                "outlines",
                "--json",
                "--out",
                out.toString());
        assertEquals(0, run.code(), run.err());
        JsonNode area = new ObjectMapper().readTree(run.out()).get("area");
        assertEquals("exact", area.get("engine").asText());
        assertTrue(area.get("sampling_differences").isEmpty());
    }

    @Test
    void oneLoadoutAloneIsStillHeldAgainstTheControl() throws IOException {
        Path out = folder.resolve("one");
        CommandRun run = CommandRun.of(
                "reach",
                "elevation-samples/urban-coast",
                "--radius-km",
                "1",
                "--loadout",
                "half-wave at face",
                "--json",
                "--out",
                out.toString());
        assertEquals(0, run.code(), run.err());
        JsonNode node = new ObjectMapper().readTree(run.out());
        assertEquals(2, node.get("loadouts").size());
        assertEquals(
                node.get("control").asText(),
                node.get("loadouts").get(0).get("loadout").asText());
        assertFalse(node.get("loadouts").get(1).get("against_control").isNull());
        assertTrue(Files.readString(out.resolve("report.html")).contains("half-wave at face"));
    }

    @Test
    void aMarchSaysItsCostBeforeItStarts() {
        CommandRun run = CommandRun.of(
                "reach", "elevation-samples/urban-coast", "--radius-km", "0.5", "--engine", "march", "--json");
        assertEquals(0, run.code(), run.err());
        assertTrue(
                run.err().startsWith("Marching the field along 72 radials, 3 pairs of antenna heights: about "),
                run.err());
        assertTrue(run.out().contains("\"model\" : \"full-wave\""), run.out());
    }

    @Test
    void behindGroundTooSteepForTheMarchNothingIsClaimedAndThatIsSaid() throws IOException {
        String[] words = {
            "reach",
            "elevation-samples/invented-valley",
            "--model",
            "full-wave",
            "--radius-km",
            "4",
            "--loadout",
            "factory at face"
        };
        String said =
                " bearings the ground is steeper somewhere than the field march holds; behind that it gives no answer";
        CommandRun text = CommandRun.of(words);
        assertEquals(0, text.code(), text.err());
        assertTrue(text.err().contains(said), text.err());
        List<String> asJson = new ArrayList<>(List.of(words));
        asJson.add("--json");
        JsonNode node = new ObjectMapper()
                .readTree(CommandRun.of(asJson.toArray(new String[0])).out());
        assertTrue(
                node.get("warnings").toString().contains(said),
                node.get("warnings").toString());
        int ended = 0;
        for (JsonNode bearing : node.get("loadouts").get(0).get("bearings"))
            if (!bearing.get("unknown_beyond_km").isNull()) ended++;
        assertTrue(
                node.get("warnings").toString().contains("On " + ended + " of 72 bearings"), ended + " bearings end");
        asJson.set(3, "handheld");
        JsonNode closed = new ObjectMapper()
                .readTree(CommandRun.of(asJson.toArray(new String[0])).out());
        assertFalse(closed.get("warnings").toString().contains("steeper"), "another model has no such limit");
    }

    @Test
    void aPathOverGroundTooSteepForTheMarchIsRefusedInOneLine() throws IOException {
        Path cliff = folder.resolve("cliff.csv");
        StringBuilder ground = new StringBuilder("distance_km,height_m\n");
        for (int i = 0; i < 40; i++)
            ground.append(i * 0.03).append(',').append(i < 20 ? 0 : 60).append('\n');
        Files.writeString(cliff, ground.toString());
        CommandRun alone = CommandRun.of(
                "path", "--profile", cliff.toString(), "--frequency-mhz", "155", "--model", "full-wave", "--json");
        assertEquals(2, alone.code());
        assertEquals("", alone.out());
        assertEquals(
                "path: full-wave: from 0.57 km the ground slopes by more than 45°, up to 64°: behind that the field march gives"
                        + " no answer (docs/full-wave.md). Take the handheld model.",
                alone.err().strip());
        CommandRun all = CommandRun.of(
                "path", "--profile", cliff.toString(), "--frequency-mhz", "155", "--model", "all", "--json");
        JsonNode node = new ObjectMapper().readTree(all.out());
        assertTrue(node.get("warnings").toString().contains("full-wave does not apply: from 0.57 km"), all.err());
    }

    @Test
    void aMarchedMapTellsHowFarItDiffersFromOnePathPerCell() {
        CommandRun run = CommandRun.of(
                "reach",
                "elevation-samples/urban-coast",
                "--radius-km",
                "0.5",
                "--engine",
                "march",
                "--only",
                "rasters",
                "--out",
                folder.resolve("march").toString());
        assertEquals(0, run.code(), run.err());
        // 105 radials, 30 m apart at the rim, and as many more that every bearing of the rose is one of them: twice 72
        assertTrue(
                run.err()
                        .startsWith(
                                "Marching the field along 144 radials, more where neighbours differ, and to 12 single cells as a check,"
                                        + " 3 pairs of antenna heights: about "),
                run.err());
        assertEquals(
                3,
                unwrapped(run).split("m up, march against one exact path per cell, 12 cells: mean", -1).length - 1,
                run.out());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--engine swep|--engine: is \"swep\", allowed is exact, sweep, march. Did you mean sweep?",
                "--engine march --model handheld|--engine: is march, which goes by full-wave and not by handheld. Leave --model out.",
                "--engine exact --model full-wave|--engine: is exact, but full-wave goes along whole radials. Take --engine march, or another --model.",
                "--loadout helix|--loadout: \"helix\" is not in the plan. It has: factory at face, factory at hip, quarter-wave at chest,"
                        + " quarter-wave with wire at face, half-wave at face, five-eighths at face.",
                "--radius-km 500|--radius-km: is 500, allowed is 0.2 to 120 km. Correct the value.",
                "--only rasters|--only: says what to write, but not where. Add --out and a folder.",
            })
    void aWishThatCannotBeMetIsSaidInOneLine(String options, String said) {
        List<String> words = new ArrayList<>(List.of("reach", "elevation-samples/urban-coast"));
        words.addAll(List.of(options.split(" ")));
        CommandRun run = CommandRun.of(words.toArray(new String[0]));
        assertEquals(2, run.code());
        assertEquals(said, run.err().strip());
    }

    @Test
    void aPlanWithFaultsTellsThemAllAndWritesNothing() throws IOException {
        Path plan = folder.resolve("plan.toml");
        Files.writeString(plan, "title = \"x\"\n[channel]\nfrequency_mhz = 5\nfrequenzy = 3\n");
        Path out = folder.resolve("out");
        CommandRun run = CommandRun.of("reach", plan.toString(), "--out", out.toString());
        assertEquals(2, run.code());
        assertTrue(run.err().contains("plan.toml line 3: frequency_mhz is 5, allowed is 30 to 1000 MHz"), run.err());
        assertTrue(run.err().contains("plan.toml line 4: unknown key frequenzy"), run.err());
        assertFalse(Files.exists(out));
    }

    /** Lines wrapped at the width of a terminal, joined again. */
    private static String unwrapped(CommandRun run) {
        return run.out().replaceAll("\\s+", " ");
    }

    private static JsonNode loadout(JsonNode node, String name) {
        for (JsonNode loadout : node.get("loadouts"))
            if (loadout.get("loadout").asText().equals(name)) return loadout;
        throw new AssertionError("no loadout " + name);
    }
}
