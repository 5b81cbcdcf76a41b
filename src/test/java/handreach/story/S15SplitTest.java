package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A channel on which relays hear and send on two frequencies, and stations as ends of the talks that are asked for. */
class S15SplitTest {
    private static final double SAME = 1e-9;
    private static final double RECEIVE_MHZ = 150.16;
    private static final double TRANSMIT_MHZ = 162.16;
    private static final String SPLIT =
            "receive_mhz = " + RECEIVE_MHZ + "\ntransmit_mhz = " + TRANSMIT_MHZ + "\nfrequency_mhz = 155.16";
    /** What [relay] of the sample says, as a station. */
    private static final String GEAR =
            "power_w = 5\nsensitivity_dbm = -118\ngain_dbd = -0.5\ngain_uncertainty_db = 1\nfeed_loss_db = 1\nheight_m = 6\n";

    private static final String TRUCK =
            "\n[[station]]\nname = \"truck\"\nat = \"36.2620, -84.2050\"\non = \"vehicle\"\n"
                    + "power_w = 25\nsensitivity_dbm = -118\ngain_dbd = -1\nfeed_loss_db = 1.5\n";

    @TempDir
    Path folder;

    /** The forest sample in large cells, one relay of two frequencies. */
    private String plan(String more, String... swaps) throws IOException {
        Path sample = Path.of("elevation-samples", "forest-hills").toAbsolutePath();
        String plan = Files.readString(sample.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + sample.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + sample.resolve("../invented-bench/bench.csv") + "'")
                .replaceAll("(?s)\\[\\[walk\\]\\].*", "")
                .replaceAll("max_slope_deg.*\nwalk_from.*", "")
                .replaceAll("chained.*\n", "")
                .replace("bearing_step_deg = 5", "bearing_step_deg = 90")
                .replace("cell_m = 30", "cell_m = 300")
                .replace("count = 2 ", "count = 1 ")
                .replace("mode = \"store-and-forward\"", "mode = \"two-frequency\"");
        for (int i = 0; i < swaps.length; i += 2) {
            assertTrue(plan.contains(swaps[i]), swaps[i]);
            plan = plan.replace(swaps[i], swaps[i + 1]);
        }
        return Files.writeString(folder.resolve("plan.toml"), plan + "\n" + more)
                .toString();
    }

    private static JsonNode json(String... words) throws IOException {
        CommandRun run = CommandRun.of(words);
        assertEquals(0, run.code(), run.err());
        return new ObjectMapper().readTree(run.out());
    }

    private static JsonNode named(JsonNode all, String name) {
        for (JsonNode one : all) if (one.get("name").asText().equals(name)) return one;
        throw new AssertionError(name + " in " + all);
    }

    private static Optional<Double> line(JsonNode way, String label) {
        for (JsonNode line : way.get("lines"))
            if (line.get("label").asText().contains(label))
                return Optional.of(line.get("db").asDouble());
        return Optional.empty();
    }

    /** The relay that is looked for, and the same gear standing where it was found: two ways of reckoning, one answer. */
    @Test
    void aRelayOnTwoFrequenciesIsReckonedEachWayAtItsOwn() throws IOException {
        JsonNode relay = json("relay", plan("", "frequency_mhz = 155.16", SPLIT), "--json");
        assertEquals(RECEIVE_MHZ, relay.get("relay").get("receive_mhz").asDouble());
        assertEquals(TRANSMIT_MHZ, relay.get("relay").get("transmit_mhz").asDouble());
        JsonNode site = relay.get("sites").get(0);
        JsonNode ledger = site.get("hops").get(0).get("ledger");
        double in = line(ledger.get("there"), "free space").orElseThrow();
        double out = line(ledger.get("back"), "free space").orElseThrow();
        assertEquals(20 * Math.log10(TRANSMIT_MHZ / RECEIVE_MHZ), in - out, 1e-3);
        String at = "\n[[station]]\nname = \"like it\"\nrelay = true\nat = \""
                + site.get("latitude").asText() + ", " + site.get("longitude").asText() + "\"\n" + GEAR;
        // Once on the channel's frequencies, once on the same as its own.
        for (String own :
                new String[] {"", "receive_mhz = " + RECEIVE_MHZ + "\ntransmit_mhz = " + TRANSMIT_MHZ + "\n"}) {
            JsonNode places = named(
                            json("reach", plan(at + own, "frequency_mhz = 155.16", SPLIT), "--json")
                                    .get("stations"),
                            "like it")
                    .get("places");
            for (JsonNode hop : site.get("hops")) {
                JsonNode odds = named(places, hop.get("name").asText()).get("odds");
                assertEquals(
                        hop.get("odds_there").asDouble(),
                        odds.get("there").get(0).asDouble(),
                        SAME);
                assertEquals(
                        hop.get("odds_back").asDouble(), odds.get("back").get(0).asDouble(), SAME);
                assertEquals(
                        hop.get("odds_pessimistic").asDouble(),
                        odds.get("pessimistic").get(0).asDouble(),
                        1e-6);
            }
        }
        // On one frequency it is another answer.
        JsonNode single = named(json("reach", plan(at), "--json").get("stations"), "like it")
                .get("places");
        JsonNode first = site.get("hops").get(0);
        double moved = Math.abs(first.get("odds_there").asDouble()
                - named(single, first.get("name").asText())
                        .get("odds")
                        .get("there")
                        .get(0)
                        .asDouble());
        assertTrue(moved > 1e-4, first + " " + single);
        String page = CommandRun.of("relay", plan("", "frequency_mhz = 155.16", SPLIT))
                .out();
        assertTrue(page.replaceAll("\\s+", " ").contains("it hears 150.1600 MHz and sends 162.1600 MHz"), page);
    }

    /** Left out, straight talks are on what the relay sends; store and forward stays on one frequency. */
    @Test
    void straightTalksAreOnWhatTheRelaySendsUnlessSaid() throws IOException {
        String bare = SPLIT.replace("\nfrequency_mhz = 155.16", "");
        assertEquals(
                TRANSMIT_MHZ,
                json("reach", plan("", "frequency_mhz = 155.16", bare), "--json")
                        .get("frequency_mhz")
                        .asDouble());
        JsonNode forward = json(
                        "relay",
                        plan("", "frequency_mhz = 155.16", SPLIT, "\"two-frequency\"", "\"store-and-forward\""),
                        "--json")
                .get("relay");
        assertFalse(forward.has("receive_mhz"), forward.toString());
    }

    @Test
    void badSplitsAreToldInALine() throws IOException {
        Map<String, String> faults = new TreeMap<>(Map.of(
                "frequency_mhz = 155.16\nreceive_mhz = 150.16", "receive_mhz stands alone",
                "receive_mhz = 150.16\ntransmit_mhz = 150.16", "transmit_mhz is what receive_mhz says",
                "receive_mhz = 15\ntransmit_mhz = 150.16", "receive_mhz is 15"));
        for (Map.Entry<String, String> fault : faults.entrySet()) {
            CommandRun run = CommandRun.of("reach", plan("", "frequency_mhz = 155.16", fault.getKey()));
            assertEquals(2, run.code());
            assertTrue(run.err().contains(fault.getValue()), run.err());
            assertEquals(1, run.err().lines().count(), run.err());
        }
        CommandRun chain = CommandRun.of(
                "relay",
                plan(
                        "",
                        "frequency_mhz = 155.16",
                        SPLIT,
                        "mode = \"two-frequency\"",
                        "mode = \"two-frequency\"\nchained = true"));
        assertEquals(2, chain.code());
        assertTrue(chain.err().contains("none hears what another sends"), chain.err());
    }

    /** A station as an end of a listed talk, and as the base: its straight talks are those of the list of who reaches it. */
    @Test
    void aStationCanBeAnEndOfATalk() throws IOException {
        String listed = "talk = \"listed\"\npairs = [[\"creek crew\", \"truck\"], [\"truck\", \"spike camp\"]]";
        JsonNode relay = json("relay", plan(TRUCK, "talk = \"all-to-base\"", listed), "--json");
        JsonNode places = named(relay.get("stations"), "truck").get("places");
        for (JsonNode talk : relay.get("direct").get("talks")) {
            assertEquals("truck", talk.get("b").asText());
            JsonNode odds = named(places, talk.get("a").asText()).get("odds");
            assertEquals(
                    odds.get("there").get(0).asDouble(), talk.get("odds_there").asDouble(), SAME);
            assertEquals(
                    odds.get("back").get(0).asDouble(), talk.get("odds_back").asDouble(), SAME);
        }
        assertEquals(2, relay.get("direct").get("talks").size());
        CommandRun assign = CommandRun.of("assign", plan(TRUCK, "talk = \"all-to-base\"", listed), "--json");
        assertEquals(0, assign.code(), assign.err());
        assertTrue(assign.out().contains("truck"), assign.out());
        JsonNode base = json("relay", plan(TRUCK + "base = true\n"), "--json");
        assertEquals(5, base.get("direct").get("talks").size()); // two bases with two crews, and with one another
        String half = plan(TRUCK + "base = true\n", "base = true", "base = false");
        assertEquals(3, json("relay", half, "--json").get("direct").get("talks").size());
    }

    @Test
    void whoIsNoEndOfATalkIsToldInALine() throws IOException {
        String relay = "\n[[station]]\nname = \"box\"\nat = \"36.2620, -84.2050\"\nrelay = true\n" + GEAR;
        String own = "\n[[station]]\nname = \"other\"\nat = \"36.2620, -84.2050\"\nfrequency_mhz = 160\n" + GEAR;
        for (String[] bad : new String[][] {
            {"box", "names \"box\", a relay"},
            {"other", "names \"other\", which stands on frequencies of its own"},
            {"truk", "no position, route, sector or station of that name. Did you mean truck?"}
        }) {
            CommandRun run = CommandRun.of(
                    "relay",
                    plan(
                            TRUCK + relay + own,
                            "talk = \"all-to-base\"",
                            "talk = \"listed\"\npairs = [[\"creek crew\", \"" + bad[0] + "\"]]"));
            assertEquals(2, run.code());
            assertTrue(run.err().contains(bad[1]), run.err());
            assertEquals(1, run.err().lines().count(), run.err());
        }
        CommandRun both = CommandRun.of("reach", plan(relay + "base = true\n"));
        assertTrue(both.err().contains("base stands beside relay = true"), both.err());
    }
}
