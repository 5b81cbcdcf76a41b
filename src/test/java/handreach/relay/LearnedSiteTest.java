package handreach.relay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.budget.LineKey;
import handreach.budget.LinkBudget;
import handreach.loadout.Carry;
import handreach.reach.Areas;
import handreach.reach.CellGrid;
import handreach.reach.LearnedSite;
import handreach.reach.Progress;
import handreach.reach.SiteCalibration;
import handreach.reach.SiteCalibration.Shift;
import handreach.terrain.Cover;
import handreach.uncertainty.Odds;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LearnedSiteTest {
    /** Losses are kept as 32-bit numbers and path lengths differ by how a cell is cut: a hundredth of a standing. */
    private static final double SAME_STANDING = 0.02;

    private static final PaperWorld HILL =
            new PaperWorld((east, north) -> 100 + 150 * Math.max(0, 1 - Math.abs(east) / 800));

    private static final SiteCalibration LEARNED = new SiteCalibration(
            new Shift(5, 2),
            Map.of(Cover.OPEN, new Shift(-1, 1), Cover.WOODLAND, new Shift(2, 1)),
            Map.of("face", new Shift(1, 0.5)),
            11,
            new SiteCalibration.Origin("invented", LocalDate.of(2026, 5, 4), 40),
            new SiteCalibration.Area(PaperWorld.MIDDLE, 5000));

    private static final Party WEST = new Party("west", PaperWorld.at(-1500, 0), PaperWorld.person(5, Carry.FACE));
    private static final Party EAST = new Party("east", PaperWorld.at(1500, 0), PaperWorld.person(5, Carry.FACE));
    private static final RelayEquipment RELAY = PaperWorld.relay(RelayMode.TWO_FREQUENCY, false);

    private static RelayRequest.Setting plain() {
        return HILL.setting("delta-bullington");
    }

    private static RelayRequest.Setting learned() {
        RelayRequest.Setting plain = plain();
        LinkBudget walked = LinkBudget.between(WEST.end(), EAST.end(), plain.terms());
        return new RelayRequest.Setting(
                plain.terms(),
                plain.conditions(),
                plain.model(),
                plain.ground(),
                Optional.of(new LearnedSite(LEARNED, List.of(walked), List.of())));
    }

    /** By hand: 5 + (2 − 1)/2 + 1 + 1; with one end on a mast, whose carry is unknown, 5 + 2 + 1; between masts 5. */
    @Test
    void aLessonAddsItsPartsAndTakesTheMeanOfTwoCovers() {
        LinkBudget budget = LinkBudget.between(WEST.end(), EAST.end(), plain().terms());
        LearnedSite site = new LearnedSite(LEARNED, List.of(budget), List.of());
        assertEquals(7.5, site.lesson(budget, "face", "face").shiftDb(List.of(Cover.WOODLAND, Cover.OPEN)), 1e-12);
        assertEquals(8, site.lesson(budget, "face", "mast").shiftDb(List.of(Cover.WOODLAND)), 1e-12);
        assertEquals(5, site.lesson(budget, "mast", "mast").shiftDb(List.of()), 1e-12);
        // the link that was walked itself: 2 and twice 0.5 in squares
        assertEquals(Math.sqrt(4.5), site.lesson(budget, "face", "face").commonDoubtDb(budget.commonDoubtDb()), 1e-9);
        assertEquals(11, site.lesson(budget, "face", "face").spreadDb(budget.spreadDb()));
    }

    /** Law: with nothing walked that the plan still knows, the doubt is never above the ledger's. */
    @Test
    void aLessonNeverAddsDoubt() {
        LinkBudget budget = LinkBudget.between(WEST.end(), RELAY.end(), plain().terms());
        LearnedSite forgotten = new LearnedSite(LEARNED, List.of(), List.of());
        assertEquals(
                budget.commonDoubtDb(), forgotten.lesson(budget, "face", "mast").commonDoubtDb(budget.commonDoubtDb()));
        assertThrows(IllegalArgumentException.class, () -> new LearnedSite(null, List.of(), List.of()));
    }

    /** What grows at the base of the walks is in the common shift: only the other end's cover counts. */
    @Test
    void theCoverAtAWalkedBaseDoesNotCountTwice() {
        LearnedSite site = new LearnedSite(LEARNED, List.of(), List.of(WEST.at()));
        assertEquals(List.of(Cover.OPEN), site.covers(plain()::coverAt, WEST.at(), EAST.at()));
        assertEquals(List.of(Cover.OPEN), site.covers(plain()::coverAt, EAST.at(), WEST.at()));
        assertEquals(List.of(), site.covers(plain()::coverAt, WEST.at(), WEST.at()));
    }

    @Test
    void everyHopIsShiftedInItsLedger() {
        HopPath before =
                HopPath.toRelay(plain(), WEST, PaperWorld.at(0, 0), RELAY).orElseThrow();
        HopPath after =
                HopPath.toRelay(learned(), WEST, PaperWorld.at(0, 0), RELAY).orElseThrow();
        // open ground of the paper world: 5 − 1 + 1
        assertEquals(5, after.odds().siteShiftDb(), 1e-12);
        assertEquals(0, before.odds().siteShiftDb());
        assertEquals(before.odds().marginDb() - 5, after.odds().marginDb(), 1e-9);
        assertEquals(before.ledger().marginDb() - 5, after.ledger().marginDb(), 1e-9);
        assertEquals(-5, after.ledger().there().valueDb(LineKey.SITE), 1e-12);
        assertEquals(11, after.ledger().there().doubt().spreadDb());
        double there = before.ledger().there().marginDb() - 5;
        assertEquals(Odds.ofMargin(there, 11), after.odds().there(), 1e-9);
        HopPath direct = HopPath.direct(learned(), WEST, EAST).orElseThrow();
        assertEquals(6, direct.odds().siteShiftDb(), 1e-12);
    }

    /** The ledger is printed below the odds: they are the same figures, desense and walks included. */
    @Test
    void theOddsOfAHopAreThoseOfItsLedger() {
        for (RelayRequest.Setting setting : List.of(plain(), learned())) {
            for (HopPath hop : List.of(
                    HopPath.toRelay(setting, WEST, PaperWorld.at(0, 0), RELAY).orElseThrow(),
                    HopPath.betweenRelays(setting, PaperWorld.at(0, 0), PaperWorld.at(0, 900), RELAY)
                            .orElseThrow(),
                    HopPath.direct(setting, WEST, EAST).orElseThrow())) {
                assertEquals(hop.ledger().there().odds(), hop.odds().there());
                assertEquals(hop.ledger().back().odds(), hop.odds().back());
                assertEquals(hop.ledger().marginDb(), hop.odds().marginDb());
                assertEquals(hop.ledger().odds(), hop.odds().weaker());
            }
        }
    }

    /** By hand: desense is on the way in alone, 1 dB, and the way out has no such line. */
    @Test
    void desenseIsALineOfTheWayIn() {
        HopPath hop = HopPath.toRelay(plain(), WEST, PaperWorld.at(0, 0), RELAY).orElseThrow();
        assertEquals(-1, hop.ledger().there().valueDb(LineKey.DESENSE));
        assertEquals(0, hop.ledger().back().valueDb(LineKey.DESENSE));
        assertEquals(
                0,
                HopPath.toRelay(
                                plain(),
                                WEST,
                                PaperWorld.at(0, 0),
                                PaperWorld.relay(RelayMode.STORE_AND_FORWARD, false))
                        .orElseThrow()
                        .ledger()
                        .there()
                        .lines()
                        .stream()
                        .filter(line -> line.key() == LineKey.DESENSE)
                        .count());
    }

    /** Oracle: what the search sweeps is what one exact path says, calibrated or not. */
    @Test
    void theSweepHoldsTheSameShiftAsTheExactPath() {
        for (RelayRequest.Setting setting : List.of(plain(), learned())) {
            RelayRequest question =
                    new RelayRequest(List.of(WEST, EAST), Conversation.allToAll(List.of(WEST, EAST)), setting);
            CellGrid grid = CellGrid.around(PaperWorld.MIDDLE, 1200, 300);
            HopSurvey survey = HopSurvey.of(question, RELAY, grid, Areas.exact(2), Progress.SILENT);
            double spread = setting.learned().isPresent() ? 11 : Double.NaN;
            for (int cell = 0; cell < grid.count(); cell += 5) {
                Optional<HopPath> path = HopPath.toRelay(setting, EAST, grid.positionOf(cell), RELAY);
                if (path.isEmpty()) continue;
                double used = Double.isNaN(spread)
                        ? path.get().ledger().weaker().doubt().spreadDb()
                        : spread;
                assertEquals(path.get().odds().marginDb() / used, survey.standings(1)[cell], SAME_STANDING);
            }
        }
    }

    @Test
    void aWorseSiteServesFewerWithoutARelay() {
        List<Party> people = List.of(WEST, EAST);
        DirectVerdict before = DirectVerdict.of(
                new RelayRequest(people, Conversation.allToAll(people), plain()), List.of(), Progress.SILENT);
        DirectVerdict after = DirectVerdict.of(
                new RelayRequest(people, Conversation.allToAll(people), learned()), List.of(), Progress.SILENT);
        double lost = before.links().get(0).path().orElseThrow().odds().marginDb()
                - after.links().get(0).path().orElseThrow().odds().marginDb();
        assertEquals(6, lost, 1e-9);
        assertEquals(
                after.links().get(0).path().orElseThrow().odds().marginDb() / 11,
                after.links().get(0).standing(),
                1e-12);
        assertTrue(after.links().get(0).pessimisticStanding()
                < after.links().get(0).standing());
    }
}
