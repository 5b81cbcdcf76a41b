package handreach.desktop;

import handreach.cartography.Hatch;
import handreach.reach.CellGrid;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.MultiPolygon;

/**
 * A layer ready to be laid over the relief: one colour a cell, an outline if it has one, and the words that go with it.
 */
final class LayerRaster {
    private final CellGrid grid;
    private final int[] argbPremultiplied;
    private final Key key;
    private final Optional<MultiPolygon> outline;

    /**
     * What the colours mean.
     *
     * @param title the layer
     * @param entries samples, the first on top
     * @param note one line below, may be empty
     */
    record Key(String title, List<KeyEntry> entries, String note) {
        static final Key NOTHING = new Key("", List.of(), "");
    }

    /**
     * One sample of what a layer lays on the ground, the very inks of the map; or of a mark.
     *
     * @param areaArgb ink of the area, 0 where it leaves the ground clear
     * @param lineArgb ink of its pattern
     */
    record KeyEntry(int areaArgb, int lineArgb, Hatch hatch, Optional<MapMark> mark, String words) {
        private static final int OPAQUE = 0xFF000000;

        /** What the layer leaves clear, so that the ground shows. */
        static KeyEntry clear(String words) {
            return new KeyEntry(0, 0, Hatch.NONE, Optional.empty(), words);
        }

        static KeyEntry area(int rgb, String words) {
            return new KeyEntry(OPAQUE | rgb, OPAQUE | rgb, Hatch.NONE, Optional.empty(), words);
        }

        /** A pattern on clear ground. */
        static KeyEntry pattern(int rgb, Hatch hatch, String words) {
            return new KeyEntry(0, OPAQUE | rgb, hatch, Optional.empty(), words);
        }

        static KeyEntry of(MapMark mark, String words) {
            return new KeyEntry(0, 0, Hatch.NONE, Optional.of(mark), words);
        }

        /** Ink of a pixel of the sample, premultiplied; 0 is clear. */
        int argb(int xPx, int yPx) {
            return hatch.inks(xPx, yPx) ? lineArgb : areaArgb;
        }
    }

    LayerRaster(CellGrid grid, int[] argbPremultiplied, Key key, Optional<MultiPolygon> outline) {
        this.grid = grid;
        this.argbPremultiplied = argbPremultiplied;
        this.key = key;
        this.outline = outline;
    }

    CellGrid grid() {
        return grid;
    }

    Key key() {
        return key;
    }

    Optional<MultiPolygon> outline() {
        return outline;
    }

    /** Colour of a cell, premultiplied; 0 is clear. */
    int argb(int cell) {
        return argbPremultiplied[cell];
    }
}
