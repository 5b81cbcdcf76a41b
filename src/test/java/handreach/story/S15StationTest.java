package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What already stands: its odds are those of single paths and of hops that a relay study reckons, and it comes before a new relay. */
class S15StationTest {
    private static final double SAME = 1e-9;
    private static final double CHANNEL_MHZ = 155.16;
    private static final String GEAR = "power_w = 5\nsensitivity_dbm = -118\ngain_dbd = -0.5\nfeed_loss_db = 1\n";
    private static final String SPOT = "36.2600, -84.2300";

    @TempDir
    Path folder;

    /** The forest sample in large cells, with more at its end. */
    private String plan(String more, String... swaps) throws IOException {
        Path sample = Path.of("elevation-samples", "forest-hills").toAbsolutePath();
        String plan = Files.readString(sample.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + sample.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + sample.resolve("../invented-bench/bench.csv") + "'")
                .replaceAll("(?s)\\[\\[walk\\]\\].*", "")
                .replace("bearing_step_deg = 5", "bearing_step_deg = 90")
                .replace("cell_m = 30", "cell_m = 200")
                .replace("count = 2 ", "count = 1 ");
        for (int i = 0; i < swaps.length; i += 2) {
            assertTrue(plan.contains(swaps[i]), swaps[i]);
            plan = plan.replace(swaps[i], swaps[i + 1]);
        }
        return Files.writeString(folder.resolve("plan.toml"), plan + "\n" + more)
                .toString();
    }

    private static String station(String name, String at, String more) {
        return "[[station]]\nname = \"" + name + "\"\nat = \"" + at + "\"\n" + GEAR + more + "\n";
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

    private static double odds(JsonNode place, String way) {
        assertEquals(
                place.get("odds").get(way).get(0).asDouble(),
                place.get("odds").get(way).get(1).asDouble());
        return place.get("odds").get(way).get(0).asDouble();
    }

    /** The same radio, antenna and noise as a loadout on a mast, over the same path. */
    @Test
    void aBaseHasTheOddsOfThePathBetweenTheSameEnds() throws IOException {
        String twin = """
                [[radio]]
                name = "base radio"
                power_w = 5
                sensitivity_dbm = -118
                [[antenna]]
                name = "dipole"
                radiator = "half-wave-dipole"
                gain_dbd = -0.5
                [[loadout]]
                name = "base set"
                radio = "base radio"
                antenna = "dipole"
                carry = "mast"
                height_m = 9
                noise = "residential"
                """;
        String plan = plan(
                twin
                        + "[[station]]\nname = \"truck\"\nat = \"" + SPOT
                        + "\"\npower_w = 5\nsensitivity_dbm = -118\ngain_dbd = -0.5\nfeed_loss_db = 0\nheight_m = 9\n"
                        + "noise = \"residential\"\n",
                "loadout = \"factory at hip\"",
                "loadout = \"factory at hip\"\ntowards = \"spike camp\"");
        JsonNode truck = named(json("reach", plan, "--json").get("stations"), "truck");
        for (JsonNode place : truck.get("places")) {
            JsonNode ledger = json(
                            "path",
                            "--plan",
                            plan,
                            "--from",
                            place.get("name").asText(),
                            "--from-loadout",
                            place.get("loadout").asText(),
                            "--to",
                            SPOT,
                            "--to-loadout",
                            "base set",
                            "--json")
                    .get("ledger");
            assertEquals(
                    ledger.get("there").get("odds_of_copy").asDouble(), odds(place, "there"), SAME, place.toString());
            assertEquals(
                    ledger.get("back").get("odds_of_copy").asDouble(), odds(place, "back"), SAME, place.toString());
        }
        assertEquals(3, truck.get("places").size());
        assertTrue(odds(named(truck.get("places"), "spike camp"), "there") > 0.01);
    }

    /** One position that faces the other way: its odds in the list of places are those of the path. */
    @Test
    void whoFacesAWayHasTheOddsOfThePathInTheListToo() throws IOException {
        String plan = plan("", "loadout = \"factory at hip\"", "loadout = \"factory at hip\"\nheading_deg = 240");
        for (JsonNode pair :
                json("reach", plan, "--json").get("who_reaches_whom").get("pairs")) {
            JsonNode ledger = json(
                            "path",
                            "--plan",
                            plan,
                            "--from",
                            pair.get("a").asText(),
                            "--to",
                            pair.get("b").asText(),
                            "--json")
                    .get("ledger");
            assertEquals(
                    ledger.get("there").get("odds_of_copy").asDouble(), odds(pair, "there"), SAME, pair.toString());
            assertEquals(ledger.get("back").get("odds_of_copy").asDouble(), odds(pair, "back"), SAME, pair.toString());
        }
    }

    /** A station of the relay's own gear where the search would put one: its hops are the search's, its talks the weaker of two. */
    @Test
    void aStandingRelayServesAsTheStudyReckonsHops() throws IOException {
        JsonNode site = json("relay", plan("", "\"all-to-base\"", "\"all-to-all\""), "--json")
                .get("sites")
                .get(0);
        String at = String.format(
                Locale.ROOT,
                "%.12f, %.12f",
                site.get("latitude").asDouble(),
                site.get("longitude").asDouble());
        String plan = plan(
                station("ridge", at, "height_m = 6\nrelay = true\nmode = \"store-and-forward\""),
                "\"all-to-base\"",
                "\"all-to-all\"");
        JsonNode relay = json("relay", plan, "--json");
        JsonNode ridge = named(relay.get("stations"), "ridge");
        for (JsonNode hop : site.get("hops")) {
            JsonNode place = named(ridge.get("places"), hop.get("name").asText());
            assertEquals(hop.get("odds_there").asDouble(), odds(place, "there"), SAME);
            assertEquals(hop.get("odds_back").asDouble(), odds(place, "back"), SAME);
            assertEquals(hop.get("odds_pessimistic").asDouble(), odds(place, "pessimistic"), SAME);
        }
        for (JsonNode pair : ridge.get("pairs")) {
            JsonNode a = named(ridge.get("places"), pair.get("a").asText());
            JsonNode b = named(ridge.get("places"), pair.get("b").asText());
            assertEquals(Math.min(odds(a, "there"), odds(b, "back")), odds(pair, "there"), SAME);
            assertEquals(Math.min(odds(b, "there"), odds(a, "back")), odds(pair, "back"), SAME);
        }
        assertEquals(3, ridge.get("pairs").size());
        for (int t = 0; t < site.get("talks").size(); t++)
            assertEquals(
                    site.get("talks").get(t).get("odds").asDouble(),
                    relay.get("with_stations").get("talks").get(t).get("odds").asDouble(),
                    SAME);
        assertEquals(
                site.get("share").asDouble(),
                relay.get("with_stations").get("share").asDouble(),
                SAME);
    }

    @Test
    void aNewRelayIsLookedForOnlyForWhatIsLeft() throws IOException {
        String less = "odds = 0.5";
        String more = "odds = 0.8";
        String none = plan(
                "",
                more,
                less,
                "talk = \"all-to-base\"",
                "talk = \"listed\"\npairs = [[\"spike camp\", \"north spur\"]]");
        JsonNode before = json("relay", none, "--json");
        assertTrue(before.get("new_relay_needed").asBoolean());
        JsonNode site = before.get("sites").get(0);
        assertTrue(site.get("share").asDouble() > 0.99, site.toString());
        String at = site.get("latitude").asText() + ", " + site.get("longitude").asText();
        String relay = station("ridge", at, "height_m = 6\nrelay = true\nmode = \"store-and-forward\"");
        String enough = plan(
                relay,
                more,
                less,
                "talk = \"all-to-base\"",
                "talk = \"listed\"\npairs = [[\"spike camp\", \"north spur\"]]");
        JsonNode after = json("relay", enough, "--json");
        assertFalse(after.get("new_relay_needed").asBoolean());
        assertEquals(0, after.get("sites").size());
        String verdict = after.get("verdict").get(0).asText();
        assertTrue(
                verdict.startsWith(
                        "No new relay is needed: of talks (one) 0 work straight and 1 more by way of what stands already (ridge)"),
                verdict);
        JsonNode rest = json("relay", plan(relay, more, less), "--json");
        assertTrue(rest.get("new_relay_needed").asBoolean());
        assertTrue(
                rest.get("verdict").get(0).asText().contains("1 is left below"),
                rest.get("verdict").toString());
        double served = rest.get("with_stations").get("share").asDouble();
        assertEquals(0.5, served, SAME);
        assertTrue(rest.get("sites").get(0).get("share").asDouble() >= served);
        CommandRun text = CommandRun.of("relay", enough);
        assertTrue(text.out().contains("What already stands"), text.out());
        Path report = folder.resolve("report.html");
        assertEquals(
                0,
                CommandRun.of("report", enough, "--relay", "--out", report.toString())
                        .code());
        assertEquals(2, Files.readString(report).split("What already stands</h2>", -1).length, "told once in a report");
    }

    /** Calls at the frequency it hears, hears at the one it sends. */
    @Test
    void eachWayOfASplitStationIsReckonedAtItsOwnFrequency() throws IOException {
        String stations = station("split", SPOT, "receive_mhz = 150\ntransmit_mhz = 160")
                + station("low", SPOT, "frequency_mhz = 150")
                + station("high", SPOT, "frequency_mhz = 160")
                + station("alike", SPOT, "receive_mhz = " + CHANNEL_MHZ + "\ntransmit_mhz = " + CHANNEL_MHZ)
                + station("plain", SPOT, "");
        JsonNode all = json("reach", plan(stations), "--json").get("stations");
        for (JsonNode place : named(all, "split").get("places")) {
            String name = place.get("name").asText();
            JsonNode low = named(named(all, "low").get("places"), name);
            JsonNode high = named(named(all, "high").get("places"), name);
            assertEquals(odds(low, "there"), odds(place, "there"), SAME);
            assertEquals(odds(high, "back"), odds(place, "back"), SAME);
            assertEquals(
                    named(named(all, "plain").get("places"), name),
                    named(named(all, "alike").get("places"), name));
        }
        JsonNode camp = named(named(all, "split").get("places"), "spike camp");
        assertTrue(Math.abs(odds(camp, "there") - odds(named(named(all, "high").get("places"), "spike camp"), "there"))
                > 1e-6);
    }

    /** Noise at the station is heard by the station alone; its feed line lies in both ways. */
    @Test
    void noiseAndFeedLossCountAtTheirEnd() throws IOException {
        String stations = station("quiet", SPOT, "")
                + station("loud", SPOT, "noise = \"city\"")
                + station("long line", SPOT, "").replace("feed_loss_db = 1", "feed_loss_db = 6");
        JsonNode all = json("reach", plan(stations), "--json").get("stations");
        JsonNode quiet = named(named(all, "quiet").get("places"), "spike camp");
        JsonNode loud = named(named(all, "loud").get("places"), "spike camp");
        JsonNode line = named(named(all, "long line").get("places"), "spike camp");
        assertTrue(odds(loud, "there") < odds(quiet, "there") - 0.01, quiet + " " + loud);
        assertEquals(odds(quiet, "back"), odds(loud, "back"), SAME);
        assertTrue(odds(line, "back") < odds(quiet, "back") - 0.001, quiet + " " + line);
        assertTrue(odds(line, "there") < odds(quiet, "there") - 0.001, quiet + " " + line);
    }

    /** One line a fault; what lies off the tiles is left out and the rest answered. */
    @Test
    void badStationsAreToldInALineEach() throws IOException {
        String bad = "[[station]]\nname = \"x\"\nat = \"" + SPOT
                + "\"\npower_w = 5\nreceive_mhz = 150\nmode = \"two-frequency\"\nrealy = true\n";
        CommandRun run = CommandRun.of("reach", plan(bad));
        assertEquals(2, run.code());
        for (String words : new String[] {
            "[station] x has no sensitivity_dbm or sensitivity_uv.",
            "[station] x has no gain_dbd or gain_dbi.",
            "receive_mhz stands alone.",
            "mode says how a relay passes speech on.",
            "unknown key realy in [station]."
        }) assertTrue(run.err().contains(words), words + "\n" + run.err());
        CommandRun off =
                CommandRun.of("reach", plan(station("far", "10.0, 10.0", "") + station("near", SPOT, "")), "--json");
        assertEquals(0, off.code(), off.err());
        JsonNode answer = new ObjectMapper().readTree(off.out());
        assertEquals(1, answer.get("stations").size());
        assertTrue(answer.get("warnings").toString().contains("far stands where no elevation is known"));
    }
}
