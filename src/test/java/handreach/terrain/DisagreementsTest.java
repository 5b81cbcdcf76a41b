package handreach.terrain;

import static handreach.terrain.TileFolderTest.height;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Tiles over the same ground with heights of two kinds. */
class DisagreementsTest {
    private static final double STEP = 1 / 1200.0;
    private static final double FLOAT_M = 1e-3;
    private static final Position PLACE = new Position(46.983, 8.0171);

    @TempDir
    Path folder;

    /** A slope in the direction east, as seen by the pixels of a grid of any spacing. */
    private void tile(String name, double westDeg, double step, int side, double offsetM) throws IOException {
        new PaperTiff(side, side, (x, y) -> 800 + 9000 * (westDeg + (x + 0.5) * step - 8) + offsetM)
                .sample(32, 3)
                .at(westDeg, 47, step, step)
                .write(folder.resolve(name));
    }

    @ParameterizedTest
    @CsvSource({"-34.9, 34.9 m below", "34.9, 34.9 m above", "-11, 11.0 m below"})
    void heightsThatDifferByMoreThanTenMetresAreToldOnce(double offsetM, String part) throws IOException {
        tile("a.tif", 8, STEP / 3, 150, 0);
        tile("b.tif", 8, STEP, 50, offsetM);
        TileFolder tiles = TileFolder.open(folder);
        tiles.at(PLACE);
        assertEquals(1, tiles.warnings().size());
        String told = tiles.warnings().get(0);
        assertTrue(told.startsWith("b.tif: lies " + part + " a.tif over the same ground (median of "), told);
        assertTrue(told.contains("Where both have heights, a.tif is used."), told);
        assertEquals(tiles.warnings(), tiles.warnings());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 9, -9})
    void setsOfDifferentMakeMayDiffer(double offsetM) throws IOException {
        tile("a.tif", 8, STEP / 3, 150, 0);
        tile("b.tif", 8, STEP, 50, offsetM);
        TileFolder tiles = TileFolder.open(folder);
        tiles.survey(share -> true);
        assertEquals(List.of(), tiles.warnings());
    }

    @Test
    void neighboursThatShareAnEdgeAreNotCompared() throws IOException {
        tile("a.tif", 8, STEP, 50, 0);
        tile("b.tif", 8 + 49 * STEP, STEP, 50, 300);
        TileFolder tiles = TileFolder.open(folder);
        tiles.survey(share -> true);
        assertEquals(List.of(), tiles.warnings());
    }

    @Test
    void tilesNobodyAskedAreNotRead() throws IOException {
        tile("a.tif", 8, STEP / 3, 150, 0);
        tile("b.tif", 8, STEP, 50, 50);
        TileFolder tiles = TileFolder.open(folder);
        assertEquals(List.of(), tiles.warnings());
        assertEquals(0, tiles.cache().heldBytes());
        tiles.at(new Position(10, 10));
        assertEquals(List.of(), tiles.warnings());
    }

    @Test
    void theOddOneIsNamedAgainstAllOthers() throws IOException {
        tile("a.tif", 8, STEP, 60, -35);
        tile("b.tif", 8, STEP, 30, 0);
        tile("c.tif", 8 + 30 * STEP, STEP, 30, 0.2);
        TileFolder tiles = TileFolder.open(folder);
        tiles.survey(share -> true);
        assertEquals(1, tiles.warnings().size(), String.join("\n", tiles.warnings()));
        String told = tiles.warnings().get(0);
        assertTrue(told.startsWith("a.tif: lies 35.0 to 35.2 m below b.tif and 1 more over the same ground"), told);
        assertTrue(told.contains("Where both have heights, a.tif is used."), told);
    }

    @Test
    void aTileAboveTheEllipsoidByItsNameComesLast() throws IOException {
        tile("a-ellipsoid.tif", 8, STEP / 3, 300, -35);
        tile("b.tif", 8, STEP, 50, 0);
        TileFolder tiles = TileFolder.open(folder);
        assertEquals(800 + 9000 * 0.0171, height(tiles, 46.983, 8.0171), FLOAT_M);
        assertEquals(1, tiles.warnings().size(), String.join("\n", tiles.warnings()));
        String told = tiles.warnings().get(0);
        assertTrue(told.startsWith("a-ellipsoid.tif: lies 35.0 m below b.tif over the same ground"), told);
        assertTrue(told.contains("counts from the ellipsoid, as its name says"), told);
        assertTrue(told.contains("b.tif is used"), told);
        assertTrue(tiles.at(new Position(46.96, 8.07)).heightM().isPresent(), "where there is nothing else it answers");
    }

    @Test
    void aTileAboveTheEllipsoidThatStandsAloneIsTold() throws IOException {
        tile("a_ellipsoid.tif", 8, STEP, 50, 0);
        TileFolder tiles = TileFolder.open(folder);
        assertTrue(tiles.at(PLACE).heightM().isPresent());
        assertEquals(1, tiles.warnings().size());
        assertTrue(tiles.warnings().get(0).contains("count from the ellipsoid"));
    }

    @Test
    void namesThatSpeakOfTheGeoidAreNotOfTheEllipsoid() {
        assertTrue(TileProvenance.of("dem-ellipsoid.tif").isFromEllipsoid());
        assertTrue(TileProvenance.of("site_HAE_1m.tif").isFromEllipsoid());
        for (String name : List.of("dem-geoid.tif", "ellipsoid-to-geoid.tif", "michael.tif", "haengeberg.tif"))
            assertTrue(!TileProvenance.of(name).isFromEllipsoid(), name);
    }

    /** In UTM against degrees, and with a file on either side of the 180th meridian. */
    @Test
    void planesAndDegreesAreCompared() throws IOException {
        new PaperTiff(80, 80, (x, y) -> 500 + x)
                .keys(1024, 1, 3072, 32632)
                .at(430_000, 5_150_000, 50, 50)
                .write(folder.resolve("a.tif"));
        new PaperTiff(200, 200, (x, y) -> 1000).at(8, 46.6, STEP, STEP).write(folder.resolve("b.tif"));
        TileFolder tiles = TileFolder.open(folder);
        tiles.survey(share -> true);
        assertEquals(1, tiles.warnings().size(), String.join("\n", tiles.warnings()));
    }

    @ParameterizedTest
    @CsvSource({
        "8, 9, 8.5, 10, 8.5, 9",
        "8, 9, 9.5, 10, , ",
        "179, -179, 179.5, -179.5, 179.5, -179.5",
        "179, -179, -179.5, -178, -179.5, -179",
        "-179.5, -178, 179, -179, -179.5, -179",
        "-180, 180, 179, -179, 179, 180",
        "8, 9, 7, 8.25, 8, 8.25",
        "8, 9, -172, -171, , "
    })
    void rectanglesOverlapAsByHand(double aWest, double aEast, double bWest, double bEast, Double west, Double east) {
        TileBounds a = new TileBounds(10, aWest, 12, aEast);
        var shared = a.overlap(new TileBounds(11, bWest, 13, bEast));
        assertEquals(west != null, shared.isPresent());
        if (west == null) return;
        assertEquals(new TileBounds(11, west, 12, east), shared.get());
        assertTrue(a.overlap(new TileBounds(12.5, bWest, 13, bEast)).isEmpty());
    }
}
