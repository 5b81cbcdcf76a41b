package handreach.reach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.profile.CutSettings;
import handreach.profile.PathCut;
import handreach.profile.Profile;
import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.PathGeometry;
import handreach.propagation.Terminals;
import handreach.propagation.UsualConditions;
import handreach.terrain.Cover;
import handreach.terrain.LandCover;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Reach along bearings over a broken valley (invented). */
class LoadoutReachTest {
    private static final Position SOURCE = new Position(46.5, 8.1);
    private static final PathConditions CHANNEL = UsualConditions.at(PaperLinks.CHANNEL);
    private static final PaperGround VALLEY = PaperGround.rough(5, 46.5, 8.1, 1 / 1200.0, 257, 200, 0.5);
    private static final BearingRequest REQUEST = new BearingRequest(SOURCE, 5000, 5, CHANNEL, LossModels.HANDHELD);
    private static final BearingLosses LOSSES = losses(REQUEST, VALLEY, 2);

    private static BearingLosses losses(BearingRequest request, PaperGround ground, int threads) {
        return BearingLosses.of(request, List.of(PaperLinks.HEIGHTS), new AreaGround(ground), threads, Progress.SILENT)
                .get(0);
    }

    @ParameterizedTest
    @ValueSource(strings = {"handheld", "delta-bullington", "p1812"})
    void everySampleIsOnePathCutThere(String model) {
        BearingRequest request = new BearingRequest(
                SOURCE, 4000, 45, CHANNEL, LossModels.KEYWORD.find(model).orElseThrow());
        BearingLosses losses = losses(request, VALLEY, 2);
        Random random = new Random(2);
        for (RadialLosses radial : losses.radials()) {
            Position end = GeodesicLine.destination(SOURCE, radial.bearingDeg(), 4000);
            Profile whole = PathCut.between(VALLEY, LandCover.uniform(Cover.OPEN), SOURCE, end, CutSettings.DEFAULT)
                    .profile()
                    .orElseThrow();
            int skipped = whole.count() - radial.count();
            for (int k = 0; k < 6; k++) {
                int i = random.nextInt(radial.count());
                Profile cut = whole.upTo(skipped + i);
                assertEquals(cut.lengthKm() * 1000, radial.distanceM(i), 0.001);
                assertEquals(
                        LossModels.KEYWORD
                                .find(model)
                                .orElseThrow()
                                .loss(cut, PaperLinks.HEIGHTS, CHANNEL)
                                .lossDb(),
                        radial.lossDb(i),
                        0.01);
                PathGeometry geometry =
                        PathGeometry.of(cut, PaperLinks.HEIGHTS, CHANNEL.atmosphere(), CHANNEL.frequency());
                assertEquals(geometry.departureDeg(), radial.departureDeg(i), 1e-3);
                assertEquals(geometry.arrivalDeg(), radial.arrivalDeg(i), 1e-3);
            }
        }
    }

    @Test
    void theBearingsDoNotDependOnTheNumberOfThreads() {
        BearingLosses one = losses(REQUEST, VALLEY, 1);
        for (int b = 0; b < REQUEST.bearings(); b++)
            for (int i = 0; i < one.radials().get(b).knownCount(); i++)
                assertEquals(
                        one.radials().get(b).lossDb(i), LOSSES.radials().get(b).lossDb(i));
    }

    @Test
    void aBetterAntennaReachesFartherAndIsToldApart() {
        LoadoutReach control = LoadoutReach.of(LOSSES, PaperLinks.control(), 0.9);
        LoadoutReach whip = LoadoutReach.against(control, LOSSES, PaperLinks.whip(6, 0.6), 0.9);
        assertEquals(72, whip.bearings());
        for (int b = 0; b < 72; b++)
            assertTrue(whip.radial(b).continuousM() >= control.radial(b).continuousM());
        assertTrue(whip.medianM().value() > control.medianM().value());
        ReachDifference gain = whip.overControl().orElseThrow();
        assertEquals(whip.medianM().value() - control.medianM().value(), gain.medianM(), 1e-9);
        assertTrue(gain.isToldApart());
        assertTrue(control.overControl().isEmpty());
    }

    @Test
    void anAntennaThatMayBeNoBetterIsNotToldApart() {
        LoadoutReach control = LoadoutReach.of(LOSSES, PaperLinks.control(), 0.9);
        ReachDifference gain = LoadoutReach.against(control, LOSSES, PaperLinks.whip(0.5, 2), 0.9)
                .overControl()
                .orElseThrow();
        assertFalse(gain.isToldApart());
        assertTrue(gain.interval95M().contains(0));
    }

    @Test
    void doubtThatBothShareCancelsInTheDifference() {
        LoadoutReach control = LoadoutReach.of(LOSSES, PaperLinks.control(), 0.9);
        LoadoutReach whip = LoadoutReach.against(control, LOSSES, PaperLinks.whip(6, 0.6), 0.9);
        // the common doubt of the model alone is 6 dB, that of the difference about 0.6 dB
        assertTrue(whip.overControl().orElseThrow().interval95M().width()
                < 0.5 * whip.medianM().interval95().width());
    }

    @Test
    void intervalsHoldTheirFigure() {
        LoadoutReach reach = LoadoutReach.of(LOSSES, PaperLinks.whip(6, 0.6), 0.9);
        for (ReachEstimate estimate : List.of(reach.medianM(), reach.worstM(), reach.share()))
            assertTrue(estimate.interval95().contains(estimate.value()));
        for (int b = 0; b < reach.bearings(); b++) {
            assertTrue(reach.continuousM(b)
                    .interval95()
                    .contains(reach.continuousM(b).value()));
            assertTrue(reach.farthestM(b).value() >= reach.continuousM(b).value());
            assertTrue(reach.worstM().value() <= reach.continuousM(b).value());
        }
        assertEquals(
                reach.worstM().value(),
                reach.radial((int) (reach.worstBearingDeg() / 5)).continuousM());
    }

    @Test
    void theShareIsThatOfTheArea() {
        // oracle: cells counted over the same ground
        AreaRequest request = Areas.around(SOURCE, 5000, 60, PaperLinks.HEIGHTS, CHANNEL, LossModels.HANDHELD);
        LossGrid grid = new SweepArea(2).losses(request, new AreaGround(VALLEY), Progress.SILENT);
        ReachLink link = PaperLinks.whip(6, 0.6);
        assertEquals(
                OddsGrid.of(grid, link).shareEstimate(0.9).value(),
                LoadoutReach.of(LOSSES, link, 0.9).share().value(),
                0.04);
    }

    @Test
    void aTileEdgeLeavesTheBearingUnknown() {
        PaperGround small = PaperGround.rough(5, 46.5, 8.1, 1 / 1200.0, 65, 20, 0.5);
        LoadoutReach reach = LoadoutReach.of(losses(REQUEST, small, 2), PaperLinks.whip(6, 0.6), 0.9);
        assertEquals(72, reach.partlyUnknown());
        // ground ends 32 posts of 3" to the north: 2964 m
        assertEquals(2964, reach.radial(0).unknownBeyondM().orElseThrow(), 40);
        assertTrue(reach.radial(0).continuousM() <= 2964);
    }

    @Test
    void fullWaveGoesAlongBearingsToo() {
        BearingRequest request = new BearingRequest(SOURCE, 2000, 90, CHANNEL, LossModels.FULL_WAVE);
        List<BearingLosses> losses = BearingLosses.of(
                request,
                List.of(PaperLinks.HEIGHTS, new Terminals(1.5, 3)),
                new AreaGround(PaperGround.rough(5, 46.5, 8.1, 1 / 1200.0, 65, 5, 0.4)),
                2,
                Progress.SILENT);
        for (int b = 0; b < 4; b++) {
            RadialLosses low = losses.get(0).radials().get(b);
            RadialLosses high = losses.get(1).radials().get(b);
            int last = low.count() - 1;
            assertTrue(low.lossDb(last) > 90 && low.lossDb(last) < 170, low.lossDb(last) + " dB");
            assertTrue(high.lossDb(last) < low.lossDb(last));
        }
    }

    @Test
    void bearingsThatMakeNoTurnAreRefused() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new BearingRequest(SOURCE, 5000, 7, CHANNEL, LossModels.HANDHELD));
        assertThrows(
                IllegalArgumentException.class, () -> new BearingRequest(SOURCE, 10, 5, CHANNEL, LossModels.HANDHELD));
    }
}
