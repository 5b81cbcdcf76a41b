package handreach.reach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.UsualConditions;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What one link reaches of a broken valley (invented) beside another. */
class GroundGainTest {
    private static final Position SOURCE = new Position(46.5, 8.1);
    private static final Position NORTH = GeodesicLine.destination(SOURCE, 0, 2500);
    private static final PathConditions CHANNEL = UsualConditions.at(PaperLinks.CHANNEL);
    private static final AreaGround VALLEY = new AreaGround(PaperGround.rough(5, 46.5, 8.1, 1 / 1200.0, 257, 200, 0.5));
    private static final AreaRequest CELLS =
            Areas.around(SOURCE, 4000, 60, PaperLinks.HEIGHTS, CHANNEL, LossModels.HANDHELD);
    private static final LossGrid GRID = new SweepArea(2).losses(CELLS, VALLEY, Progress.SILENT);
    private static final BearingLosses BEARINGS = BearingLosses.of(
                    new BearingRequest(SOURCE, 4000, 1, CHANNEL, LossModels.HANDHELD),
                    List.of(PaperLinks.HEIGHTS),
                    VALLEY,
                    2,
                    Progress.SILENT)
            .get(0);
    private static final ReachLink CONTROL = PaperLinks.whip(0, 0.6);
    private static final ReachLink WHIP = PaperLinks.whip(6, 0.6);

    private static GroundGain cells(ReachLink first, ReachLink second, Position... places) {
        return GroundGain.of(OddsGrid.of(GRID, first), List.of(OddsGrid.of(GRID, second)), 0.8, List.of(places))
                .get(0);
    }

    private static double sides(GroundGain gain) {
        return gain.sides().stream().mapToDouble(GroundGain.Side::areaM2).sum();
    }

    @Test
    void sharesAreThoseOfTheMaps() {
        GroundGain gain = cells(CONTROL, WHIP, SOURCE);
        assertEquals(OddsGrid.of(GRID, CONTROL).shareEstimate(0.8).value(), gain.control(), 1e-12);
        assertEquals(OddsGrid.of(GRID, WHIP).shareEstimate(0.8).value(), gain.share(), 1e-12);
        assertEquals(60.0 * 60 * GRID.knownCount(), gain.knownM2(), 1);
        assertTrue(gain.gain() > 0.02, "something is gained, or this shows nothing");
        assertTrue(gain.gain95().low() <= gain.gain()
                && gain.gain() <= gain.gain95().high());
    }

    @Test
    void severalAtOnceAreEachAsByItself() {
        ReachLink lesser = PaperLinks.whip(3, 0.6);
        OddsGrid control = OddsGrid.of(GRID, CONTROL);
        List<GroundGain> both = GroundGain.of(
                control, List.of(OddsGrid.of(GRID, WHIP), OddsGrid.of(GRID, lesser)), 0.8, List.of(SOURCE, NORTH));
        assertEquals(List.of(cells(CONTROL, WHIP, SOURCE, NORTH), cells(CONTROL, lesser, SOURCE, NORTH)), both);
        assertTrue(both.get(0).share() > both.get(1).share());
    }

    @Test
    void againstItselfThereIsNothing() {
        GroundGain gain = cells(WHIP, WHIP, SOURCE);
        assertEquals(0, gain.gain());
        assertEquals(List.of(), gain.sides());
    }

    /** More decibels over the same angles never lose a cell, so that the sides hold the whole gain, told by any places. */
    @Test
    void theSidesHoldAllThatIsGainedAndSwappingTheLinksLosesIt() {
        GroundGain gain = cells(CONTROL, WHIP, SOURCE, NORTH);
        assertEquals(gain.knownM2() * gain.gain(), sides(gain), 1);
        GroundGain lost = cells(WHIP, CONTROL, SOURCE, NORTH);
        assertEquals(-gain.gain(), lost.gain(), 1e-12);
        assertEquals(gain.sides(), lost.sides());
        for (int k = 1; k < gain.sides().size(); k++)
            assertTrue(gain.sides().get(k - 1).areaM2() >= gain.sides().get(k).areaM2());
    }

    /** By hand: every bought cell again, its place by geodesic lines. */
    @Test
    void aSideIsTheNearestPlaceAndTheEighthOfTheCompass() {
        OddsGrid control = OddsGrid.of(GRID, CONTROL);
        OddsGrid whip = OddsGrid.of(GRID, WHIP);
        double[][] cells = new double[2][8];
        int edges = 0;
        for (int cell = 0; cell < GRID.grid().count(); cell++) {
            if (!whip.isKnown(cell) || whip.odds(cell) < 0.8 || control.odds(cell) >= 0.8) continue;
            Position at = GRID.grid().positionOf(cell);
            double toSource = GeodesicLine.distanceM(SOURCE, at);
            double toNorth = GeodesicLine.distanceM(NORTH, at);
            int place = toSource <= toNorth ? 0 : 1;
            double eighth =
                    GeodesicLine.between(place == 0 ? SOURCE : NORTH, at).azimuthDeg() / 45;
            if (Math.abs(toSource - toNorth) < 20 || Math.abs(Math.abs(eighth - Math.rint(eighth)) - 0.5) < 0.03)
                edges++;
            cells[place][(int) Math.floorMod(Math.round(eighth), 8L)]++;
        }
        assertTrue(edges > 0);
        for (GroundGain.Side side : cells(CONTROL, WHIP, SOURCE, NORTH).sides())
            assertEquals(
                    cells[side.place()][(int) (side.bearingDeg() / 45)], side.areaM2() / 3600, edges, side.toString());
    }

    /** Bearings and cells sample the same ground in two ways; within a point or two, as definitions.md says. */
    @Test
    void alongTheBearingsTheGainIsNearlyTheSame() {
        GroundGain cells = cells(CONTROL, WHIP, SOURCE);
        GroundGain bearings = GroundGain.of(BEARINGS, CONTROL, BEARINGS, WHIP, 0.8, List.of(SOURCE));
        LoadoutReach alone = LoadoutReach.of(BEARINGS, WHIP, 0.8);
        assertEquals(alone.share().value(), bearings.share(), 1e-9);
        assertEquals(cells.gain(), bearings.gain(), 0.02);
        assertEquals(cells.knownM2(), bearings.knownM2(), 0.02 * cells.knownM2());
        assertEquals(bearings.knownM2() * bearings.gain(), sides(bearings), 1);
    }
}
