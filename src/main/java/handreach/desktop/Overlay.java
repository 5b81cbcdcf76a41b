package handreach.desktop;

import handreach.cartography.Hatch;
import handreach.reach.CellGrid;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.MultiPolygon;

/**
 * A layer ready to be laid over the relief: one colour a cell, an outline if it has one, and the words that go with it.
 */
final class Overlay {
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

    /** One sample of a colour, with the pattern that tells it in grey; or of a mark. */
    record KeyEntry(int rgb, Hatch hatch, Optional<MapMark> mark, String words) {
        private static final int CLEAR = -1;

        /** What the layer leaves clear, so that the ground shows. */
        static KeyEntry clear(String words) {
            return new KeyEntry(CLEAR, words);
        }

        boolean isClear() {
            return rgb == CLEAR;
        }

        KeyEntry(int rgb, String words) {
            this(rgb, Hatch.NONE, words);
        }

        KeyEntry(int rgb, Hatch hatch, String words) {
            this(rgb, hatch, Optional.empty(), words);
        }

        static KeyEntry of(MapMark mark, String words) {
            return new KeyEntry(0, Hatch.NONE, Optional.of(mark), words);
        }
    }

    Overlay(CellGrid grid, int[] argbPremultiplied, Key key, Optional<MultiPolygon> outline) {
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
