package handreach.terrain;

import handreach.input.InputFault;
import java.awt.Rectangle;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.Consumer;
import java.util.function.IntFunction;

/** One class map: where its pixels lie, and the blocks in which they are read. */
final class CoverTile {
    private static final int BLOCK_SIDE = 2048;

    private final TiffImage image;
    private final GridFit fit;
    private final TileBounds bounds;
    private final int blockWidth;
    private final int blockHeight;

    private CoverTile(TiffImage image, GridFit fit, TileBounds bounds) {
        this.image = image;
        this.fit = fit;
        this.bounds = bounds;
        this.blockWidth = image.isTiled() ? Math.min(BLOCK_SIDE, image.width()) : image.width();
        this.blockHeight = image.isTiled()
                ? Math.min(BLOCK_SIDE, image.height())
                : Math.min(image.height(), Math.max(1, BLOCK_SIDE * BLOCK_SIDE / image.width()));
    }

    static CoverTile of(Path file) throws IOException {
        TiffHeader header = TiffHeader.read(file);
        TiffImage image = TiffImage.of(file, header);
        if (image.sample() == TiffImage.Sample.FLOAT_32 || image.sample() == TiffImage.Sample.FLOAT_64)
            throw new InputFault(
                    header.name(), 0, "holds fractions, a land-cover map holds whole class codes. Check what it is.");
        TiffGrid grid = TiffGrid.of(file, header, new GeoKeys(header));
        GridFit fit = grid.fit(0, 0);
        TileBounds posts = TiffGrid.bounds(header.name(), fit, image.height(), image.width());
        double pixelDeg = Math.max(
                (posts.northDeg() - posts.southDeg()) / (image.height() - 1),
                fit.frame().isDegrees()
                        ? 1 / fit.postsPerX()
                        : (posts.northDeg() - posts.southDeg()) / (image.height() - 1));
        return new CoverTile(image, fit, posts.widened(4 * pixelDeg));
    }

    /** The rectangle outside which there is no pixel; it is a few pixels too large. */
    TileBounds bounds() {
        return bounds;
    }

    boolean mayHold(double latitudeDeg, double longitudeDeg) {
        return bounds.holds(latitudeDeg, longitudeDeg);
    }

    /** Row in the upper half, column in the lower half of the number; negative outside. */
    long pixel(double latitudeDeg, double longitudeDeg, double[] xy) {
        fit.frame().toPlane(latitudeDeg, longitudeDeg, xy);
        double column = Math.floor((xy[0] - fit.westX()) * fit.postsPerX() + 0.5);
        double row = Math.floor((fit.northY() - xy[1]) * fit.postsPerY() + 0.5);
        if (!(row >= 0 && row < image.height() && column >= 0 && column < image.width())) return -1;
        return (long) row << 32 | (long) column;
    }

    Block block(int row, int column) {
        int top = row / blockHeight * blockHeight;
        int left = column / blockWidth * blockWidth;
        return new Block(
                this,
                top,
                left,
                Math.min(blockHeight, image.height() - top),
                Math.min(blockWidth, image.width() - left));
    }

    /** A rectangle of pixels. */
    record Block(CoverTile tile, int top, int left, int rows, int columns) {
        boolean holds(int row, int column) {
            return row >= top && row < top + rows && column >= left && column < left + columns;
        }

        int index(int row, int column) {
            return (row - top) * columns + column - left;
        }

        /** @param damaged is told of what could not be read */
        byte[] read(IntFunction<Byte> kindOf, Consumer<String> damaged) {
            SoundPart part = tile.image.part(new Rectangle(left, top, columns, rows));
            part.told().ifPresent(damaged);
            byte[] kinds = new byte[rows * columns];
            byte[] known = new byte[1024];
            boolean[] isKnown = new boolean[1024];
            int[] line = new int[columns];
            for (int row = 0; row < rows; row++) {
                part.values().getSamples(0, row, columns, 1, 0, line);
                for (int column = 0; column < columns; column++) {
                    int code = line[column];
                    if (code < 0 || code >= known.length) continue;
                    if (!isKnown[code]) {
                        known[code] = kindOf.apply(code);
                        isKnown[code] = true;
                    }
                    kinds[row * columns + column] = known[code];
                }
            }
            for (Rectangle none : part.lost())
                for (int row = none.y; row < none.y + none.height; row++)
                    Arrays.fill(kinds, row * columns + none.x, row * columns + none.x + none.width, (byte) 0);
            return kinds;
        }
    }
}
