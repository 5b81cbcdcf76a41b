package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import handreach.geodesy.Position;
import handreach.loadout.Loadout;
import handreach.plan.PlanFile;
import handreach.reach.ReachLink;
import handreach.study.PathAnswer;
import handreach.study.PathStudy;
import handreach.study.Scene;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A calibration that a plan has accepted holds in every answer, and every answer says so in the same words. */
class S13CalibratedAnswersTest {
    /** A hundredth of a decibel over a spread of 7.5 dB is at most this. */
    private static final double SAME_ODDS = 6e-4;
    /** A path and its reverse are cut into samples from either end. */
    private static final double SAME_DB = 0.01;
    /** A page prints decibels to one place and odds to whole per cent. */
    private static final double PRINTED_DB = 0.0501;

    private static final String BASE = "spike camp";
    private static final String SPUR = "north spur";
    private static final String CREEK = "creek crew";

    @TempDir
    Path folder;

    private static JsonNode json(String... args) throws IOException {
        CommandRun run = CommandRun.of(args);
        assertEquals(0, run.code(), run.err());
        return new ObjectMapper().readTree(run.out());
    }

    private static JsonNode path(Path plan, String from, String to) throws IOException {
        return json("path", "--plan", plan.toString(), "--from", from, "--to", to, "--json");
    }

    private static JsonNode talk(JsonNode relay, String a, String b) {
        for (JsonNode talk : relay.get("direct").get("talks")) {
            List<String> ends = List.of(talk.get("a").asText(), talk.get("b").asText());
            if (ends.containsAll(List.of(a, b))) return talk;
        }
        throw new AssertionError("no talk of " + a + " and " + b);
    }

    @Test
    void pathAndRelayGiveThePairTheSameOdds() throws IOException {
        Path plan = CalibratedPlan.accepted(folder);
        JsonNode relay = json("relay", plan.toString(), "--json");
        for (List<String> pair : List.of(List.of(BASE, SPUR), List.of(BASE, CREEK), List.of(CREEK, SPUR))) {
            JsonNode talk = talk(relay, pair.get(0), pair.get(1));
            for (List<String> ends : List.of(pair, List.of(pair.get(1), pair.get(0)))) {
                JsonNode ledger = path(plan, ends.get(0), ends.get(1)).get("ledger");
                assertEquals(
                        talk.get("odds").asDouble(), ledger.get("odds_of_copy").asDouble(), SAME_ODDS, ends.toString());
                assertEquals(
                        talk.get("margin_db").asDouble(),
                        ledger.get("margin_db").asDouble(),
                        SAME_DB,
                        ends.toString());
            }
        }
    }

    /** By hand: base in the woods and walked from, so that only the clearing counts: 9 − 3 = 6; woods and clearing: 9 + 2.5 − 0.75. */
    @Test
    void theShiftIsALineOfThePathsLedger() throws IOException {
        Path plan = CalibratedPlan.accepted(folder);
        Path before = CalibratedPlan.plain(folder);
        JsonNode walked = path(plan, BASE, SPUR);
        double margin = path(before, BASE, SPUR).at("/ledger/margin_db").asDouble();
        assertEquals(margin - 6, walked.at("/ledger/margin_db").asDouble(), 1e-9);
        assertEquals(7.5, walked.at("/ledger/back/spread_db").asDouble());
        double sum = 0;
        for (JsonNode line : walked.at("/ledger/there/lines"))
            sum += line.get("db").asDouble();
        assertEquals(walked.at("/ledger/there/margin_db").asDouble(), sum, 1e-9);
        double others = path(before, CREEK, SPUR).at("/ledger/margin_db").asDouble();
        assertEquals(
                others - 10.75, path(plan, CREEK, SPUR).at("/ledger/margin_db").asDouble(), 1e-9);
        assertTrue(walked.at("/ledger/there/common_doubt_db").asDouble()
                < path(before, BASE, SPUR).at("/ledger/there/common_doubt_db").asDouble());
    }

    /** What a cell of the maps gets is what one path gets. */
    @Test
    void aCellOfTheMapGetsWhatThePathGets() throws IOException {
        Scene scene = Scene.open(PlanFile.open(CalibratedPlan.accepted(folder)));
        Loadout near = scene.loadout("factory at hip");
        Loadout far = scene.loadout("factory at face");
        Position base = scene.position(BASE).at();
        Position spur = scene.position(SPUR).at();
        PathAnswer path = PathStudy.between(scene, base, near, spur, far, List.of(scene.model()));
        ReachLink link = scene.link(near, far);
        double margin = link.marginDb(
                path.loss().lossDb(),
                path.geometry().departureDeg(),
                path.geometry().arrivalDeg(),
                scene.cover().coverAt(spur.latitudeDeg(), spur.longitudeDeg()));
        assertEquals(path.ledger().orElseThrow().marginDb(), margin, 1e-9);
        assertEquals(path.ledger().orElseThrow().odds(), link.odds(margin), SAME_ODDS);
    }

    @Test
    void theReportsLedgerIsThatOfThePathAndTheReportSaysSo() throws IOException {
        Path plan = CalibratedPlan.accepted(folder);
        Path page = folder.resolve("report.html");
        json("report", plan.toString(), "--out", page.toString(), "--json");
        String html = Files.readString(page);
        JsonNode ledger = path(plan, BASE, SPUR).get("ledger");
        Matcher row = Pattern.compile("margin at the median place</t[dh]>\\s*<td[^>]*>([^<]*)<")
                .matcher(html);
        assertTrue(row.find(), "no ledger in the report");
        assertEquals(
                ledger.at("/there/margin_db").asDouble(),
                Double.parseDouble(row.group(1).replace('\u2212', '-').replace("+", "")),
                PRINTED_DB);
        assertTrue(html.contains(CalibratedPlan.SENTENCE), "the report does not say that it is calibrated");
        assertFalse(html.contains("Nothing changes until"), "it changes already");
    }

    @Test
    void everyFaceSaysTheSameSentence() throws IOException {
        String plan = CalibratedPlan.accepted(folder).toString();
        assertTrue(CommandRun.of("path", "--plan", plan, "--from", BASE, "--to", SPUR)
                .out()
                .replaceAll("\\s+", " ")
                .contains(CalibratedPlan.SENTENCE));
        JsonNode path = path(Path.of(plan), BASE, SPUR);
        String sentence = path.at("/calibration/sentence").asText();
        assertTrue(sentence.startsWith(CalibratedPlan.SENTENCE), sentence);
        assertEquals(
                sentence,
                json("relay", plan, "--json").at("/calibration/sentence").asText());
        assertEquals(
                sentence,
                json("reach", plan, "--no-area", "--json")
                        .at("/calibration/sentence")
                        .asText());
        assertTrue(CommandRun.of("relay", plan).out().replaceAll("\\s+", " ").contains(sentence));
        Path card = folder.resolve("card.pdf");
        json("card", plan, "--out", card.toString(), "--json");
        try (PDDocument document = Loader.loadPDF(card.toFile())) {
            String words = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
            assertTrue(words.contains(CalibratedPlan.SENTENCE), words);
        }
    }

    @Test
    void withoutACalibrationNothingIsSaidOfOne() throws IOException {
        JsonNode path = path(CalibratedPlan.plain(folder), BASE, SPUR);
        assertTrue(path.get("calibration").isNull());
        for (JsonNode line : path.at("/ledger/there/lines"))
            assertFalse(line.get("key").asText().equals("site"));
    }
}
