package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import handreach.budget.LinkBudget;
import handreach.plan.PlanFile;
import handreach.reach.OddsGrid;
import handreach.reach.Progress;
import handreach.study.ReachAnswer;
import handreach.study.ReachStudy;
import handreach.study.Scene;
import handreach.uncertainty.Odds;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One way of a talk with the base is enough, and the ground on which one way alone works. The base is a car with 45 W and a roof antenna. */
class S15OneWayTest {
    private static final double SAME = 1e-9;
    private static final double WANTED = 0.8;
    private static final String CAR = """

            [[radio]]
            name = "car radio"
            power_w = 45
            sensitivity_dbm = -119

            [[antenna]]
            name = "roof whip"
            gain_dbd = 0

            [[loadout]]
            name = "car"
            radio = "car radio"
            antenna = "roof whip"
            carry = "roof"
            feed_loss_db = 1.5
            """;

    @TempDir
    Path folder;

    /** The forest sample in large cells, its base in the car, one of its crews where it hears the car and is not heard there. */
    private String plan(String target, String reach) throws IOException {
        Path sample = Path.of("elevation-samples", "forest-hills").toAbsolutePath();
        String plan = Files.readString(sample.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + sample.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + sample.resolve("../invented-bench/bench.csv") + "'")
                .replaceAll("(?s)\\[\\[walk\\]\\].*", "")
                .replaceAll("(?s)\\[\\[position\\]\\]\nname = \"creek crew\".*?\n\n", "")
                .replace(
                        "\"36.3000, -84.1950\"\nloadout = \"factory at face\"",
                        "\"36.2620, -84.1900\"\nloadout = \"half-wave at face\"")
                .replace("loadout = \"quarter-wave with wire at face\"\nbase = true", "loadout = \"car\"\nbase = true")
                .replace("odds = 0.8 ", target + "\nodds = 0.8 ")
                .replace("bearing_step_deg = 5", reach + "\nbearing_step_deg = 90")
                .replace("cell_m = 30", "cell_m = 200")
                .replace("count = 2 ", "count = 1 ");
        return Files.writeString(folder.resolve("plan.toml"), plan + CAR).toString();
    }

    private static JsonNode json(String... words) throws IOException {
        CommandRun run = CommandRun.of(words);
        assertEquals(0, run.code(), run.err());
        return new ObjectMapper().readTree(run.out());
    }

    @Test
    void bothWaysIsWhatAPlanThatSaysNothingMeans() throws IOException {
        String silent = CommandRun.of("reach", plan("", ""), "--json").out();
        assertEquals(
                silent,
                CommandRun.of("reach", plan("ways = \"both\"", "one_way = false"), "--json")
                        .out());
        assertFalse(silent.contains("needed_ways") || silent.contains("one_way"));
    }

    /** The same crew: it is served where hearing is enough, and not where it must be heard, and every answer says which was asked. */
    @Test
    void hearingAloneServesWhoIsNotHeard() throws IOException {
        for (String ways : new String[] {"calls", "hears"}) {
            String plan = plan("ways = \"" + ways + "\"", "");
            boolean isHears = ways.equals("hears");
            String sentence = isHears ? "Hearing only:" : "Call-out only:";
            JsonNode reach = json("reach", plan, "--json");
            assertEquals(ways, reach.get("needed_ways").asText());
            assertTrue(reach.get("other_end").asText().contains(sentence));
            JsonNode odds = reach.get("who_reaches_whom").get("pairs").get(0).get("odds");
            double calls = odds.get("back").get(0).asDouble();
            double hears = odds.get("there").get(0).asDouble();
            assertTrue(calls < WANTED && hears > WANTED, odds.toString());
            assertEquals(isHears ? hears : calls, odds.get("weaker").get(0).asDouble(), SAME);
            JsonNode ledger = json("path", "--plan", plan, "--from", "north spur", "--to", "spike camp", "--json")
                    .get("ledger");
            assertEquals(isHears ? "back" : "there", ledger.get("asked").asText());
            assertEquals(isHears ? "back" : "there", ledger.get("weaker").asText());
            assertEquals(isHears ? hears : calls, ledger.get("odds_of_copy").asDouble(), 1e-6);
            JsonNode relay = json("relay", plan, "--json");
            assertEquals(!isHears, relay.get("relay_needed").asBoolean());
            assertTrue(relay.get("verdict").toString().contains(sentence));
            assertTrue(CommandRun.of("assign", plan).out().contains(sentence));
            String page = CommandRun.of("reach", plan).out();
            assertTrue(page.contains(isHears ? "1 of 1 places have the wanted 80 % hearing" : "0 of 1 places"), page);
        }
        // Between others than the base both ways count, whatever the plan says.
        JsonNode ledger = json(
                        "path",
                        "--plan",
                        plan("ways = \"calls\"", ""),
                        "--from",
                        "36.28, -84.2",
                        "--from-loadout",
                        "factory at hip",
                        "--to",
                        "north spur",
                        "--json")
                .get("ledger");
        assertFalse(ledger.has("asked"));
    }

    /** Counted again from the losses of the cells and the two ways of the budget. */
    @Test
    void theGroundOfOneWayIsThatOfItsOwnBudget() throws IOException {
        String plan = plan("", "one_way = true");
        Path out = folder.resolve("out");
        CommandRun run =
                CommandRun.of("reach", plan, "--only", "numbers,rasters,outlines,overlay", "--out", out.toString());
        assertEquals(0, run.code(), run.err());
        JsonNode told =
                new ObjectMapper().readTree(out.resolve("reach.json").toFile()).get("one_way");
        ReachAnswer answer = ReachStudy.run(Scene.open(PlanFile.open(Path.of(plan))), true, Progress.SILENT);
        double most = 0;
        for (int i = 0; i < told.size(); i++) {
            OddsGrid odds = answer.area().orElseThrow().odds().get(i);
            LinkBudget budget = odds.link().budget();
            int hears = 0;
            int heard = 0;
            int known = 0;
            for (int cell = 0; cell < odds.grid().count(); cell++) {
                if (!odds.isKnown(cell)) continue;
                double lossDb = odds.losses().lossDb(cell);
                double up = odds.losses().departureDeg(cell);
                double down = odds.losses().arrivalDeg(cell);
                boolean copies =
                        Odds.ofMargin(budget.marginThereDb(lossDb, up, down), budget.spreadThereDb()) >= WANTED;
                boolean isCopied =
                        Odds.ofMargin(budget.marginBackDb(lossDb, up, down), budget.spreadBackDb()) >= WANTED;
                known++;
                if (copies && !isCopied) hears++;
                if (isCopied && !copies) heard++;
            }
            JsonNode one = told.get(i);
            assertEquals((double) hears / known, one.get("hears_only_share").asDouble(), 1e-9);
            assertEquals((double) heard / known, one.get("heard_only_share").asDouble(), 1e-9);
            assertEquals(hears * 0.04, one.get("hears_only_km2").asDouble(), 1e-6);
            most = Math.max(most, one.get("hears_only_share").asDouble());
        }
        assertTrue(most > 0.1, told.toString());
        assertTrue(Files.size(out.resolve("one-way-half-wave-at-face.tif")) > 1000);
        String classes = Files.readString(out.resolve("one-way-half-wave-at-face.tif.aux.xml"));
        assertTrue(classes.contains("<Category>hears spike camp only</Category>"), classes);
        assertTrue(Files.readString(out.resolve("reach-outlines.geojson")).contains("\"hears-only\""));
        assertTrue(CommandRun.of("reach", plan).out().contains("people hear spike camp, which does not hear them"));
    }

    /** An antenna on the roof is outside; a handheld inside the vehicle is inside, and both ledgers say which. */
    @Test
    void anAntennaOnTheRoofIsOutside() throws IOException {
        String plan = plan("", "");
        String[] path = {"path", "--plan", plan, "--from", "north spur", "--to", "spike camp", "--json"};
        String roof = CommandRun.of(path).out();
        assertTrue(roof.contains("carried: antenna on the roof of a vehicle, outside it"), roof);
        JsonNode ledger = new ObjectMapper().readTree(roof).get("ledger");
        double feed = 0;
        double carried = 0;
        for (JsonNode line : ledger.get("there").get("lines")) {
            if (line.get("label").asText().contains("feed line"))
                feed = line.get("db").asDouble();
            if (line.get("label").asText().contains("on the roof"))
                carried = line.get("db").asDouble();
        }
        assertEquals(-1.5, feed);
        assertEquals(0, carried);
        Path file = Path.of(plan);
        Files.writeString(
                file, Files.readString(file).replace("carry = \"roof\"\nfeed_loss_db = 1.5", "carry = \"vehicle\""));
        CommandRun inside = CommandRun.of(path);
        assertTrue(inside.out().contains("held at head height inside a vehicle"));
        assertTrue(
                inside.err().contains("car has a stated gain and is carried inside a vehicle, whose loss of")
                        && inside.err().contains("write carry = \"roof\""),
                inside.err());
        Files.writeString(
                file, Files.readString(file).replace("carry = \"vehicle\"", "carry = \"face\"\nfeed_loss_db = 1.5"));
        CommandRun worn = CommandRun.of(path);
        assertEquals(2, worn.code());
        assertTrue(worn.err().contains("feed_loss_db is the loss of a line, but car is carried face"), worn.err());
    }
}
