package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;

import handreach.cartography.MapFrame;
import handreach.cartography.PixelPlace;
import handreach.geodesy.Position;
import handreach.reach.CellGrid;
import handreach.reach.Progress;
import handreach.terrain.Elevation;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;

/** Every pixel against the cell that its middle falls into. */
class MapRasterTest {
    private static final Position MIDDLE = new Position(46.5, 8.1);
    private static final int HALF = 0x80;

    private static final Elevation LEVEL = new Elevation() {
        @Override
        public void heights(double[] latitude, double[] longitude, int count, double[] heightM, boolean[] isVoid) {
            Arrays.fill(heightM, 0, count, 100.25);
            Arrays.fill(isVoid, 0, count, false);
        }

        @Override
        public double postSpacingM(double latitudeDeg, double longitudeDeg, double defaultM) {
            return 30;
        }
    };

    private static Relief relief() {
        return Relief.paint(
                LEVEL,
                new MapFrame(MIDDLE, 10, 240, 200),
                Relief.Paper.DAY,
                handreach.units.Lengths.METRIC,
                Progress.SILENT);
    }

    private static LayerRaster chequered(CellGrid grid, int argb) {
        int[] cells = new int[grid.count()];
        for (int i = 0; i < cells.length; i++) cells[i] = (grid.rowOf(i) + grid.columnOf(i)) % 2 == 0 ? argb : 0;
        return new LayerRaster(grid, cells, LayerRaster.Key.NOTHING, Optional.empty());
    }

    @Test
    void aPixelTakesTheColourOfTheCellThatHoldsItsMiddle() {
        CellGrid grid = CellGrid.around(MIDDLE, 600, 47);
        Relief relief = relief();
        MapRaster paper = MapRaster.of(relief, Optional.empty(), new MapRaster.Manner(1, true, 0, 0));
        MapRaster sheet =
                MapRaster.of(relief, Optional.of(chequered(grid, 0xFF123456)), new MapRaster.Manner(1, false, 0, 0));
        MapFrame frame = relief.frame();
        for (int y = 0; y < frame.heightPx(); y++)
            for (int x = 0; x < frame.widthPx(); x++) {
                int cell = grid.indexOf(PixelPlace.of(frame, x + 0.5, y + 0.5));
                boolean isInked = cell >= 0 && (grid.rowOf(cell) + grid.columnOf(cell)) % 2 == 0;
                int expected = isInked ? 0xFF123456 : paper.argb(x, y);
                assertEquals(expected, sheet.argb(x, y), x + ", " + y);
            }
    }

    @Test
    void strengthRunsFromTheReliefAloneToTheLayerInFull() {
        CellGrid grid = CellGrid.around(MIDDLE, 5000, 5000);
        Relief relief = relief();
        int paper = MapRaster.of(relief, Optional.empty(), new MapRaster.Manner(1, true, 0, 0))
                        .argb(0, 0)
                & 0xFF;
        LayerRaster black = new LayerRaster(grid, new int[grid.count()], LayerRaster.Key.NOTHING, Optional.empty());
        assertEquals(
                paper,
                MapRaster.of(relief, Optional.of(black), new MapRaster.Manner(1, true, 0, 0))
                                .argb(0, 0)
                        & 0xFF);
        int[] cells = new int[grid.count()];
        Arrays.fill(cells, 0xFF000000);
        Optional<LayerRaster> full =
                Optional.of(new LayerRaster(grid, cells, LayerRaster.Key.NOTHING, Optional.empty()));
        assertEquals(
                paper,
                MapRaster.of(relief, full, new MapRaster.Manner(0, true, 0, 0)).argb(0, 0) & 0xFF);
        assertEquals(
                0,
                MapRaster.of(relief, full, new MapRaster.Manner(1, true, 0, 0)).argb(0, 0) & 0xFF);
        assertEquals(
                paper / 2.0,
                MapRaster.of(relief, full, new MapRaster.Manner(0.5, true, 0, 0))
                                .argb(0, 0)
                        & 0xFF,
                1);
        assertEquals(
                paper / 2.0,
                MapRaster.of(relief, full, new MapRaster.Manner(0.5, false, 0, 0))
                                .argb(0, 0)
                        & 0xFF,
                1);
    }

    @Test
    void inkDarkensPaperChannelByChannel() {
        CellGrid grid = CellGrid.around(MIDDLE, 5000, 5000);
        Relief relief = relief();
        int paper = MapRaster.of(relief, Optional.empty(), new MapRaster.Manner(1, true, 0, 0))
                .argb(0, 0);
        int[] cells = new int[grid.count()];
        Arrays.fill(cells, 0xFF000000 | 0xFF << 16 | HALF << 8);
        int inked = MapRaster.of(
                        relief,
                        Optional.of(new LayerRaster(grid, cells, LayerRaster.Key.NOTHING, Optional.empty())),
                        new MapRaster.Manner(1, true, 0, 0))
                .argb(0, 0);
        assertEquals(paper >> 16 & 0xFF, inked >> 16 & 0xFF);
        assertEquals((paper >> 8 & 0xFF) * HALF / 255.0, inked >> 8 & 0xFF, 1.5);
        assertEquals(0, inked & 0xFF);
    }

    @Test
    void theOutlineOfALayerIsDrawnWhereItLies() {
        CellGrid grid = CellGrid.around(MIDDLE, 5000, 5000);
        Relief relief = relief();
        MapFrame frame = relief.frame();
        double west = frame.longitudeDeg(10.5);
        double east = frame.longitudeDeg(30.5);
        double north = frame.latitudeDeg(10.5);
        double south = frame.latitudeDeg(25.5);
        Polygon box = new GeometryFactory().createPolygon(new Coordinate[] {
            new Coordinate(west, north),
            new Coordinate(east, north),
            new Coordinate(east, south),
            new Coordinate(west, south),
            new Coordinate(west, north)
        });
        MultiPolygon area = new GeometryFactory().createMultiPolygon(new Polygon[] {box});
        LayerRaster clear = new LayerRaster(grid, new int[grid.count()], LayerRaster.Key.NOTHING, Optional.of(area));
        MapRaster plain = MapRaster.of(relief, Optional.empty(), new MapRaster.Manner(1, true, 0, 0));
        MapRaster lined = MapRaster.of(relief, Optional.of(clear), new MapRaster.Manner(1, true, 0xFFFF0000, 0));
        assertEquals(0xFFFF0000, lined.argb(20, 10));
        assertEquals(0xFFFF0000, lined.argb(30, 18));
        assertEquals(plain.argb(20, 18), lined.argb(20, 18));
        assertEquals(plain.argb(5, 5), lined.argb(5, 5));
    }
}
