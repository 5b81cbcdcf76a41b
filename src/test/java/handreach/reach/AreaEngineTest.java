package handreach.reach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.profile.CutSettings;
import handreach.profile.PathCut;
import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.PathGeometry;
import handreach.propagation.Terminals;
import handreach.propagation.UsualConditions;
import handreach.terrain.Cover;
import handreach.terrain.LandCover;
import handreach.terrain.Surface;
import handreach.units.Frequency;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Area engines over invented ground: against single paths, against each other, and in what they refuse. */
class AreaEngineTest {
    /** What is promised; losses are kept as floats, good to 1e-5 dB. */
    private static final double STATED_ERROR_DB = 0.01;

    private static final double STATED_ERROR_DEG = 0.001;
    private static final PathConditions CHANNEL = UsualConditions.at(new Frequency(146));
    private static final Terminals FACE = new Terminals(1.6, 1.5);
    private static final double POST_DEG = 1 / 1200.0;

    /** Blocks of a few hundred metres, one cover each. */
    private static final LandCover PATCHES = (latitude, longitude, count, cover) -> {
        for (int i = 0; i < count; i++) {
            long block = (long) Math.floor(latitude[i] * 300 + 0.3) * 31 + (long) Math.floor(longitude[i] * 300 + 0.3);
            cover[i] = Cover.values()[(int) Math.floorMod(block * block * 7 + block, 6L)];
        }
    };

    @ParameterizedTest
    @CsvSource({
        "handheld,46.5,8.1",
        "handheld,-60,-179.99",
        "handheld,70,20",
        "delta-bullington,46.5,8.1",
        "delta-bullington,-33,151",
        "p1812,46.5,8.1",
        "two-ray,0.01,0.01",
        "free-space,46.5,8.1"
    })
    void exactEqualsOnePathCutAndReckoned(String model, double latitude, double longitude) {
        Position source = new Position(latitude, longitude);
        PaperGround elevation = PaperGround.rough(3, latitude, longitude, POST_DEG, 257, 180, 0.55)
                .withVoid(latitude + 0.02, longitude + 0.015, 0.004);
        AreaGround ground = new AreaGround(elevation, PATCHES, CutSettings.of(Surface.RADAR));
        AreaRequest request = Areas.around(
                source, 4000, 100, FACE, CHANNEL, LossModels.KEYWORD.find(model).orElseThrow());
        LossGrid grid = new ExactArea(2).losses(request, ground, Progress.SILENT);
        Random random = new Random(5);
        int known = 0;
        int unknown = 0;
        for (int i = 0; i < 120; i++) {
            int cell = random.nextInt(grid.grid().count());
            Position there = grid.grid().positionOf(cell);
            double distance = GeodesicLine.distanceM(source, there);
            if (distance < CellsByRadial.NEAREST_M) continue;
            assertEquals(distance > 4000, grid.state(cell) == LossGrid.State.OUTSIDE);
            if (distance > 4000) continue;
            PathCut cut = PathCut.between(elevation, PATCHES, source, there, ground.settings());
            assertEquals(cut.profile().isPresent(), grid.isKnown(cell), "cell " + cell);
            if (cut.profile().isEmpty()) {
                unknown++;
                continue;
            }
            known++;
            var profile = cut.profile().orElseThrow();
            double loss = LossModels.KEYWORD
                    .find(model)
                    .orElseThrow()
                    .loss(profile, FACE, CHANNEL)
                    .lossDb();
            assertEquals(loss, grid.lossDb(cell), STATED_ERROR_DB, "cell " + cell);
            PathGeometry geometry = PathGeometry.of(profile, FACE, CHANNEL.atmosphere(), CHANNEL.frequency());
            assertEquals(geometry.departureDeg(), grid.departureDeg(cell), STATED_ERROR_DEG);
            assertEquals(geometry.arrivalDeg(), grid.arrivalDeg(cell), STATED_ERROR_DEG);
            assertEquals(geometry.lineOfSight(), grid.inSight(cell));
            assertEquals(PATCHES.coverAt(there.latitudeDeg(), there.longitudeDeg()), grid.cover(cell));
        }
        assertTrue(known > 40 && unknown > 0, known + " known, " + unknown + " unknown");
    }

    @ParameterizedTest
    @CsvSource({"handheld,46.5", "delta-bullington,46.5", "handheld,-60", "handheld,70"})
    void sweepStaysCloseToExactOnRoughGround(String model, double latitude) {
        // rough: slopes up to 40°, RMS 12°
        PaperGround elevation = PaperGround.rough(11, latitude, 8.1, 1 / 3600.0, 513, 150, 0.52);
        AreaRequest request = Areas.around(
                new Position(latitude, 8.1),
                2500,
                30,
                FACE,
                CHANNEL,
                LossModels.KEYWORD.find(model).orElseThrow());
        LossGrid sweep = new SweepArea(2).losses(request, new AreaGround(elevation), Progress.SILENT);
        LossGrid exact = new ExactArea(2).losses(request, new AreaGround(elevation), Progress.SILENT);
        assertEquals(exact.knownCount(), sweep.knownCount());
        double[] difference = new double[exact.knownCount()];
        int same = 0;
        int n = 0;
        for (int cell = 0; cell < exact.grid().count(); cell++) {
            if (!exact.isKnown(cell)) continue;
            if (exact.inSight(cell) == sweep.inSight(cell)) same++;
            difference[n++] = sweep.lossDb(cell) - exact.lossDb(cell);
        }
        SamplingDifference all = SamplingDifference.of(difference, 0);
        assertTrue(all.rmsDb() < 1, all.toString());
        assertTrue(all.p99Db() < 4, all.toString());
        assertTrue(same > 0.99 * n, same + " of " + n);
        SamplingDifference stated = sweep.difference().orElseThrow();
        assertEquals(all.rmsDb(), stated.rmsDb(), 0.3);
        assertTrue(exact.difference().isEmpty());
    }

    @Test
    void theMarchHasTheLossOfItsRadialAtTheCellsDistance() {
        PaperGround elevation =
                PaperGround.rough(5, 46.5, 8.1, POST_DEG, 65, 8, 0.4).withVoid(46.512, 8.1, 0.002);
        AreaGround ground = new AreaGround(elevation);
        Position source = new Position(46.5, 8.1);
        AreaRequest request = Areas.around(source, 1500, 50, FACE, CHANNEL, LossModels.FULL_WAVE);
        double arcM = 2 * Math.PI * 1500 / 36;
        List<Terminals> heights = List.of(FACE, new Terminals(1.6, 4));
        List<LossGrid> grids = new MarchArea(2, arcM).losses(request, heights, ground, Progress.SILENT);
        List<BearingLosses> bearings = BearingLosses.of(
                new BearingRequest(source, 1500, 10, CHANNEL, LossModels.FULL_WAVE),
                heights,
                ground,
                2,
                Progress.SILENT);
        // cells due east lie on the radial of 90°; samples of the two cuts are not the same, the field is smooth over
        // metres
        RadialLosses east = bearings.get(0).radials().get(9);
        for (int column = 20; column <= 29; column++) {
            int cell = grids.get(0).grid().index(30, 30 + column);
            double distance = 50.0 * column;
            int i = 0;
            while (i + 1 < east.count() && east.distanceM(i) < distance) i++;
            assertEquals(east.lossDb(i), grids.get(0).lossDb(cell), 1.0, "at " + distance);
            assertTrue(grids.get(1).lossDb(cell) < grids.get(0).lossDb(cell));
        }
        assertEquals(
                LossGrid.State.UNKNOWN, grids.get(0).state(grids.get(0).grid().indexOf(new Position(46.5125, 8.1))));
    }

    @Test
    void theResultDoesNotDependOnTheNumberOfThreads() {
        AreaGround ground = rough();
        AreaRequest request = Areas.around(new Position(46.5, 8.1), 3000, 60, FACE, CHANNEL, LossModels.HANDHELD);
        for (AreaEngine[] pair :
                new AreaEngine[][] {{new SweepArea(1), new SweepArea(3)}, {new ExactArea(1), new ExactArea(3)}}) {
            LossGrid one = pair[0].losses(request, ground, Progress.SILENT);
            LossGrid three = pair[1].losses(request, ground, Progress.SILENT);
            assertSame(one, three, 0);
            assertEquals(one.difference(), three.difference());
        }
    }

    @Test
    void severalHeightsTogetherAreAsOneAfterTheOther() {
        AreaGround ground = rough();
        AreaRequest request = Areas.around(new Position(46.5, 8.1), 2000, 60, FACE, CHANNEL, LossModels.HANDHELD);
        List<Terminals> heights = List.of(FACE, new Terminals(1.0, 1.5), new Terminals(10, 0.9));
        for (AreaEngine engine : new AreaEngine[] {new SweepArea(2), new ExactArea(2)}) {
            List<LossGrid> together = engine.losses(request, heights, ground, Progress.SILENT);
            for (int k = 0; k < heights.size(); k++) {
                assertEquals(heights.get(k), together.get(k).request().terminals());
                assertSame(engine.losses(request.with(heights.get(k)), ground, Progress.SILENT), together.get(k), 0);
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Cover.class)
    void oneCoverEverywhereIsAsTheSameCoverLookedUpPlaceByPlace(Cover cover) {
        PaperGround elevation = PaperGround.rough(5, 46.5, 8.1, POST_DEG, 257, 150, 0.55);
        LandCover lookedUp = (latitude, longitude, count, out) -> Arrays.fill(out, 0, count, cover);
        CutSettings settings = CutSettings.of(Surface.RADAR);
        AreaRequest request = Areas.around(new Position(46.5, 8.1), 1200, 60, FACE, CHANNEL, LossModels.HANDHELD);
        for (AreaEngine engine : new AreaEngine[] {new SweepArea(2), new ExactArea(2)}) {
            LossGrid expected = engine.losses(request, new AreaGround(elevation, lookedUp, settings), Progress.SILENT);
            LossGrid even = engine.losses(
                    request, new AreaGround(elevation, LandCover.uniform(cover), settings), Progress.SILENT);
            assertSame(expected, even, 0);
            assertEquals(cover, even.cover(even.grid().indexOf(new Position(46.505, 8.1))));
        }
    }

    @Test
    void theSourceMayStandOffTheMiddle() {
        AreaGround ground = rough();
        CellGrid grid = CellGrid.around(new Position(46.51, 8.11), 1500, 60);
        Position source = new Position(46.495, 8.085);
        AreaRequest request = new AreaRequest(source, grid, 2500, FACE, CHANNEL, LossModels.HANDHELD);
        LossGrid exact = new ExactArea(2).losses(request, ground, Progress.SILENT);
        LossGrid sweep = new SweepArea(2).losses(request, ground, Progress.SILENT);
        int known = 0;
        for (int cell = 0; cell < grid.count(); cell++) {
            boolean within = GeodesicLine.distanceM(source, grid.positionOf(cell)) <= 2500;
            assertEquals(within, exact.isKnown(cell));
            assertEquals(within, sweep.isKnown(cell));
            if (within) known++;
        }
        assertTrue(known > 300, known + " known");
    }

    @Test
    void theSourceCellHasTheLossOfFiftyMetres() {
        AreaRequest request = Areas.around(new Position(46.5, 8.1), 300, 10, FACE, CHANNEL, LossModels.FREE_SPACE);
        LossGrid grid = new ExactArea(1).losses(request, flat(), Progress.SILENT);
        int middle = grid.grid().indexOf(new Position(46.5, 8.1));
        // by hand: 20 log(4π · 50 m / 2.0534 m) = 49.71 dB
        assertEquals(49.71, grid.lossDb(middle), 0.01);
        assertEquals(
                49.71, new SweepArea(1).losses(request, flat(), Progress.SILENT).lossDb(middle), 0.01);
    }

    @Test
    void nothingIsSeenOverAVoidOrATileEdge() {
        // ground ends 3 km east; a hole lies 1.5 km north
        PaperGround elevation =
                PaperGround.rough(5, 46.5, 8.1, POST_DEG, 65, 20, 0.5).withVoid(46.5135, 8.1, 0.002);
        AreaRequest request = Areas.around(new Position(46.5, 8.1), 4000, 50, FACE, CHANNEL, LossModels.HANDHELD);
        for (AreaEngine engine : new AreaEngine[] {new SweepArea(2), new ExactArea(2)}) {
            LossGrid grid = engine.losses(request, new AreaGround(elevation), Progress.SILENT);
            assertTrue(grid.isKnown(grid.grid().indexOf(new Position(46.508, 8.1))));
            assertEquals(LossGrid.State.UNKNOWN, grid.state(grid.grid().indexOf(new Position(46.5135, 8.1))));
            assertEquals(LossGrid.State.UNKNOWN, grid.state(grid.grid().indexOf(new Position(46.522, 8.1))));
            assertEquals(LossGrid.State.UNKNOWN, grid.state(grid.grid().indexOf(new Position(46.5, 8.14))));
            assertThrows(
                    IllegalArgumentException.class,
                    () -> grid.lossDb(grid.grid().indexOf(new Position(46.5, 8.14))));
        }
    }

    @Test
    void aSourceWithoutGroundKnowsNothing() {
        AreaGround ground = new AreaGround(PaperGround.rough(5, 40, 8.1, POST_DEG, 65, 20, 0.5));
        AreaRequest request = Areas.around(new Position(46.5, 8.1), 1000, 50, FACE, CHANNEL, LossModels.HANDHELD);
        LossGrid grid = new SweepArea(2).losses(request, ground, Progress.SILENT);
        assertEquals(0, grid.knownCount());
        assertTrue(grid.count(LossGrid.State.UNKNOWN) > 1000);
        assertTrue(grid.difference().isEmpty());
    }

    @Test
    void aStoppedRunHandsNothingOut() {
        AreaRequest request = Areas.around(new Position(46.5, 8.1), 3000, 30, FACE, CHANNEL, LossModels.HANDHELD);
        for (AreaEngine engine : new AreaEngine[] {new SweepArea(2), new ExactArea(2)}) {
            AtomicInteger told = new AtomicInteger();
            Progress stopper = new Progress() {
                @Override
                public void done(String what, double share) {
                    assertTrue(share >= 0 && share <= 1);
                    told.incrementAndGet();
                }

                @Override
                public boolean isCancelled() {
                    return told.get() > 20;
                }
            };
            assertThrows(CancellationException.class, () -> engine.losses(request, rough(), stopper));
        }
    }

    @Test
    void progressRunsToTheEnd() {
        double[] last = {0};
        Progress watcher = new Progress() {
            @Override
            public synchronized void done(String what, double share) {
                assertFalse(what.isBlank());
                last[0] = Math.max(last[0], share);
            }

            @Override
            public boolean isCancelled() {
                return false;
            }
        };
        AreaRequest request = Areas.around(new Position(46.5, 8.1), 1000, 50, FACE, CHANNEL, LossModels.HANDHELD);
        new SweepArea(2).losses(request, rough(), watcher);
        assertEquals(1, last[0], 1e-9);
    }

    @Test
    void fullWaveMarchesAndNeverGoesCellByCell() {
        AreaRequest request = Areas.around(new Position(46.5, 8.1), 1000, 50, FACE, CHANNEL, LossModels.FULL_WAVE);
        for (AreaEngine engine : new AreaEngine[] {new SweepArea(1), new ExactArea(1)})
            assertThrows(IllegalArgumentException.class, () -> engine.losses(request, rough(), Progress.SILENT));
        assertTrue(AreaEngine.forMap(LossModels.FULL_WAVE, 10_000, 30, 2) instanceof MarchArea);
        assertTrue(AreaEngine.forMap(LossModels.HANDHELD, 10_000, 30, 2) instanceof SweepArea);
    }

    private static AreaGround rough() {
        return new AreaGround(PaperGround.rough(5, 46.5, 8.1, POST_DEG, 257, 150, 0.55));
    }

    private static AreaGround flat() {
        return new AreaGround(PaperGround.rough(5, 46.5, 8.1, POST_DEG, 65, 0, 0.5));
    }

    private static void assertSame(LossGrid expected, LossGrid actual, double toleranceDb) {
        for (int cell = 0; cell < expected.grid().count(); cell++) {
            assertEquals(expected.state(cell), actual.state(cell));
            if (!expected.isKnown(cell)) continue;
            assertEquals(expected.lossDb(cell), actual.lossDb(cell), toleranceDb);
            assertEquals(expected.departureDeg(cell), actual.departureDeg(cell), toleranceDb);
            assertEquals(expected.arrivalDeg(cell), actual.arrivalDeg(cell), toleranceDb);
            assertEquals(expected.inSight(cell), actual.inSight(cell));
        }
    }
}
