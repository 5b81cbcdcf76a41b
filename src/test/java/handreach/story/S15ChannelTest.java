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

/** Several channels: each is answered as a plan with that channel alone is, and an antenna without a delta on one is told. */
class S15ChannelTest {
    private static final String TWO =
            "[[channel]]\nname = \"low\"\nfrequency_mhz = 155.16\n\n[[channel]]\nname = \"high\"\nfrequency_mhz = 446.1\n";
    private static final double WHIP_DB = 4;

    @TempDir
    Path folder;

    /** The forest sample with these channels and this at its end; the bench left out, its antennas declared. */
    private String plan(String name, String channels, String more) throws IOException {
        Path sample = Path.of("elevation-samples", "forest-hills").toAbsolutePath();
        String plan = Files.readString(sample.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + sample.resolve("tiles") + "'")
                .replaceAll("(?s)\\[channel\\].*?(?=\\[target\\])", channels)
                .replaceAll("(?s)\\[bench\\].*?(?=\\[\\[radio\\]\\])", "")
                .replace("bench_with_counterpoise = \"quarter-wave whip with wire\"", declared(WHIP_DB))
                .replace("radiator = \"half-wave-end-fed\"", "radiator = \"half-wave-end-fed\"\n" + declared(5))
                .replace("radiator = \"five-eighths\"", "radiator = \"five-eighths\"\n" + declared(6))
                .replaceAll("(?s)\\[\\[walk\\]\\].*", "")
                .replace("bearing_step_deg = 5", "bearing_step_deg = 30");
        return Files.writeString(folder.resolve(name), plan + "\n" + more).toString();
    }

    private static String declared(double db) {
        return "delta_db = " + db + "\ndelta_uncertainty_db = 1\ndelta_mount = \"in hand\"";
    }

    private static String delta(String antenna, double db) {
        return "[[delta]]\nantenna = \"" + antenna + "\"\nchannel = \"high\"\n" + declared(db) + "\n";
    }

    private static JsonNode json(String... words) throws IOException {
        CommandRun run = CommandRun.of(words);
        assertEquals(0, run.code(), run.err());
        return new ObjectMapper().readTree(run.out());
    }

    private static void agree(JsonNode alone, JsonNode column, JsonNode chosen) {
        assertEquals(
                alone.get("frequency_mhz").asDouble(),
                column.get("frequency_mhz").asDouble());
        for (int i = 0; i < alone.get("loadouts").size(); i++) {
            JsonNode loadout = alone.get("loadouts").get(i);
            JsonNode beside = column.get("loadouts").get(i);
            assertEquals(loadout.get("loadout"), beside.get("loadout"));
            assertEquals(loadout.get("median_km"), beside.get("median_km"));
            assertEquals(loadout.get("area_share"), beside.get("area_share"));
            assertEquals(loadout.get("bearings"), chosen.get("loadouts").get(i).get("bearings"));
        }
        int served = 0;
        for (JsonNode pair : alone.get("who_reaches_whom").get("pairs"))
            if ((pair.get("a").asText().equals("spike camp")
                            || pair.get("b").asText().equals("spike camp"))
                    && pair.get("odds").get("weaker").get(0).asDouble() >= 0.8) served++;
        assertEquals(served, column.get("places_served").asInt());
        assertEquals(2, column.get("places_of").asInt());
        assertEquals(alone.get("who_reaches_whom"), chosen.get("who_reaches_whom"));
    }

    /** With a delta for every antenna, the second channel is that of a plan that has it alone, with those deltas. */
    @Test
    void everyChannelIsAnsweredAsAloneInAPlan() throws IOException {
        String deltas =
                delta("quarter-wave whip", WHIP_DB) + delta("end-fed half-wave", 5) + delta("five-eighths whip", 6);
        String both = plan("both.toml", TWO, deltas);
        JsonNode side = json("reach", both, "--json");
        assertEquals(2, side.get("channels").size());
        String low = "[channel]\nname = \"low\"\nfrequency_mhz = 155.16\n";
        String high = "[channel]\nname = \"high\"\nfrequency_mhz = 446.1\n";
        agree(
                json("reach", plan("low.toml", low, ""), "--json"),
                side.get("channels").get(0),
                side);
        JsonNode chosen = json("reach", both, "--channel", "high", "--json");
        assertEquals("high", chosen.get("channel").asText());
        agree(
                json("reach", plan("high.toml", high, ""), "--json"),
                side.get("channels").get(1),
                chosen);
        assertTrue(side.get("channels").get(0).get("noise_db").asDouble()
                > side.get("channels").get(1).get("noise_db").asDouble() + 5);
        assertEquals(
                0,
                json("reach", plan("low.toml", low, ""), "--json")
                        .get("channels")
                        .size());
    }

    @Test
    void aMissingDeltaIsToldWithWhatWasTaken() throws IOException {
        String both = plan("both.toml", TWO, delta("end-fed half-wave", 5) + delta("five-eighths whip", 6));
        CommandRun run = CommandRun.of("reach", both);
        assertEquals(0, run.code(), run.err());
        String said = run.out().replaceAll("\\s+", " ");
        assertTrue(said.contains("Which channel"), said);
        assertTrue(
                said.contains(
                        "high: quarter-wave whip has no delta on high (446.1 MHz): that of 155.16 MHz is taken, with 3 dB"),
                said);
        assertFalse(said.contains("end-fed half-wave has no delta"), said);
        double with =
                doubtDb(plan("with.toml", TWO, delta("quarter-wave whip", WHIP_DB) + delta("end-fed half-wave", 5)));
        double without = doubtDb(both);
        assertTrue(without > with + 0.1, without + " " + with);
    }

    /** Width of the interval of what the whip adds on the second channel, km. */
    private static double doubtDb(String plan) throws IOException {
        JsonNode whip = json("reach", plan, "--channel", "high", "--json")
                .get("loadouts")
                .get(3);
        JsonNode interval = whip.get("gains").get("ground").get("gain_interval_95_km2");
        return interval.get(1).asDouble() - interval.get(0).asDouble();
    }

    @Test
    void aWrongChannelOrDeltaIsToldInALine() throws IOException {
        CommandRun option = CommandRun.of("reach", plan("a.toml", TWO, ""), "--channel", "hihg");
        assertEquals(2, option.code());
        assertTrue(
                option.err()
                        .contains(
                                "--channel: \"hihg\" is not a channel of the plan. Did you mean high? It has: low, high."),
                option.err());
        CommandRun run = CommandRun.of(
                "reach",
                plan(
                        "b.toml",
                        TWO.replace("\"high\"", "\"low\""),
                        "[[delta]]\nantenna = \"factory helical\"\nchannel = \"mid\"\n" + declared(1) + "\n"));
        assertEquals(2, run.code());
        for (String words : new String[] {
            "name \"low\" is used twice. Give every channel a name of its own.",
            "channel is \"mid\", but the plan has no channel of that name.",
            "delta_db is given for the control"
        }) assertTrue(run.err().contains(words), words + "\n" + run.err());
    }
}
