package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Report and JSON tell what noise is taken where: the table with its deciles, a measured floor, an end with noise of its own. */
class S22NoiseTest {
    @TempDir
    Path folder;

    private String plan() throws IOException {
        return S22FoliageTest.plan(
                folder,
                "noise_floor_dbm = -118\nnoise_bandwidth_khz = 10",
                "446.1",
                "155.16",
                "name = \"factory at hip\"\n",
                "name = \"factory at hip\"\nnoise = \"city\"\n");
    }

    /** By hand: −118 dBm in 10 kHz over −173.975 dBm/Hz is −118 + 173.975 − 40 = 15.975 dB over kT. */
    @Test
    void theJsonTellsTheMeasuredFloorAndTheEndInTown() throws IOException {
        CommandRun run = CommandRun.of("reach", plan(), "--no-area", "--json");
        assertEquals(0, run.code(), run.err());
        JsonNode noise = new ObjectMapper().readTree(run.out()).get("noise");
        assertEquals(2, noise.size());
        assertEquals("every other end", noise.at("/0/at").asText());
        assertEquals(
                "measured floor, −118.0 dBm in 10 kHz", noise.at("/0/label").asText());
        assertEquals(15.975, noise.at("/0/median_over_kt_db").asDouble(), 0.001);
        assertEquals("factory at hip", noise.at("/1/at").asText());
        assertEquals("city", noise.at("/1/label").asText());
        // deciles of P.372 for cities, from memory
        assertEquals(11.0, noise.at("/1/hour_up_db").asDouble());
        assertEquals(6.7, noise.at("/1/hour_down_db").asDouble());
        assertEquals(8.4, noise.at("/1/place_spread_db").asDouble());
    }

    @Test
    void theReportTellsThemAndThatThereIsNoHour() throws IOException {
        Path page = folder.resolve("report.html");
        CommandRun run = CommandRun.of("report", plan(), "--out", page.toString());
        assertEquals(0, run.code(), run.err());
        String text = Files.readString(page).replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");
        assertTrue(
                text.contains("measured floor, −118.0 dBm in 10 kHz, 16.0 dB over kT; places differ by 6.8 dB"), text);
        assertTrue(text.contains("Noise at factory at hip"), text);
        assertTrue(text.contains("it rises by 11.0 and falls by 6.7 dB a tenth of the time"), text);
        assertTrue(text.contains("no hour of the day: P.372 gives man-made noise none at VHF and UHF"), text);
        assertTrue(text.contains("measured, as stated in the plan"), text);
    }
}
