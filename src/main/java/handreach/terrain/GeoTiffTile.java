package handreach.terrain;

import handreach.input.InputFault;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Elevation in a GeoTIFF file, or a part of a large one.
 *
 * <p>The tie point of a pixel-is-area file is the corner of a pixel, of a pixel-is-point file its centre (OGC GeoTIFF 1.1,
 * requirement class raster type); posts are pixel centres in both. Void are the value of the nodata tag, NaN, −32768, −9999 and
 * whatever lies outside −12 000 to 12 000 m.
 */
final class GeoTiffTile implements PostSource {
    private static final long WHOLE_POSTS = 16L << 20;
    private static final int PART_SIDE = 2048;
    private static final int MOST_PARTS = 100_000;
    private static final double DEEPEST_M = -12_000;
    private static final double HIGHEST_M = 12_000;
    private static final double COMMON_NODATA = -9999;
    private static final double FOOT_M = 0.3048;
    private static final double SURVEY_FOOT_M = 1200.0 / 3937;
    private static final Pattern ITEM =
            Pattern.compile("<Item[^>]*role=\"(scale|offset|unittype)\"[^>]*>([^<]*)</Item>");

    private final TiffImage image;
    private final Scaling scaling;
    private final int x;
    private final int y;
    private final int columns;
    private final int rows;

    /** From stored value to metres: factor times value plus offset; the nodata value is a stored one, or NaN. */
    private record Scaling(double factor, double offsetM, double nodata) {
        boolean isPlain() {
            return factor == 1 && offsetM == 0;
        }
    }

    private GeoTiffTile(TiffImage image, Scaling scaling, int x, int y, int columns, int rows) {
        this.image = image;
        this.scaling = scaling;
        this.x = x;
        this.y = y;
        this.columns = columns;
        this.rows = rows;
    }

    /** Reads tags only; a large image gives several parts that share their edges. */
    static List<TileDraft> drafts(Path file) throws IOException {
        TiffHeader header = TiffHeader.read(file);
        GeoKeys keys = new GeoKeys(header);
        TiffImage image = TiffImage.of(file, header);
        TiffGrid grid = TiffGrid.of(file, header, keys);
        Scaling scaling = scaling(header, keys);
        boolean isWhole = (long) image.width() * image.height() <= WHOLE_POSTS;
        int partWidth = isWhole || !image.isTiled() ? image.width() : PART_SIDE;
        int partHeight = isWhole
                ? image.height()
                : image.isTiled() ? PART_SIDE : (int) Math.max(2, PART_SIDE * (long) PART_SIDE / image.width());
        if ((long) image.width() / partWidth * (image.height() / partHeight) > MOST_PARTS)
            throw new InputFault(header.name(), 0, "is too large. Cut it into several files.");
        List<TileDraft> drafts = new ArrayList<>();
        for (int y = 0; y < image.height() - 1; y += partHeight)
            for (int x = 0; x < image.width() - 1; x += partWidth)
                drafts.add(grid.draft(
                        header.name(),
                        new GeoTiffTile(
                                image,
                                scaling,
                                x,
                                y,
                                Math.min(partWidth + 1, image.width() - x),
                                Math.min(partHeight + 1, image.height() - y)),
                        x,
                        y));
        return drafts;
    }

    private static Scaling scaling(TiffHeader header, GeoKeys keys) {
        int unit = keys.code(GeoKeys.VERTICAL_UNITS);
        double unitM = unit == 9002 ? FOOT_M : unit == 9003 ? SURVEY_FOOT_M : 1;
        double scale = 1;
        double offset = 0;
        Matcher item = ITEM.matcher(header.text(TiffHeader.GDAL_METADATA));
        while (item.find()) {
            String text = item.group(2).strip();
            if (item.group(1).equals("unittype")) {
                if (text.matches("ft|foot|feet")) unitM = FOOT_M;
                else if (text.matches("ftUS|US survey foot|sfoot")) unitM = SURVEY_FOOT_M;
            } else if (item.group(1).equals("scale")) {
                scale = number(text, 1);
            } else {
                offset = number(text, 0);
            }
        }
        return new Scaling(scale * unitM, offset * unitM, number(header.text(TiffHeader.GDAL_NODATA), Double.NaN));
    }

    private static double number(String text, double ifNone) {
        try {
            double value = Double.parseDouble(text.strip());
            return Double.isFinite(value) ? value : ifNone;
        } catch (NumberFormatException e) {
            return ifNone;
        }
    }

    @Override
    public int rows() {
        return rows;
    }

    @Override
    public int columns() {
        return columns;
    }

    @Override
    public Posts read() {
        Raster raster = image.read(x, y, columns, rows);
        return image.sample() == TiffImage.Sample.SIGNED_16 && scaling.isPlain() ? whole(raster) : fractions(raster);
    }

    private Posts whole(Raster raster) {
        short[] heightM = new short[rows * columns];
        short[] line = new short[columns];
        for (int row = 0; row < rows; row++) {
            raster.getDataElements(0, row, columns, 1, line);
            for (int column = 0; column < columns; column++)
                heightM[row * columns + column] = isVoid(line[column]) ? ShortPosts.VOID : line[column];
        }
        return new ShortPosts(rows, columns, heightM);
    }

    private Posts fractions(Raster raster) {
        float[] heightM = new float[rows * columns];
        double[] line = new double[columns];
        for (int row = 0; row < rows; row++) {
            raster.getSamples(0, row, columns, 1, 0, line);
            for (int column = 0; column < columns; column++)
                heightM[row * columns + column] =
                        isVoid(line[column]) ? Float.NaN : (float) (line[column] * scaling.factor + scaling.offsetM);
        }
        return new FloatPosts(rows, columns, heightM);
    }

    private boolean isVoid(double stored) {
        if (Double.isNaN(stored) || stored == COMMON_NODATA || stored == Short.MIN_VALUE) return true;
        if (stored == scaling.nodata || (float) stored == (float) scaling.nodata) return true;
        double heightM = stored * scaling.factor + scaling.offsetM;
        return !(heightM >= DEEPEST_M && heightM <= HIGHEST_M);
    }
}
