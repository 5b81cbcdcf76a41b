package handreach.reach;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.profile.CutSettings;
import handreach.profile.PathCut;
import handreach.profile.Profile;
import handreach.propagation.Foliage;
import handreach.propagation.FreeSpace;
import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.PathLoss;
import handreach.propagation.Terminals;
import handreach.propagation.UsualConditions;
import handreach.propagation.Woodland;
import handreach.propagation.march.CoveredMarch;
import handreach.propagation.march.FullWave;
import handreach.propagation.radial.Radial;
import handreach.terrain.Cover;
import handreach.terrain.Elevation;
import handreach.terrain.LandCover;
import handreach.terrain.Surface;
import handreach.units.Frequency;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Maps by the march: how far they differ from one march per cell, and that this is measured as told. */
class MarchAreaTest {
    private static final Position SOURCE = new Position(46.5, 8.1);
    private static final PathConditions CHANNEL = UsualConditions.at(new Frequency(146));
    private static final PathConditions WET = CHANNEL.with(Foliage.WET);
    private static final Terminals FACE = new Terminals(1.6, 1.5);
    private static final List<Terminals> HEIGHTS = List.of(FACE, new Terminals(1, 1.2));
    /** The pair whose gain by height no cover cuts. */
    private static final int HANDS = 1;

    private static final double RADIUS_M = 1500;
    private static final double ARC_M = 2 * Math.PI * RADIUS_M / 60;
    private static final AreaRequest REQUEST = Areas.around(SOURCE, RADIUS_M, 50, FACE, CHANNEL, LossModels.FULL_WAVE);
    private static final LandCover OPEN = LandCover.uniform(Cover.OPEN);
    private static final LandCover STRIPES = (lat, lon, count, out) -> {
        Cover[] kinds = {Cover.WOODLAND, Cover.SUBURBAN, Cover.OPEN, Cover.URBAN};
        for (int i = 0; i < count; i++) out[i] = kinds[Math.floorMod((int) Math.floor(lon[i] * 300), kinds.length)];
    };

    /** Of level ground by 0.3 dB at most from Norton's field, which is the same on all sides. */
    private static final double LEVEL_DB = 0.1;

    /** Losses are kept as floats, and the cut of a cell agrees with that of a single path to 0.01 dB. */
    private static final double SAME_DB = 0.02;

    /**
     * A single path has no reading at the height of roofs, which asks for a higher column: 0.14 dB in one of these cells, below 0.03 in
     * the others.
     */
    private static final double ROOFS_DB = 0.15;

    /** The column is as high as the highest of several antennas asks for. */
    private static final double SHARED_DB = 0.05;

    @Test
    void onLevelGroundACellHasTheLossOfItsOwnPath() {
        LossGrid grid = march(2, ground(0)).get(0);
        SamplingDifference difference = grid.difference().orElseThrow();
        assertEquals(12, difference.cells());
        assertTrue(difference.largestDb() < LEVEL_DB, difference.toString());
    }

    @ParameterizedTest
    @MethodSource("covers")
    void onRoughGroundTheDifferenceIsThatOfTheSameCellsReckonedOneByOne(LandCover cover, CutSettings settings) {
        AreaGround ground = new AreaGround(ground(40), cover, settings);
        List<LossGrid> grids = new MarchArea(2, ARC_M).losses(REQUEST, HEIGHTS, ground, Progress.SILENT);
        List<Integer> cells = comparedCells();
        for (int k = 0; k < HEIGHTS.size(); k++) {
            List<Double> by = new ArrayList<>();
            for (int cell : cells)
                by.add(grids.get(k).lossDb(cell)
                        - ownPathDb(ground, grids.get(k).grid(), cell, HEIGHTS.get(k)));
            double mean = by.stream().mapToDouble(d -> d).average().orElseThrow();
            double square = by.stream().mapToDouble(d -> d * d).average().orElseThrow();
            double largest = by.stream().mapToDouble(Math::abs).max().orElseThrow();
            SamplingDifference stated = grids.get(k).difference().orElseThrow();
            assertEquals(by.size(), stated.cells());
            double sameDb = cover == OPEN ? SAME_DB : ROOFS_DB;
            assertEquals(mean, stated.meanDb(), SAME_DB);
            assertEquals(Math.sqrt(square), stated.rmsDb(), sameDb);
            assertEquals(largest, stated.largestDb(), sameDb);
            assertTrue(stated.rmsDb() > 0.2, "rough ground differs from radial to radial: " + stated);
        }
    }

    /** Open ground; and stripes of wood, town and open ground whose heights are their own and partly in the tiles. */
    static List<Arguments> covers() {
        CutSettings tall = new CutSettings(Surface.RADAR, OptionalDouble.of(22), OptionalDouble.of(12));
        return List.of(Arguments.of(OPEN, CutSettings.DEFAULT), Arguments.of(STRIPES, tall));
    }

    @Test
    void radialsAndMapsLoseInWoodsAndTownWhatAPathLosesThere() {
        CutSettings tall = new CutSettings(Surface.BARE_EARTH, OptionalDouble.of(22), OptionalDouble.of(12));
        AreaGround ground = new AreaGround(ground(40), STRIPES, tall);
        List<BearingLosses> rose = BearingLosses.of(
                new BearingRequest(SOURCE, RADIUS_M, 30, CHANNEL, LossModels.FULL_WAVE),
                HEIGHTS,
                ground,
                2,
                Progress.SILENT);
        RaySampler sampler = AreaSetting.of(REQUEST, ground).sampler();
        for (int bearing = 0; bearing < 12; bearing++) {
            Radial ray = new Radial();
            AreaSetting.of(REQUEST, ground).cut(sampler, Math.toRadians(30 * bearing), RADIUS_M, ray);
            for (int k = 0; k < HEIGHTS.size(); k++) {
                RadialLosses losses = rose.get(k).radials().get(bearing);
                PathLoss path = new FullWave().loss(ray.profile(ray.known()), HEIGHTS.get(k), CHANNEL);
                assertEquals(path.lossDb(), losses.lossDb(losses.knownCount() - 1), SAME_DB, "bearing " + bearing);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("covers")
    void aRoseOffTheRadialsOfTheMapIsTheRoseByItself(LandCover cover, CutSettings settings) {
        AreaGround ground = new AreaGround(ground(40).withVoid(46.51, 8.1, 0.004), cover, settings);
        BearingRequest wet = new BearingRequest(SOURCE, RADIUS_M, 30, WET, LossModels.FULL_WAVE);
        BearingRequest leafy = new BearingRequest(SOURCE, RADIUS_M, 30, CHANNEL, LossModels.FULL_WAVE);
        AreaRequest map = Areas.around(SOURCE, RADIUS_M, 50, FACE, WET, LossModels.FULL_WAVE);
        assertTrue(RoseAndMap.isOneMarch(wet, map));
        RoseAndMap both = RoseAndMap.of(List.of(wet, leafy), map, HEIGHTS, ground, 2, Progress.SILENT);
        assertSame(
                BearingLosses.of(wet, HEIGHTS, ground, 2, Progress.SILENT),
                both.roses().get(0));
        assertSame(
                BearingLosses.of(leafy, HEIGHTS, ground, 2, Progress.SILENT),
                both.roses().get(1));
    }

    private static void assertSame(List<BearingLosses> expected, List<BearingLosses> found) {
        for (int k = 0; k < expected.size(); k++) {
            for (int bearing = 0; bearing < expected.get(k).radials().size(); bearing++) {
                RadialLosses one = expected.get(k).radials().get(bearing);
                RadialLosses other = found.get(k).radials().get(bearing);
                assertEquals(one.bearingDeg(), other.bearingDeg());
                assertEquals(one.knownCount(), other.knownCount(), "bearing " + bearing);
                for (int i = 0; i < one.knownCount(); i++) {
                    assertEquals(one.distanceM(i), other.distanceM(i));
                    assertEquals(one.lossDb(i), other.lossDb(i), "bearing " + bearing + ", sample " + i);
                }
            }
        }
    }

    @Test
    void aMapAndItsRoseSayTheSameOfACellOnABearing() {
        AreaGround ground = new AreaGround(ground(40));
        BearingRequest request = new BearingRequest(SOURCE, RADIUS_M, 30, CHANNEL, LossModels.FULL_WAVE);
        RoseAndMap both = RoseAndMap.of(List.of(request), REQUEST, HEIGHTS, ground, 2, Progress.SILENT);
        LossGrid map = both.map().get(HANDS);
        RadialLosses north = both.roses().get(0).get(HANDS).radials().get(0);
        int compared = 0;
        for (int i = 0; i < north.knownCount(); i++) {
            int cell = map.grid().indexOf(new Position(46.5 + north.distanceM(i) / 111_170, 8.1));
            double distanceM = GeodesicLine.distanceM(SOURCE, map.grid().positionOf(cell));
            if (i + 1 == north.knownCount() || distanceM < north.distanceM(i) || distanceM > north.distanceM(i + 1))
                continue;
            double share = (distanceM - north.distanceM(i)) / (north.distanceM(i + 1) - north.distanceM(i));
            double roseDb = north.lossDb(i) + share * (north.lossDb(i + 1) - north.lossDb(i));
            // the centre of a cell lies up to half a cell beside the bearing
            assertEquals(roseDb, map.lossDb(cell), 1.5, distanceM + " m");
            compared++;
        }
        assertTrue(compared > 10, compared + " cells");
    }

    /** Loadouts at three heights, called from one place: the same map as for each by itself. */
    @Test
    void heightsOfTheFarAntennaThatShareAMarchLoseWhatEachLosesAlone() {
        AreaGround ground = new AreaGround(ground(40));
        List<Terminals> three = List.of(new Terminals(1.6, 1), FACE, new Terminals(1.6, 2));
        List<LossGrid> together = maps(ground, three);
        for (int k = 0; k < three.size(); k++) {
            LossGrid alone = maps(ground, List.of(three.get(k))).get(0);
            assertEquals(alone.knownCount(), together.get(k).knownCount());
            int compared = 0;
            for (int cell = 0; cell < alone.grid().count(); cell++) {
                if (!alone.isKnown(cell) || excessDb(alone, cell) > CoveredMarch.LOST_DB) continue;
                assertEquals(
                        alone.lossDb(cell), together.get(k).lossDb(cell), SHARED_DB, three.get(k) + ", cell " + cell);
                compared++;
            }
            assertTrue(compared > 1000, compared + " cells");
        }
    }

    private static List<LossGrid> maps(AreaGround ground, List<Terminals> heights) {
        return new MarchArea(2, ARC_M, false, Double.POSITIVE_INFINITY)
                .losses(REQUEST, heights, ground, Progress.SILENT);
    }

    private static double excessDb(LossGrid map, int cell) {
        double distanceM = Math.max(
                CellsByRadial.NEAREST_M,
                GeodesicLine.distanceM(SOURCE, map.grid().positionOf(cell)));
        return map.lossDb(cell) - FreeSpace.lossDb(CHANNEL.frequency(), distanceM / 1000);
    }

    @Test
    void whereTheLossBendsFromRadialToRadialGapsAreHalved() {
        AreaGround rough = new AreaGround(ground(40));
        LossGrid fine = map(rough, ARC_M / 8, Double.POSITIVE_INFINITY);
        double plain = rms(map(rough, ARC_M, Double.POSITIVE_INFINITY), fine);
        double halved = rms(map(rough, ARC_M, 0), fine);
        double usual = rms(map(rough, ARC_M, MarchArea.BEND_DB), fine);
        assertTrue(halved < 0.6 * plain, halved + " after " + plain);
        assertTrue(usual < 0.9 * plain && usual >= halved, usual + " between " + halved + " and " + plain);
        double quartered = rms(map(rough, ARC_M, 0), map(rough, ARC_M / 4, Double.POSITIVE_INFINITY));
        assertEquals(0, quartered, 0.02, "from no bend at all on, a map of four times as many radials");
        assertTrue(rms(map(rough, ARC_M / 2, Double.POSITIVE_INFINITY), fine) > 1.2 * halved, "halved once");
        AreaGround level = new AreaGround(ground(0));
        assertEquals(
                0, rms(map(level, ARC_M, MarchArea.BEND_DB), map(level, ARC_M, Double.POSITIVE_INFINITY)), "no bend");
    }

    private static LossGrid map(AreaGround ground, double arcM, double bendDb) {
        return new MarchArea(2, arcM, false, bendDb).losses(REQUEST, ground, Progress.SILENT);
    }

    /** Over all cells that are not lost, dB. */
    private static double rms(LossGrid map, LossGrid reference) {
        double sum = 0;
        int count = 0;
        for (int cell = 0; cell < map.grid().count(); cell++) {
            if (!map.isKnown(cell) || !reference.isKnown(cell)) continue;
            double distanceM = GeodesicLine.distanceM(SOURCE, map.grid().positionOf(cell));
            if (distanceM < CellsByRadial.NEAREST_M) continue;
            double excessDb = reference.lossDb(cell) - FreeSpace.lossDb(CHANNEL.frequency(), distanceM / 1000);
            if (excessDb > CoveredMarch.LOST_DB) continue;
            sum += Math.pow(map.lossDb(cell) - reference.lossDb(cell), 2);
            count++;
        }
        return Math.sqrt(sum / count);
    }

    @Test
    void aMapTakesInRosesOfNoMoreBearingsThanRadials() {
        assertEquals(936, MarchArea.radials(10_000, 2 * Math.PI * 10_000 / 936));
        assertEquals(1080, MarchArea.radials(10_000, 2 * Math.PI * 10_000 / 936, 360));
        BearingRequest rose = new BearingRequest(SOURCE, RADIUS_M, 1, CHANNEL, LossModels.FULL_WAVE);
        assertTrue(!RoseAndMap.isOneMarch(rose, REQUEST), "cells of 50 m ask for 189 radials at 1.5 km");
        AreaRequest bySweep = Areas.around(SOURCE, RADIUS_M, 50, FACE, CHANNEL, LossModels.HANDHELD);
        assertTrue(!RoseAndMap.isOneMarch(
                new BearingRequest(SOURCE, RADIUS_M, 30, CHANNEL, LossModels.HANDHELD), bySweep));
        assertThrows(
                IllegalArgumentException.class,
                () -> RoseAndMap.of(List.of(rose), REQUEST, HEIGHTS, new AreaGround(ground(0)), 1, Progress.SILENT));
    }

    @Test
    void woodsAllOverWeighOnTheMapAtBothEnds() { // by hand: deep in 22 m of trees on level ground both ends pay
        // their ceiling
        CutSettings tall = new CutSettings(Surface.RADAR, OptionalDouble.of(22), OptionalDouble.empty());
        LandCover woods = LandCover.uniform(Cover.WOODLAND);
        LossGrid bare = march(2, ground(0)).get(HANDS);
        LossGrid under = new MarchArea(2, ARC_M)
                .losses(REQUEST, HEIGHTS, new AreaGround(ground(0), woods, tall), Progress.SILENT)
                .get(HANDS);
        double ceilingDb = Woodland.ceilingDb(CHANNEL.frequency(), CHANNEL.polarization());
        int rim = bare.grid().indexOf(new Position(46.5125, 8.1));
        // 1.4 km of trees, γ 0.057 dB/m: e^(−7) of the ceiling is left, a hundredth of a decibel at each end.
        assertEquals(bare.lossDb(rim) + 2 * ceilingDb, under.lossDb(rim), 0.1);
    }

    @Test
    void theDifferenceDoesNotDependOnTheNumberOfThreads() {
        List<LossGrid> one = march(1, ground(40));
        List<LossGrid> three = march(3, ground(40));
        for (int k = 0; k < one.size(); k++)
            assertEquals(one.get(k).difference(), three.get(k).difference());
    }

    @Test
    void cellsBehindUnknownGroundAreNotCompared() {
        PaperGround holed = ground(40).withVoid(46.51, 8.1, 0.004);
        SamplingDifference difference = march(2, holed).get(0).difference().orElseThrow();
        assertTrue(difference.cells() < 12 && difference.cells() > 6, difference.toString());
    }

    @Test
    void behindACliffCellsAndBearingsAreUnknownAndSaidToBe() { // paper world: level ground, a cliff of 250 m a
        // kilometre north
        PaperGround cliff = ground(0).withCliff(46.509, 250);
        LossGrid grid = march(2, cliff).get(0);
        LossGrid open = march(2, ground(0)).get(0);
        int behind = 0;
        for (int cell = 0; cell < grid.grid().count(); cell++) {
            if (open.state(cell) == LossGrid.State.OUTSIDE) continue;
            double northDeg = grid.grid().positionOf(cell).latitudeDeg() - 46.509;
            if (northDeg > 0.001) {
                assertEquals(LossGrid.State.UNKNOWN, grid.state(cell), "behind the cliff");
                behind++;
            } else if (northDeg < -0.0025) {
                // sloping along a radial is less steep than across: all of this is before the cliff, and so is what
                // lies
                // as far out on the next radial
                assertEquals(open.lossDb(cell), grid.lossDb(cell), 0.5, "before the cliff");
            }
        }
        assertTrue(behind > 50, behind + " cells");
        assertTrue(grid.behindSteepGround() >= behind, grid.behindSteepGround() + " cells told");
        assertEquals(0, open.behindSteepGround());
        assertEquals(
                0, march(2, ground(0).withVoid(46.51, 8.1, 0.004)).get(0).behindSteepGround(), "a void is no cliff");

        BearingRequest rose = new BearingRequest(SOURCE, RADIUS_M, 30, CHANNEL, LossModels.FULL_WAVE);
        List<RadialLosses> radials = BearingLosses.of(rose, HEIGHTS, new AreaGround(cliff), 2, Progress.SILENT)
                .get(0)
                .radials();
        assertTrue(radials.get(0).endsAtSteepGround()
                && radials.get(0).unknownBeyondM().orElseThrow() < 1100);
        assertTrue(!radials.get(6).endsAtSteepGround()
                && radials.get(6).unknownBeyondM().isEmpty());
    }

    @Test
    void aStopDuringTheComparisonHandsNothingOut() {
        Told told = new Told(MarchAreaTest::isComparison);
        MarchArea engine = new MarchArea(2, ARC_M);
        assertThrows(
                CancellationException.class, () -> engine.losses(REQUEST, HEIGHTS, new AreaGround(ground(40)), told));
    }

    @Test
    void progressCoversTheComparisonAndNeverGoesBack() {
        Told told = new Told(what -> false);
        new MarchArea(1, ARC_M).losses(REQUEST, HEIGHTS, new AreaGround(ground(0)), told);
        for (int i = 1; i < told.share.size(); i++) assertTrue(told.share.get(i) >= told.share.get(i - 1));
        assertEquals(1, told.share.get(told.share.size() - 1), 1e-12);
        assertEquals(12, told.what.stream().filter(MarchAreaTest::isComparison).count());
    }

    /** Oracle: the path to the same place, which answers over a void that no sample meets. */
    @Test
    void aRadialGoesOverTheGroundOfItsPathAlsoWhereAVoidLiesBetweenSamples() {
        double intervalM = RADIUS_M / Math.ceil(2 * RADIUS_M / ground(0).postSpacingM(46.5, 8.1, 30));
        double fromDeg = GeodesicLine.destination(SOURCE, 20, 10.4 * intervalM).latitudeDeg();
        double toDeg = GeodesicLine.destination(SOURCE, 20, 10.6 * intervalM).latitudeDeg();
        PaperGround paper = ground(40);
        Elevation holed = new Elevation() {
            @Override
            public void heights(double[] lat, double[] lon, int count, double[] out, boolean[] isVoid) {
                paper.heights(lat, lon, count, out, isVoid);
                for (int i = 0; i < count; i++) isVoid[i] |= lat[i] > fromDeg && lat[i] < toDeg;
            }

            @Override
            public double postSpacingM(double latitudeDeg, double longitudeDeg, double elsewhereM) {
                return paper.postSpacingM(latitudeDeg, longitudeDeg, elsewhereM);
            }
        };
        CutSettings tall = new CutSettings(Surface.RADAR, OptionalDouble.of(22), OptionalDouble.of(12));
        AreaGround ground = new AreaGround(holed, STRIPES, tall);
        AreaSetting setting = AreaSetting.of(REQUEST, ground);
        Radial radial = new Radial();
        setting.cut(setting.sampler(), Math.toRadians(20), RADIUS_M, radial);
        assertEquals(radial.count(), radial.known());
        Position end = GeodesicLine.destination(SOURCE, 20, RADIUS_M);
        Profile path =
                PathCut.between(holed, STRIPES, SOURCE, end, tall).profile().orElseThrow();
        assertArrayEquals(path.dividedHeightsM(), radial.profile(radial.known()).dividedHeightsM(), 0.02);
        double[] atM = path.dividedHeightsM();
        assertEquals(0.5 * (path.heightM(10) + path.heightM(11)), atM[42], 1e-9, "the void itself");
    }

    @Test
    void whoDoesNotReadTheComparisonIsSparedIt() {
        LossGrid grid =
                new MarchArea(2, ARC_M).withoutMeasuring().losses(REQUEST, new AreaGround(ground(0)), Progress.SILENT);
        assertTrue(grid.difference().isEmpty());
    }

    @Test
    void theComparisonIsAFewPerCentOfTheRadials() {
        assertEquals(12, MarchArea.checked(16));
        assertEquals(36, MarchArea.checked(720));
        assertEquals(48, MarchArea.checked(7200));
    }

    @Test
    void theWordsNameTheEngineAndClaimNoHundredthOfADozen() {
        SamplingDifference few = SamplingDifference.of(new double[] {1, -3}, 4);
        assertEquals(
                "march against one exact path per cell, 2 cells: mean \u22121.00 dB, RMS 2.24 dB, all within 3.0 dB; 4 more are lost in shadow",
                few.sentence(MapEngine.MARCH));
        SamplingDifference many = SamplingDifference.of(new double[200], 0);
        assertEquals(
                "sweep against one exact path per cell, 200 cells: mean +0.00 dB, RMS 0.00 dB, 99 % within 0.0 dB",
                many.sentence(MapEngine.SWEEP));
    }

    private static boolean isComparison(String what) {
        return what.equals("comparing with exact paths");
    }

    private static PaperGround ground(double reliefM) {
        return PaperGround.rough(5, 46.5, 8.1, 1 / 1200.0, 65, reliefM, 0.5);
    }

    private static List<LossGrid> march(int threads, PaperGround ground) {
        return new MarchArea(threads, ARC_M).losses(REQUEST, HEIGHTS, new AreaGround(ground), Progress.SILENT);
    }

    /** A dozen picks by the golden section over the cells in order of radial and distance. */
    private static List<Integer> comparedCells() {
        AzimuthalFrame frame =
                AreaSetting.of(REQUEST, new AreaGround(ground(0))).frame();
        SubProgress silent = new SubProgress(Progress.SILENT, "cells", 0, 1);
        CellsByRadial order = CellsByRadial.of(REQUEST.grid(), frame, 60, new Workers(1), silent);
        for (int radial = 0; radial < 60; radial++) order.sort(radial);
        List<Integer> cells = new ArrayList<>();
        for (int i = 0; i < 12; i++) cells.add(order.cell(SamplingCheck.slot(i, order.count())));
        return cells;
    }

    private static double ownPathDb(AreaGround ground, CellGrid grid, int cell, Terminals pair) {
        Position there = grid.positionOf(cell);
        assertTrue(GeodesicLine.distanceM(SOURCE, there) > CellsByRadial.NEAREST_M);
        Profile profile = PathCut.between(ground.elevation(), ground.landCover(), SOURCE, there, ground.settings())
                .profile()
                .orElseThrow();
        return new FullWave().loss(profile, pair, CHANNEL).lossDb();
    }

    /** Notes what it is told, and stops the work once it has been told of something. */
    private static final class Told implements Progress {
        private final java.util.function.Predicate<String> stopsAt;
        private final List<String> what = new ArrayList<>();
        private final List<Double> share = new ArrayList<>();
        private boolean isStopped;

        Told(java.util.function.Predicate<String> stopsAt) {
            this.stopsAt = stopsAt;
        }

        @Override
        public synchronized void done(String work, double done) {
            what.add(work);
            share.add(done);
            isStopped |= stopsAt.test(work);
        }

        @Override
        public synchronized boolean isCancelled() {
            return isStopped;
        }
    }
}
