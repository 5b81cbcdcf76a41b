package handreach.reach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.budget.TwoWayLedger;
import handreach.geodesy.Position;
import handreach.propagation.LossModels;
import handreach.propagation.PathLoss;
import handreach.propagation.Terminals;
import handreach.propagation.UsualConditions;
import handreach.terrain.Cover;
import handreach.uncertainty.Interval;
import handreach.uncertainty.Odds;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Odds, shares, least loadout and difference over a broken valley (invented). */
class OddsGridTest {
    private static final Position SOURCE = new Position(46.5, 8.1);
    private static final LossGrid LOSSES = losses();

    private static LossGrid losses() {
        PaperGround elevation =
                PaperGround.rough(5, 46.5, 8.1, 1 / 1200.0, 257, 200, 0.5).withVoid(46.52, 8.1, 0.003);
        AreaRequest request = Areas.around(
                SOURCE, 4000, 60, PaperLinks.HEIGHTS, UsualConditions.at(PaperLinks.CHANNEL), LossModels.HANDHELD);
        return new SweepArea(2).losses(request, new AreaGround(elevation), Progress.SILENT);
    }

    @Test
    void theMarginIsTheLedgersAtTheCellsOwnLossAndAngles() {
        OddsGrid odds = OddsGrid.of(LOSSES, PaperLinks.whip(6, 0.6));
        for (int cell = 0; cell < LOSSES.grid().count(); cell += 97) {
            if (!odds.isKnown(cell)) continue;
            double margin = odds.link()
                    .budget()
                    .marginDb(LOSSES.lossDb(cell), LOSSES.departureDeg(cell), LOSSES.arrivalDeg(cell));
            assertEquals(margin, odds.marginDb(cell), 1e-12);
            assertEquals(Odds.ofMargin(margin, odds.link().spreadDb()), odds.odds(cell), 1e-12);
            assertTrue(odds.oddsInterval(cell).contains(odds.odds(cell)));
        }
    }

    @Test
    void marginsOfARowAreThoseOfItsCellsAndNoNumberWhereNothingIsKnown() {
        OddsGrid odds = OddsGrid.of(LOSSES, PaperLinks.whip(6, 0.6));
        double[] row = new double[LOSSES.grid().columns()];
        int unknown = 0;
        for (int first = 0; first < LOSSES.grid().count(); first += row.length) {
            odds.marginsDb(first, row.length, row);
            for (int i = 0; i < row.length; i++) {
                if (odds.isKnown(first + i)) assertEquals(odds.marginDb(first + i), row[i]);
                else assertTrue(Double.isNaN(row[i]));
                if (Double.isNaN(row[i])) unknown++;
            }
        }
        assertEquals(LOSSES.grid().count() - LOSSES.knownCount(), unknown);
    }

    @Test
    void theIntervalIsTheMarginShifted() {
        OddsGrid odds = OddsGrid.of(LOSSES, PaperLinks.control());
        int cell = LOSSES.grid().indexOf(new Position(46.505, 8.105));
        double shift = 1.96 * odds.link().commonDoubtDb();
        Interval interval = odds.oddsInterval(cell);
        assertEquals(Odds.ofMargin(odds.marginDb(cell) - shift, odds.link().spreadDb()), interval.low(), 1e-12);
        assertEquals(Odds.ofMargin(odds.marginDb(cell) + shift, odds.link().spreadDb()), interval.high(), 1e-12);
    }

    @Test
    void theShareCountsKnownCellsOnly() {
        OddsGrid odds = OddsGrid.of(LOSSES, PaperLinks.whip(6, 0.6));
        int reached = 0;
        for (int cell = 0; cell < LOSSES.grid().count(); cell++) if (reaches(odds, cell)) reached++;
        assertEquals(
                (double) reached / LOSSES.knownCount(), odds.shareEstimate(0.9).value(), 1e-12);
        assertTrue(LOSSES.count(LossGrid.State.UNKNOWN) > 0);
        assertTrue(
                odds.shareEstimate(0.9).value() > 0.05
                        && odds.shareEstimate(0.9).value() < 0.95,
                odds.shareEstimate(0.9).value() + " share");
        assertTrue(odds.shareEstimate(0.9)
                .interval95()
                .contains(odds.shareEstimate(0.9).value()));
        assertTrue(odds.shareEstimate(0.5).value() >= odds.shareEstimate(0.9).value());
    }

    @Test
    void theOutlineHoldsTheReachedCellsAndTheirArea() {
        OddsGrid odds = OddsGrid.of(LOSSES, PaperLinks.whip(6, 0.6));
        double cellDeg = LOSSES.grid().latitudeStepDeg() * LOSSES.grid().longitudeStepDeg();
        assertEquals(
                odds.shareEstimate(0.9).value() * LOSSES.knownCount(),
                odds.outline(0.9).getArea() / cellDeg,
                1e-3);
        double contiguous = odds.contiguousOutline(0.9).orElseThrow().getArea() / cellDeg;
        assertTrue(contiguous > 5 && contiguous <= odds.shareEstimate(0.9).value() * LOSSES.knownCount() + 1e-6);
    }

    @Test
    void theLeastLoadoutIsTheFirstThatDoesTheJob() {
        List<OddsGrid> order = List.of(
                OddsGrid.of(LOSSES, PaperLinks.control()),
                OddsGrid.of(LOSSES, PaperLinks.whip(4, 0.6)),
                OddsGrid.of(LOSSES, PaperLinks.longWhip(7)));
        LeastLoadout least = LeastLoadout.of(order, 0.9);
        double[] share = new double[3];
        int none = 0;
        for (int cell = 0; cell < LOSSES.grid().count(); cell++) {
            int expected = LeastLoadout.NONE;
            for (int k = 2; k >= 0; k--) if (reaches(order.get(k), cell)) expected = k;
            if (!LOSSES.isKnown(cell)) expected = LeastLoadout.UNKNOWN;
            assertEquals(expected, least.at(cell));
            if (expected >= 0) share[expected]++;
            if (expected == LeastLoadout.NONE) none++;
        }
        for (int k = 0; k < 3; k++) assertEquals(share[k] / LOSSES.knownCount(), least.shareBoughtBy(k), 1e-12);
        assertEquals((double) none / LOSSES.knownCount(), least.shareOfNone(), 1e-12);
        assertTrue(least.shareBoughtBy(1) > 0);
        for (int k = 0; k < 3; k++) assertEquals(order.get(k).shareEstimate(0.9), least.share(k));
    }

    @Test
    void aDifferenceSaysWhatIsBoughtAndWhatIsLost() {
        OddsGrid control = OddsGrid.of(LOSSES, PaperLinks.control());
        OddsGrid whip = OddsGrid.of(LOSSES, PaperLinks.whip(6, 0.6));
        LoadoutDifference difference = LoadoutDifference.of(control, whip, 0.9);
        int bought = 0;
        for (int cell = 0; cell < LOSSES.grid().count(); cell++) {
            boolean is = LOSSES.isKnown(cell) && !reaches(control, cell) && reaches(whip, cell);
            assertEquals(is, difference.at(cell) == LoadoutDifference.Place.BOUGHT);
            if (is) bought++;
        }
        assertTrue(bought > 100, bought + " cells bought");
        assertEquals((double) bought / LOSSES.knownCount(), difference.share(LoadoutDifference.Place.BOUGHT), 1e-12);
        assertEquals(
                difference.share(LoadoutDifference.Place.BOUGHT),
                LoadoutDifference.of(whip, control, 0.9).share(LoadoutDifference.Place.LOST));
    }

    private static boolean reaches(OddsGrid odds, int cell) {
        return odds.reachesMargin(cell, odds.link().thresholdDb(0.9));
    }

    @Test
    void lossesForOtherHeightsAreRefused() {
        ReachLink high = ReachLink.of("high", PaperLinks.control().budget(), new Terminals(1.5, 2.5));
        assertThrows(IllegalArgumentException.class, () -> OddsGrid.of(LOSSES, high));
    }

    @Test
    void aWalkShiftsTheMarginAndNarrowsTheDoubt() {
        SiteCalibration calibration = new SiteCalibration(
                new SiteCalibration.Shift(4, 1.5),
                Map.of(Cover.WOODLAND, new SiteCalibration.Shift(3, 2)),
                Map.of("chest", new SiteCalibration.Shift(-1, 0.5)),
                6.5,
                new SiteCalibration.Origin("walk.csv", LocalDate.of(2026, 5, 1), 40),
                new SiteCalibration.Area(SOURCE, 5000));
        ReachLink plain = PaperLinks.control();
        ReachLink taught = plain.calibrated(new SiteLesson(calibration, "face", "chest", 0.8), List.of());
        assertEquals(plain.marginDb(120, 0, 0, Cover.OPEN) - 3, taught.marginDb(120, 0, 0, Cover.OPEN), 1e-12);
        ReachLink amongTrees =
                plain.calibrated(new SiteLesson(calibration, "face", "chest", 0.8), List.of(Cover.WOODLAND));
        // by hand: 3, and the mean of 0 and 3 for the covers
        assertEquals(plain.marginDb(120, 0, 0, Cover.OPEN) - 4.5, amongTrees.marginDb(120, 0, 0, Cover.OPEN), 1e-12);
        assertEquals(plain.marginDb(120, 0, 0, Cover.WOODLAND) - 6, taught.marginDb(120, 0, 0, Cover.WOODLAND), 1e-12);
        // by hand: √(1.5² + 0.5² + 0.8²) = 1.772 dB
        assertEquals(1.772, taught.commonDoubtDb(), 0.001);
        assertTrue(plain.commonDoubtDb() > taught.commonDoubtDb());
        assertEquals(6.5, taught.spreadDb());
        // a map and the ledger of a path to the same place say the same
        PathLoss path = new PathLoss("invented", 120, 100, List.of(), List.of(), List.of());
        for (Cover cover : List.of(Cover.OPEN, Cover.WOODLAND)) {
            SiteLesson lesson = new SiteLesson(calibration, "face", "chest", 0.8);
            TwoWayLedger ledger = lesson.over(plain.budget().ledger(path, 0, 0), lesson.shiftDb(List.of(cover)), 0.9);
            double margin = taught.marginDb(120, 0, 0, cover);
            assertEquals(margin, ledger.marginDb(), 1e-9);
            assertEquals(taught.odds(margin), ledger.odds(), 1e-9);
            assertEquals(taught.thresholdDb(0.9), ledger.weaker().locationMarginDb(), 1e-9);
            assertEquals(taught.commonDoubtDb(), ledger.weaker().doubt().commonDb(), 1e-9);
        }
    }
}
