package handreach.terrain;

import static handreach.terrain.TileFolderTest.height;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.geodesy.UtmZone;
import handreach.input.InputFault;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EsriGridTest {
    private static final String ROWS = "10 20 30\n40 50 60\n";

    @TempDir
    Path folder;

    /** By hand: three columns, two rows, cells of 0.1 degrees; the south-west post (40 m) stands at 45 N 8 E in all forms. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "ncols 3\\nnrows 2\\nxllcenter 8\\nyllcenter 45\\ncellsize 0.1\\nNODATA_value -9999\\n",
                "NCOLS 3\\nNROWS 2\\nXLLCORNER 7.95\\nYLLCORNER 44.95\\nCELLSIZE 0.1\\n",
                "ncols 3\\r\\nnrows 2\\r\\nxllcorner 7.95\\r\\nyllcenter 45.0\\r\\ndx 0.1\\r\\ndy 0.1\\r\\nnodata_value nan\\r\\n",
            })
    void cornerAndCentreFormsDifferByHalfACell(String header) throws IOException {
        Files.writeString(folder.resolve("g.asc"), header.replace("\\n", "\n").replace("\\r", "\r") + ROWS);
        TileFolder tiles = TileFolder.open(folder);
        assertEquals(40, height(tiles, 45, 8), 1e-9);
        assertEquals(30, height(tiles, 45.1, 8.2), 1e-9);
        assertEquals(35, height(tiles, 45.05, 8.1), 1e-9);
        assertEquals("Esri ASCII grid", tiles.tiles().get(0).format());
    }

    @Test
    void fractionsAndVoidsAreKept() throws IOException {
        Files.writeString(folder.resolve("g.asc"), header() + "10.5 -9999 30\n1e2 -5.25 60\n");
        TileFolder tiles = TileFolder.open(folder);
        assertEquals(10.5, height(tiles, 45.1, 8), 1e-6);
        assertEquals(-5.25, height(tiles, 45, 8.1), 1e-6);
        assertTrue(tiles.at(new Position(45.1, 8.1)).isVoid());
        assertEquals(1, tiles.survey(share -> true).get(0).voidPosts());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "PROJCS[\"WGS_1984_UTM_Zone_32N\",GEOGCS[\"GCS_WGS_1984\"]]",
                "PROJCS[\"ETRS89 / UTM zone 32N\",GEOGCS[\"ETRS89\"]]",
                "PROJCS[\"mine\",GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\",SPHEROID[\"WGS_1984\",6378137.0,298.257223563]],PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]],PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"False_Easting\",500000.0],PARAMETER[\"False_Northing\",0.0],PARAMETER[\"Central_Meridian\",9.0],PARAMETER[\"Scale_Factor\",0.9996],PARAMETER[\"Latitude_Of_Origin\",0.0],UNIT[\"Meter\",1.0]]",
            })
    void theFileBesideItTellsTheProjection(String prj) throws IOException {
        Files.writeString(
                folder.resolve("g.asc"),
                "ncols 3\nnrows 2\nxllcenter 460000\nyllcenter 5148000\ncellsize 100\n" + ROWS);
        assertTrue(said().contains("no g.prj beside it"), said());
        Files.writeString(folder.resolve("g.prj"), prj);
        Position place = new UtmZone(32, false).position(460_050, 5_148_100);
        assertEquals(15, height(TileFolder.open(folder), place.latitudeDeg(), place.longitudeDeg()), 1e-3);
        Files.writeString(folder.resolve("g.prj"), "nonsense");
        assertTrue(said().contains("g.prj: has a coordinate reference system that is not understood"), said());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "ncols x | ncols is 'x', a number is expected",
                "ncols 3\\nnrows 2.5 | nrows is 2.5, allowed are whole numbers",
                "ncols 3\\nnrows 2\\nxllcenter 8\\nyllcenter 45\\n1 2 3 4 5 6 | no cellsize above 0",
                "ncols 3\\nnrows 2\\nyllcenter 45\\ncellsize 0.1\\n1 2 3 4 5 6 | neither xllcorner nor xllcenter",
                "ncols 300000\\nnrows 200000\\nxllcenter 8\\nyllcenter 45\\ncellsize 0.1\\n | at most 33554432 are read",
                "ncols 300\\nnrows 200\\nxllcenter 8\\nyllcenter 45\\ncellsize 0.1\\n1 2 | is too short",
            })
    void aBrokenHeaderIsExplained(String text, String part) throws IOException {
        Files.writeString(folder.resolve("g.asc"), text.replace("\\n", "\n"));
        assertTrue(said().contains(part), said());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "10 20 30 40 5 | ends after 5 of 6 heights",
                "10 20 30\\n40 50 60 70 | line 7: holds more than 6 heights",
                "10 20 30\\n40 fifty 60 | line 7: 'fifty' is not a height",
                "10 20 30\\n40 1e5000d 60 | 'e5000d' is not a height",
            })
    void aBrokenBodyIsReportedAndVoid(String rows, String part) throws IOException {
        Files.writeString(folder.resolve("g.asc"), header() + rows.replace("\\n", "\n"));
        TileFolder tiles = TileFolder.open(folder);
        assertTrue(tiles.at(new Position(45.05, 8.1)).isVoid());
        String warning = tiles.warnings().get(0);
        assertTrue(warning.contains(part.replace("'e", "'1e")), warning);
    }

    private static String header() {
        return "ncols 3\nnrows 2\nxllcenter 8\nyllcenter 45\ncellsize 0.1\n";
    }

    private String said() {
        return assertThrows(InputFault.class, () -> TileFolder.open(folder)).getMessage();
    }
}
