package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import handreach.plan.PlanFile;
import handreach.reach.Progress;
import handreach.relay.SiteCheck;
import handreach.report.RelayComposer;
import handreach.report.RelayJson;
import handreach.report.RelaySite;
import handreach.report.card.CardLine;
import handreach.report.file.Json;
import handreach.report.file.JsonText;
import handreach.report.page.HtmlPage;
import handreach.report.page.PlainText;
import handreach.study.RelayAnswer;
import handreach.study.RelayStudy;
import handreach.study.Scene;
import handreach.units.Decibels;
import handreach.units.Shares;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeoutException;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Labeled;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/** One relay answer on real ground, every face of it: they read the same figures. */
@Isolated
class RelayFacesTest {
    private static final Path SAMPLE = Path.of("elevation-samples/forest-hills").toAbsolutePath();
    /** Wide enough that no row and no sentence is broken. */
    private static final int UNBROKEN = 4000;

    @TempDir
    static Path folder;

    private static RelayAnswer answer;
    private static JsonNode json;
    private static String terminal;
    private static String page;
    private static List<CardLine> card;
    private static List<String> window;
    private static final List<Object> PRESSED = new ArrayList<>();

    /** Where relays may stand is tried in large cells: the story is about figures, not about the search. */
    @BeforeAll
    static void answerOnce() throws IOException, TimeoutException {
        String plan = Files.readString(SAMPLE.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + SAMPLE.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + SAMPLE.resolve("../invented-bench/bench.csv") + "'")
                .replaceAll("(?s)\\[\\[walk\\]\\].*", "")
                .replace("cell_m = 30", "cell_m = 150");
        Scene scene = Scene.open(PlanFile.open(Files.writeString(folder.resolve("plan.toml"), plan)));
        answer = RelayStudy.run(scene, Progress.SILENT);
        RelayComposer composer = new RelayComposer(answer);
        json = JsonText.parsed(Json.text(RelayJson.of(answer)));
        terminal = flat(PlainText.of(composer.page(Instant.EPOCH), UNBROKEN));
        page = flat(HtmlPage.text(composer.page(Instant.EPOCH))
                .replaceAll("(?s)<style.*?</style>|<svg.*?</svg>", " ")
                .replaceAll("<[^>]*>", " ")
                .replace("&#39;", "'")
                .replace("&quot;", "\""));
        card = composer.cardLines();
        FxToolkit.registerPrimaryStage();
        window = WaitForAsyncUtils.waitForAsyncFx(60_000, () -> shown(composer));
    }

    private static List<String> shown(RelayComposer composer) {
        Session session = new Session(new Worker(defect -> {
            throw new AssertionError(defect);
        }));
        BlockView verdict = new BlockView(session, 340);
        verdict.showBlocks(composer.underHeadline());
        BlockView more = new BlockView(
                session,
                340,
                new BlockView.RowVerb<>(RelaySite.class, "Show on the map", PRESSED::add),
                new BlockView.RowVerb<>(SiteCheck.Hop.class, "Show this path", PRESSED::add));
        more.steps(composer.underVerdict()).forEach(Runnable::run);
        List<String> words = new ArrayList<>();
        words.add(flat(composer.headline()));
        gather(verdict, words);
        gather(more, words);
        return words;
    }

    private static void gather(Node node, List<String> words) {
        if (node instanceof Labeled label) {
            words.add(flat(label.getText()));
            if (label instanceof Button button) button.fire();
        } else if (node instanceof Parent parent)
            parent.getChildrenUnmodifiable().forEach(child -> gather(child, words));
    }

    private static String flat(String text) {
        return text.replaceAll("\\s+", " ");
    }

    private static void allSay(String words) {
        assertTrue(terminal.contains(words), words + " in " + terminal);
        assertTrue(page.contains(words), words + " in " + page);
        assertTrue(window.stream().anyMatch(line -> line.contains(words)), words + " in " + window);
    }

    /** A row where faces show it as one: cell after cell; and in the window, each cell after its head. */
    private static void allShow(String first, List<String> heads, List<String> cells) {
        String row = first + " " + String.join(" ", cells);
        assertTrue(terminal.contains(row), row + " in " + terminal);
        assertTrue(page.contains(row), row + " in " + page);
        String named = IntStream.range(0, heads.size())
                .mapToObj(i -> heads.get(i) + ": " + cells.get(i))
                .collect(Collectors.joining("; "));
        assertTrue(
                IntStream.range(1, window.size())
                        .anyMatch(i ->
                                window.get(i - 1).equals(first) && window.get(i).contains(named)),
                first + ", " + named + " in " + window);
    }

    @Test
    void theVerdictIsSaidOnceOnEveryFace() {
        for (JsonNode sentence : json.get("verdict")) {
            allSay(sentence.asText());
            for (String face : List.of(terminal, page, String.join(" ", window)))
                assertEquals(1, face.split(Pattern.quote(sentence.asText()), -1).length - 1, face);
        }
    }

    @Test
    void everyTalkWithoutARelayHasTheSameOdds() {
        for (JsonNode talk : json.at("/direct/talks"))
            allShow(
                    talk.get("a").asText(),
                    List.of("with", "there", "back", "pessimistic"),
                    List.of(
                            talk.get("b").asText(),
                            Shares.odds(talk.get("odds_there").asDouble()),
                            Shares.odds(talk.get("odds_back").asDouble()),
                            Shares.odds(talk.get("odds_pessimistic").asDouble())));
    }

    @Test
    void everySiteHasTheSameShareAndWorstTalk() {
        assertTrue(json.get("sites").size() > 1, "the case needs several sites");
        for (JsonNode site : json.get("sites")) {
            String place = site.get("place").asText();
            List<String> figures = List.of(
                    Shares.part(site.get("share").asDouble()),
                    Shares.part(site.get("share_pessimistic").asDouble()),
                    Shares.odds(site.get("worst_odds").asDouble()),
                    Shares.odds(site.get("worst_odds_other_mode").asDouble()));
            Pattern row = Pattern.compile("(Site|Relay) [0-9] " + Pattern.quote(place)
                    + " [0-9]+ m [0-9]+\u00b0 [0-9]+ min " + Pattern.quote(String.join(" ", figures)));
            for (String face : List.of(terminal, page))
                assertTrue(row.matcher(face).find(), row + " in " + face);
            String named = "served: " + figures.get(0) + "; pessimistic: " + figures.get(1) + "; worst talk: "
                    + figures.get(2) + "; other mode: " + figures.get(3);
            assertTrue(
                    window.stream().anyMatch(line -> line.contains(place) && line.contains(named)),
                    named + " in " + window);
        }
    }

    @Test
    void theWeakestHopHasTheSameOddsAndMargin() {
        JsonNode weakest = null;
        for (JsonNode hop : json.at("/together/hops"))
            if (weakest == null || weaker(hop) < weaker(weakest)) weakest = hop;
        allSay("odds " + Shares.odds(weakest.get("odds_there").asDouble()) + " there, "
                + Shares.odds(weakest.get("odds_back").asDouble()) + " back. Margin of the weaker way: "
                + Decibels.text(weakest.get("margin_db").asDouble()) + " at the median place.");
        String margin = Decibels.signed(weakest.get("margin_db").asDouble(), 1).replace('-', '\u2212');
        for (String face : List.of(terminal, page)) {
            String ledger = face.substring(face.indexOf("margin at the median place"));
            assertTrue(ledger.substring(0, 60).contains(margin), margin + " in " + ledger.substring(0, 60));
        }
    }

    private static double weaker(JsonNode hop) {
        return Math.min(hop.get("odds_there").asDouble(), hop.get("odds_back").asDouble());
    }

    @Test
    void theCardHasTheRelaysAndTheShareOfTheAnswer() {
        JsonNode together = json.get("together");
        int number = 0;
        for (JsonNode relay : together.get("relays")) {
            CardLine line = card.get(number++);
            assertEquals("Relay " + number, line.strong());
            assertTrue(line.words().startsWith(relay.get("place").asText() + ", "), line.words());
            allShow(
                    "Relay " + number,
                    List.of("place"),
                    List.of(relay.get("place").asText()));
        }
        assertEquals(
                "Serves " + Shares.part(together.get("share").asDouble()) + " of the talks; the worst has "
                        + Shares.odds(together.get("worst_odds").asDouble()) + ".",
                card.get(number).words());
        allSay("serve " + Shares.part(together.get("share").asDouble()));
    }

    @Test
    void everySiteAndEveryHopOfTheWindowCarriesItsVerb() {
        long hops = PRESSED.stream().filter(SiteCheck.Hop.class::isInstance).count();
        long sites = PRESSED.stream().filter(RelaySite.class::isInstance).count();
        assertEquals(json.at("/together/hops").size(), hops);
        assertEquals(json.get("sites").size() + json.at("/together/relays").size(), sites);
    }

    @Test
    void noLineOfTheTerminalIsWiderThanAHundredColumns() {
        String text = new RelayComposer(answer).text(PlainText.USUAL_WIDTH);
        for (String line : text.split("\n")) assertTrue(line.length() <= PlainText.USUAL_WIDTH, line);
        assertTrue(text.contains("\n  "), "the second line of a point hangs under its first");
    }
}
