package handreach.reach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import handreach.propagation.UsualConditions;
import handreach.units.Frequency;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** How the foretold cost of a march follows from what is asked, by a clock of paper: no time is measured here. */
class MarchCostTest {
    private static final Position SOURCE = new Position(46.5, 8.1);
    private static final PathConditions CHANNEL = UsualConditions.at(new Frequency(146));
    private static final Terminals FACE = new Terminals(1.6, 1.5);
    private static final List<Terminals> ONE = List.of(FACE);
    /** A thread is told so much more processor time at every reading than at the one before, ns. */
    private static final long TICK_NS = 100_000_000;

    private static final AreaGround LEVEL = new AreaGround(PaperGround.rough(5, 46.5, 8.1, 1 / 1200.0, 129, 0, 0.5));

    /** Level ground is the same on all sides, but for posts that lie closer east and west than they are deep. */
    private static final double EVEN = 0.01;

    @Test
    void everyRadialAddsItsShare() {
        // 360, 720 and 1080 radials with 18, 36 and 48 cells beside them
        double few = seconds(360, 2000, ONE);
        double more = seconds(720, 2000, ONE);
        double most = seconds(1080, 2000, ONE);
        double cells18 = 2 * few - more; // the cells go with the radials up to here
        assertEquals(0, cells18, EVEN * few);
        double radials360 = most - more;
        assertTrue(radials360 < few && radials360 > 0.95 * few, radials360 + " of " + few);
    }

    @Test
    void aRoseHasNoCellsAndAMapOfAsManyRadialsIsDearerByThem() {
        MarchCost rose = MarchCost.ofBearings(
                new BearingRequest(SOURCE, 2000, 5, CHANNEL, LossModels.FULL_WAVE), ONE, LEVEL, trial(TICK_NS));
        MarchCost map = cost(72, 2000, ONE);
        assertEquals(72, rose.radials());
        assertEquals(72, map.radials());
        assertEquals(0, rose.checked());
        assertEquals(12, map.checked());
        // by hand: paths to cells are two thirds of a radial on average, and cost a little less than that share
        // three tasks of the map share the radials on their seams: six are marched twice; three radials within
        // five gaps are foretold
        double radialS = (rose.seconds() - MarchCost.START_S) / 72;
        double cellsPerRadial = ((map.seconds() - MarchCost.START_S) / radialS - 1.6 * 78) / 12;
        assertTrue(cellsPerRadial > 0.35 && cellsPerRadial < 0.75, "a cell costs " + cellsPerRadial + " radials");
    }

    @Test
    void pairsCostAMarchForEachHeightAtTheSource() {
        double one = counted(ONE);
        assertEquals(2 * one, counted(List.of(FACE, new Terminals(1.4, 1.5))), EVEN * one);
        assertEquals(one, counted(List.of(FACE, new Terminals(1.6, 1.4))), EVEN * one);
        assertEquals(
                one,
                counted(List.of(FACE, new Terminals(1.6, 1.4), new Terminals(1.6, 1))),
                EVEN * one,
                "three of them");
    }

    @Test
    void aLongerRadialCostsMoreThanInProportion() {
        double ratio =
                new MarchProbe(setting(4000), ONE, 1).meanS(4000) / new MarchProbe(setting(4000), ONE, 1).meanS(2000);
        assertTrue(ratio > 2 && ratio < 3, "twice the length costs " + ratio);
    }

    @Test
    void aMachineHalfAsQuickTakesTwiceAsLong() {
        AreaRequest request = Areas.around(SOURCE, 2000, 50, FACE, CHANNEL, LossModels.FULL_WAVE);
        MarchCost quick = MarchCost.ofArea(request, ONE, LEVEL, 20, trial(TICK_NS));
        MarchCost slow = MarchCost.ofArea(request, ONE, LEVEL, 20, trial(2 * TICK_NS));
        assertEquals(2 * quick.seconds(), slow.seconds(), EVEN * slow.seconds());
        assertEquals(quick.bytes(), slow.bytes());
    }

    @Test
    void countsAloneAskNoClockAndPutTwoSecondsForAColdStart() {
        AreaRequest request = Areas.around(SOURCE, 2000, 50, FACE, CHANNEL, LossModels.FULL_WAVE);
        MarchCost one = MarchCost.ofArea(request, ONE, LEVEL, 20, new MarchTrial(1, Optional.empty()));
        MarchCost four = MarchCost.ofArea(request, ONE, LEVEL, 20, new MarchTrial(4, Optional.empty()));
        assertEquals(one.seconds() - MarchCount.COLD_S, 4 * (four.seconds() - MarchCount.COLD_S), 1e-9);
        assertEquals(4 * one.bytes(), four.bytes());
        double radials = MarchArea.marched(one.radials()) * (1 + MarchArea.FORETOLD_WITHIN) * counted(ONE);
        assertTrue(one.seconds() - MarchCount.COLD_S > radials, "cells come on top of " + radials);
        assertTrue(one.seconds() - MarchCount.COLD_S < 1.2 * radials, one + " for " + radials);
    }

    @Test
    void whereNothingIsKnownThereIsNothingToMarch() {
        AreaGround elsewhere = new AreaGround(PaperGround.rough(5, 40, 8.1, 1 / 1200.0, 65, 0, 0.5));
        AreaRequest request = Areas.around(SOURCE, 2000, 50, FACE, CHANNEL, LossModels.FULL_WAVE);
        assertEquals(
                0, MarchCost.ofArea(request, ONE, elsewhere, 20, trial(TICK_NS)).seconds());
    }

    @Test
    void theSentenceTellsAllThatWasCounted() {
        MarchCost rose = new MarchCost(72, 0, 1, 1, 0.4, 3_000_000, true);
        assertEquals(
                "Marching the field along 72 radials, 1 pair of antenna heights: about 1 s on 1 thread with nothing else to"
                        + " do (good to 40 %, by a trial just now), and 3 MB of memory.",
                rose.sentence());
        MarchCost map = new MarchCost(720, 36, 1, 1, 240, 5_000_000, true);
        assertEquals(
                "Marching the field along 792 radials, more where neighbours differ, and to 36 single cells as a check, 1 pair of antenna heights: about 4 min"
                        + " on 1 thread with nothing else to do (good to 40 %, by a trial just now), and 5 MB of memory.",
                rose.and(map).sentence());
        assertTrue(new MarchCost(720, 36, 3, 2, 7200, 5_000_000, false)
                .sentence()
                .contains("3 pairs of antenna heights: about 2.0 h on 2 threads with nothing else to do (by counts;"));
    }

    private static double seconds(int radials, double radiusM, List<Terminals> heights) {
        return cost(radials, radiusM, heights).seconds();
    }

    private static MarchCost cost(int radials, double radiusM, List<Terminals> heights) {
        AreaRequest request = Areas.around(SOURCE, radiusM, 50, FACE, CHANNEL, LossModels.FULL_WAVE);
        // a hair more, so that the number of radials is not rounded up
        double arcM = 2 * Math.PI * radiusM / radials * (1 + 1e-9);
        return MarchCost.ofArea(request, heights, LEVEL, arcM, trial(TICK_NS));
    }

    private static double counted(List<Terminals> heights) {
        return new MarchProbe(setting(2000), heights, 1).meanS(2000);
    }

    private static AreaSetting setting(double radiusM) {
        return new AreaSetting(SOURCE, radiusM, CHANNEL, LossModels.FULL_WAVE, LEVEL);
    }

    private static MarchTrial trial(long tickNs) {
        AtomicLong now = new AtomicLong();
        return new MarchTrial(1, Optional.of(() -> now.getAndAdd(tickNs)));
    }
}
