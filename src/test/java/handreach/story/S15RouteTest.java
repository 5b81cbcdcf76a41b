package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** People on the move: odds along a route are those of single paths, its silences are those of its points, its times those of its pace. */
class S15RouteTest {
    private static final double SAME = 1e-9;
    private static final double WANTED = 0.8;
    private static final String PACED = "start = \"08:00\"\npace_kmh = 3\n";

    @TempDir
    Path folder;

    /** The forest sample without its walk, with these routes. */
    private String plan(String routes) throws IOException {
        Path sample = Path.of("elevation-samples", "forest-hills").toAbsolutePath();
        String plan = Files.readString(sample.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + sample.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + sample.resolve("../invented-bench/bench.csv") + "'")
                .replaceAll("(?s)\\[\\[walk\\]\\].*", "")
                .replace("bearing_step_deg = 5", "bearing_step_deg = 90");
        return Files.writeString(folder.resolve("plan.toml"), plan + "\n" + routes)
                .toString();
    }

    private static String track() {
        return Path.of("elevation-samples", "forest-hills", "walk-track.gpx")
                .toAbsolutePath()
                .toString();
    }

    private static String route(String name, String track, String more) {
        return "[[route]]\nname = \"" + name + "\"\nfile = '" + track + "'\nloadout = \"half-wave at face\"\n" + more
                + "\n";
    }

    private static JsonNode json(String... words) throws IOException {
        CommandRun run = CommandRun.of(words);
        assertEquals(0, run.code(), run.err());
        return new ObjectMapper().readTree(run.out());
    }

    private static String contact(JsonNode point) {
        if (point.get("there").isNull()) return "unknown";
        double weaker =
                Math.min(point.get("there").asDouble(), point.get("back").asDouble());
        if (weaker < WANTED) return "silent";
        return point.get("pessimistic").asDouble() >= WANTED ? "sure" : "likely";
    }

    @Test
    void oddsTimesAndSilencesAreThoseOfTheWay() throws IOException {
        String plan = plan(route("patrol", track(), PACED));
        JsonNode patrol =
                json("reach", plan, "--json").get("along_routes").get("routes").get(0);
        JsonNode points = patrol.get("points");
        assertTrue(points.size() > 100);
        for (int i : new int[] {3, 10, 25, 60, 110}) {
            JsonNode point = points.get(i);
            JsonNode ledger = json(
                            "path",
                            "--plan",
                            plan,
                            "--from",
                            point.get("latitude").asText() + ", "
                                    + point.get("longitude").asText(),
                            "--from-loadout",
                            "half-wave at face",
                            "--to",
                            "spike camp",
                            "--to-loadout",
                            "quarter-wave with wire at face",
                            "--json")
                    .get("ledger");
            assertEquals(
                    ledger.get("there").get("odds_of_copy").asDouble(),
                    point.get("there").asDouble(),
                    SAME);
            assertEquals(
                    ledger.get("back").get("odds_of_copy").asDouble(),
                    point.get("back").asDouble(),
                    SAME);
            double minutes = 8 * 60 + point.get("km").asDouble() / 3 * 60;
            long whole = Math.round(minutes);
            assertEquals(
                    String.format(Locale.ROOT, "%02d:%02d", whole / 60, whole % 60),
                    point.get("time").asText());
        }
        List<String> changes = new ArrayList<>();
        List<Double> begins = new ArrayList<>();
        for (JsonNode point : points) {
            assertEquals(contact(point), point.get("contact").asText());
            if (!changes.isEmpty() && changes.get(changes.size() - 1).equals(contact(point))) continue;
            changes.add(contact(point));
            begins.add(point.get("km").asDouble());
        }
        JsonNode stretches = patrol.get("stretches");
        assertEquals(changes.size(), stretches.size());
        assertTrue(changes.contains("silent") && changes.contains("sure"), changes.toString());
        for (int i = 0; i < changes.size(); i++) {
            JsonNode stretch = stretches.get(i);
            double end = i + 1 < changes.size()
                    ? begins.get(i + 1)
                    : points.get(points.size() - 1).get("km").asDouble();
            assertEquals(changes.get(i), stretch.get("contact").asText());
            assertEquals(begins.get(i), stretch.get("from_km").asDouble());
            assertEquals(end, stretch.get("to_km").asDouble());
            assertEquals((end - begins.get(i)) / 3 * 60, stretch.get("minutes").asDouble(), 1e-6);
            double next = Double.NaN;
            for (JsonNode point : points)
                if (Double.isNaN(next)
                        && point.get("km").asDouble() >= end
                        && contact(point).equals("sure")) next = point.get("km").asDouble();
            if (Double.isNaN(next)) assertTrue(stretch.get("next_sure_km").isNull());
            else assertEquals(next, stretch.get("next_sure_km").asDouble());
        }
    }

    /** Two that walk side by side talk all the way; one that starts when the other is home meets nobody. */
    @Test
    void twoRoutesTalkWhileTheyAreNearOneAnother() throws IOException {
        String late = PACED.replace("08:00", "20:00");
        String routes = route("one", track(), PACED) + route("two", track(), PACED) + route("late", track(), late);
        JsonNode meetings =
                json("reach", plan(routes), "--json").get("along_routes").get("meetings");
        assertEquals(1, meetings.size());
        JsonNode both = meetings.get(0);
        assertEquals("08:00", both.get("from").asText());
        assertEquals(1, both.get("windows").size());
        assertEquals(both.get("from"), both.get("windows").get(0).get("from"));
        assertEquals(both.get("to"), both.get("windows").get(0).get("to"));
    }

    @Test
    void aTrackWithTimesGivesThemAndOneWithoutIsToldByDistance() throws IOException {
        String bare = Files.writeString(
                        folder.resolve("bare.gpx"),
                        Files.readString(Path.of(track())).replaceAll("<time>[^<]*</time>", ""))
                .toString();
        String plan = plan(route("timed", track(), "timed = true") + route("bare", bare, "timed = true"));
        JsonNode answer = json("reach", plan, "--json");
        JsonNode timed = answer.get("along_routes").get("routes").get(0);
        assertTrue(timed.get("utc").asBoolean());
        assertEquals("08:30", timed.get("points").get(0).get("time").asText().substring(0, 5));
        JsonNode by = answer.get("along_routes").get("routes").get(1);
        assertTrue(by.get("points").get(0).get("time").isNull());
        assertTrue(answer.get("warnings").toString().contains("bare has timed = true, but its track has no times"));
        assertFalse(answer.get("who_reaches_whom").get("pairs").isEmpty());
        CommandRun text = CommandRun.of("reach", plan);
        assertTrue(text.out().contains("Along the routes"));
        assertTrue(text.out().contains("from the start"));
    }

    /** The check times as a navigator has them: the same points and contacts as the answer, with the times of the track. */
    @Test
    void checkTimesAndSilencesGoToANavigator() throws Exception {
        String plan = plan(route("patrol", track(), "timed = true") + route("paced", track(), PACED));
        Path out = folder.resolve("out");
        CommandRun run = CommandRun.of("reach", plan, "--only", "numbers,places", "--out", out.toString());
        assertEquals(0, run.code(), run.err());
        JsonNode routes = new ObjectMapper()
                .readTree(out.resolve("reach.json").toFile())
                .get("along_routes")
                .get("routes");
        NodeList tracks = gpx(out, "trk");
        assertEquals(2, tracks.getLength());
        JsonNode points = routes.get(0).get("points");
        NodeList written = ((Element) tracks.item(0)).getElementsByTagName("trkpt");
        assertEquals(points.size(), written.getLength());
        assertEquals(
                points.get(40).get("latitude").asDouble(),
                Double.parseDouble(((Element) written.item(40)).getAttribute("lat")),
                1e-6);
        Instant time = Instant.parse(((Element) written.item(40))
                .getElementsByTagName("time")
                .item(0)
                .getTextContent());
        assertEquals(points.get(40).get("time_s").asDouble(), time.getEpochSecond(), 0.51);
        assertEquals(
                0, ((Element) tracks.item(1)).getElementsByTagName("time").getLength()); // the crew's clock has no day
        List<String> names = new ArrayList<>();
        NodeList marks = gpx(out, "wpt");
        for (int i = 0; i < marks.getLength(); i++)
            names.add(((Element) marks.item(i))
                    .getElementsByTagName("name")
                    .item(0)
                    .getTextContent());
        for (JsonNode stretch : routes.get(1).get("stretches"))
            if (stretch.get("contact").asText().equals("silent"))
                assertTrue(
                        names.contains("paced, " + stretch.get("from").asText() + ": silence begins"),
                        names.toString());
        assertTrue(names.stream().anyMatch(name -> name.endsWith(": call before silence")), names.toString());
    }

    private static NodeList gpx(Path out, String tag) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(out.resolve("reach-along-routes.gpx").toFile())
                .getElementsByTagName(tag);
    }

    /** Times that overlap in part, never, and only past midnight; and a route that does not say when it goes. */
    @Test
    void whoIsNeverOnTheWayAtOnceIsToldSo() throws IOException {
        String routes = route("one", track(), PACED)
                + route("half", track(), PACED.replace("08:00", "09:00"))
                + route("late", track(), PACED.replace("08:00", "23:30"))
                + route("early", track(), PACED.replace("08:00", "00:30"))
                + route("silent", track(), "");
        String plan = plan(routes);
        JsonNode along = json("reach", plan, "--json").get("along_routes");
        List<String> met = new ArrayList<>();
        for (JsonNode one : along.get("meetings"))
            met.add(one.get("a").asText() + " " + one.get("b").asText() + " "
                    + one.get("from").asText() + " " + one.get("to").asText());
        String end =
                along.get("routes").get(0).get("points").get(120).get("time").asText();
        assertEquals(2, met.size(), met.toString());
        assertEquals("one half 09:00 " + end, met.get(0));
        assertTrue(met.get(1).startsWith("late early 00:30 "), met.toString());
        assertEquals(4, along.get("apart").size());
        String page = CommandRun.of("reach", plan).out().replaceAll("\\s+", " ");
        assertTrue(
                page.contains("one goes from 08:00 to " + end + " and late from 23:30 to ")
                        && page.contains(": they are never on the way at once."),
                page);
        assertTrue(page.contains("silent does not say when it goes and is left out here"), page);
    }

    /** A sector off the tiles is one line, and the rest is answered. */
    @Test
    void aSectorOffTheTilesIsOneLine() throws IOException {
        String box =
                "{\"type\":\"Polygon\",\"coordinates\":[[[%1$s,36.27],[%2$s,36.27],[%2$s,36.29],[%1$s,36.29],[%1$s,36.27]]]}";
        Files.writeString(folder.resolve("off.geojson"), String.format(Locale.ROOT, box, "-83.9", "-83.8"));
        Files.writeString(folder.resolve("edge.geojson"), String.format(Locale.ROOT, box, "-84.10", "-84.06"));
        String sectors = "[[sector]]\nname = \"off\"\npolygon = \"off.geojson\"\n"
                + "[[sector]]\nname = \"edge\"\npolygon = \"edge.geojson\"\n";
        CommandRun run = CommandRun.of("relay", plan(sectors), "--json");
        assertEquals(0, run.code(), run.err());
        String warnings = new ObjectMapper().readTree(run.out()).get("warnings").toString();
        assertTrue(warnings.contains("off lies where no elevation is known and is left out"), warnings);
        assertTrue(warnings.contains(" points of edge lie where no elevation is known and are left out"), warnings);
        assertFalse(warnings.contains("off, point"), warnings);
    }

    @Test
    void whenPeopleGoIsSaidOnceAndWhole() throws IOException {
        for (String[] wrong : new String[][] {
            {"start = \"08:00\"", "start does not say when people are where."},
            {"pace_kmh = 4", "pace_kmh does not say when people are where."},
            {"start = \"8 am\"\npace_kmh = 4", "start is \"8 am\", a time by the clock is expected."},
            {PACED + "timed = true", "timed says that the track has times of its own"},
        }) {
            CommandRun run = CommandRun.of("reach", plan(route("patrol", track(), wrong[0])));
            assertEquals(2, run.code());
            assertTrue(run.err().contains(wrong[1]), run.err());
            assertEquals(
                    1,
                    run.err().lines().filter(line -> line.contains("plan.toml")).count(),
                    run.err());
        }
    }
}
