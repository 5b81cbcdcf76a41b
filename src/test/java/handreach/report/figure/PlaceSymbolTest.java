package handreach.report.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.cartography.LabelPlacement;
import handreach.cartography.MapFrame;
import handreach.cartography.PixelPlace;
import handreach.geodesy.Position;
import handreach.report.SampleFigures;
import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.Picture;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.report.draw.Typeface;
import handreach.units.Lengths;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;

/** Names of places on printed maps stand clear of marks, of one another, and of what the map needs to be read. */
class PlaceSymbolTest {
    private static final MapFrame FRAME = MapFrame.around(new Position(46.5, 8.1), 3000, 300, 300);

    /** Keeps the rooms of bold names and of small shapes, in their order. */
    private static final class RoomPen implements Pen {
        private final List<Envelope> names = new ArrayList<>();
        private final List<Envelope> shapes = new ArrayList<>();

        @Override
        public void draw(Shape shape, ShapeStyle ink) {
            Envelope room = Outline.room(shape);
            if (room.getWidth() < 150) shapes.add(room);
        }

        @Override
        public void write(double xPx, double yPx, String text, TextStyle lettering) {
            if (!lettering.isBold() || lettering.anchor() != TextStyle.Anchor.START) return;
            double width = Typeface.of(true).widthPx(text, lettering.sizePx());
            names.add(new Envelope(xPx, xPx + width, yPx - 10, yPx + 3));
        }

        @Override
        public void place(Picture picture, Rectangle2D window) {}

        @Override
        public void clipped(Shape window, Runnable drawing) {}

        @Override
        public void moved(AffineTransform move, Runnable drawing) {
            drawing.run();
        }

        @Override
        public void named(String name, Runnable drawing) {
            drawing.run();
        }

        void assertClear(int count) {
            assertEquals(count, names.size());
            for (Envelope name : names) {
                for (Envelope shape : shapes)
                    assertEquals(0, name.intersection(shape).getArea(), name + " on " + shape);
                for (Envelope other : names)
                    assertTrue(other == name || name.intersection(other).isNull(), name + " on " + other);
            }
        }
    }

    private static MapPlace at(double xPx, double yPx, MapPlace.Kind kind, String name) {
        return new MapPlace(PixelPlace.of(FRAME, xPx, yPx), kind, name);
    }

    @Test
    void neighboursLeaveEachOtherRoom() {
        RoomPen pen = new RoomPen();
        List<PlaceSymbol.Spot> spots = new ArrayList<>();
        for (int i = 0; i < 4; i++)
            spots.add(new PlaceSymbol.Spot(
                    at(0, 0, MapPlace.Kind.values()[i], "north spur"), 150 + 24.0 * (i % 2), 150 + 40.0 * (i / 2)));
        PlaceSymbol.draw(pen, spots, new LabelPlacement(new Envelope(0, 300, 0, 300)));
        pen.assertClear(4);
    }

    /** One place left of north, one above the scale bar, one at the right rim, two side by side. */
    @Test
    void aMapKeepsItsScaleAndItsNorthFree() {
        MapGround ground = MapGround.of(SampleFigures.HILLS, FRAME, picture(), List.of(), Lengths.METRIC);
        MapFigure map = MapFigure.of(
                new MapFigure.Caption("m", "A map."),
                ground,
                List.of(),
                List.of(
                        at(250, 30, MapPlace.Kind.PERSON, "gap"),
                        at(20, 250, MapPlace.Kind.BASE, "camp"),
                        at(290, 150, MapPlace.Kind.POINT, "rim"),
                        at(100, 150, MapPlace.Kind.PERSON, "one"),
                        at(118, 150, MapPlace.Kind.RELAY, "two")),
                new MapFigure.Key(List.of(), Lengths.METRIC));
        RoomPen pen = new RoomPen();
        map.draw(pen);
        pen.assertClear(5);
        for (Envelope name : pen.names) assertTrue(Outline.room(map.window()).contains(name), name.toString());
    }

    private static Picture picture() {
        return Picture.relief(MapGround.hillshade(SampleFigures.HILLS, FRAME));
    }
}
