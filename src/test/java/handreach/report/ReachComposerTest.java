package handreach.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.plan.PlanFile;
import handreach.reach.LoadoutReach;
import handreach.reach.Progress;
import handreach.report.page.HtmlPage;
import handreach.report.page.Page;
import handreach.report.page.Paragraph;
import handreach.report.page.PlainText;
import handreach.report.page.Section;
import handreach.report.page.Table;
import handreach.study.ReachAnswer;
import handreach.study.ReachOptions;
import handreach.study.ReachStudy;
import handreach.study.Scene;
import handreach.units.Lengths;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReachComposerTest {
    private static final Path SAMPLE = Path.of("elevation-samples/forest-hills").toAbsolutePath();
    private static final String MAST = """

            [[loadout]]
            name = "base mast"
            antenna = "five-eighths whip"
            carry = "mast"
            """;
    /** A step of bearings that holds the eight points: 24 radials in place of 72. */
    private static final int BEARINGS = 24;

    @TempDir
    Path folder;

    /** The sample plan in small, with some of its words replaced and more at its end. */
    private ReachAnswer answer(String more, String... swaps) throws IOException {
        String plan = Files.readString(SAMPLE.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + SAMPLE.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + SAMPLE.resolve("../invented-bench/bench.csv") + "'")
                .replaceAll("(?s)\\[\\[walk\\]\\].*", "")
                .replace("radius_km = 5", "radius_km = 2")
                .replace("bearing_step_deg = 5", "bearing_step_deg = " + 360 / BEARINGS);
        for (int i = 0; i < swaps.length; i += 2) {
            assertTrue(plan.contains(swaps[i]), swaps[i]);
            plan = plan.replace(swaps[i], swaps[i + 1]);
        }
        Path file = folder.resolve("plan.toml");
        Files.writeString(file, plan + more);
        return ReachStudy.run(Scene.open(PlanFile.open(file)), ReachOptions.ofPlan(false), Progress.SILENT);
    }

    private static String text(ReachAnswer answer) {
        return PlainText.of(ReachComposer.of(answer).page(), PlainText.USUAL_WIDTH);
    }

    private static List<String> headings(Page page) {
        return page.sections().stream().map(Section::heading).toList();
    }

    /** With maps a verdict said 0.31 km² and 1.5 times, without them 0.26 and 1.4; only a note at the end told why. */
    @Test
    void howTheGroundIsCountedStandsWithItsShares() throws IOException {
        ReachAnswer along = answer("", "cell_m = 30", "cell_m = 120");
        Table<?> bearings = ReachComposer.of(along).table();
        assertTrue(
                bearings.caption()
                        .endsWith("Shares and areas of the ground are counted along the bearings, which differs a"
                                + " little from the count by cells that goes with maps (--out)."),
                bearings.caption());
        ReachAnswer cells = ReachStudy.run(along.scene(), ReachOptions.ofPlan(true), Progress.SILENT);
        String caption = ReachComposer.of(cells).table().caption();
        assertTrue(
                caption.endsWith("Shares and areas of the ground are counted by cells, which differs a little from the"
                        + " count along the bearings that goes without maps."),
                caption);
    }

    /** The base stood in the middle with its own antenna in the table, and with the other end's in the ledger: two answers of one talk. */
    @Test
    void theLedgerOfTheReportIsThatOfTheTalkWithTheBase() throws IOException {
        ReachAnswer answer = answer("", "\nfrom = \"spike camp\"", "");
        List<String> carried = answer.scene().plan().places().positions().stream()
                .map(entry -> entry.loadout().orElseThrow())
                .toList();
        assertEquals(List.of("quarter-wave with wire at face", "factory at face"), carried.subList(0, 2));
        Page page = ReachComposer.of(answer).report(Optional.empty(), List.of(), "foot");
        assertTrue(HtmlPage.text(page).contains("From spike camp to north spur: "));
        String report = PlainText.of(page, PlainText.USUAL_WIDTH).replaceAll("\\s+", " ");
        assertTrue(report.contains("First end: quarter-wave with wire at face. Other end: factory at face."), report);
    }

    @Test
    void theAnswerComesFirstAndNoLineIsWiderThanATerminal() throws IOException {
        ReachAnswer answer = answer("");
        ReachComposer composer = ReachComposer.of(answer);
        Page page = composer.page();
        assertEquals(composer.headline(), ((Paragraph) page.answer().get(0)).words());
        assertEquals(
                List.of(
                        "Reach by loadout",
                        "Is it worth carrying?",
                        "Who reaches whom",
                        "Reach by bearing",
                        "Notes",
                        "Caution"),
                headings(page));
        for (String line : text(answer).lines().toList())
            assertTrue(line.codePointCount(0, line.length()) <= PlainText.USUAL_WIDTH, line);
    }

    @Test
    void theReportHasTheSameBlocksAndTheEvidenceBehind() throws IOException {
        ReachComposer composer = ReachComposer.of(answer(""));
        Page report = composer.report(Optional.empty(), List.of(), "foot");
        assertEquals(composer.page().answer(), report.answer());
        List<String> headings = headings(report);
        assertEquals(
                List.of(
                        "Reach by loadout",
                        "Is it worth carrying?",
                        "Who reaches whom",
                        "Reach by bearing",
                        "Ground along a path",
                        "Where the decibels go",
                        "Bench: level over the control"),
                headings.subList(0, 7));
        assertTrue(headings.contains("What it buys and what it costs"), headings.toString());
        assertEquals(
                List.of("Notes", "What this assumes", "Limits of this result", "Cautions"),
                headings.subList(headings.size() - 4, headings.size()));
    }

    @Test
    void everyVerdictIsSaidOnceOnTheTerminalAndOnThePage() throws IOException {
        ReachAnswer answer = answer("");
        String page = HtmlPage.text(ReachComposer.of(answer).report(Optional.empty(), List.of(), "foot"));
        Table<?> worth = (Table<?>)
                ReachComposer.of(answer).page().sections().get(1).blocks().get(0);
        for (int i = 0; i < answer.loadouts().size(); i++) {
            String verdict = ReachNumbers.of(answer).loadouts().get(i).verdict();
            String end = verdict.substring(1);
            assertTrue(worth.cell(i, 3).endsWith(end), worth.cell(i, 3));
            String name = answer.loadouts().get(i).link().name();
            assertEquals(1, count(page, ">" + worth.cell(i, 3) + "<", name), name);
        }
    }

    /** How often a table row of the page that starts with a name holds a cell. */
    private static long count(String page, String cell, String name) {
        return page.lines()
                .reduce("", String::concat)
                .replace("<tr", "\n<tr")
                .lines()
                .filter(row -> row.contains(">" + name + "<") && row.contains(cell))
                .count();
    }

    @Test
    void aColumnOfLengthsHasOneUnitInItsHeadAndNoneInItsCells() throws IOException {
        ReachAnswer answer =
                answer("", "cover = \"woodland\"", "cover = \"open\"", "[reach]", "[reach]\nmodel = \"handheld\"");
        Table<ReachComposer.Row> table = ReachComposer.of(answer).table();
        Lengths.OneUnit km = new Lengths.OneUnit(Lengths.METRIC, true);
        assertEquals("good copy, km", table.head(2));
        assertEquals("some copy, km", table.head(4));
        assertEquals("worst, km", table.head(5));
        for (int i = 0; i < answer.loadouts().size(); i++) {
            LoadoutReach reach = answer.loadouts().get(i);
            assertTrue(table.isNumber(2)
                    && table.isNumber(3)
                    && table.isNumber(4)
                    && table.isNumber(5)
                    && table.isNumber(7));
            assertTrue(table.cell(i, 2).matches(km.number(reach.medianM().value()) + "\\+?"), table.cell(i, 2));
            double someM = answer.someCopy().get(i).medianM().value();
            assertTrue(table.cell(i, 4).matches(km.number(someM) + "\\+?"), table.cell(i, 4));
            assertEquals(km.number(reach.worstM().value()), table.cell(i, 5));
        }
    }

    /** Some copy is what a plan gets that asks for no more: great effort, standing, at every second place. */
    @Test
    void someCopyIsTheReachOfAPlanThatAsksForNoMore() throws IOException {
        ReachAnswer answer = answer("");
        ReachAnswer asked = answer(
                "",
                "quality = \"daq-3\"",
                "quality = \"daq-2\"",
                "\"walking\"",
                "\"standing\"",
                "odds = 0.8",
                "odds = 0.5");
        assertEquals(0.5, asked.scene().terms().odds());
        for (int i = 0; i < answer.loadouts().size(); i++) {
            double some = answer.someCopy().get(i).medianM().value();
            assertTrue(some > answer.loadouts().get(i).medianM().value());
            assertEquals(
                    asked.loadouts().get(i).medianM(), answer.someCopy().get(i).medianM());
            assertEquals(
                    asked.someCopy().get(i).medianM(), answer.someCopy().get(i).medianM());
        }
        String headline = ReachComposer.of(answer).headline();
        assertTrue(headline.contains("Some copy, standing still, to "), headline);
    }

    @Test
    void theLargestAssumptionIsNamedWhereSomebodyCarriesSo() throws IOException {
        String own = "\n[[carry_loss]]\ncarry = \"face\"\ncontrol_gain_dbd = -12\nuncertainty_db = 3.5\n"
                + "[[carry_loss]]\ncarry = \"chest\"\ncontrol_gain_dbd = -14\nuncertainty_db = 3\n";
        String usual = text(answer(""));
        assertTrue(usual.contains("Largest assumption: carried as \"face\""), usual);
        assertTrue(usual.contains("docs/measure-body.md"), usual);
        assertFalse(text(answer(own)).contains("Largest assumption"));
    }

    @Test
    void reachThatTheRadiusEndsIsAtLeast() throws IOException {
        ReachAnswer answer = answer("", "radius_km = 2", "radius_km = 0.3");
        ReachComposer composer = ReachComposer.of(answer);
        assertTrue(composer.table().cell(4, 2).endsWith("+"), text(answer));
        assertTrue(composer.headline().contains(": at least "), composer.headline());
        assertTrue(composer.table().caption().contains("+ means at least"));
    }

    @Test
    void theMastAtTheFixedEndIsNeverNamedAsTheFarthest() throws IOException {
        ReachAnswer answer = answer(MAST, "\nfrom = \"spike camp\"", "\nfrom = \"spike camp\"\nwith = \"base mast\"");
        ReachComposer composer = ReachComposer.of(answer);
        List<ReachComposer.Row> rows = composer.rows();
        double mast = medianM(rows.get(rows.size() - 1));
        double farthest = 0;
        for (ReachComposer.Row row : rows)
            if (!row.name().equals("base mast")) farthest = Math.max(farthest, medianM(row));
        assertTrue(mast > farthest, "the mast reaches farther than all that is carried, or this shows nothing");
        String named =
                composer.headline().replaceFirst("^(?:The farthest is|None reaches farther than) \"(.*?)\".*", "$1");
        assertFalse(named.equals("base mast"), composer.headline());
        for (ReachComposer.Row row : rows) if (row.name().equals(named)) assertEquals(farthest, medianM(row));
    }

    /** A side with a tenth of the ground was called where it chiefly is. */
    @Test
    void chieflyIsSaidOnlyOfASideThatHoldsAClearPart() throws IOException {
        int scattered = 0;
        for (String radius : new String[] {"radius_km = 2", "radius_km = 4"}) {
            ReachAnswer answer = answer("", "radius_km = 2", radius);
            List<ReachComposer.Row> rows = ReachComposer.of(answer).rows();
            for (int i = 0; i < rows.size(); i++) {
                if (answer.verdicts().get(i).isEmpty()) continue;
                double[] sides = answer.verdicts().get(i).get().ground().sides().stream()
                        .mapToDouble(side -> side.areaM2())
                        .toArray();
                double most = java.util.Arrays.stream(sides).max().orElse(0);
                boolean isClear = most >= 0.25 * java.util.Arrays.stream(sides).sum();
                String verdict = rows.get(i).verdict();
                if (!isClear) assertFalse(verdict.contains("chiefly"), verdict);
                if (verdict.contains("scattered over " + sides.length + " sides")) scattered++;
            }
        }
        assertTrue(scattered > 0, "none is scattered, or this shows nothing");
    }

    /** The question asks whether the bigger antenna is worth it, and the headline said only who reaches farthest. */
    @Test
    void theHeadlineSaysWhatTheBiggerAntennaBuys() throws IOException {
        ReachAnswer answer = answer("");
        ReachComposer composer = ReachComposer.of(answer);
        List<String> buyers = composer.rows().stream()
                .filter(row -> row.verdict().contains("worth it if"))
                .map(row -> row.name() + "\" buys most: "
                        + row.verdict().split(",|: |\\(")[0].strip())
                .toList();
        assertFalse(buyers.isEmpty(), "nothing buys more, or this shows nothing");
        assertTrue(buyers.stream().anyMatch(composer.headline()::contains), composer.headline() + buyers);
        ReachComposer none = ReachComposer.of(answer("", "radius_km = 2", "radius_km = 0.3"));
        assertTrue(
                none.headline().endsWith("No bigger antenna is seen to buy more than factory at face."),
                none.headline());
    }

    @Test
    void ofEqualsNoneIsCalledTheFarthest() throws IOException {
        ReachComposer equal = ReachComposer.of(answer("", "radius_km = 2", "radius_km = 0.3"));
        String median = equal.table().cell(4, 2);
        assertEquals(median, equal.table().cell(3, 2), "two reach as far, or this shows nothing");
        assertTrue(equal.headline().startsWith("None reaches farther than \""), equal.headline());
    }

    private static double medianM(ReachComposer.Row row) {
        return row.reach().medianM().value();
    }

    @Test
    void theFileByBearingHasEveryLoadoutOnEveryBearingAsTheJsonSaysIt() throws IOException {
        ReachAnswer answer = answer("");
        ReachNumbers numbers = ReachNumbers.of(answer);
        List<String> lines = numbers.bearingsCsv(new ReachOrigin(answer, Instant.parse("2026-11-30T08:00:00Z")))
                .lines()
                .toList();
        assertEquals(
                "loadout,bearing_deg,continuous_km,continuous_low_95_km,continuous_high_95_km,at_least,farthest_km,"
                        + "farthest_low_95_km,farthest_high_95_km,share,unknown_beyond_km,plan,from,other_end,channel,"
                        + "counts_as_copy,model,calibration,made_on,program",
                lines.get(0));
        List<String[]> rows = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) rows.add(line.split(",", -1));
        assertEquals(numbers.loadouts().size() * BEARINGS, rows.size());
        // half of the last digit of a length in km
        double rounding = 0.0005 + 1e-9;
        for (int i = 0; i < rows.size(); i++) {
            ReachNumbers.OfLoadout loadout = numbers.loadouts().get(i / BEARINGS);
            ReachNumbers.OnBearing bearing = loadout.bearings().get(i % BEARINGS);
            String[] row = rows.get(i);
            assertEquals(loadout.loadout(), row[0]);
            assertEquals(bearing.bearingDeg(), Double.parseDouble(row[1]));
            assertEquals(bearing.continuousKm(), Double.parseDouble(row[2]), rounding);
            assertEquals(bearing.continuousInterval95Km().get(0), Double.parseDouble(row[3]), rounding);
            assertEquals(bearing.continuousInterval95Km().get(1), Double.parseDouble(row[4]), rounding);
            assertEquals(bearing.farthestKm(), Double.parseDouble(row[6]), rounding);
            assertEquals(bearing.share(), Double.parseDouble(row[9]), rounding);
        }
    }

    @Test
    void theNumbersSayWhoStandsAtTheMiddle() throws IOException {
        assertEquals(
                Optional.of("quarter-wave with wire at face"),
                ReachNumbers.of(answer("")).middle().loadout());
        ReachNumbers same =
                ReachNumbers.of(answer("", "\nfrom = \"spike camp\"", "\nfrom = \"spike camp\"\nalike = true"));
        assertEquals(Optional.of("spike camp"), same.middle().name());
        assertEquals(Optional.empty(), same.middle().loadout());
        assertEquals("crew direct", same.channel());
        assertEquals("daq-3", same.quality());
        ReachNumbers fixed = ReachNumbers.of(
                answer("", "\nfrom = \"spike camp\"", "\nfrom = \"spike camp\"\nwith = \"half-wave at face\""));
        assertEquals(Optional.of("half-wave at face"), fixed.middle().loadout());
    }
}
