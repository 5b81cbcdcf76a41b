package handreach.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.UtmZone;
import handreach.input.InputFault;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class CoverRasterTest {
    @TempDir
    Path folder;

    /** Published legends: ESA WorldCover product manual and MRLC NLCD legend; what a class becomes is ours. CORINE from memory. */
    @ParameterizedTest
    @CsvSource({
        "WORLD_COVER,10,WOODLAND",
        "WORLD_COVER,20,OPEN",
        "WORLD_COVER,50,SUBURBAN",
        "WORLD_COVER,80,WATER",
        "WORLD_COVER,95,WOODLAND",
        "WORLD_COVER,100,OPEN",
        "WORLD_COVER,0,",
        "WORLD_COVER,11,",
        "NLCD,11,WATER",
        "NLCD,22,SUBURBAN",
        "NLCD,24,URBAN",
        "NLCD,42,WOODLAND",
        "NLCD,90,WOODLAND",
        "NLCD,82,OPEN",
        "NLCD,0,",
        "CORINE,111,DENSE_URBAN",
        "CORINE,1,DENSE_URBAN",
        "CORINE,112,SUBURBAN",
        "CORINE,311,WOODLAND",
        "CORINE,23,WOODLAND",
        "CORINE,25,WOODLAND",
        "CORINE,26,OPEN",
        "CORINE,523,WATER",
        "CORINE,44,WATER",
        "CORINE,45,",
        "CORINE,0,"
    })
    void legendsGiveACoverOrNothing(CoverLegend legend, int code, Cover cover) {
        assertEquals(cover, legend.of(code).orElse(null));
    }

    @ParameterizedTest
    @EnumSource(CoverLegend.class)
    void wordsLeadBackToTheLegend(CoverLegend legend) {
        assertEquals(legend, CoverLegend.KEYWORD.find(legend.word()).orElseThrow());
    }

    /** By hand: pixels of 0.01 degrees, the first from 8.00 to 8.01 E and 47.00 to 46.99 N; columns alternate 10, 50, 80. */
    @Test
    void aPositionHasTheClassOfItsPixel() throws IOException {
        new PaperTiff(30, 20, (x, y) -> y == 3 ? 0 : y == 4 ? 77 : new int[] {10, 50, 80}[x % 3])
                .sample(8, 1)
                .deflated()
                .tiles(16)
                .at(8, 47, 0.01, 0.01)
                .write(folder.resolve("c.tif"));
        CoverRaster raster = CoverRaster.open(folder, CoverLegend.WORLD_COVER, Cover.URBAN);
        assertEquals(Cover.WOODLAND, raster.coverAt(46.9999, 8.0001));
        assertEquals(Cover.WOODLAND, raster.coverAt(46.9901, 8.0099));
        assertEquals(Cover.SUBURBAN, raster.coverAt(46.995, 8.0101));
        assertEquals(Cover.WATER, raster.coverAt(46.9, 8.171));
        assertEquals(Cover.URBAN, raster.coverAt(46.965, 8.005), "no data");
        assertEquals(Cover.URBAN, raster.coverAt(46.955, 8.005), "code 77 is not in the legend");
        assertEquals(Cover.URBAN, raster.coverAt(47.01, 8.005), "outside");
        assertEquals(1, raster.warnings().size());
        assertTrue(raster.warnings().get(0).contains("code 77 is not in the legend world-cover"));
    }

    @Test
    void projectedMapsAreReadInTheirPlane() throws IOException {
        new PaperTiff(50, 50, (x, y) -> x < 25 ? 42 : 11)
                .sample(16, 1)
                .keys(1024, 1, 3072, 32632, 3076, 9001)
                .at(460_000, 5_150_000, 30, 30)
                .write(folder.resolve("c.tif"));
        CoverRaster raster = CoverRaster.open(folder.resolve("c.tif"), CoverLegend.NLCD, Cover.OPEN);
        UtmZone zone = new UtmZone(32, false);
        for (double x : new double[] {1, 400, 749, 751, 1499}) {
            var place = zone.position(460_000 + x, 5_149_300);
            assertEquals(
                    x < 750 ? Cover.WOODLAND : Cover.WATER, raster.coverAt(place.latitudeDeg(), place.longitudeDeg()));
        }
        var outside = zone.position(459_990, 5_149_300);
        assertEquals(Cover.OPEN, raster.coverAt(outside.latitudeDeg(), outside.longitudeDeg()));
    }

    @Test
    void manyPositionsAtOnceAreTheSameOneByOne() throws IOException {
        new PaperTiff(3000, 2500, (x, y) -> (x / 7 + y / 5) % 2 == 0 ? 10 : 30)
                .sample(8, 1)
                .deflated()
                .tiles(256)
                .at(8, 47, 0.001, 0.001)
                .write(folder.resolve("c.tif"));
        CoverRaster raster = CoverRaster.open(folder, CoverLegend.WORLD_COVER, Cover.URBAN);
        int n = 500;
        double[] lat = new double[n];
        double[] lon = new double[n];
        Cover[] many = new Cover[n];
        for (int i = 0; i < n; i++) {
            lat[i] = 46.9997 - i * 0.0049137;
            lon[i] = 8.0003 + i * 0.0059371;
        }
        raster.covers(lat, lon, n, many);
        for (int i = 0; i < n; i++) {
            int x = (int) Math.floor((lon[i] - 8) / 0.001 + 1e-9);
            int y = (int) Math.floor((47 - lat[i]) / 0.001 + 1e-9);
            assertEquals((x / 7 + y / 5) % 2 == 0 ? Cover.WOODLAND : Cover.OPEN, many[i], "sample " + i);
            assertEquals(many[i], raster.coverAt(lat[i], lon[i]));
        }
        assertEquals(n, Arrays.stream(many).filter(c -> c != Cover.URBAN).count());
    }

    @Test
    void whatIsNoMapIsExplained() throws IOException {
        new PaperTiff(9, 9, (x, y) -> 1).sample(32, 3).at(8, 47, 0.01, 0.01).write(folder.resolve("c.tif"));
        String said = assertThrows(InputFault.class, () -> CoverRaster.open(folder, CoverLegend.NLCD, Cover.OPEN))
                .getMessage();
        assertTrue(said.contains("holds fractions"), said);
        assertThrows(InputFault.class, () -> CoverRaster.open(folder.resolve("none"), CoverLegend.NLCD, Cover.OPEN));
    }
}
