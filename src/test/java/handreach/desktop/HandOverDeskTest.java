package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.plan.Places;
import handreach.report.card.CardSize;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import javafx.embed.swing.SwingFXUtils;
import javafx.geometry.Bounds;
import javafx.print.Printer;
import javafx.scene.Node;
import javafx.scene.SnapshotParameters;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** What goes out of the window as files, and what comes in by a drop. */
@Isolated
class HandOverDeskTest {
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

    private static String head(Path file, int bytes) throws IOException {
        return new String(Arrays.copyOf(Files.readAllBytes(file), bytes), StandardCharsets.ISO_8859_1);
    }

    @Test
    void everythingIsWrittenWholeAndToldWithItsPath() throws IOException {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        ExportVerbs verbs = new ExportVerbs(run.session());
        Path out = Files.createDirectories(folder.resolve("out"));
        run.onScreen(() -> verbs.card(CardSize.A4, false, out.resolve("card.pdf")));
        run.settle();
        assertEquals("%PDF", head(out.resolve("card.pdf"), 4));
        assertTrue(run.noticeTexts().get(0).contains(out.resolve("card.pdf").toString()));
        run.onScreen(() -> verbs.benchReport(out.resolve("bench.html")));
        run.onScreen(() -> verbs.places(out.resolve("places.gpx")));
        BufferedImage taken = run.onScreen(() -> {
            DeskWindow window = run.window();
            return window.mapPicture().take();
        });
        run.onScreen(() -> verbs.picture(taken, out.resolve("map.png")));
        run.settle();
        assertTrue(Files.readString(out.resolve("bench.html")).contains("</html>"));
        assertTrue(Files.readString(out.resolve("places.gpx")).contains("creek crew"));
        BufferedImage reread = ImageIO.read(out.resolve("map.png").toFile());
        // Of what was done the last is told; a pile of it would hide the north.
        assertEquals(1, run.noticeTexts().size(), run.noticeTexts().toString());
        assertEquals(taken.getWidth(), reread.getWidth());
        assertTrue(reread.getWidth() > 600);
        Files.createDirectories(Path.of("target", "screens"));
        ImageIO.write(
                reread,
                "png",
                Path.of("target", "screens", "export-map-picture.png").toFile());
        var sheet = run.onScreen(() -> run.window().mapPicture().sheet(CardSize.A4));
        run.onScreen(() -> verbs.mapSheet(sheet, out.resolve("map.pdf")));
        run.settle();
        Files.copy(
                out.resolve("map.pdf"),
                Path.of("target", "screens", "map-sheet.pdf"),
                java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        try (PDDocument pdf = Loader.loadPDF(out.resolve("map.pdf").toFile())) {
            String words = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
            for (String each : List.of("155.16 MHz", "5 W", "drawn ", "These are odds, not a promise", "licence"))
                assertTrue(words.contains(each), each + " in " + words);
            assertTrue(pdf.getPage(0).getMediaBox().getWidth()
                    > pdf.getPage(0).getMediaBox().getHeight());
        }
        onPaper(taken);
        run.onScreen(() -> verbs.mapFiles(out.resolve("maps")));
        run.settle();
        List<String> names = names(out.resolve("maps"));
        for (String ending : List.of(".tif", ".geojson", ".kmz", ".png"))
            assertTrue(names.stream().anyMatch(name -> name.endsWith(ending)), names.toString());
        run.snapshot("exports");
    }

    /** The picture whole and in proportion on A4 upright, points; and on a computer without a printer, what to do instead. */
    private void onPaper(BufferedImage taken) {
        double widePt = 540;
        double highPt = 786;
        Node page = run.onScreen(() -> run.window().mapPicture().onPaper(widePt, highPt));
        Bounds size = run.onScreen(() -> page.getLayoutBounds());
        assertEquals(
                Math.min(widePt / taken.getWidth(), highPt / taken.getHeight()),
                size.getWidth() / taken.getWidth(),
                1e-6);
        assertEquals(taken.getWidth() / (double) taken.getHeight(), size.getWidth() / size.getHeight(), 1e-3);
        BufferedImage printed =
                run.onScreen(() -> SwingFXUtils.fromFXImage(page.snapshot(new SnapshotParameters(), null), null));
        assertEquals(widePt, printed.getWidth(), 1);
        assertTrue(inked(printed, 0, printed.getHeight() / 12) > 20, "no title on paper");
        assertTrue(inked(printed, printed.getHeight() * 11 / 12, printed.getHeight()) > 20, "no cautions on paper");
        if (!Printer.getAllPrinters().isEmpty()) return;
        run.onScreen(() -> run.window().mapPicture().print(run.stage()));
        assertTrue(
                run.noticeTexts().get(0).contains("No printer is set up"),
                run.noticeTexts().toString());
        run.onScreen(() -> run.session().notices().remove(0));
    }

    private static long inked(BufferedImage picture, int from, int to) {
        long dark = 0;
        for (int y = from; y < to; y++)
            for (int x = 0; x < picture.getWidth(); x++) if ((picture.getRGB(x, y) & 0xFF) < 130) dark++;
        return dark;
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void aPlaceThatCannotBeWrittenIsOneLineAndLosesNothing() throws IOException {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        ExportVerbs verbs = new ExportVerbs(run.session());
        run.onScreen(() -> run.session().edit("title", text -> text.replace("two crews", "three crews")));
        run.settle();
        // A file in the place of the folder refuses to be written into for every user, the administrator too.
        Path taken = Files.writeString(folder.resolve("taken"), "");
        run.onScreen(() -> verbs.card(CardSize.LETTER, true, taken.resolve("card.pdf")));
        run.settle();
        assertEquals(1, run.noticeTexts().size());
        assertTrue(
                run.noticeTexts().get(0).contains("cannot be written"),
                run.noticeTexts().get(0));
        assertTrue(run.onScreen(() -> run.session().isEdited().get()));
        run.onScreen(() -> {
            verbs.mapFiles(folder.resolve("stopped"));
            run.session().worker().watched().get(0).stop();
        });
        run.settle();
        assertFalse(Files.exists(folder.resolve("stopped")));
        assertEquals(1, run.noticeTexts().size());
    }

    @Test
    void nothingThatThePlanWasReadFromIsWrittenOver() throws IOException {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        ExportVerbs verbs = new ExportVerbs(run.session());
        String plan = Files.readString(run.plan());
        Path tiles =
                run.onScreen(() -> run.session().scene().get().plan().ground().tiles());
        List<String> before = names(tiles);
        for (Path target : List.of(run.plan(), run.plan().resolveSibling("walk-track.gpx"))) {
            run.onScreen(() -> verbs.places(target));
            run.settle();
            assertTold(target + ": is one of the files that the answer is made from");
        }
        run.onScreen(() -> verbs.relayFiles(tiles));
        run.settle();
        assertTold(tiles + ": is the folder that the ground is read from");
        assertEquals(plan, Files.readString(run.plan()));
        assertEquals(before, names(tiles));
    }

    private void assertTold(String start) {
        assertTrue(
                run.noticeTexts().stream().anyMatch(told -> told.startsWith(start)),
                run.noticeTexts().toString());
    }

    @Test
    void aDroppedTrackBecomesPositionsRouteAndWalkAsAsked() throws IOException {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        Path gpx = folder.resolve("round.gpx");
        Files.writeString(gpx, """
            <gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1">
            <wpt lat="36.275" lon="-84.205"><name>north spur</name></wpt>
            <wpt lat="36.280" lon="-84.215"><name>gate &amp; ford</name></wpt>
            <trk><trkseg>
            <trkpt lat="36.27" lon="-84.21"><time>2026-05-04T08:00:00Z</time></trkpt>
            <trkpt lat="36.28" lon="-84.22"><time>2026-05-04T08:30:00Z</time></trkpt>
            </trkseg></trk></gpx>
            """);
        Files.copy(run.plan().resolveSibling("walk-reports.csv"), folder.resolve("my-reports.csv"));
        drop(gpx);
        run.snapshot("bring-in");
        run.press("#bring-positions");
        List<String> names = run.onScreen(() -> run.session().scene().get().plan().places().positions().stream()
                .map(Places.PositionEntry::name)
                .toList());
        assertTrue(names.containsAll(List.of("north spur 2", "gate & ford")), names.toString());
        run.press("#bring-route");
        assertEquals(
                "round",
                run.onScreen(() -> run.session()
                        .scene()
                        .get()
                        .plan()
                        .places()
                        .routes()
                        .get(0)
                        .name()));
        assertArrayEquals(Files.readAllBytes(gpx), Files.readAllBytes(run.plan().resolveSibling("round.gpx")));
        run.press("#bring-walk");
        drop(folder.resolve("my-reports.csv"));
        run.press("#bring-log-alone");
        assertEquals(
                List.of("round the camp", "round", "my-reports"),
                run.onScreen(() -> run.session().scene().get().plan().questions().walks().stream()
                        .map(walk -> walk.name())
                        .toList()));
        assertTrue(Files.exists(run.plan().resolveSibling("my-reports.csv")));
        assertEquals(List.of(), run.noticeTexts());
        for (int i = 0; i < 4; i++) run.onScreen(() -> run.session().undo());
        run.settle();
        assertFalse(run.onScreen(() -> run.session().isEdited().get()));
    }

    @Test
    void droppedPolygonsBecomeAreaOrSectorAndFaultsAreToldInPlace() throws IOException {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        Path good = folder.resolve("east.geojson");
        Files.writeString(
                good,
                "{\"type\":\"Polygon\",\"coordinates\":[[[-84.23,36.25],[-84.19,36.25],[-84.19,36.29],[-84.23,36.25]]]}");
        drop(good);
        run.press("#bring-area");
        assertTrue(run.onScreen(
                        () -> run.session().scene().get().plan().places().area().polygon())
                .isPresent());
        run.press("#bring-sector");
        assertEquals(
                1,
                run.onScreen(() ->
                        run.session().scene().get().plan().places().sectors().size()));
        run.press("#bring-outside");
        assertTrue(run.onScreen(() -> run.session()
                        .scene()
                        .get()
                        .plan()
                        .questions()
                        .relay()
                        .constraints()
                        .outside())
                .isPresent());
        assertEquals(List.of(), run.noticeTexts());
        run.press("#bring-cover");
        assertTrue(
                run.noticeTexts().get(0).contains("FeatureCollection"),
                run.noticeTexts().toString());
        assertFalse(run.onScreen(() -> run.session().scene().get().file().text().contains("cover_areas")));
        Path open = folder.resolve("open.geojson");
        Files.writeString(open, "{\"type\":\"Polygon\",\"coordinates\":[[[-84.23,36.25],[-84.19,36.25]]]}");
        drop(open);
        assertTrue(
                run.noticeTexts().get(0).contains("not closed"),
                run.noticeTexts().toString());
        Path broken = folder.resolve("broken.gpx");
        Files.writeString(broken, "<gpx><trk><trkseg><trkpt lat=\"36\"");
        drop(broken);
        assertTrue(
                run.noticeTexts().get(0).contains("broken.gpx"),
                run.noticeTexts().toString());
        run.snapshot("bring-in-fault");
    }
}
