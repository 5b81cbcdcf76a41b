package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import org.junit.jupiter.api.Test;

/** What a new user asks of the sample with a relay: who must carry what, and whether the relay that stands there serves. */
class S15ValleyRelayTest {
    private static final String SAMPLE = "elevation-samples/valley-relay";

    private static String page(String command) {
        CommandRun run = CommandRun.of(command, SAMPLE);
        assertEquals(0, run.code(), run.err());
        return run.out().replaceAll("\\s+", " ");
    }

    @Test
    void theFirstSentencesAnswerBothQuestions() throws IOException {
        String relay = page("relay");
        assertTrue(relay.contains("No new relay is needed: of "), relay);
        assertTrue(relay.contains("by way of what stands already (north relay)"), relay);
        assertTrue(relay.contains("hears 150.1600 MHz, sends 155.1600 MHz"), relay);
        String assign = page("assign");
        assertTrue(assign.contains("The least burden that brings the "), assign);
        assertTrue(
                assign.contains(
                        "Of these 2 have the wanted odds, as people are loaded, by way of what stands already (north relay)."),
                assign);
        assertFalse(assign.contains("says where a relay would help"), assign);
        JsonNode carried = new ObjectMapper()
                .readTree(CommandRun.of("assign", SAMPLE, "--json").out())
                .get("best")
                .get("carries");
        assertFalse(carried.isEmpty());
    }
}
