package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.cartography.MapFrame;
import handreach.geodesy.Position;
import handreach.terrain.PaperMbTiles;
import handreach.terrain.PaperTiff;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.scene.control.Slider;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** Map pictures and names of the user's own under the reach. */
@Isolated
class BackdropDeskTest {
    private static final int RED = 0xE02020;
    private static final int CYAN = 0x20C0C0;

    @TempDir
    private Path folder;

    private WindowRun run;

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    private void drop(Path file) {
        run.onScreen(() -> run.window().drop().take(List.of(file)));
        run.settle();
    }

    /** Red to the west of a longitude, cyan to the east, over all of the plan. */
    private Path tif(Position split) throws IOException {
        return new PaperTiff(400, 400, (x, y) -> x < 200 ? (double) RED : (double) CYAN)
                .colours()
                .deflated()
                .at(split.longitudeDeg() - 0.4, split.latitudeDeg() + 0.4, 0.002, 0.002)
                .tag(33432, "Invented Survey, sheet 7, free to copy")
                .write(folder.resolve("sheet.tif"));
    }

    private int argb(Position at, double eastPx) {
        BufferedImage picture = run.snapshot("backdrop");
        return run.onScreen(() -> {
            MapFrame frame = run.window().map().frame().get();
            var here = run.window()
                    .map()
                    .localToScene(frame.xPx(at.longitudeDeg()) + eastPx, frame.yPx(at.latitudeDeg()) + 60);
            return picture.getRGB((int) here.getX(), (int) here.getY());
        });
    }

    private static int red(int argb) {
        return (argb >> 16 & 0xFF) - (argb & 0xFF);
    }

    @Test
    void aGeoTiffPictureLiesUnderTheReachAtTheStrengthThatIsSetAndComesBack() throws IOException {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.onScreen(() -> run.session().layer().set(Layer.NONE));
        Position camp = run.position("spike camp");
        int bare = argb(camp, -60);
        drop(tif(camp));
        assertEquals(List.of(), run.noticeTexts());
        Slider strength = run.robot().lookup("#backdrop-strength").query();
        assertTrue(strength.getParent().isVisible());
        run.onScreen(() -> strength.setValue(1));
        run.settle();
        run.onScreen(() -> run.window().map().overlays().clear());
        run.settle();
        assertEquals(RED, argb(camp, -60) & 0xFFFFFF);
        assertEquals(CYAN, argb(camp, 60) & 0xFFFFFF);
        run.onScreen(() -> strength.setValue(0.5));
        run.settle();
        assertTrue(red(argb(camp, -60)) > 60 && red(argb(camp, -60)) < red(RED));
        run.onScreen(() -> strength.setValue(0));
        run.settle();
        assertEquals(red(bare), red(argb(camp, -60)), 2);
        run.onScreen(() -> strength.setValue(0.6));
        run.settle();
        run.close();
        run = WindowRun.bare(folder, Optional.of(run.plan()));
        run.settle();
        assertTrue(
                run.onScreen(() -> run.window().map().backdrop().picture().get().isPresent()));
        assertEquals(
                0.6, run.onScreen(() -> run.window().map().backdrop().strength().get()), 0.006);
        run.snapshot("backdrop-again");
        assertTrue(BackdropOverlay.words(run.onScreen(() ->
                        run.window().map().backdrop().picture().get().get().what()))
                .contains("Invented Survey, sheet 7, free to copy"));
    }

    @Test
    void tilesOfAnMbTilesFileLieThereByDayAndByNightAndABadFileIsOneLine() throws IOException {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        Position camp = run.position("spike camp");
        double x = (camp.longitudeDeg() + 180) / 360 * 4096;
        double sine = Math.sin(Math.toRadians(camp.latitudeDeg()));
        double y = (0.5 - Math.log((1 + sine) / (1 - sine)) / (4 * Math.PI)) * 4096;
        PaperMbTiles tiles =
                new PaperMbTiles().say("attribution", "\u00A9 Invented Survey, all of it made up, for trying out only");
        for (int column = (int) x - 4; column <= x + 4; column++)
            for (int row = (int) y - 4; row <= y + 4; row++) tiles.tile(12, column, row, BackdropDeskTest::paper);
        drop(tiles.write(folder.resolve("trail-map.mbtiles")));
        assertEquals(List.of(), run.noticeTexts());
        run.snapshot("backdrop-tiles-day");
        run.onScreen(() -> run.session().palette().set(Palette.NIGHT));
        run.settle();
        run.snapshot("backdrop-tiles-night");
        Path bad = Files.writeString(folder.resolve("bad.mbtiles"), "not found");
        drop(bad);
        assertEquals(1, run.noticeTexts().size());
        assertTrue(
                run.noticeTexts().get(0).startsWith("bad.mbtiles: is not an MBTiles file"),
                run.noticeTexts().get(0));
        assertTrue(
                run.onScreen(() -> run.window().map().backdrop().picture().get().isPresent()));
        run.onScreen(() -> run.window().map().backdrop().takePictureAway());
        run.settle();
        assertFalse(run.robot().lookup("#backdrop-strength").query().getParent().isVisible());
    }

    /** A sheet with a grid, woods and a brook, so that a look at it tells something. */
    private static int paper(int x, int y) {
        if (x == 0 || y == 0) return 0x8090A0;
        if (Math.abs(y - 128 - 30 * Math.sin(x / 20.0)) < 2) return 0x3070C0;
        return Math.hypot(x - 70, y - 70) < 45 ? 0xBFD9A8 : 0xFBF8EC;
    }

    @Test
    void aTileOfHeightsThatIsDroppedStillBeginsAPlan() throws IOException {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        Path heights = new PaperTiff(40, 40, (x, y) -> 200.0 + x)
                .at(8, 46.5, 0.001, 0.001)
                .write(folder.resolve("h.tif"));
        drop(heights);
        assertTrue(
                run.onScreen(() -> run.window().map().backdrop().picture().get().isEmpty()));
        assertTrue(run.robot().lookup("#new-show").tryQuery().isPresent());
    }

    @Test
    void namesOfAGeoJsonOrGpxFileStandOnTheMap() throws IOException {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        Position camp = run.position("spike camp");
        StringBuilder features = new StringBuilder();
        for (int i = 0; i < 300; i++)
            features.append(i == 0 ? "" : ",")
                    .append("{\"type\":\"Feature\",\"properties\":{\"name\":\"Hollow ")
                    .append(i)
                    .append("\"},\"geometry\":{\"type\":\"Point\",\"coordinates\":[")
                    .append(camp.longitudeDeg() + 0.004 * (i % 20 - 10))
                    .append(',')
                    .append(camp.latitudeDeg() + 0.004 * (i / 20 - 7))
                    .append("]}}");
        Path file = Files.writeString(
                folder.resolve("names.geojson"), "{\"type\":\"FeatureCollection\",\"features\":[" + features + "]}");
        run.onScreen(() -> run.window().map().backdrop().name(file));
        run.settle();
        assertTrue(
                run.noticeTexts().get(0).startsWith("300 names of names.geojson"),
                run.noticeTexts().get(0));
        run.snapshot("names");
        Path gpx = Files.writeString(
                folder.resolve("names.gpx"),
                "<gpx version=\"1.1\" creator=\"x\" xmlns=\"http://www.topografix.com/GPX/1/1\"><wpt lat=\""
                        + camp.latitudeDeg() + "\" lon=\"" + (camp.longitudeDeg() + 0.02)
                        + "\"><name>Tarn Hut</name></wpt></gpx>");
        run.onScreen(() -> run.window().map().backdrop().name(gpx));
        run.settle();
        assertEquals(
                "Tarn Hut",
                run.onScreen(() -> run.window()
                        .map()
                        .backdrop()
                        .names()
                        .get()
                        .get()
                        .what()
                        .get(0)
                        .name()));
        Path track = Files.writeString(
                folder.resolve("none.gpx"),
                "<gpx version=\"1.1\" creator=\"x\" xmlns=\"http://www.topografix.com/GPX/1/1\"></gpx>");
        run.onScreen(() -> run.window().map().backdrop().name(track));
        run.settle();
        assertTrue(
                run.noticeTexts().get(0).contains("no waypoint with a name"),
                run.noticeTexts().get(0));
    }
}
