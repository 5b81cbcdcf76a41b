package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import handreach.cartography.MapFrame;
import handreach.geodesy.Compass;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.plan.Places;
import handreach.plan.PlanText;
import handreach.relay.SiteCheck;
import handreach.report.RelaySite;
import handreach.report.WalkComposer;
import handreach.report.WalkJson;
import handreach.report.WalkNextComposer;
import handreach.report.WalkNextJson;
import handreach.report.file.Json;
import handreach.report.page.HtmlPage;
import handreach.report.page.PlainText;
import handreach.study.RelayAnswer;
import handreach.study.WalkAnswer;
import handreach.study.WalkNextAnswer;
import handreach.units.Decibels;
import handreach.units.Shares;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/** The last two questions of the way through the real window: is a relay needed, was it right. */
@Isolated
class RelayWalkDeskTest {
    /** Columns of a terminal in which no cell is broken. */
    private static final int WIDE = 300;
    /** Zooms and pans, px: from far, from near, and some at which marks meet the edge of the map or what lies over it. */
    private static final double[][] LOOKS = {
        {0.6, 0, 0}, {0.36, 0, 0}, {1.08, 0, 0}, {1.84, 0, 0}, {1.393, -199, -165}, {2.399, -36, -48}, {2.382, 99, -68}
    };

    @TempDir
    private Path folder;

    private WindowRun run;

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    private void scroll(double share) {
        run.onScreen(() -> ((ScrollPane) run.stage().getScene().lookup(".way-scroll")).setVvalue(share));
        run.settle();
    }

    private boolean isShown(String id) {
        return run.onScreen(() -> run.stage().getScene().lookup(id).isVisible());
    }

    private String words(String id) {
        return run.onScreen(() -> words(run.stage().getScene().lookup(id)));
    }

    private static String words(Node node) {
        if (node instanceof Label label) return label.getText() + "\n";
        if (node instanceof Button button) return button.getText() + "\n";
        StringBuilder all = new StringBuilder();
        if (node instanceof Parent parent) parent.getChildrenUnmodifiable().forEach(child -> all.append(words(child)));
        return all.toString();
    }

    private static String name(RelayAnswer answer, SiteCheck.Hop hop) {
        return answer.question().demands().get(hop.demand()).name();
    }

    /** Presses the row whose verb and first cell these are. */
    private void pressRow(String verb) {
        run.onScreen(() -> run.stage().getScene().lookup("#relay-answer").lookupAll(".link").stream()
                .filter(node -> verb.equals(node.getAccessibleText()))
                .map(Button.class::cast)
                .findFirst()
                .orElseThrow(() -> new AssertionError("no row does " + verb))
                .fire());
        run.settle();
    }

    @Test
    void theRelayIsFoundMarkedAndItsWeakestHopShown() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.onScreen(() -> run.window().way().open(3));
        assertFalse(isShown("#relay-unasked"));
        run.press("#relay-find");
        RelayAnswer answer = run.onScreen(() -> run.session().relay().get()).orElseThrow();
        assertEquals(Layer.RELAY, run.onScreen(() -> run.session().layer().get()));
        assertTrue(run.onScreen(() -> run.window().map().overlay().isPresent()));
        // The headline of the question is a part of the answer.
        String words = words("#step-4") + words("#relay-answer");
        for (String sentence : answer.summary().verdict()) assertTrue(words.contains(sentence), sentence);
        boolean servesAll = answer.recommended().orElseThrow().service().servesAll();
        assertEquals(servesAll, !words("#step-4").contains("not everybody can be served"), words("#step-4"));
        for (RelaySite site : RelaySite.of(answer))
            assertTrue(words.contains(answer.scene().plan().header().placeForm().format(site.at())), site.name());
        assertTrue(words.contains("on foot: "), words);
        assertTrue(words.contains("Power lines"), words);
        assertFalse(isShown("#relay-stale"));
        // Each kind of line on the map stands in the key.
        boolean isChain = answer.recommended().orElseThrow().sites().size() > 1;
        assertEquals(isChain, words("#map-key").contains("from relay to relay"), words("#map-key"));
        assertTrue(isChain, "the sample has two relays that pass to one another");
        run.snapshot("relay");
        Position middle = run.onScreen(() -> run.window().map().frame().get().centre());
        double metresPerPx = run.window().map().metresPerPx();
        for (double[] look : LOOKS) {
            run.onScreen(() -> {
                run.window().map().lookAt(middle, metresPerPx / look[0]);
                run.window().map().pan(look[1], look[2]);
            });
            run.settle();
            assertTrue(crossed(answer).isEmpty(), Arrays.toString(look) + ": " + crossed(answer));
        }
        run.press("#whole-area");
        scroll(0.5);
        run.snapshot("relay-hops");
        scroll(1);
        run.snapshot("relay-cautions");
        pressRow("Show on the map: Relay 1");
        pressRow("Show this path: "
                + name(answer, answer.recommended().orElseThrow().weakest().orElseThrow()));
        PulledPath path = run.onScreen(() -> run.session().pulled().get()).orElseThrow();
        assertTrue(answer.recommended().orElseThrow().sites().contains(path.to().at()));
        assertEquals(6, path.given().orElseThrow().answer().link().terminals().rxHeightM());
        assertTrue(words("#path-pane").contains("feed line"), words("#path-pane"));
        run.onScreen(() -> run.window().map().palette().set(Palette.NIGHT));
        run.settle();
        run.snapshot("relay-night");
        run.onScreen(() -> run.session().edit("mast", text -> PlanText.withValue(text, "relay", "mast_m", "3")));
        run.settle();
        assertTrue(isShown("#relay-stale"));
        assertTrue(run.onScreen(() -> run.session().pulled().get())
                .orElseThrow()
                .given()
                .isEmpty());
        run.onScreen(() -> run.session().undo());
        run.settle();
        assertFalse(isShown("#relay-stale"));
    }

    /** Names on the map that a hop runs through, a pixel off their edge or more. */
    private List<String> crossed(RelayAnswer answer) {
        return run.onScreen(() -> {
            MapFrame frame = run.window().map().frame().get();
            SiteCheck check = answer.recommended().orElseThrow();
            List<String> crossed = new ArrayList<>();
            for (Optional<SiteCheck.Hop> hop : check.hops()) {
                if (hop.isEmpty()) continue;
                Coordinate from = pixel(
                        frame,
                        answer.question().demands().get(hop.get().demand()).at());
                Coordinate to = pixel(frame, check.sites().get(hop.get().site()));
                LineString line = new GeometryFactory().createLineString(new Coordinate[] {from, to});
                for (MapPen.Written name : run.window().map().names()) {
                    Envelope within = new Envelope(name.box());
                    within.expandBy(-1);
                    if (new GeometryFactory().toGeometry(within).intersects(line)) crossed.add(name.text());
                }
            }
            return crossed;
        });
    }

    private static Coordinate pixel(MapFrame frame, Position at) {
        return new Coordinate(frame.xPx(at.longitudeDeg()), frame.yPx(at.latitudeDeg()));
    }

    /** "spike camp" is the middle, the base of a walk, the start on foot and one of a listed pair. */
    @Test
    void aPositionThatOthersNameCanBeRenamed() throws IOException {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        Path listed = run.plan().resolveSibling("listed.toml");
        Files.writeString(
                listed,
                Files.readString(run.plan())
                        .replace(
                                "talk = \"all-to-base\"",
                                "talk = \"listed\"\npairs = [[\"spike camp\", \"north spur\"]]"));
        run.onScreen(() -> run.session().open(listed));
        run.settle();
        run.onScreen(() -> new PlaceVerbs(run.session()).rename("spike camp", "upper camp"));
        run.settle();
        assertEquals(
                List.of(List.of("upper camp", "north spur")),
                run.onScreen(() ->
                        run.session().scene().get().plan().questions().relay().pairs()));
    }

    @Test
    void aPlanThatAsksNothingIsOfferedTheUsualQuestion() throws IOException {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        String text = Files.readString(run.plan());
        int from = text.indexOf("[relay]");
        Path other = run.plan().resolveSibling("unasked.toml");
        Files.writeString(other, text.substring(0, from) + text.substring(text.indexOf("[[walk]]")));
        run.onScreen(() -> run.session().open(other));
        run.settle();
        run.onScreen(() -> run.window().way().open(3));
        assertTrue(isShown("#relay-unasked"));
        run.press("#relay-usual");
        String edited = run.onScreen(() -> run.session().scene().get().file().text());
        assertTrue(edited.contains("[relay]") && edited.contains("talk = \"all-to-all\""), edited);
        run.onScreen(() -> run.session().undo());
        run.settle();
        assertTrue(isShown("#relay-unasked"));
    }

    @Test
    void theWalkIsComparedLearnedFromAndTheNextOneProposed() throws IOException {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.onScreen(() -> run.window().way().open(4));
        run.press("#walk-compare");
        WalkAnswer answer = run.onScreen(() -> run.session().walked().get()).orElseThrow();
        // The headline of the question is a part of the answer, and is said once.
        assertFalse(words("#walk-answer").contains("The prediction was right for"), words("#walk-answer"));
        String words = words("#step-5") + words("#walk-answer");
        assertTrue(words.contains("false hopes"), words);
        assertTrue(words.contains("Brier"), words);
        assertFalse(answer.worst().isEmpty());
        comparisonsAgree(answer, words);
        run.snapshot("walk");
        scroll(0.7);
        run.snapshot("walk-worst");
        run.press("#walk-answer .link");
        assertEquals(
                answer.worst().get(0).pair().spot().at(),
                run.onScreen(() -> run.session().pulled().get())
                        .orElseThrow()
                        .to()
                        .at());
        run.onScreen(() -> run.session().pulled().set(Optional.empty()));
        run.press("#walk-next");
        WalkNextAnswer next = run.onScreen(() -> run.session().nextWalk().get()).orElseThrow();
        proposalsAgree(next, words("#walk-proposal"));
        scroll(1);
        run.snapshot("walk-next");
        run.press("#walk-put-stops");
        List<Position> put = run.onScreen(() -> run.session().scene().get().plan().places().positions().stream()
                .filter(entry -> entry.name().matches("stop \\d+"))
                .map(Places.PositionEntry::at)
                .toList());
        assertEquals(next.stops().size(), put.size());
        for (int i = 0; i < put.size(); i++)
            assertEquals(0, GeodesicLine.distanceM(next.stops().get(i).spot().at(), put.get(i)), 0.2);
        run.onScreen(() -> run.session().undo());
        run.settle();
        run.press("#walk-learn");
        Path calibration = run.plan().resolveSibling("calibration.toml");
        assertEquals(answer.learned().file().text(), Files.readString(calibration));
        assertTrue(run.onScreen(() -> run.session().scene().get().calibration()).isPresent());
        assertFalse(isShown("#walk-stale"));
        assertTrue(words("#walk-accepted").contains("loss shifted"));
        run.onScreen(() -> run.window().map().palette().set(Palette.NIGHT));
        run.settle();
        scroll(1);
        run.snapshot("walk-night");
        run.onScreen(() -> run.session().undo());
        run.settle();
        assertEquals(
                List.of(),
                run.noticeTexts().stream()
                        .filter(text -> text.contains("defect"))
                        .toList());
        assertTrue(run.onScreen(() -> run.session().scene().get().calibration()).isEmpty());
    }

    /** What the JSON object holds is read off terminal, page and window. */
    private static void comparisonsAgree(WalkAnswer answer, String window) {
        JsonNode json = Json.tree(WalkJson.of(answer));
        List<String> said = new ArrayList<>();
        JsonNode all = json.get("all").get("copies");
        int right = all.get("kept").asInt() + all.get("rightly_doubted").asInt();
        said.add("right for " + right + " of " + json.get("reports").size() + " reports");
        said.add(all.get("false_hopes").asInt() + " false hope");
        said.add(all.get("false_fears").asInt() + " false fear");
        for (JsonNode group : json.get("groups")) {
            JsonNode copies = group.get("copies");
            int count = 0;
            for (JsonNode each : copies) count += each.asInt();
            int groupRight =
                    copies.get("kept").asInt() + copies.get("rightly_doubted").asInt();
            said.add(String.join(
                    " ",
                    group.get("loadout").asText() + ",",
                    group.get("way").asText(),
                    String.valueOf(count),
                    copies.get("false_hopes").asText(),
                    copies.get("false_fears").asText(),
                    Shares.share((double) groupRight / count),
                    Decibels.number(group.get("brier").asDouble(), 3)));
        }
        for (JsonNode bin : json.get("reliability"))
            said.add(bin.get("count").asText() + " "
                    + Shares.odds(bin.get("mean_odds").asDouble()) + " "
                    + Math.round(
                            bin.get("share_found").asDouble() * bin.get("count").asInt())
                    + " of " + bin.get("count").asText());
        for (JsonNode sector : json.get("sectors"))
            said.add(Compass.word(sector.get("bearing_deg").asDouble()) + " "
                    + sector.get("reports").asText() + " ");
        JsonNode bias = json.get("learned").get("bias");
        double lossDb = bias.get("loss_db").asDouble();
        said.add(Decibels.text(Math.abs(lossDb)) + (lossDb > 0 ? " worse" : " better") + " than predicted (\u00b1 "
                + Decibels.text(bias.get("standard_uncertainty_db").asDouble()) + ")");
        JsonNode check = json.get("held_back");
        said.add(Decibels.number(check.get("brier_before").asDouble(), 3) + " before, "
                + Decibels.number(check.get("brier_after").asDouble(), 3) + " after");
        List<String> faces = List.of(
                PlainText.of(WalkComposer.screen(answer), PlainText.USUAL_WIDTH),
                HtmlPage.text(WalkComposer.page(answer, Instant.EPOCH)).replaceAll("<[^>]*>", " "),
                window + "\n" + inCells(window));
        for (String face : faces)
            for (String words : said) assertTrue(flat(face).contains(words), words + " in " + face);
    }

    /** A table too wide for the panel is listed row under row, "head: cell; head: cell": the same cells without their heads. */
    private static String inCells(String window) {
        return window.replaceAll("(?m)(^|; )[A-Za-z][^:;\n]*: ", " ");
    }

    private static void proposalsAgree(WalkNextAnswer answer, String window) {
        JsonNode json = Json.tree(WalkNextJson.of(answer));
        String terminal = PlainText.of(WalkNextComposer.page(answer), WIDE);
        double perfectDb = json.get("perfect_value_db").asDouble();
        int number = 0;
        for (JsonNode stop : json.get("stops")) {
            String row = Pattern.quote(++number + " " + stop.get("track").asText()) + ", [0-9.]+ k?m along "
                    + Pattern.quote(String.join(
                            " ",
                            stop.get("place").asText(),
                            stop.get("loadout").asText(),
                            Shares.odds(stop.get("odds_of_copy").asDouble()),
                            Shares.share(stop.get("adds_db").asDouble() / perfectDb)));
            for (String face : List.of(terminal, window + "\n" + inCells(window)))
                assertTrue(Pattern.compile(row).matcher(flat(face)).find(), row + " in " + face);
        }
        assertTrue(number > 0);
    }

    private static String flat(String face) {
        return face.replaceAll("\\s+", " ");
    }

    /** Far more reports than are predicted while a hand goes to the button: the work shows how far it is, and Stop ends it. */
    @Test
    void stoppingALongComparisonEndsIt() throws IOException {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        StringBuilder rows = new StringBuilder("latitude,longitude,copy,loadout\n");
        for (int i = 0; i < 20_000; i++)
            rows.append(String.format(
                    Locale.ROOT, "%.5f,%.5f,yes,factory at face%n", 36.26 + i % 200 / 1e4, -84.22 + i / 200 / 1e4));
        Files.writeString(run.plan().resolveSibling("walk-reports.csv"), rows);
        run.onScreen(() -> run.window().way().open(4));
        run.onScreen(() -> ((Button) run.stage().getScene().lookup("#walk-compare")).fire());
        WatchedWork work = run.onScreen(() -> run.session().worker().watched().get(0));
        run.await(() -> work.step().get().equals("predicting round the camp"));
        run.snapshot("walk-stop");
        assertTrue(run.onScreen(() -> work.share().get()) > 0);
        assertTrue(run.onScreen(
                () -> run.stage().getScene().lookup("#walk-compare").isDisabled()));
        run.onScreen(() -> ((Button) run.stage().getScene().lookup("#work-stop")).fire());
        run.settle();
        assertTrue(run.onScreen(() -> work.share().get()) < 1, "the work went on to its end");
        assertEquals(
                List.of(), run.onScreen(() -> List.copyOf(run.session().worker().watched())));
        assertTrue(run.onScreen(() -> run.session().walked().get()).isEmpty());
        assertFalse(run.onScreen(
                () -> run.stage().getScene().lookup("#walk-compare").isDisabled()));
    }
}
