package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import handreach.desktop.PanelRun;
import handreach.units.Bearings;
import handreach.units.Decibels;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.StreamSupport;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** As {@link S10OneFigureTest}, for what stands already, routes, channels, who must carry what, and the atlas of a region. */
@Isolated
class S10LaterAnswersTest {
    private static final double WANTED = 0.8;

    @TempDir
    Path folder;

    private Path plan;

    /** The forest sample in large cells, with a second channel, a repeater and a patrol. */
    @BeforeEach
    void write() throws IOException {
        Path sample = Path.of("elevation-samples", "forest-hills").toAbsolutePath();
        String words = Files.readString(sample.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + sample.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + sample.resolve("../invented-bench/bench.csv") + "'")
                .replaceAll("(?s)\\[\\[walk\\]\\].*", "")
                .replace("[channel]", "[[channel]]")
                .replace("[target]", "[[channel]]\nname = \"second\"\nfrequency_mhz = 160.5\n\n[target]")
                .replace("bearing_step_deg = 5", "bearing_step_deg = 45")
                .replace("cell_m = 30", "cell_m = 400");
        String more = """

                [[station]]
                name = "ridge repeater"
                at = "36.2600, -84.2300"
                power_w = 5
                sensitivity_dbm = -118
                gain_dbd = -0.5
                feed_loss_db = 1
                height_m = 9
                receive_mhz = 155.16
                transmit_mhz = 156.0

                [[route]]
                name = "patrol"
                file = '%s'
                loadout = "half-wave at face"
                start = "08:00"
                pace_kmh = 3
                """.formatted(sample.resolve("walk-track.gpx"));
        plan = Files.writeString(folder.resolve("plan.toml"), words + more);
    }

    @Test
    void stationsRoutesAndChannelsHaveOneFigureOnEveryFace() throws Exception {
        Path out = folder.resolve("out");
        String text = run("reach", plan.toString(), "--out", out.toString(), "--only", "report,numbers");
        JsonNode reach = json(out.resolve("reach.json"));
        String page = Files.readString(out.resolve("report.html"));
        String maps = page.substring(page.indexOf("Maps</h2>"));
        maps = maps.substring(0, maps.indexOf("</section>"));
        assertTrue(maps.split(">route</", -1).length - 1 >= 3, "every map draws the route and tells so");
        Path pdf = folder.resolve("card.pdf");
        run("card", plan.toString(), "--out", pdf.toString());
        String card = flat(pdfText(pdf));
        try (PanelRun window = PanelRun.on(plan, folder.resolve("settings"))) {
            String panel = String.join(", ", window.reach("half-wave at face"));
            stationAgrees(reach.at("/stations/0"), lines(text), rows(page), card, panel);
            routeAgrees(reach.at("/along_routes/routes/0"), lines(text), rows(page), panel);
            channelsAgree(reach, lines(text), rows(page), panel);
        }
    }

    private static void stationAgrees(
            JsonNode station, List<String> text, List<String> page, String card, String panel) {
        int served = 0;
        for (JsonNode place : station.get("places")) {
            JsonNode odds = place.get("odds");
            if (odds.at("/weaker/0").asDouble() >= WANTED) served++;
            if (odds.get("there").get(0).asDouble() != odds.get("there").get(1).asDouble()) continue;
            String calls = Shares.odds(odds.at("/there/0").asDouble());
            String hears = Shares.odds(odds.at("/back/0").asDouble());
            String row = place.get("name").asText() + " .*"
                    + Pattern.quote(Lengths.METRIC.text(
                            1000 * place.at("/distance_km/0").asDouble()))
                    + " " + calls + " " + hears + " "
                    + Shares.odds(odds.at("/pessimistic/0").asDouble()) + " .*";
            has(text, row);
            has(page, row);
            String cells = place.get("name").asText() + ", " + calls + ", " + hears + ",";
            assertTrue(panel.contains(cells), cells + " in " + panel);
        }
        String count = served + " of " + station.get("places").size() + " places";
        has(text, "ridge repeater: " + count + " have the wanted 80 % both ways.*");
        assertTrue(panel.contains("ridge repeater: " + count), panel);
        assertTrue(card.contains("reached both ways by " + count), card);
    }

    /** The worst of a stretch is that of its points, and the silences are its stretches without contact. */
    private static void routeAgrees(JsonNode route, List<String> text, List<String> page, String panel) {
        double silentKm = 0;
        int silences = 0;
        for (JsonNode stretch : route.get("stretches")) {
            double from = stretch.get("from_km").asDouble();
            double to = stretch.get("to_km").asDouble();
            String contact = stretch.get("contact").asText();
            double worst = StreamSupport.stream(route.get("points").spliterator(), false)
                    .filter(point -> point.get("km").asDouble() >= from
                            && point.get("km").asDouble() <= to
                            && point.get("contact").asText().equals(contact))
                    .mapToDouble(point -> Math.min(
                            point.get("there").asDouble(), point.get("back").asDouble()))
                    .min()
                    .orElseThrow();
            String row = contact + " " + stretch.get("from").asText() + " "
                    + stretch.get("to").asText() + " .* " + Shares.odds(worst) + " .*";
            has(text.stream().map(each -> each + " ").toList(), row);
            has(page.stream().map(each -> each + " ").toList(), row);
            if (!contact.equals("silent")) continue;
            silences++;
            silentKm += to - from;
        }
        String said = silences + " silences, " + Lengths.METRIC.text(1000 * silentKm) + " in all";
        has(text, ".*" + said + ".*");
        assertTrue(panel.contains(said), said + " in " + panel);
    }

    private static void channelsAgree(JsonNode reach, List<String> text, List<String> page, String panel) {
        JsonNode channels = reach.get("channels");
        for (int k = 0; k < reach.get("loadouts").size(); k++) {
            String name = channels.at("/0/loadouts/" + k + "/loadout").asText();
            assertEquals(
                    reach.at("/loadouts/" + k + "/median_km").asDouble(),
                    channels.at("/0/loadouts/" + k + "/median_km").asDouble());
            StringBuilder row = new StringBuilder(Pattern.quote(name));
            for (JsonNode channel : channels)
                row.append(' ')
                        .append(Pattern.quote(Lengths.METRIC.text(1000
                                * channel.at("/loadouts/" + k + "/median_km").asDouble())))
                        .append(", ")
                        .append(Shares.share(
                                channel.at("/loadouts/" + k + "/area_share").asDouble()));
            has(text, row.toString());
            has(page, row.toString());
        }
        for (JsonNode channel : channels) {
            String served = channel.get("places_served").asText() + " of "
                    + channel.get("places_of").asText();
            String row = channel.get("name").asText() + " [0-9.]+ " + served + " "
                    + Shares.odds(channel.get("weakest_odds").asDouble()) + " "
                    + Decibels.number(channel.get("noise_db").asDouble(), 1) + " .*";
            has(text, row);
            has(page, row);
            assertTrue(panel.contains(channel.get("name").asText()), panel);
        }
    }

    @Test
    void whatATalkLacksIsOneFigureOnEveryFace() throws IOException {
        Path out = folder.resolve("assign");
        String text = run("assign", plan.toString(), "--out", out.toString());
        JsonNode assign = json(out.resolve("assign.json"));
        List<String> page = rows(Files.readString(out.resolve("assign.html")));
        assertTrue(assign.get("hopeless").size() > 1, text);
        double least = Double.POSITIVE_INFINITY;
        for (JsonNode talk : assign.get("hopeless")) {
            double lacks = -talk.get("spare_db").asDouble();
            least = Math.min(least, lacks);
            String row = talk.get("a").asText() + " " + talk.get("b").asText() + " " + Decibels.number(lacks, 1) + " "
                    + talk.get("loadout_a").asText() + " "
                    + talk.get("loadout_b").asText();
            has(lines(text), Pattern.quote(row));
            has(page, Pattern.quote(row));
        }
        String verdict = flat(assign.at("/verdict/0").asText());
        assertTrue(verdict.contains("the nearest lacks " + Decibels.text(least)), verdict);
        assertTrue(flat(text).contains(verdict), text);
        assertEquals(
                text.lines().limit(4).toList(),
                Files.readString(out.resolve("assign.txt")).lines().limit(4).toList());
    }

    @Test
    void anAtlasHasOneFigureOnEveryFace() throws IOException {
        Files.writeString(plan, Files.readString(plan).replaceFirst("radius_km = \\S+", "radius_km = 0.8"));
        Path out = folder.resolve("atlas");
        String text = run("atlas", plan.toString(), "--grid", "350m", "--relays", "1", "--out", out.toString());
        JsonNode atlas = json(out.resolve("atlas.json"));
        List<String> page = rows(Files.readString(out.resolve("atlas.html")));
        for (JsonNode one : atlas.get("loadouts")) {
            String name = Pattern.quote(one.get("loadout").asText());
            String serves = Lengths.METRIC.area(1e6 * one.get("serves_km2").asDouble()) + " ("
                    + Shares.share(one.get("serves_share").asDouble()) + ")";
            String row = name + " "
                    + Pattern.quote(Lengths.METRIC.text(one.get("median_m").asDouble())) + " " + Pattern.quote(serves)
                    + " .*";
            String gained = Shares.share(one.at("/relays/sites/0/share_gained").asDouble());
            String relay = name + " 1 .* " + gained + " "
                    + Shares.share(one.at("/relays/share").asDouble());
            String parts = name + " " + one.get("talk_parts").asText() + " "
                    + Shares.share(one.get("largest_part_share").asDouble()) + " "
                    + one.get("bridges").asText() + " .*";
            for (String wanted : List.of(row, relay, parts)) {
                has(lines(text), wanted);
                has(page, wanted);
            }
        }
        // bearings are written as everywhere else, in three places
        List<MatchResult> worst =
                Pattern.compile("m at ([0-9]+°)").matcher(text).results().toList();
        assertTrue(!worst.isEmpty(), text);
        for (MatchResult each : worst) {
            double bearing = Double.parseDouble(each.group(1).replace("°", ""));
            assertEquals(new Bearings(OptionalDouble.empty()).brief(bearing), each.group(1), text);
        }
    }

    private static void has(List<String> lines, String row) {
        assertTrue(lines.stream().anyMatch(each -> each.matches(row)), row + " in " + String.join("\n", lines));
    }

    private static String run(String... args) {
        CommandRun run = CommandRun.of(args);
        assertEquals(0, run.code(), run.err());
        return run.out();
    }

    private static JsonNode json(Path file) throws IOException {
        return new ObjectMapper().readTree(Files.readString(file));
    }

    private static String flat(String text) {
        return text.replace('\u00a0', ' ').replaceAll("\\s+", " ").strip();
    }

    private static List<String> lines(String text) {
        List<String> lines =
                new ArrayList<>(text.lines().map(S10LaterAnswersTest::flat).toList());
        for (String paragraph : text.split("\n\n")) lines.add(flat(paragraph));
        return lines;
    }

    private static List<String> rows(String page) {
        return Pattern.compile("(?s)<tr.*?</tr>")
                .matcher(page)
                .results()
                .map(row -> flat(row.group().replaceAll("<[a-zA-Z/!][^>]*>", " ")))
                .toList();
    }

    private static String pdfText(Path file) throws IOException {
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            return new PDFTextStripper().getText(document);
        }
    }
}
