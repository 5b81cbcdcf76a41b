package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import handreach.desktop.PanelRun;
import handreach.geodesy.Compass;
import handreach.units.Decibels;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/**
 * The same thing never shows two numbers: every sample plan is answered on every face - terminal, JSON, HTML, card, relay and walk
 * pages, the panels of the window - and each figure is read off all of them.
 */
@Isolated
class S10OneFigureTest {
    private static final List<String> SAMPLES =
            List.of("forest-hills", "high-mountains", "invented-valley", "urban-coast", "valley-relay");
    /** Odds of one pair by two commands: one formula on one profile, summed in another order. */
    private static final double SAME = 1e-9;
    /** Cells of the maps: large, since this story is about figures, not about maps. */
    private static final String CELLS = "cell_m = 150";
    /**
     * The model is named: over bare ground the program takes the march, by which no relay is looked for, and then the pairs of reach and
     * relay are by two models. That all but the relay agree then too, {@link S24ModelChoiceTest} holds.
     */
    private static final String ONE_MODEL = CELLS + "\nmodel = \"handheld\"";

    private static final Pattern CLEARANCE = Pattern.compile(
            "least clearance .*?([\u2212-]?[0-9]+\\.[0-9]{2}) of the first Fresnel radius\\)? at ([0-9.]+) km");
    private static final Pattern PROMISE =
            Pattern.compile("odds( of copy)?( of| with)? (100|0) ?%|(>|<|&gt;|&lt;)(99|1) ?%");
    private static final Pattern NEGATIVE_NOUGHT =
            Pattern.compile("(?<![0-9.])[\u2212-]0(\\.0+)?(?![0-9.])(?= ?dB|\\s*$| m\\b|\u00b0)");
    /** A hyphen for a minus; degrees of a place, with their four decimals and more, keep it, since they are typed again. */
    private static final Pattern HYPHEN =
            Pattern.compile("(?<![\\p{L}0-9_.\u2212-])-[0-9]+(\\.[0-9]{1,3})?(?![0-9.-])");

    private static final Pattern DOUBLES_TAIL = Pattern.compile("[0-9]\\.[0-9]{9,}");

    private static final String ODDS = "(?:(?:over |under )?[0-9]+ %)";
    /** Odds with their interval and the margin, where the mouse points. */
    private static final String POINTED = "odds " + ODDS + "(?: \\((?:(?:over |under )?[0-9]+(?: %)? to )?" + ODDS
            + "\\)), margin [+\u2212]?[0-9]+\\.[0-9] dB with ";

    @TempDir
    Path folder;

    @TestFactory
    Stream<DynamicTest> everyFaceOfEverySampleSaysTheSame() {
        return SAMPLES.stream()
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    Faces faces = new Faces(folder, name);
                    faces.agree();
                    faces.windowAgrees(folder.resolve("settings"));
                }));
    }

    /** All answers to one plan. */
    private static final class Faces {
        private static final int LONG = 10_000;
        private static final Map<String, String> PAGES = new HashMap<>();

        private final Path plan;
        private final Path out;
        private final Lengths lengths;
        private final JsonNode reach;
        private final String reachText;
        private final String report;
        private final JsonNode relay;
        private final String relayText;
        private final String relayPage;
        private final String card;
        private final boolean hasWalk;

        Faces(Path folder, String name) throws IOException {
            this.plan = copied(folder, name);
            this.out = folder.resolve(name + "-out");
            String words = Files.readString(plan.resolve("plan.toml"));
            this.lengths = words.contains("\"imperial\"") ? Lengths.IMPERIAL : Lengths.METRIC;
            this.hasWalk = words.contains("[[walk]]");
            this.reachText = run("reach", plan.toString(), "--out", out.toString(), "--only", "report,numbers");
            this.reach = json(out.resolve("reach.json"));
            this.relayText = run("relay", plan.toString(), "--out", out.toString());
            this.relay = json(out.resolve("relay.json"));
            this.relayPage = Files.readString(out.resolve("relay.html"));
            Path full = out.resolve("full.html");
            run("report", plan.toString(), "--out", full.toString());
            this.report = Files.readString(full);
            Path pdf = out.resolve("card.pdf");
            run("card", plan.toString(), "--relay", "--out", pdf.toString());
            // Where a card has little room, it writes in a sentence what others have in two columns.
            this.card = flat(pdfText(pdf))
                    .replaceAll("calls ([^,]{1,12}), hears ([^,;]{1,12})[,;]", "$1 $2 ")
                    .replaceAll(", calls (" + ODDS + "), hears (" + ODDS + ") ", " $1 $2 ");
        }

        void agree() throws IOException {
            reachAgrees(Files.readString(out.resolve("report.html")));
            reachAgrees(report);
            cardAgrees();
            cardHasTheOdds();
            pairsAgree();
            hopsAgree();
            weakestHopAgrees();
            if (hasWalk) walkAgrees();
            for (String page : List.of(report, relayPage)) clearancesAgree(page);
            for (String face : List.of(reachText, relayText, card, words(report), words(relayPage))) isHonest(face);
        }

        /** Median, worst and share of each loadout in terminal, table and caption, as the JSON has them. */
        private void reachAgrees(String page) {
            assertEquals("cells", reach.get("area_share_of").asText());
            Lengths.OneUnit unit = new Lengths.OneUnit(lengths, true);
            for (String face : List.of(flat(reachText), words(page)))
                assertTrue(face.contains("Continuous reach, " + unit.unit() + ", by bearing"), face);
            assertTrue(words(page).contains("good copy, " + unit.unit() + " "), words(page));
            for (JsonNode one : reach.get("loadouts")) {
                String name = one.get("loadout").asText();
                String median = unit.number(1000 * one.get("median_km").asDouble());
                String worst = unit.number(1000 * one.get("worst_km").asDouble());
                String towards = Compass.letters(one.get("worst_bearing_deg").asDouble());
                String share = Shares.share(one.get("area_share").asDouble());
                JsonNode interval = one.get("median_interval_95_km");
                String figures = Pattern.quote(name) + " " + Pattern.quote(median) + "\\+? "
                        + Pattern.quote(unit.range(
                                1000 * interval.get(0).asDouble(),
                                1000 * interval.get(1).asDouble()))
                        + " "
                        + Pattern.quote(unit.number(
                                1000 * one.get("some_copy_median_km").asDouble())) + "\\+? "
                        + Pattern.quote(worst) + " " + towards + " " + share + " .*%";
                for (List<String> lines : List.of(rows(page), unbroken(reachText))) {
                    String row = lines.stream()
                            .map(Faces::flat)
                            .filter(each -> each.matches("[A-Z] " + Pattern.quote(name) + " [0-9].*%"))
                            .findFirst()
                            .orElseThrow(() -> new AssertionError("no row for " + name + " in " + lines));
                    assertTrue(row.matches("[A-Z] " + figures), row + " has not " + figures);
                }
                for (MatchResult said :
                        all("Odds of copy with " + Pattern.quote(name) + "; (.+?) of the known", words(page)))
                    assertEquals(share, said.group(1), "caption of " + name);
            }
            assertTrue(
                    !all("of the known ground reaches the target", words(page)).isEmpty());
        }

        private void cardAgrees() {
            int found = 0;
            for (JsonNode one : reach.get("loadouts")) {
                String median = lengths.text(1000 * one.get("median_km").asDouble());
                String worst = lengths.text(1000 * one.get("worst_km").asDouble());
                String line = median + ", worst " + worst + " "
                        + Compass.word(one.get("worst_bearing_deg").asDouble());
                if (card.contains(line)) found++;
            }
            int said = all(", worst ", card).size();
            assertTrue(said > 0, card);
            assertTrue(found > 0 && all("worst [0-9]", card).size() == said, card);
            for (MatchResult each : all("([0-9.]+ (?:km|m|mi|ft)), worst ([0-9.]+ (?:km|m|mi|ft))", card))
                assertTrue(
                        Stream.iterate(0, i -> i < reach.get("loadouts").size(), i -> i + 1)
                                .map(reach.get("loadouts")::get)
                                .anyMatch(one -> each.group(1)
                                                .equals(lengths.text(1000
                                                        * one.get("median_km").asDouble()))
                                        && each.group(2)
                                                .equals(lengths.text(1000
                                                        * one.get("worst_km").asDouble()))),
                        each.group());
        }

        /** Odds of who calls and who hears, in the card's table of people. */
        private void cardHasTheOdds() {
            String base = reach.at("/middle/name").asText();
            assertTrue(card.contains("Who is where, seen from " + base + " "), card);
            int found = 0;
            for (JsonNode talk : relay.get("direct").get("talks")) {
                if (!talk.get("known").asBoolean() || isOnRoute(talk)) continue;
                boolean isFirst = talk.get("a").asText().equals(base);
                if (!isFirst && !talk.get("b").asText().equals(base)) continue;
                String other = talk.get(isFirst ? "b" : "a").asText();
                String calls = Shares.odds(
                        talk.get(isFirst ? "odds_back" : "odds_there").asDouble());
                String hears = Shares.odds(
                        talk.get(isFirst ? "odds_there" : "odds_back").asDouble());
                String distance = Pattern.quote(
                        lengths.text(1000 * talk.get("distance_km").asDouble()));
                String bearing = Pattern.quote(bearing(other));
                for (String row : List.of(
                        Pattern.quote(other) + " .{10,110}? " + calls + " " + hears + " ",
                        Pattern.quote(other) + " (?:(?! calls ).){0,80}?" + bearing + ", " + distance + " "))
                    assertFalse(all(row, card + " ").isEmpty(), row + " in " + card);
                String brief = Pattern.quote(other) + " [0-9]{3}°, [0-9.]+ [a-z]+,? (" + ODDS + ") (" + ODDS + ") ";
                for (MatchResult each : all(brief, card))
                    assertEquals(calls + " " + hears, each.group(1) + " " + each.group(2), other + " in " + card);
                found++;
            }
            assertTrue(found > 0, "nobody talks with " + base);
        }

        /** Whose way is walked stands on pages by stretches, not by each place of it. */
        private boolean isOnRoute(JsonNode talk) {
            for (JsonNode demand : relay.get("demands"))
                if (demand.hasNonNull("group")
                        && List.of(talk.get("a").asText(), talk.get("b").asText())
                                .contains(demand.get("name").asText())) return true;
            return false;
        }

        private boolean isRoute(String name) {
            for (JsonNode demand : relay.get("demands"))
                if (demand.path("group").asText().equals(name)) return true;
            return false;
        }

        /** True bearing from the base, as the terminal has it in its table of who reaches whom. */
        private String bearing(String other) {
            return reachText
                    .lines()
                    .map(Faces::flat)
                    .filter(each -> each.startsWith(other + " "))
                    .flatMap(each -> all("([0-9]{3}°),", each).stream())
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("no bearing of " + other + " in " + reachText))
                    .group(1);
        }

        /** The panels of the window write what the other faces have. */
        void windowAgrees(Path settings) throws Exception {
            try (PanelRun window = PanelRun.on(plan, settings)) {
                for (JsonNode one : reach.get("loadouts")) {
                    reachOfWindowAgrees(one, window);
                    mapOfWindowAgrees(one, window);
                }
                relayOfWindowAgrees(window.relay());
                if (hasWalk) walkOfWindowAgrees(window.walk());
                for (JsonNode talk : relay.get("direct").get("talks"))
                    if (talk.get("known").asBoolean() && !isOnRoute(talk)) pathOfWindowAgrees(talk, window);
            }
        }

        private void reachOfWindowAgrees(JsonNode one, PanelRun window) {
            Lengths.OneUnit unit = new Lengths.OneUnit(lengths, true);
            String name = one.get("loadout").asText();
            List<String> said = window.reach(name);
            double medianM = 1000 * one.get("median_km").asDouble();
            double someM = 1000 * one.get("some_copy_median_km").asDouble();
            String row = "; good copy, " + unit.unit() + "; some copy, " + unit.unit() + "; worst, " + unit.unit()
                    + "; of the ground;.*; " + Pattern.quote(name) + "; " + Pattern.quote(unit.number(medianM))
                    + "\\+?; "
                    + Pattern.quote(unit.number(someM)) + "\\+?; "
                    + Pattern.quote(unit.number(1000 * one.get("worst_km").asDouble())) + "; ([^;]+);";
            JsonNode interval = one.get("median_interval_95_km");
            String headline = "(?:at least )?" + Pattern.quote(lengths.text(medianM)) + " on the median bearing \\("
                    + Pattern.quote(lengths.range(
                            1000 * interval.get(0).asDouble(),
                            1000 * interval.get(1).asDouble()))
                    + "\\), (.+) of the ground; some copy, standing still, to (?:at least )?"
                    + Pattern.quote(lengths.text(someM));
            for (String wanted : List.of(row, headline)) {
                List<MatchResult> found = wanted.equals(row)
                        ? all(wanted, String.join("; ", said))
                        : said.stream()
                                .flatMap(each -> all(wanted, each).stream())
                                .toList();
                assertEquals(1, found.size(), wanted + " in " + said);
                String share = found.get(0).group(1);
                assertEquals(Shares.share(one.get("area_share").asDouble()), share, name);
            }
            for (String sentence : said) {
                isHonest(sentence);
                if (!sentence.startsWith(capital(name) + ": ")) continue;
                String verdict = capital(sentence.substring(name.length() + 2));
                assertTrue(words(report).contains(verdict), verdict + " in " + words(report));
            }
        }

        /** The key of the map has the share that the reports have, and the line below it figures as they are written elsewhere. */
        private void mapOfWindowAgrees(JsonNode one, PanelRun window) {
            String name = one.get("loadout").asText();
            String key = Shares.share(one.get("area_share").asDouble()) + " of the ground reaches "
                    + Shares.wanted(reach.get("odds").asDouble()) + " or better";
            String said = window.key(name);
            assertTrue(said.startsWith(key), key + " in " + said);
            for (JsonNode place : reach.at("/who_reaches_whom/pairs")) {
                if (isRoute(place.get("b").asText())) continue;
                String below = window.pointing(name, place.get("b").asText());
                isHonest(below);
                assertTrue(
                        below.endsWith("nothing known here")
                                || below.endsWith(", ")
                                || all(POINTED + Pattern.quote(name) + "$", below)
                                                .size()
                                        == 1,
                        below);
            }
        }

        private static String capital(String words) {
            return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
        }

        private void relayOfWindowAgrees(List<String> said) {
            String together = String.join(", ", said);
            for (JsonNode talk : relay.get("direct").get("talks")) {
                if (!talk.get("known").asBoolean() || isOnRoute(talk)) continue;
                String row = talk.get("a").asText() + ", with: " + talk.get("b").asText() + "; there: "
                        + Shares.odds(talk.get("odds_there").asDouble()) + "; back: "
                        + Shares.odds(talk.get("odds_back").asDouble()) + ";";
                assertTrue(together.contains(row), row + " in " + together);
            }
            int told = 0;
            for (String each : said) {
                isHonest(each);
                if (!each.matches(".* (relay|talks|weaker way).*[0-9].* (%|dB).*\\.")) continue;
                // the headline of the panel puts whether and what into one line
                String sentence = each.replaceFirst("^A relay is needed(?:, but not everybody can be served)?\\. ", "");
                assertTrue(flat(relayText).contains(sentence), each + " in " + relayText);
                told++;
            }
            assertTrue(told > 0, said.toString());
        }

        private void walkOfWindowAgrees(List<String> said) throws IOException {
            JsonNode walk = parsed(run("walk", plan.toString(), "--json"));
            String page = words(Files.readString(out.resolve("walk.html")));
            int rows = 0;
            for (JsonNode line : walk.get("worst_lines"))
                for (JsonNode one : walk.get("reports")) {
                    if (one.get("line").asInt() != line.asInt()) continue;
                    String odds = "; odds: " + Shares.odds(one.get("odds").asDouble()) + ";";
                    String row = ".*, " + line.asText() + ", place: (?:(?!, place: ).)*?" + Pattern.quote(odds) + ".*";
                    assertTrue(String.join(", ", said).matches(row), row + " in " + said);
                    rows++;
                }
            assertTrue(rows > 0, said.toString());
            for (String each : said) {
                isHonest(each);
                if (each.startsWith("The prediction was right for") || each.startsWith("The site is "))
                    assertTrue(page.contains(each), each + " in " + page);
            }
        }

        private void pathOfWindowAgrees(JsonNode talk, PanelRun window) throws IOException {
            List<String> said =
                    window.path(talk.get("a").asText(), talk.get("b").asText());
            double there = talk.get("odds_there").asDouble();
            double back = talk.get("odds_back").asDouble();
            String margin = Decibels.signed(talk.get("margin_db").asDouble(), 1).replace('-', '\u2212');
            String verdict = "Margin " + margin + " dB, odds of copy " + Shares.odds(Math.min(there, back));
            assertTrue(said.stream().anyMatch(each -> each.startsWith(verdict)), verdict + " in " + said);
            String ledger = "odds of copy " + Shares.odds(there) + " " + Shares.odds(back);
            assertTrue(String.join(" ", said).contains(ledger), ledger + " in " + said);
            JsonNode path = parsed(run(
                            "path",
                            "--plan",
                            plan.toString(),
                            "--from",
                            talk.get("a").asText(),
                            "--to",
                            talk.get("b").asText(),
                            "--json"))
                    .get("ledger");
            String median = "margin at the median place";
            for (String way : List.of("there", "back"))
                median += " " + Decibels.signed(path.get(way).get("margin_db").asDouble(), 1);
            assertTrue(String.join(" ", said).contains(median + " "), median + " in " + said);
            said.forEach(Faces::isHonest);
        }

        /** Odds and margin of each pair of people, by relay and by path. */
        private void pairsAgree() throws IOException {
            for (JsonNode talk : relay.get("direct").get("talks")) {
                if (!talk.get("known").asBoolean() || isOnRoute(talk)) continue;
                String a = talk.get("a").asText();
                String b = talk.get("b").asText();
                String text = run("path", "--plan", plan.toString(), "--from", a, "--to", b);
                JsonNode ledger = parsed(run("path", "--plan", plan.toString(), "--from", a, "--to", b, "--json"))
                        .get("ledger");
                double there = talk.get("odds_there").asDouble();
                double back = talk.get("odds_back").asDouble();
                double margin = talk.get("margin_db").asDouble();
                String who = a + " and " + b;
                assertEquals(there, ledger.get("there").get("odds_of_copy").asDouble(), SAME, who);
                assertEquals(back, ledger.get("back").get("odds_of_copy").asDouble(), SAME, who);
                assertEquals(margin, ledger.get("margin_db").asDouble(), SAME, who);
                assertEquals(Math.min(there, back), ledger.get("odds_of_copy").asDouble(), SAME, who);
                assertEquals(
                        talk.get("odds").asDouble(), ledger.get("odds_of_copy").asDouble(), SAME, who);
                String rules = "Margin " + Decibels.signed(margin, 1).replace('-', '\u2212') + " dB, odds of copy "
                        + Shares.odds(Math.min(there, back));
                assertTrue(text.contains(rules), text);
                String row = a + " " + b + " " + Shares.odds(there) + " " + Shares.odds(back) + " "
                        + Shares.odds(
                                talk.get("odds_pessimistic").asDouble(),
                                reach.get("odds").asDouble())
                        + " "
                        + lengths.longNumber(1000 * talk.get("distance_km").asDouble());
                assertTrue(relayText.lines().anyMatch(each -> flat(each).equals(row)), row + " in " + relayText);
                List<String> table = rows(relayPage);
                assertTrue(table.contains(row), row + " in " + table);
            }
            for (JsonNode pair : reach.at("/who_reaches_whom/pairs")) reachPairAgrees(pair);
        }

        /** The same pair in reach: numbers, terminal, report, and on the card where it is with the base. */
        private void reachPairAgrees(JsonNode pair) throws IOException {
            String a = pair.get("a").asText();
            String b = pair.get("b").asText();
            if (isRoute(a) || isRoute(b)) return;
            JsonNode ledger = parsed(run("path", "--plan", plan.toString(), "--from", a, "--to", b, "--json"))
                    .get("ledger");
            double there = pair.at("/odds/there/0").asDouble();
            double back = pair.at("/odds/back/0").asDouble();
            assertEquals(there, ledger.at("/there/odds_of_copy").asDouble(), SAME, a + " and " + b);
            assertEquals(back, ledger.at("/back/odds_of_copy").asDouble(), SAME, a + " and " + b);
            assertEquals(Math.min(there, back), pair.at("/odds/weaker/0").asDouble(), SAME);
            for (JsonNode talk : relay.at("/direct/talks")) {
                if (!talk.get("a").asText().equals(a) || !talk.get("b").asText().equals(b)) continue;
                assertEquals(talk.get("odds_there").asDouble(), there, SAME);
                assertEquals(talk.get("odds_back").asDouble(), back, SAME);
                assertEquals(
                        talk.get("odds_pessimistic").asDouble(),
                        pair.at("/odds/pessimistic/0").asDouble(),
                        SAME);
            }
            String base = reach.at("/who_reaches_whom/base").asText();
            boolean isWithBase = a.equals(base) || b.equals(base);
            String who = isWithBase && a.equals(base) ? b : a;
            String odds = isWithBase && a.equals(base)
                    ? Shares.odds(back) + " " + Shares.odds(there)
                    : Shares.odds(there) + " " + Shares.odds(back);
            String distance = lengths.text(1000 * pair.at("/distance_km/0").asDouble());
            String row = " " + distance + " " + odds + " ";
            assertTrue(isPrinted(who, distance, odds), who + row + " in " + reachText);
            List<String> table = rows(report);
            assertTrue(
                    table.stream().anyMatch(each -> each.startsWith(who + " ") && each.contains(row)),
                    who + row + " in " + table);
            if (isWithBase)
                assertTrue(
                        card.matches(".*" + Pattern.quote(who) + " .*" + Pattern.quote(odds) + ".*"),
                        odds + " in " + card);
        }

        /** In a row of the terminal, whose distance stands under its bearing where the table is wide. */
        private boolean isPrinted(String who, String distance, String odds) {
            List<String> lines = reachText.lines().map(Faces::flat).toList();
            for (int i = 0; i + 1 < lines.size(); i++) {
                if (!lines.get(i).startsWith(who + " ")) continue;
                if (lines.get(i).contains(" " + distance + " " + odds + " ")) return true;
                boolean isUnder = (" " + lines.get(i + 1) + " ").contains(" " + distance + " ");
                if (isUnder && lines.get(i).contains("°, " + odds + " ")) return true;
            }
            return false;
        }

        /** Distance and odds of each hop to the one site that is recommended: JSON, terminal and page. */
        private void hopsAgree() {
            if (relay.path("sites").isEmpty() || relay.hasNonNull("together")) return;
            double wanted = reach.get("odds").asDouble();
            for (JsonNode hop : relay.at("/sites/0/hops")) {
                String row = hop.get("name").asText() + " "
                        + lengths.longNumber(1000 * hop.get("distance_km").asDouble()) + " "
                        + Shares.odds(hop.get("odds_there").asDouble(), wanted) + " "
                        + Shares.odds(hop.get("odds_back").asDouble(), wanted) + " "
                        + Shares.odds(hop.get("odds_pessimistic").asDouble(), wanted) + " ";
                for (List<String> lines :
                        List.of(relayText.lines().map(Faces::flat).toList(), rows(relayPage)))
                    assertTrue(lines.stream().anyMatch(each -> each.startsWith(row)), row + " in " + lines);
            }
        }

        /** Odds and margin of the weakest hop: caption, ledger under it, and terminal. */
        private void weakestHopAgrees() {
            for (MatchResult hop : all("odds (over 99 %|under 1 %|[0-9]+ %) there, (.+?) back\\.", words(relayPage))) {
                String under = words(relayPage).substring(hop.end());
                MatchResult ledger = all(
                                "odds of copy ((?:over|under) [0-9]+ %|[0-9]+ %) ((?:over|under) [0-9]+ %|[0-9]+ %)",
                                under)
                        .get(0);
                assertEquals(hop.group(1), ledger.group(1));
                assertEquals(hop.group(2), ledger.group(2));
                MatchResult margins = all("margin at the median place ([+\u2212]?[0-9.]+) ([+\u2212]?[0-9.]+)", under)
                        .get(0);
                double weaker = Math.min(number(margins.group(1)), number(margins.group(2)));
                assertTrue(
                        flat(relayText)
                                .contains(
                                        "Margin of the weaker way: " + Decibels.text(weaker) + " at the median place"),
                        relayText + " has not " + weaker);
            }
        }

        /** Odds of the worst reports: terminal, page, report and JSON. */
        private void walkAgrees() throws IOException {
            String text = run("walk", plan.toString(), "--out", out.toString());
            JsonNode walk = parsed(run("walk", plan.toString(), "--json"));
            String page = Files.readString(out.resolve("walk.html"));
            for (JsonNode line : walk.get("worst_lines"))
                for (JsonNode report : walk.get("reports")) {
                    if (report.get("line").asInt() != line.asInt()) continue;
                    String odds = Shares.odds(report.get("odds").asDouble());
                    String number = line.asText();
                    assertTrue(
                            text.lines()
                                    .map(Faces::flat)
                                    .anyMatch(each -> each.startsWith(number + " ") && each.contains(" " + odds + " ")),
                            text);
                    for (String face : List.of(page, this.report))
                        assertTrue(
                                rows(face).stream()
                                        .anyMatch(each ->
                                                each.startsWith(number + " ") && each.contains(" " + odds + " ")),
                                "line " + number + " has not " + odds);
                }
            clearancesAgree(page);
            isHonest(text);
            isHonest(words(page));
            String waypoints = Files.readString(out.resolve("walk-odds.gpx"));
            assertEquals(
                    all("<name>", waypoints).size(),
                    all("<name>" + ODDS + " [^<]+</name>", waypoints).size(),
                    waypoints);
            assertFalse(all("<name>over 99 %", waypoints).isEmpty(), waypoints);
        }

        /** Chart and caption of each drawn path. */
        private static void clearancesAgree(String page) {
            int drawn = 0;
            for (MatchResult figure : all("(?s)<figure.*?</figure>", page))
                if (clearanceAgrees(words(figure.group())) > 1) drawn++;
            assertTrue(drawn > 0 || !page.contains("Cut of "), "a path is drawn without its clearance");
        }

        private static int clearanceAgrees(String text) {
            List<MatchResult> said = all(CLEARANCE.pattern(), text);
            for (MatchResult one : said) {
                assertEquals(number(said.get(0).group(1)), number(one.group(1)), text);
                assertEquals(said.get(0).group(2), one.group(2), text);
            }
            return said.size();
        }

        /** No odds are a promise, no number is a negative nought or a whole double, and none has a hyphen for its minus. */
        private static void isHonest(String face) {
            for (Pattern wrong : List.of(PROMISE, NEGATIVE_NOUGHT, DOUBLES_TAIL, HYPHEN))
                assertFalse(
                        wrong.matcher(face).find(),
                        () -> all(wrong.pattern(), face).get(0).group() + " in " + face);
        }

        private static double number(String text) {
            return Double.parseDouble(text.replace('\u2212', '-'));
        }

        private static List<MatchResult> all(String pattern, String text) {
            return Pattern.compile(pattern).matcher(text).results().toList();
        }

        private static String line(String text, String start) {
            return text.lines()
                    .filter(each -> each.startsWith(start))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("no line starts with " + start + " in\n" + text));
        }

        /** Lines of a table whose names were broken, each name whole again on its first line. */
        private static List<String> unbroken(String text) {
            List<String> whole = new ArrayList<>();
            Pattern row = Pattern.compile("([A-Z]) {2}(\\S+(?: \\S+)*) {2,}(.*)");
            for (String line : text.lines().toList()) {
                Matcher first = whole.isEmpty() ? null : row.matcher(whole.get(whole.size() - 1));
                if (line.matches(" {3}\\S+( \\S+)*") && first != null && first.matches())
                    whole.set(
                            whole.size() - 1,
                            first.group(1) + "  " + first.group(2) + " " + line.strip() + "  " + first.group(3));
                else whole.add(line);
            }
            return whole;
        }

        private static String flat(String text) {
            return text.replace('\u00a0', ' ').replaceAll("\\s+", " ").strip();
        }

        /** Rows of the tables of a page, cell after cell. */
        private static List<String> rows(String page) {
            List<String> rows = new ArrayList<>();
            for (MatchResult row : all("(?s)<tr.*?</tr>", page)) rows.add(words(row.group()));
            return rows;
        }

        /** Pages with their pictures are long, and each is read for every figure. */
        private static String words(String html) {
            return html.length() < LONG ? bare(html) : PAGES.computeIfAbsent(html, Faces::bare);
        }

        private static String bare(String html) {
            return flat(html.replaceAll("(?s)<style.*?</style>", " ")
                    .replaceAll("<[a-zA-Z/!][^>]*>", " ")
                    .replace("&quot;", "\"")
                    .replace("&amp;", "&"));
        }

        private static String run(String... args) {
            CommandRun run = CommandRun.of(args);
            assertEquals(0, run.code(), run.err());
            return run.out();
        }

        private static JsonNode json(Path file) throws IOException {
            return parsed(Files.readString(file));
        }

        private static JsonNode parsed(String text) throws IOException {
            return new ObjectMapper().readTree(text);
        }

        private static String pdfText(Path file) throws IOException {
            try (PDDocument document = Loader.loadPDF(file.toFile())) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setSortByPosition(false);
                return stripper.getText(document);
            }
        }

        private static Path copied(Path folder, String name) throws IOException {
            Path samples = Path.of("elevation-samples");
            for (String part : new TreeSet<>(List.of(name, "invented-bench", "invented-valley")))
                try (Stream<Path> files = Files.walk(samples.resolve(part))) {
                    for (Path file : files.toList()) {
                        Path there = folder.resolve(samples.relativize(file).toString());
                        if (Files.isDirectory(file)) Files.createDirectories(there);
                        else Files.copy(file, there, StandardCopyOption.REPLACE_EXISTING);
                    }
                }
            Path to = folder.resolve(name);
            Path plan = to.resolve("plan.toml");
            String cells = name.equals("high-mountains") ? ONE_MODEL : CELLS;
            String text = Files.readString(plan).replaceAll("(?m)^cell_m *= *[0-9.]+", cells);
            assertTrue(text.contains(cells), name + " lost its cell_m");
            Files.writeString(plan, text);
            return to;
        }
    }
}
