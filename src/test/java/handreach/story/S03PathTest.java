package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One path over a profile that a user wrote, through the real command line. */
class S03PathTest {
    @TempDir
    Path folder;

    private static JsonNode json(CommandRun run) throws IOException {
        assertEquals(0, run.code(), run.err());
        return new ObjectMapper().readTree(run.out());
    }

    private String profile(String body) throws IOException {
        Path file = folder.resolve("profile.csv");
        Files.writeString(file, body);
        return file.toString();
    }

    /** 10 km, 151.82 MHz: 32.4478 + 20 log f + 20 log d (Rec. ITU-R P.525-4, constant from the speed of light). */
    @Test
    void freeSpaceIsThatOfP525() throws IOException {
        JsonNode node = json(CommandRun.of(
                "path",
                "--profile",
                profile("distance_km,height_m\n0,0\n10,0\n"),
                "--frequency-mhz",
                "151.82",
                "--model",
                "free-space",
                "--json"));
        assertEquals(96.0744, node.get("loss_db").asDouble(), 0.01);
        assertEquals("free-space", node.get("model").asText());
        assertEquals(10, node.get("distance_km").asDouble(), 1e-9);
    }

    /** One edge of height 30 m over the ray, 2 + 8 km, 150 MHz: \u03bd 0.7503, J 12.21 dB (Rec. ITU-R P.526-15 section 4.1). */
    @Test
    void aSingleEdgeCostsWhatP526Says() throws IOException {
        JsonNode node = json(CommandRun.of(
                "path",
                "--profile",
                profile("distance_km,height_m\n0,0\n2,40\n10,0\n"),
                "--frequency-mhz",
                "150",
                "--tx-height-m",
                "10",
                "--rx-height-m",
                "10",
                "--k-factor",
                "1000000",
                "--model",
                "single-edge",
                "--json"));
        double excess =
                node.get("loss_db").asDouble() - node.get("free_space_db").asDouble();
        assertEquals(12.21, excess, 0.1);
    }

    /** 1 km, 150 MHz, 1.5 m, vertical, 15/0.005: 108.45 dB by the full sum with the surface wave (Norton). */
    @Test
    void twoRayHoldsTheSurfaceWave() throws IOException {
        JsonNode node = json(CommandRun.of(
                "path",
                "--profile",
                profile("distance_km,height_m\n0,0\n0.5,0\n1,0\n"),
                "--frequency-mhz",
                "150",
                "--model",
                "two-ray",
                "--json"));
        assertEquals(108.45, node.get("loss_db").asDouble(), 0.05);
        assertTrue(node.has("excess_db"));
    }

    @Test
    void deltaBullingtonNamesItsDiffraction() throws IOException {
        JsonNode node = json(CommandRun.of(
                "path",
                "--profile",
                profile(
                        "distance_km,height_m\n0,100\n1,110\n2,130\n3,180\n4,150\n5,140\n6,160\n7,200\n8,150\n9,120\n10,110\n"),
                "--frequency-mhz",
                "150",
                "--permittivity",
                "22",
                "--conductivity",
                "0.003",
                "--k-factor",
                "1.33417",
                "--model",
                "delta-bullington",
                "--json"));
        assertEquals(48.87, node.get("diffraction_db").asDouble(), 0.05);
    }

    @Test
    void thePartsAddUpForEveryModel() throws IOException {
        JsonNode node = json(CommandRun.of(
                "path",
                "--profile",
                profile("distance_km,height_m\n0,100\n1,180\n2,90\n3,110\n"),
                "--frequency-mhz",
                "155",
                "--model",
                "all",
                "--json"));
        for (JsonNode model : node.get("models")) {
            double sum = 0;
            for (JsonNode part : model.get("parts")) sum += part.get("db").asDouble();
            assertEquals(
                    model.get("loss_db").asDouble(),
                    sum,
                    1e-6,
                    model.get("model").asText());
        }
        assertTrue(node.get("reading").asText().length() > 20);
    }

    /** Odds of the most hopeful model under a table of all of them are no answer: the plan's model gives 1 %, free space 100 %. */
    @Test
    void besideAllModelsTheLedgerIsThatOfThePlansModel() throws IOException {
        String[] ask = {
            "path", "--plan", "elevation-samples/forest-hills", "--from", "spike camp", "--to", "north spur", "--json"
        };
        JsonNode one = json(CommandRun.of(ask));
        String[] askAll = Arrays.copyOf(ask, ask.length + 2);
        askAll[ask.length] = "--model";
        askAll[ask.length + 1] = "all";
        CommandRun run = CommandRun.of(askAll);
        JsonNode all = json(run);
        assertEquals("handheld", all.get("model").asText());
        assertEquals("handheld", all.get("ledger_model").asText());
        assertEquals(one.get("ledger"), all.get("ledger"));
        assertEquals(one.get("loss_db"), all.get("loss_db"));
        assertEquals("handheld", all.get("models").get(0).get("model").asText());
        askAll[ask.length - 1] = "--explain";
        String text = CommandRun.of(askAll).out();
        assertTrue(text.contains("The ledger and its odds are by handheld."), text);
    }

    @Test
    void everyFaultOfTheOptionsIsToldAtOnce() throws IOException {
        CommandRun run = CommandRun.of(
                "path",
                "--profile",
                profile("distance_km,height_m\n0,0\n1,0\n"),
                "--frequency-mhz",
                "-3",
                "--ground",
                "avrage",
                "--k-factor",
                "0");
        assertEquals(2, run.code());
        assertEquals(3, run.err().lines().count(), run.err());
        assertTrue(run.err().contains("Did you mean average?"), run.err());
    }

    @Test
    void aProfileFaultNamesFileAndLine() throws IOException {
        CommandRun run = CommandRun.of(
                "path", "--profile", profile("distance_km,height_m\n0,0\n1,x\n0.5,3\n"), "--frequency-mhz", "155");
        assertEquals(2, run.code());
        assertTrue(run.err().contains("profile.csv line 3:"), run.err());
        assertTrue(run.err().contains("profile.csv line 4:"), run.err());
    }

    @Test
    void tooShortAPathIsRefused() throws IOException {
        CommandRun run = CommandRun.of(
                "path", "--profile", profile("distance_km,height_m\n0,0\n0.02,0\n"), "--frequency-mhz", "155");
        assertEquals(2, run.code());
        assertTrue(run.err().contains("at least 50 m"), run.err());
    }
}
