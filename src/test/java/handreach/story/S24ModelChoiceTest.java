package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program chooses the loss model: the march over bare ground where its map counts seconds, else the closed form. */
class S24ModelChoiceTest {
    @TempDir
    Path folder;

    /** A sample in large cells and few bearings, with this line under [reach] and a small radius. */
    private String plan(String sample, String model, String... replaced) throws IOException {
        Path from = Path.of("elevation-samples", sample).toAbsolutePath();
        String plan = Files.readString(from.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + from.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + from.resolve("../invented-bench/bench.csv") + "'")
                .replaceAll("(?s)\\[\\[walk\\]\\].*", "")
                .replaceAll("radius_km = \\d+", "radius_km = 2")
                .replace("bearing_step_deg = 5", "bearing_step_deg = 45\n" + model)
                .replace("cell_m = 30", "cell_m = 100");
        for (int i = 0; i < replaced.length; i += 2) {
            assertTrue(plan.contains(replaced[i]), replaced[i]);
            plan = plan.replace(replaced[i], replaced[i + 1]);
        }
        return Files.writeString(folder.resolve("plan.toml"), plan).toString();
    }

    private static JsonNode json(String... words) throws IOException {
        CommandRun run = CommandRun.of(words);
        assertEquals(0, run.code(), run.err());
        return new ObjectMapper().readTree(run.out());
    }

    private static JsonNode path(String plan) throws IOException {
        return json("path", "--plan", plan, "--from", "staging meadow", "--to", "upper basin", "--json");
    }

    /** Without what tells of the choice. */
    private static JsonNode figures(JsonNode answer) {
        ObjectNode rest = answer.deepCopy();
        rest.remove("model_choice");
        rest.remove("warnings");
        return rest;
    }

    @Test
    void bareGroundGoesByTheMarchInReachAndPathAlike() throws IOException {
        String auto = plan("high-mountains", "model = \"auto\"");
        JsonNode reach = json("reach", auto, "--json");
        JsonNode path = path(auto);
        String why = reach.path("model_choice").asText();
        assertEquals("full-wave", reach.path("model").asText());
        assertTrue(why.startsWith("The model is full-wave, chosen by the program: all ground is open"), why);
        assertTrue(why.contains("Name handheld for the closed form"), why);
        assertEquals("full-wave", path.path("model").asText());
        String named = plan("high-mountains", "model = \"full-wave\"");
        assertEquals(figures(json("reach", named, "--json")), figures(reach));
        assertEquals(path(named), path);
    }

    @Test
    void aPlanThatNamesNoModelKeepsTheClosedForm() throws IOException {
        String silent = plan("high-mountains", "");
        JsonNode reach = json("reach", silent, "--json");
        assertEquals("handheld", reach.path("model").asText());
        assertFalse(reach.has("model_choice"));
        assertEquals(
                "full-wave",
                json("reach", silent, "--model", "auto", "--json").path("model").asText());
        String auto = plan("high-mountains", "model = \"auto\"");
        JsonNode pinned = json("reach", auto, "--model", "handheld", "--json");
        assertEquals(reach, pinned);
    }

    @Test
    void everyFaceSaysWhatWasChosenAndWhy() throws IOException {
        String auto = plan("high-mountains", "model = \"auto\"");
        Path out = folder.resolve("out");
        CommandRun run = CommandRun.of("reach", auto, "--out", out.toString(), "--only", "report,rasters");
        assertEquals(0, run.code(), run.err());
        String why = "The model is full-wave, chosen by the program: all ground is open";
        assertTrue(run.err().contains(why), run.err());
        assertTrue(run.out().contains("full-wave, chosen by the program"), run.out());
        assertTrue(Files.readString(out.resolve("report.html")).contains(why));
        JsonNode manifest =
                new ObjectMapper().readTree(out.resolve("reach-files.json").toFile());
        assertTrue(manifest.path("note").asText().startsWith(why), manifest.toString());
        CommandRun again =
                CommandRun.of("reach", auto, "--model", "handheld", "--out", out.toString(), "--only", "numbers");
        assertEquals(0, again.code(), again.err());
        assertFalse(new ObjectMapper()
                .readTree(out.resolve("reach-files.json").toFile())
                .has("note"));
    }

    private void assertClosedForm(String why, String plan) throws IOException {
        JsonNode reach = json("reach", plan, "--no-area", "--json");
        assertEquals("handheld", reach.path("model").asText());
        String said = reach.path("model_choice").asText();
        assertTrue(said.contains(why), said);
    }

    @Test
    void whatTheMarchIsNotForGoesByTheClosedForm() throws IOException {
        String auto = "model = \"auto\"";
        assertClosedForm(
                "not all ground is open", plan("high-mountains", auto, "cover = \"open\"", "cover = \"woodland\""));
        assertClosedForm("too steep", plan("invented-valley", auto, "radius_km = 2", "radius_km = 8"));
        assertClosedForm(
                "more than the usual wait of 10 s",
                plan("high-mountains", auto, "155.16", "902.5", "radius_km = 2", "radius_km = 15"));
        assertClosedForm(
                "several channels",
                plan(
                        "high-mountains",
                        auto,
                        "\n[channel]",
                        "\n[[channel]]",
                        "\n[target]",
                        "\n[[channel]]\nname = \"other\"\nfrequency_mhz = 151\npolarization = \"vertical\"\nmodulation = \"fm-12.5\"\n\n[target]"));
    }

    @Test
    void anEngineThatIsNamedGoesBeforeTheChoice() throws IOException {
        String auto = plan("high-mountains", "model = \"auto\"");
        assertEquals(
                "handheld",
                json("reach", auto, "--engine", "sweep", "--json").path("model").asText());
        JsonNode marched = json("reach", auto, "--engine", "march", "--json");
        assertEquals("full-wave", marched.path("model").asText());
        assertFalse(marched.has("model_choice"));
    }

    @Test
    void relayAndAtlasGoByTheClosedFormAndSaySo() throws IOException {
        String auto = plan("high-mountains", "model = \"auto\"");
        CommandRun relay = CommandRun.of("relay", auto, "--json");
        assertEquals(0, relay.code(), relay.err());
        assertTrue(
                relay.err().contains("The model is handheld, chosen by the program: a relay is looked for"),
                relay.err());
        CommandRun atlas = CommandRun.of(
                "atlas",
                auto,
                "--grid",
                "1000",
                "--out",
                folder.resolve("atlas").toString());
        assertEquals(0, atlas.code(), atlas.err());
        assertTrue(atlas.out().contains("handheld, chosen by the program"), atlas.out());
        assertTrue((atlas.out() + atlas.err()).contains("an atlas makes a map from every position"), atlas.err());
    }

    @Test
    void aCalibrationKeepsTheModelItWasLearnedWith() throws IOException {
        String learned = """
                made_from = "first walk"
                day = "2026-05-04"
                observations = 20
                spread_db = 5
                links = []
                MODEL
                [area]
                middle = "37.4800, -105.0300"
                radius_m = 2000

                [bias]
                loss_db = 2
                uncertainty_db = 1
                """;
        String auto = plan(
                "high-mountains", "model = \"auto\"", "[reach]", "[calibration]\nfile = \"learned.toml\"\n\n[reach]");
        Files.writeString(folder.resolve("learned.toml"), learned.replace("MODEL", ""));
        assertClosedForm("the calibration of the plan was learned with it", auto);
        Files.writeString(folder.resolve("learned.toml"), learned.replace("MODEL", "model = \"full-wave\""));
        assertEquals(
                "full-wave",
                json("reach", auto, "--no-area", "--json").path("model").asText());
    }

    @Test
    void aMarchedMapSaysWhereTheClosedFormDiffers() throws IOException {
        String auto = plan("high-mountains", "model = \"auto\"");
        Path out = folder.resolve("out");
        CommandRun run = CommandRun.of("reach", auto, "--out", out.toString());
        assertEquals(0, run.code(), run.err());
        JsonNode told = new ObjectMapper()
                .readTree(out.resolve("reach.json").toFile())
                .path("area")
                .path("model_difference");
        assertEquals("handheld", told.path("other").asText());
        assertEquals(6, told.path("felt_db").asDouble());
        assertTrue(told.path("more_share").asDouble() + told.path("less_share").asDouble() > 0, told.toString());
        String sentence = "By more than 6 dB the two models differ on";
        assertTrue(run.out().replaceAll("\\s+", " ").contains(sentence), run.out());
        String report = Files.readString(out.resolve("report.html"));
        assertTrue(report.contains(sentence));
        assertTrue(report.contains("Where full-wave and handheld differ"));
        assertTrue(Files.exists(out.resolve("map-models.png")));
        assertTrue(Files.exists(out.resolve("model-difference.tif")));
        CommandRun again = CommandRun.of("reach", auto, "--model", "handheld", "--out", out.toString());
        assertEquals(0, again.code(), again.err());
        assertFalse(Files.exists(out.resolve("map-models.png")));
        assertFalse(Files.exists(out.resolve("model-difference.tif")));
        assertFalse(again.out().contains("the two models differ"));
    }
}
