package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The state of the trees is a word of the plan, and every face says what it moves, in decibels and in ground. */
class S22FoliageTest {
    @TempDir
    Path folder;

    private String plan(String foliage, String... swaps) throws IOException {
        return plan(folder, foliage, swaps);
    }

    /** The forest sample at 446 MHz with such trees. */
    static String plan(Path folder, String foliage, String... swaps) throws IOException {
        Path sample = Path.of("elevation-samples/forest-hills").toAbsolutePath();
        String text = Files.readString(sample.resolve("plan.toml"))
                .replace("frequency_mhz = 155.16", "frequency_mhz = 446.1")
                .replace("tiles = \"tiles\"", "tiles = '" + sample.resolve("tiles") + "'\n" + foliage)
                .replace(
                        "../invented-bench",
                        sample.resolveSibling("invented-bench").toString())
                .replaceAll("(?s)\\[\\[walk]].*", "");
        for (int i = 0; i < swaps.length; i += 2) text = text.replace(swaps[i], swaps[i + 1]);
        Path file = folder.resolve("trees-" + foliage.replaceAll("\\W", "") + swaps.length + ".toml");
        return Files.writeString(file, text).toString();
    }

    private static JsonNode json(String... args) throws IOException {
        CommandRun run = CommandRun.of(args);
        assertEquals(0, run.code(), run.err());
        return new ObjectMapper().readTree(run.out());
    }

    private static String said(String... args) {
        CommandRun run = CommandRun.of(args);
        assertEquals(0, run.code(), run.err());
        return run.out().replaceAll("\\s+", " ");
    }

    @Test
    void whatItMovesIsWhatAPlanInLeafSays() throws IOException {
        JsonNode leafy = json("reach", plan(""), "--no-area", "--json");
        JsonNode bare = json("reach", plan("foliage = \"out-of-leaf\""), "--no-area", "--json");
        assertTrue(leafy.path("foliage").isMissingNode());
        assertEquals("out-of-leaf", bare.at("/foliage/word").asText());
        boolean isMoved = false;
        for (int i = 0; i < leafy.get("loadouts").size(); i++) {
            JsonNode before = leafy.at("/loadouts/" + i);
            JsonNode told = bare.at("/foliage/in_leaf/" + i);
            assertEquals(before.get("loadout"), told.get("loadout"));
            assertEquals(
                    before.get("median_km").asDouble(), told.get("median_km").asDouble());
            assertEquals(
                    before.get("area_share").asDouble(), told.get("area_share").asDouble());
            double now = bare.at("/loadouts/" + i + "/area_share").asDouble();
            assertTrue(now >= told.get("area_share").asDouble());
            isMoved |= now > told.get("area_share").asDouble();
        }
        assertTrue(isMoved, "less loss in the woods opens no ground at all");
    }

    @Test
    void inLeafSaidIsInLeafUnsaid() throws IOException {
        JsonNode unsaid = json("reach", plan(""), "--no-area", "--json");
        assertEquals(unsaid, json("reach", plan("foliage = \"in-leaf\""), "--no-area", "--json"));
    }

    @Test
    void thePathTellsBothLosses() throws IOException {
        String[] ends = {"--from", "spike camp", "--to", "north spur"};
        JsonNode leafy = json("path", "--plan", plan(""), ends[0], ends[1], ends[2], ends[3], "--json");
        JsonNode wet = json("path", "--plan", plan("foliage = \"wet\""), ends[0], ends[1], ends[2], ends[3], "--json");
        double inLeaf = wet.at("/foliage/in_leaf_db").asDouble();
        assertEquals(woodland(leafy), inLeaf, 1e-9);
        // by hand: 446.1 MHz lies 0.361147 of the way, so 1.05 + 0.15 × 0.361147
        assertEquals(1.104172, wet.at("/foliage/woodland_db").asDouble() / inLeaf, 1e-5);
        assertEquals(woodland(wet), wet.at("/foliage/woodland_db").asDouble());
        assertTrue(doubt(wet) > doubt(leafy));
        String text = said("path", "--plan", plan("foliage = \"wet\""), ends[0], ends[1], ends[2], ends[3]);
        assertTrue(text.contains("Trees: wet, as the plan says. The woods at the ends take "), text);
        assertTrue(text.contains("common practice, no source"), text);
    }

    private static double woodland(JsonNode path) {
        for (JsonNode part : path.get("parts"))
            if (part.get("name").asText().equals("woodland"))
                return part.get("db").asDouble();
        throw new AssertionError("no part woodland");
    }

    private static double doubt(JsonNode path) {
        for (JsonNode line : path.at("/ledger/there/lines"))
            if (line.get("label").asText().equals("doubt of the loss as a whole"))
                return line.at("/common_doubt_db").asDouble();
        throw new AssertionError(path.at("/ledger/there/lines").toString());
    }

    @Test
    void theReachSaysItPerEndAndInGround() throws IOException {
        String text = said("reach", plan("foliage = \"snow\""), "--no-area");
        assertTrue(
                text.contains(
                        "Leaves and weather Trees: snow, as the plan says. At 446.1 MHz an end deep in a wood loses "),
                text);
        assertTrue(text.contains("to the common doubt"), text);
    }

    @Test
    void aModelWithoutLeavesAndAPlanWithoutWoodsSaySo() throws IOException {
        String flat = plan("foliage = \"wet\"", "[reach]", "[reach]\nmodel = \"delta-bullington\"");
        String text = said("reach", flat, "--no-area");
        assertTrue(text.contains("delta-bullington takes trees as a height and knows no leaves"), text);
        String open = said("reach", plan("foliage = \"wet\"", "cover = \"woodland\"", "cover = \"open\""), "--no-area");
        assertTrue(open.contains("No wood is known in this plan, so nothing is moved."), open);
        assertFalse(open.contains("in leaf"), open);
    }
}
