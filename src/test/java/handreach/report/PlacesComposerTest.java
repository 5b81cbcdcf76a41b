package handreach.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.plan.PlanFile;
import handreach.reach.Progress;
import handreach.report.card.CardPerson;
import handreach.report.page.Block;
import handreach.report.page.PlainText;
import handreach.report.page.Table;
import handreach.study.PlacesAnswer;
import handreach.study.ReachAnswer;
import handreach.study.ReachStudy;
import handreach.study.Scene;
import handreach.study.Whereabouts;
import handreach.units.Shares;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Forest hills with a route and a sector: who reaches whom in list, square and pairs, in the window and on the card. */
class PlacesComposerTest {
    private static final Path SAMPLE = Path.of("elevation-samples/forest-hills").toAbsolutePath();

    @TempDir
    static Path folder;

    private static ReachAnswer reach;
    private static List<Block> blocks;

    @BeforeAll
    static void reckonOnce() throws IOException {
        Files.writeString(folder.resolve("sector.geojson"), """
                {"type":"Polygon","coordinates":[[[-84.214,36.266],[-84.206,36.266],[-84.206,36.274],[-84.214,36.274],
                [-84.214,36.266]]]}
                """);
        String plan = Files.readString(SAMPLE.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + SAMPLE.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + SAMPLE.resolve("../invented-bench/bench.csv") + "'")
                .replaceAll("(?s)\\[\\[walk\\]\\].*", "")
                .replace("radius_km = 5", "radius_km = 2")
                .replace("bearing_step_deg = 5", "bearing_step_deg = 30");
        Path file = folder.resolve("plan.toml");
        Files.writeString(file, plan + """

                [[route]]
                name = "patrol loop"
                file = '%s'
                loadout = "factory at hip"

                [[sector]]
                name = "Sector 1"
                polygon = "sector.geojson"
                loadout = "factory at hip"

                [[position]]
                name = "off the tile"
                at = "36.4700, -84.2000"
                """.formatted(SAMPLE.resolve("walk-track.gpx")));
        reach = ReachStudy.run(Scene.open(PlanFile.open(file)), false, Progress.SILENT);
        blocks = PlacesComposer.of(reach).blocks();
    }

    private static Table<?> table(List<Block> of, int number) {
        return (Table<?>)
                of.stream().filter(block -> block instanceof Table).toList().get(number);
    }

    private static String cell(Table<?> table, String row, String head) {
        for (int r = 0; r < table.rowCount(); r++)
            for (int c = 0; c < table.columnCount(); c++)
                if (table.head(c).equals(head)
                        && List.of(table.cell(r, 0), table.cell(r, 1)).contains(row)) return table.cell(r, c);
        throw new AssertionError("no " + row + ", " + head);
    }

    @Test
    void everyTwoPlacesAreAPairBothWays() {
        PlacesAnswer places = reach.places();
        assertEquals(6, places.places().size());
        assertEquals(15, places.pairs().size());
        assertEquals(0, places.omitted());
        for (PlacesAnswer.Pair pair : places.pairs()) assertTrue(pair.a() < pair.b());
    }

    @Test
    void listAndWindowAndCardSayTheSame() {
        CardWho card = new CardWho(
                Whereabouts.of(reach.scene()), Optional.empty(), reach.scene().plan());
        List<Block> brief = PlacesComposer.of(reach).brief();
        int told = 0;
        for (CardPerson person : card.people().rows()) {
            if (person.name().equals("spike camp")) continue;
            for (String head : List.of("calls", "hears")) {
                String words = cell(table(blocks, 0), person.name(), head);
                assertEquals(words, cell(table(brief, 0), person.name(), head));
                boolean isCalls = head.equals("calls");
                assertEquals(
                        words,
                        (isCalls ? person.odds().calls() : person.odds().hears()).words(),
                        person.name() + " " + head);
            }
            told++;
        }
        assertEquals(5, told);
        assertEquals("unknown", cell(table(blocks, 0), "off the tile", "calls"));
        assertTrue(cell(table(blocks, 0), "Sector 1", "calls").contains(" to "), "a sector has a span");
    }

    /** Spans of odds made the square 157 columns wide, and a column in which nobody was heard worse stood empty. */
    @Test
    void nothingIsWiderThanATerminalAndNoColumnIsEmpty() {
        for (Block block : blocks) {
            if (!(block instanceof Table<?> table)) continue;
            String text = PlainText.of(table, PlainText.USUAL_WIDTH);
            assertTrue(text.lines().allMatch(line -> line.length() <= PlainText.USUAL_WIDTH), text);
            for (int c = 0; c < table.columnCount(); c++) {
                int column = c;
                assertTrue(
                        IntStream.range(0, table.rowCount())
                                .anyMatch(r -> !table.cell(r, column).isBlank()),
                        table.head(c));
            }
        }
    }

    /** The square holds each way of each pair where its row and column cross. */
    @Test
    void theSquareHoldsThePairs() {
        Table<?> square = table(blocks, 1);
        assertEquals(reach.places().places().size() + 2, square.columnCount());
        double wanted = reach.scene().plan().channel().wish().odds();
        for (PlacesAnswer.Pair pair : reach.places().pairs()) {
            if (pair.odds().isEmpty()) continue;
            PlacesAnswer.Span there = pair.odds().get().there();
            PlacesAnswer.Span back = pair.odds().get().back();
            assertEquals(Shares.oddsRange(there.low(), there.high(), wanted), square.cell(pair.a(), pair.b() + 2));
            assertEquals(Shares.oddsRange(back.low(), back.high(), wanted), square.cell(pair.b(), pair.a() + 2));
        }
    }

    /** In the list with the base the smaller of two odds in a row says it; a column of names cost each place its line. */
    @Test
    void theWeakerEndIsTheOneWhoIsHeardWorse() {
        Table<?> withBase = table(blocks, 0);
        for (int c = 0; c < withBase.columnCount(); c++) assertNotEquals("heard worse", withBase.head(c));
        assertTrue(withBase.caption().contains("who is heard worse has the smaller"), withBase.caption());
        for (PlacesAnswer.Pair pair : reach.places().pairs()) {
            if (pair.a() != 0 || pair.odds().isEmpty()) continue;
            String who = reach.places().places().get(pair.b()).name();
            boolean callsAreWeaker =
                    pair.odds().get().back().low() < pair.odds().get().there().low();
            if (cell(withBase, who, "calls").equals(cell(withBase, who, "hears"))) continue;
            assertEquals(callsAreWeaker, percent(cell(withBase, who, "calls")) < percent(cell(withBase, who, "hears")));
        }
    }

    private static int percent(String odds) {
        return odds.startsWith("under") ? 0 : Integer.parseInt(odds.replaceAll("^\\D*(\\d+) .*", "$1"));
    }

    /** Pairs of which nothing is known filled half a page with the word unknown. */
    @Test
    void whatIsNotKnownIsSaidOnce() {
        Table<?> pairs = table(blocks, 2);
        for (int r = 0; r < pairs.rowCount(); r++) {
            assertNotEquals("unknown", pairs.cell(r, 3));
            assertNotEquals("off the tile", pairs.cell(r, 1));
        }
        assertTrue(
                pairs.caption().contains("Left out: 4 pairs of which nothing is known, since heights are missing"),
                pairs.caption());
        assertTrue(PlacesComposer.of(reach).sentence().endsWith("; nothing is known of off the tile."));
    }
}
