package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.cartography.MapFrame;
import handreach.cartography.PixelPlace;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.plan.PlanText;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.scene.control.Label;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/** What stands in words on the map and under it: read on its own, and true of what is there now. */
@Isolated
class MapWordsDeskTest {
    private static final int CROWD = 60;

    @TempDir
    private Path folder;

    private WindowRun run;

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    private String readOut(String id) {
        return run.onScreen(() -> ((Label) run.node(id)).getText());
    }

    private String placeAt(Point2D screen) {
        return run.onScreen(() -> {
            Point2D own = run.window().map().screenToLocal(screen);
            Position there = PixelPlace.of(run.window().map().frame().get(), own.getX(), own.getY());
            Position at = new Position(
                    Math.rint(there.latitudeDeg() * 1e6) / 1e6, Math.rint(there.longitudeDeg() * 1e6) / 1e6);
            return run.session().scene().get().plan().header().placeForm().format(at);
        });
    }

    /** As a mouse points. */
    private static Point2D whole(Point2D at) {
        return new Point2D(Math.rint(at.getX()), Math.rint(at.getY()));
    }

    private List<MapPen.Written> names() {
        run.settle();
        return run.onScreen(() -> run.window().map().names());
    }

    /** Sixty positions within some hundred metres: what cannot be read is left out, and told where it is pointed at. */
    @Test
    void inACrowdNoNameRunsThroughAnotherAndPointingTellsTheRest() {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        Position home = run.position("spike camp");
        run.onScreen(() -> run.session().edit("a crowd", text -> {
            String with = text;
            for (int i = 0; i < CROWD; i++) {
                Position at = GeodesicLine.destination(home, 137.5 * i, 25 * i);
                with = PlanText.withEntry(
                        with,
                        "position",
                        List.of(
                                "name = " + PlanText.quoted("stranger " + i),
                                "at = " + PlanText.quoted(at.latitudeDeg() + ", " + at.longitudeDeg())));
            }
            return with;
        }));
        run.settle();
        run.press("#whole-area");
        List<MapPen.Written> names = names();
        Envelope key = run.onScreen(() -> {
            Bounds box = run.window()
                    .map()
                    .sceneToLocal(run.node("#map-key")
                            .localToScene(run.node("#map-key").getLayoutBounds()));
            return new Envelope(box.getMinX(), box.getMaxX(), box.getMinY(), box.getMaxY());
        });
        Envelope map = run.onScreen(() -> new Envelope(
                0, run.window().map().getWidth(), 0, run.window().map().getHeight()));
        for (int i = 0; i < names.size(); i++) {
            Envelope one = names.get(i).box();
            assertTrue(map.contains(one), names.get(i) + " off the map");
            assertEquals(0, one.intersection(key).getArea(), names.get(i) + " under the key");
            for (int k = 0; k < i; k++)
                assertEquals(0, one.intersection(names.get(k).box()).getArea(), names.get(i) + " on " + names.get(k));
        }
        Set<String> read = names.stream().map(MapPen.Written::text).collect(Collectors.toSet());
        List<String> unread = run.onScreen(() -> run.session().scene().get().plan().places().positions().stream()
                .filter(entry -> run.window().map().frame().get().contains(entry.at()))
                .map(entry -> entry.name())
                .filter(name -> !read.contains(name))
                .toList());
        run.snapshot("crowd");
        assertTrue(read.size() > 10, "hardly a name: " + read);
        assertTrue(read.stream().anyMatch(name -> name.startsWith("spike camp")), "the start has no name: " + read);
        assertFalse(unread.isEmpty(), "all of a crowd are named");
        String hidden = unread.get(unread.size() - 1);
        run.robot().moveTo(run.pixel(run.position(hidden)));
        run.settle();
        assertTrue(readOut("#read-out-place").startsWith(hidden + "  "), hidden + ": " + readOut("#read-out-place"));
        for (int i = 0; i < 4; i++) run.onScreen(() -> run.window().looks().larger());
        for (int i = 0; i < 13; i++) {
            run.onScreen(() -> run.window().map().pan(19, 23));
            nothingRunsThroughWordsOfTheGrid();
        }
    }

    /** Neither names nor the triangles of summits, nor the arrow to the north. */
    private void nothingRunsThroughWordsOfTheGrid() {
        List<MapPen.Written> names = names();
        List<Envelope> said = run.onScreen(() -> run.window().map().said());
        assertTrue(said.size() > 2, said.toString());
        List<Envelope> boxes =
                new ArrayList<>(names.stream().map(MapPen.Written::box).toList());
        Set<String> read = names.stream().map(MapPen.Written::text).collect(Collectors.toSet());
        run.onScreen(() -> {
            MapFrame frame = run.window().map().frame().get();
            boxes.add(new Envelope(frame.widthPx() - 37, frame.widthPx() - 23, 22, 47));
            for (Relief.Spot spot : run.window().map().painted().get().spots()) {
                Envelope mark = new Envelope(new Coordinate(
                        frame.xPx(spot.at().longitudeDeg()), frame.yPx(spot.at().latitudeDeg())));
                mark.expandBy(3);
                if (read.contains(spot.words())) boxes.add(mark);
            }
        });
        for (Envelope word : said)
            for (Envelope box : boxes) assertEquals(0, box.intersection(word).getArea(), box + " on " + word);
    }

    /** The mouse rests, and the ground under it, or what is known of it, becomes another. */
    @Test
    void theReadOutIsOfTheGroundThatLiesUnderARestingMouse() {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        Point2D rest = whole(run.pixel(run.position("spike camp")).add(110, 40));
        run.robot().moveTo(rest);
        run.settle();
        String place = readOut("#read-out-place");
        assertEquals(placeAt(rest), place);
        run.onScreen(() -> run.window().map().zoom(2, 200, 200));
        run.settle();
        assertFalse(place.equals(readOut("#read-out-place")), place);
        assertEquals(placeAt(rest), readOut("#read-out-place"));
        String copy = readOut("#read-out-copy");
        run.onScreen(() -> run.session()
                .edit("power", text -> PlanText.withEntryValue(text, "radio", "handheld", "power_w", "0.1")));
        run.settle();
        assertFalse(copy.equals(readOut("#read-out-copy")), copy);
        run.onScreen(() -> run.session().undo());
        run.settle();
        assertEquals(copy, readOut("#read-out-copy"));
        // A drawer that covers the place leaves nothing to be read there.
        Point2D low = whole(run.onScreen(
                () -> run.window().map().localToScreen(300, run.window().map().getHeight() - 40)));
        run.robot().moveTo(low);
        run.settle();
        assertEquals(placeAt(low), readOut("#read-out-place"));
        run.onScreen(() -> run.window().showPlanText());
        run.settle();
        assertEquals("Point at the map to read the ground.", readOut("#read-out-place"));
    }
}
