package handreach.profile;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.terrain.Cover;
import handreach.terrain.Elevation;
import handreach.terrain.GroundWindow;
import handreach.terrain.LandCover;
import handreach.terrain.Surface;
import handreach.terrain.TileFolder;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PathCutTest {
    private static final Path SAMPLES = Path.of("elevation-samples");
    private static final LandCover OPEN = LandCover.uniform(Cover.OPEN);
    private static final Position FROM = new Position(37.37667, -104.99333);
    private static final Position TO = new Position(37.1695, -104.5005);

    @Test
    void samplesLieOnTheGeodesicAndHaveTheHeightsOfTheTiles() {
        TileFolder tiles = TileFolder.open(SAMPLES.resolve("high-mountains/tiles"));
        PathCut cut = PathCut.between(tiles, OPEN, FROM, TO, CutSettings.DEFAULT);
        Profile profile = cut.profile().orElseThrow();
        assertEquals(49.3884711, profile.lengthKm(), 1e-6, "GeodSolve, see geodesic-geodsolve.csv");
        for (int i = 0; i < profile.count(); i += 101) {
            Position place = cut.line().at(profile.distanceKm(i) * 1000);
            assertEquals(tiles.at(place).heightM().orElseThrow(), profile.heightM(i), 0.002);
            assertEquals(0, profile.clutterM(i));
        }
        assertTrue(cut.gaps().isEmpty() && cut.warnings().isEmpty());
    }

    /** Posts of 3 arc-seconds at 37 N stand 74 m apart from west to east, so samples are at most 37 m apart. */
    @Test
    void samplesAreNoFartherApartThanHalfACell() {
        TileFolder tiles = TileFolder.open(SAMPLES.resolve("high-mountains/tiles"));
        PathCut cut = PathCut.between(tiles, OPEN, FROM, TO, CutSettings.DEFAULT);
        Profile profile = cut.profile().orElseThrow();
        double spacingM = 1000 * profile.distanceKm(1);
        assertTrue(spacingM <= 37 && spacingM > 36.5, "spacing " + spacingM);
        assertEquals(profile.lengthKm(), profile.distanceKm(profile.count() - 1));
        for (int i = 1; i < profile.count(); i++)
            assertEquals(spacingM, 1000 * (profile.distanceKm(i) - profile.distanceKm(i - 1)), 1e-6);
        PathCut fine = PathCut.between(
                TileFolder.open(SAMPLES.resolve("invented-valley/tiles")),
                OPEN,
                new Position(44.4215, -29.6411),
                new Position(44.5640, -29.3766),
                CutSettings.DEFAULT);
        double fineM = 1000 * fine.profile().orElseThrow().distanceKm(1);
        assertTrue(fineM <= 11.1 && fineM > 10.9, "spacing " + fineM);
    }

    /** Between the samples, four parts an interval, stands what the tiles have there less what they hold of the trees, straight between samples. */
    @Test
    void betweenTheSamplesStandTheHeightsOfTheTiles() {
        TileFolder tiles = TileFolder.open(SAMPLES.resolve("high-mountains/tiles"));
        CutSettings settings = new CutSettings(Surface.RADAR, OptionalDouble.of(20), OptionalDouble.of(10));
        PathCut cut = PathCut.between(tiles, stripes(), FROM, TO, settings);
        Profile profile = cut.profile().orElseThrow();
        double[] atKm = profile.dividedKm();
        double[] heightM = profile.dividedHeightsM();
        assertEquals(4 * (profile.count() - 1) + 1, heightM.length);
        assertEquals(heightM.length, atKm.length);
        int bends = 0;
        for (int i = 0; i < heightM.length; i++) {
            int sample = Math.min(profile.count() - 2, i / 4);
            double share = i / 4.0 - sample;
            double heldM = settings.heldM(profile.cover(sample))
                    + share * (settings.heldM(profile.cover(sample + 1)) - settings.heldM(profile.cover(sample)));
            double tileM = tiles.at(cut.line().at(1000 * atKm[i])).heightM().orElseThrow();
            assertEquals(tileM - heldM, heightM[i], 0.003, "at " + atKm[i] + " km");
            double chordM = profile.heightM(sample) + share * (profile.heightM(sample + 1) - profile.heightM(sample));
            if (i % 4 == 0) assertEquals(profile.heightM(i / 4), heightM[i]);
            else if (Math.abs(chordM - heightM[i]) > 0.5) bends++;
        }
        assertTrue(bends > 100, bends + " places off the straight line between samples");
        double[] part = profile.upTo(100).dividedHeightsM();
        assertArrayEquals(Arrays.copyOf(heightM, 401), part);
        double[] raisedBy = new double[profile.count()];
        Arrays.fill(raisedBy, 3);
        assertEquals(heightM[57] + 3, profile.raised(raisedBy).dividedHeightsM()[57], 1e-9);
    }

    @Test
    void betweenTheSamplesAVoidLiesStraightBetweenThem() {
        TileFolder tiles = TileFolder.open(SAMPLES.resolve("high-mountains/tiles"));
        Position close = GeodesicLine.destination(FROM, 30, 900);
        int samples = PathCut.between(tiles, OPEN, FROM, close, CutSettings.DEFAULT)
                .profile()
                .orElseThrow()
                .count();
        Elevation holed = new Elevation() {
            @Override
            public void heights(double[] lat, double[] lon, int count, double[] out, boolean[] isVoid) {
                tiles.heights(lat, lon, count, out, isVoid);
                if (count > samples) for (int i = 41; i < 44; i++) isVoid[i] = true;
            }

            @Override
            public double postSpacingM(double latitudeDeg, double longitudeDeg, double elsewhereM) {
                return tiles.postSpacingM(latitudeDeg, longitudeDeg, elsewhereM);
            }
        };
        Profile profile = PathCut.between(holed, OPEN, FROM, close, CutSettings.DEFAULT)
                .profile()
                .orElseThrow();
        double[] heightM = profile.dividedHeightsM();
        for (int i = 41; i < 44; i++)
            assertEquals(
                    profile.heightM(10) + (i - 40) * (profile.heightM(11) - profile.heightM(10)) / 4, heightM[i], 1e-9);
    }

    @Test
    void theSamplerGivesTheSameSamplesAgainAndAgain() {
        TileFolder tiles = TileFolder.open(SAMPLES.resolve("high-mountains/tiles"));
        GroundWindow window = GroundWindow.over(tiles, FROM, 12_000);
        LandCover stripes = stripes();
        CutSettings settings = CutSettings.of(Surface.RADAR);
        PathSampler sampler = new PathSampler(window, stripes, settings);
        Random random = new Random(20260119);
        for (int trial = 0; trial < 60; trial++) {
            Position to = GeodesicLine.destination(FROM, random.nextDouble() * 360, 20 + random.nextDouble() * 11_000);
            int n = sampler.cut(GeodesicLine.between(FROM, to));
            Profile profile = PathCut.between(tiles, stripes, FROM, to, settings)
                    .profile()
                    .orElseThrow();
            assertEquals(n, profile.count());
            assertArrayEquals(profile.distancesKm(), Arrays.copyOf(sampler.distanceKm(), n), 0.0);
            assertArrayEquals(profile.heightsM(), Arrays.copyOf(sampler.heightM(), n), 0.0);
            for (int i = 0; i < n; i++) {
                assertEquals(profile.clutterM(i), sampler.clutterM()[i]);
                assertEquals(profile.cover(i), sampler.cover()[i]);
            }
        }
    }

    @Test
    void theWayBackIsTheSameGround() {
        TileFolder tiles = TileFolder.open(SAMPLES.resolve("high-mountains/tiles"));
        Profile there = PathCut.between(tiles, OPEN, FROM, TO, CutSettings.DEFAULT)
                .profile()
                .orElseThrow();
        Profile back = Profiles.reversed(PathCut.between(tiles, OPEN, TO, FROM, CutSettings.DEFAULT)
                .profile()
                .orElseThrow());
        assertEquals(there.count(), back.count());
        for (int i = 0; i < there.count(); i++) assertEquals(there.heightM(i), back.heightM(i), 0.002);
    }

    @Test
    void outsideTheTilesThereIsNoProfileButAGap() {
        TileFolder tiles = TileFolder.open(SAMPLES.resolve("forest-hills/tiles"));
        Position inside = new Position(36.3, -84.1);
        Position outside = new Position(36.3, -84.0);
        PathCut cut = PathCut.between(tiles, OPEN, inside, outside, CutSettings.DEFAULT);
        assertTrue(cut.profile().isEmpty());
        assertEquals(1, cut.gaps().size());
        VoidGap gap = cut.gaps().get(0);
        assertEquals(cut.line().lengthM() / 1000, gap.toKm(), 1e-9);
        double edgeKm = GeodesicLine.distanceM(inside, new Position(36.3, -84.07833)) / 1000;
        assertEquals(edgeKm, gap.fromKm(), 0.04);
        assertTrue(
                cut.warnings().get(0).contains("the ground is unknown from " + gap.words()),
                cut.warnings().get(0));
    }

    /** By hand: bare-earth flat ground at 500 m; every third kilometre wood, town, open. */
    @Test
    void clutterStandsOnTheGroundAndAroundBothEnds() {
        Position from = new Position(0, 10);
        Position to = new Position(0, 10.09);
        Profile bare = PathCut.between(flat(500), stripes(), from, to, CutSettings.DEFAULT)
                .profile()
                .orElseThrow();
        Profile held = PathCut.between(flat(500), stripes(), from, to, CutSettings.of(Surface.SURFACE_MODEL))
                .profile()
                .orElseThrow();
        CutSettings own = new CutSettings(Surface.BARE_EARTH, OptionalDouble.of(22), OptionalDouble.of(6));
        Profile tall =
                PathCut.between(flat(500), stripes(), from, to, own).profile().orElseThrow();
        int last = bare.count() - 1;
        for (int i = 0; i <= last; i++) {
            Cover cover = bare.cover(i);
            double full = cover == Cover.WOODLAND ? 15 : cover == Cover.SUBURBAN ? 10 : 0;
            assertEquals(full, bare.clutterM(i));
            assertEquals(500, bare.heightM(i));
            assertEquals(cover == Cover.WOODLAND ? 22 : cover == Cover.SUBURBAN ? 6 : 0, tall.clutterM(i));
            assertEquals(500 - 0.7 * full, held.heightM(i), 1e-9, "the model runs through the crowns");
            assertEquals(500 + 0.3 * full, held.heightM(i) + held.clutterM(i), 1e-9, "tops stand the rest above it");
        }
        assertEquals(Cover.SUBURBAN, bare.cover(0));
        String warning = PathCut.between(flat(500), stripes(), from, to, CutSettings.of(Surface.SURFACE_MODEL))
                .warnings()
                .get(0);
        assertTrue(warning.contains("up to 10.5 m lower"), warning);
    }

    @Test
    void endsThatCannotBeCutAreExplained() {
        Position here = new Position(10, 10);
        assertTrue(said(here, here).contains("both ends are the same place"));
        assertTrue(said(here, new Position(10, 40)).contains("at most 1000 km are cut"));
        PathSampler sampler = new PathSampler(flat(0), OPEN, CutSettings.DEFAULT);
        assertThrows(IllegalArgumentException.class, () -> sampler.cut(GeodesicLine.between(here, here)));
        assertThrows(
                IllegalArgumentException.class,
                () -> new CutSettings(Surface.BARE_EARTH, OptionalDouble.of(-1), OptionalDouble.empty()));
        assertEquals(3, sampler.cut(GeodesicLine.between(here, new Position(10, 10.00005))));
    }

    private static String said(Position from, Position to) {
        return assertThrows(InputFault.class, () -> PathCut.between(flat(0), OPEN, from, to, CutSettings.DEFAULT))
                .getMessage();
    }

    private static LandCover stripes() {
        return (lat, lon, count, out) -> {
            Cover[] kinds = {Cover.WOODLAND, Cover.SUBURBAN, Cover.OPEN};
            for (int i = 0; i < count; i++) out[i] = kinds[Math.floorMod((int) Math.floor(lon[i] * 100 + 1e-9), 3)];
        };
    }

    private static Elevation flat(double heightM) {
        return new Elevation() {
            @Override
            public void heights(double[] lat, double[] lon, int count, double[] out, boolean[] isVoid) {
                Arrays.fill(out, 0, count, heightM);
                Arrays.fill(isVoid, 0, count, false);
            }

            @Override
            public double postSpacingM(double lat, double lon, double defaultM) {
                return defaultM;
            }
        };
    }
}
