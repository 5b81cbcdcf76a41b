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

/** Is a relay needed, and where: on a bundled sample, made smaller and coarser so that it is quick. */
class S05RelayTest {
    private static final Path SAMPLE = Path.of("elevation-samples/forest-hills").toAbsolutePath();

    @TempDir
    Path folder;

    /** The sample plan with other people and another question. */
    private Path plan(String people, String relay) throws IOException {
        String text = Files.readString(SAMPLE.resolve("plan.toml"));
        String kit = text.substring(0, text.indexOf("[area]"))
                .replace("tiles = \"tiles\"", "tiles = '" + SAMPLE.resolve("tiles") + "'")
                .replace("file = \"../", "file = '" + SAMPLE.getParent() + "/")
                .replace("bench.csv\"", "bench.csv'");
        String rest = "[area]\ncentre = \"36.2700, -84.2100\"\nradius_km = 3\n\n[reach]\ncell_m = 120\n\n";
        return Files.writeString(folder.resolve("plan.toml"), kit + rest + people + relay);
    }

    private static String person(String name, String at, String loadout) {
        return "[[position]]\nname = \"" + name + "\"\nat = \"" + at + "\"\nloadout = \"" + loadout + "\"\n\n";
    }

    private JsonNode run(Path plan, String... more) throws IOException {
        String[] words = new String[3 + more.length];
        words[0] = "relay";
        words[1] = plan.toString();
        words[2] = "--json";
        System.arraycopy(more, 0, words, 3, more.length);
        CommandRun run = CommandRun.of(words);
        assertEquals(0, run.code(), run.err());
        return new ObjectMapper().readTree(run.out());
    }

    @Test
    void whoStandTogetherNeedNoRelay() throws IOException {
        String people = person("a", "36.2700, -84.2100", "factory at face")
                + person("b", "36.2706, -84.2100", "factory at face");
        JsonNode node = run(plan(people, ""));
        assertFalse(node.get("relay_needed").asBoolean());
        assertTrue(
                node.get("verdict").get(0).asText().startsWith("No relay is needed"),
                node.get("verdict").toString());
        assertTrue(node.get("sites").isEmpty());
    }

    @Test
    void aRelayIsFoundWithinItsLimitsAndFilesAreWritten() throws IOException {
        String people = person("a", "36.2700, -84.2100", "factory at face")
                + person("b", "36.2520, -84.2300", "factory at hip");
        String relay =
                "[relay]\nmode = \"store-and-forward\"\nmast_m = 6\nwalk_from = \"a\"\nmax_walk_minutes = 90\nmax_slope_deg = 25\n";
        Path out = folder.resolve("out");
        JsonNode node = run(plan(people, relay), "--out", out.toString());
        assertTrue(node.get("relay_needed").asBoolean());
        assertTrue(node.get("sites").size() >= 2);
        double before = 2;
        for (JsonNode site : node.get("sites")) {
            assertTrue(site.get("walk_minutes").asDouble() <= 90);
            assertTrue(site.get("slope_deg").asDouble() <= 25.01);
            assertTrue(site.get("share").asDouble() <= before);
            before = site.get("share").asDouble();
            for (JsonNode talk : site.get("talks"))
                assertTrue(
                        talk.get("odds_product").asDouble() <= talk.get("odds").asDouble() + 1e-12);
        }
        for (String name : new String[] {
            "relay.html", "relay.txt", "relay.json", "relay-sites.gpx", "relay.geojson", "map-relay.png"
        }) assertTrue(Files.size(out.resolve(name)) > 200, name);
        assertTrue(Files.readString(out.resolve("relay.txt")).contains("Check at the site"));
    }

    /** Twenty names covered the map, and no line said who talks over which relay. */
    @Test
    void manyPeopleGoOntoTheMapByNumberWithTheirHops() throws IOException {
        StringBuilder people = new StringBuilder();
        for (int i = 0; i < 7; i++)
            people.append(person(
                    "Team " + (char) ('a' + i),
                    "36." + (2550 + 45 * i) + ", -84." + (2300 - 55 * i),
                    "factory at hip"));
        Path out = folder.resolve("out");
        run(plan(people.toString(), "[relay]\nmast_m = 6\n"), "--out", out.toString());
        String page = Files.readString(out.resolve("relay.html"));
        assertTrue(page.contains("By number: 1 Team a, 2 Team b, 3 Team c,"), page.substring(0, 4000));
        String map = page.substring(page.indexOf(">People and relay sites</title>"));
        map = map.substring(0, map.indexOf("</svg>"));
        // the map is handed on alone, so it says of what, where, on which channel and when it was made, and what to
        // heed
        for (String said : new String[] {
            "Forest hills, two crews under one canopy. Relay 16S ",
            "155.1600 MHz",
            "Made on ",
            "These are odds, not a promise"
        }) assertTrue(map.contains(said), said);
        assertTrue(map.contains(">7</text>") && !map.contains(">Team g</text>"), "numbers in place of names");
        for (String key : new String[] {"somebody at a place", "relay", "further site for a relay"})
            assertTrue(map.contains(">" + key + "</text>"), key);
        assertTrue(
                map.contains(">hop with 80 % or better</text>") || map.contains(">hop below 80 %</text>"),
                "hops in the key");
    }

    /** Six points of one sector filled twelve lines, in metres though the plan spoke of miles, and "of the talks are left". */
    @Test
    void aSectorThatIsNotServedIsOneEntryInTheUnitsOfThePlan() throws IOException {
        Files.writeString(folder.resolve("sector.geojson"), """
                {"type":"Polygon","coordinates":[[[-84.240,36.285],[-84.190,36.285],[-84.190,36.255],[-84.240,36.255],
                [-84.240,36.285]]]}
                """);
        String people = person("a", "36.2700, -84.2100", "factory at hip")
                + "[[sector]]\nname = \"Sector 1\"\npolygon = \"sector.geojson\"\nspacing_m = 1000\nloadout = \"factory at hip\"\n\n";
        Path plan = plan(people, "[relay]\npower_w = 0.1\nmast_m = 1\n");
        Files.writeString(
                plan,
                Files.readString(plan).replace("place_form = \"utm\"", "place_form = \"utm\"\nunits = \"imperial\""));
        Path out = folder.resolve("out");
        JsonNode node = run(plan, "--out", out.toString());
        int unserved = 0;
        for (JsonNode one : node.get("unserved")) if (one.get("name").asText().startsWith("Sector 1, ")) unserved++;
        assertTrue(unserved > 1, "the case needs several: " + node.get("unserved"));
        String text = Files.readString(out.resolve("relay.txt"));
        String told = text.substring(text.indexOf("Not served"), text.indexOf("Where a relay should stand"))
                .replaceAll("\\s+", " ");
        assertEquals(1, told.split("- Sector 1", -1).length - 1, told);
        assertTrue(told.contains("- Sector 1: " + unserved + " of "), told);
        assertTrue(told.contains(" ft above sea level") && !told.matches(".*\\d m .*"), told);
        String verdict = text.substring(0, text.indexOf("Not served")).replaceAll("\\s+", " ");
        assertTrue(verdict.matches(".*, [0-9,]+ ft, serves .* of the talks (still work|works any more).*"), verdict);
        assertFalse(text.contains("are left") || text.matches("(?s).*of the weaker way: -.*"), text);
    }

    @Test
    void whoIsOutsideTheTilesIsNamedAndTheRestAnswered() throws IOException {
        String people = person("a", "36.2700, -84.2100", "factory at face")
                + person("b", "36.2706, -84.2100", "factory at face")
                + person("far away", "20.0, 10.0", "factory at face");
        CommandRun run = CommandRun.of("relay", plan(people, "").toString());
        assertEquals(0, run.code(), run.err());
        assertTrue(run.err().contains("far away lies where no elevation is known and is left out"), run.err());
        assertTrue(run.out().contains("No relay is needed"), run.out());
    }

    @Test
    void routesAndSectorsAreServedAsPoints() throws IOException {
        Files.writeString(
                folder.resolve("route.gpx"),
                "<?xml version=\"1.0\"?><gpx version=\"1.1\" creator=\"hand\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>"
                        + "<trkpt lat=\"36.26\" lon=\"-84.22\"/><trkpt lat=\"36.27\" lon=\"-84.21\"/></trkseg></trk></gpx>");
        Files.writeString(
                folder.resolve("sector.geojson"),
                "{\"type\":\"Polygon\",\"coordinates\":[[[-84.22,36.27],[-84.21,36.27],[-84.21,36.28],[-84.22,36.28],[-84.22,36.27]]]}");
        String people =
                person("camp", "36.2700, -84.2100", "factory at face").replace("loadout", "base = true\nloadout")
                        + "[[route]]\nname = \"patrol\"\nfile = \"route.gpx\"\nloadout = \"factory at face\"\n\n"
                        + "[[sector]]\nname = \"slope\"\npolygon = \"sector.geojson\"\nloadout = \"factory at face\"\n\n";
        JsonNode node = run(plan(people, "[relay]\ntalk = \"all-to-base\"\ncount = 2\n"));
        int onRoute = 0;
        int inSector = 0;
        for (JsonNode demand : node.get("demands")) {
            if (demand.get("group").asText().equals("patrol")) onRoute++;
            if (demand.get("group").asText().equals("slope")) inSector++;
        }
        assertTrue(onRoute >= 3 && onRoute <= 12, "points on the route: " + onRoute);
        assertTrue(inSector >= 4 && inSector <= 16, "points in the sector: " + inSector);
        assertEquals(onRoute + inSector, node.get("direct").get("talks").size());
    }

    @Test
    void aPlanWithoutPeopleSaysSo() throws IOException {
        CommandRun run = CommandRun.of(
                "relay",
                plan(person("a", "36.2700, -84.2100", "factory at face"), "").toString());
        assertEquals(2, run.code());
        assertTrue(run.err().contains("there are not two people on known ground"), run.err());
    }
}
