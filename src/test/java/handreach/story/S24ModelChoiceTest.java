package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

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

    /** The answer is that of a plan that says auto, to the last word, and the closed form is had by its name. */
    @Test
    void aPlanThatNamesNoModelIsMarchedOverBareGround() throws IOException {
        String silent = plan("high-mountains", "");
        JsonNode reach = json("reach", silent, "--json");
        JsonNode path = path(silent);
        assertEquals("full-wave", reach.path("model").asText());
        assertEquals(reach, json("reach", silent, "--model", "auto", "--json"));
        JsonNode pinned = json("reach", silent, "--model", "handheld", "--json");
        assertEquals("handheld", pinned.path("model").asText());
        assertFalse(pinned.has("model_choice"));
        String auto = plan("high-mountains", "model = \"auto\"");
        assertEquals(reach, json("reach", auto, "--json"));
        assertEquals(path, path(auto));
        String named = plan("high-mountains", "model = \"handheld\"");
        assertEquals(pinned, json("reach", named, "--json"));
        assertNotEquals(path, path(named));
    }

    /** Pairs of people by reach and by path, where both are marched unasked. */
    @Test
    void aMarchedPairHasOneFigureInReachAndPath() throws IOException {
        String silent = plan("high-mountains", "");
        JsonNode pairs = json("reach", silent, "--json").at("/who_reaches_whom/pairs");
        assertFalse(pairs.isEmpty());
        for (JsonNode pair : pairs) {
            String a = pair.path("a").asText();
            String b = pair.path("b").asText();
            JsonNode ledger = json("path", "--plan", silent, "--from", a, "--to", b, "--json")
                    .path("ledger");
            for (String way : List.of("there", "back"))
                assertEquals(
                        pair.at("/odds/" + way + "/0").asDouble(),
                        ledger.at("/" + way + "/odds_of_copy").asDouble(),
                        1e-9,
                        a + " and " + b + ", " + way);
            assertEquals(groundDb(ledger.path("there")), groundDb(ledger.path("back")), "one march for both ways");
        }
    }

    /** What free space and the ground take in one way of a ledger. */
    private static double groundDb(JsonNode way) {
        double sum = 0;
        int found = 0;
        for (JsonNode line : way.path("lines"))
            if (List.of("free space", "ground and relief")
                    .contains(line.path("label").asText())) {
                sum += line.path("db").asDouble();
                found++;
            }
        assertEquals(2, found, way.toString());
        return sum;
    }

    @Test
    void theOtherCommandsMarchASilentPlanToo() throws IOException {
        String silent = plan("high-mountains", "", "radius_km = 2", "radius_km = 1");
        Path out = Files.createDirectories(folder.resolve("out"));
        String why = "The model is full-wave, chosen by the program: all ground is open";
        String page = out.resolve("report.html").toString();
        for (String[] words : new String[][] {
            {"assign", silent},
            {"card", silent, "--out", out.resolve("card.pdf").toString()},
            {"report", silent, "--out", page}
        }) {
            CommandRun run = CommandRun.of(words);
            assertEquals(0, run.code(), run.err());
            assertTrue((run.out() + run.err()).contains(why), words[0] + ": " + run.err());
        }
        assertTrue(Files.readString(Path.of(page)).contains("full-wave, chosen by the program"));
        try (PDDocument card = Loader.loadPDF(out.resolve("card.pdf").toFile())) {
            String printed = new PDFTextStripper().getText(card);
            assertTrue(printed.contains("Cautions"), printed);
            assertFalse(
                    printed.contains("chosen by the program"),
                    "why a model was chosen is no doubt to be carried: " + printed);
        }
    }

    /** A wood, or more ground than is marched in the usual wait, turns the same silent plan to the closed form, and no note comes of it. */
    @Test
    void woodOrAWiderRadiusTurnsASilentPlanToTheClosedFormInAFewWords() throws IOException {
        String[] near = {"155.16", "902.5", "radius_km = 2", "radius_km = 1"};
        JsonNode bare = json("reach", plan("high-mountains", "", near), "--no-area", "--json");
        assertEquals("full-wave", bare.path("model").asText());
        String[] wooded = {"155.16", "902.5", "radius_km = 2", "radius_km = 1", "\"open\"", "\"woodland\""};
        assertQuietlyClosed("not all ground is open", plan("high-mountains", "", wooded));
        String[] wide = {"155.16", "902.5", "radius_km = 2", "radius_km = 15"};
        assertQuietlyClosed("the march of its map counts as ", plan("high-mountains", "", wide));
    }

    private static void assertQuietlyClosed(String why, String plan) throws IOException {
        JsonNode reach = json("reach", plan, "--no-area", "--json");
        assertEquals("handheld", reach.path("model").asText());
        String said = reach.path("model_choice").asText();
        assertTrue(said.startsWith("The model is handheld, since " + why), said);
        assertFalse(
                reach.path("warnings").toString().contains("The model is"),
                reach.path("warnings").toString());
        CommandRun run = CommandRun.of("reach", plan, "--no-area");
        assertTrue(run.out().replaceAll("\\s+", " ").contains("Model: handheld, since " + why), run.out());
        assertFalse(run.err().contains("The model is"), run.err());
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

    @ParameterizedTest
    @ValueSource(strings = {"", "model = \"auto\""})
    void relayAndAtlasGoByTheClosedFormAndSaySo(String model) throws IOException {
        String auto = plan("high-mountains", model);
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

    /** What the closed form serves in any case needs no word more. */
    @Test
    void relayOverWoodsSaysNothingOfAChoice() throws IOException {
        CommandRun relay = CommandRun.of(
                "relay", plan("high-mountains", "", "cover = \"open\"", "cover = \"woodland\""), "--json");
        assertEquals(0, relay.code(), relay.err());
        assertFalse(relay.err().contains("chosen by the program"), relay.err());
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
