package handreach.terrain;

import handreach.input.InputFault;
import java.awt.Rectangle;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Elevation in a GeoTIFF file, or a part of a large one.
 *
 * <p>The tie point of a pixel-is-area file is the corner of a pixel, of a pixel-is-point file its centre (OGC GeoTIFF 1.1,
 * requirement class raster type); posts are pixel centres in both. Void are the value of the nodata tag, NaN, −32768, −9999 and
 * whatever lies outside {@link EarthHeight}.
 */
final class GeoTiffTile implements PostSource {
    private static final long WHOLE_POSTS = 16L << 20;
    private static final int PART_SIDE = 2048;
    private static final int MOST_PARTS = 100_000;
    private static final double COMMON_NODATA = -9999;
    private static final double FOOT_M = 0.3048;
    private static final double SURVEY_FOOT_M = 1200.0 / 3937;
    private static final Set<String> FEET = Set.of("ft", "foot", "feet");
    private static final Set<String> SURVEY_FEET = Set.of("ftUS", "US survey foot", "sfoot");

    private final TiffImage image;
    private final Scaling scaling;
    private final Proof proof;
    private final int x;
    private final int y;
    private final int columns;
    private final int rows;
    private volatile Optional<String> missing = Optional.empty();

    /** From stored value to metres: factor times value plus offset; the nodata value is a stored one, or NaN. */
    private record Scaling(double factor, double offsetM, double nodata) {
        boolean isPlain() {
            return factor == 1 && offsetM == 0;
        }
    }

    /** Whether the values of a file can be ground: looked at once, for all of its parts. */
    private static final class Proof {
        private static final int SPOT_SIDE = 64;
        private static final int SPOTS_A_SIDE = 3;

        private final TiffGrid grid;
        private final String name;
        private Optional<String> against;

        Proof(TiffGrid grid, String name) {
            this.grid = grid;
            this.name = name;
        }

        synchronized Optional<String> against(GeoTiffTile part, Posts read) {
            if (against == null) against = looked(part, read);
            return against;
        }

        private Optional<String> looked(GeoTiffTile part, Posts read) {
            GridFit fit = grid.fit(0, 0);
            int width = part.image.width();
            int height = part.image.height();
            double[] groundM = Tile.groundSpacingM(fit, TiffGrid.bounds(name, fit, height, width));
            ValueSigns signs = new ValueSigns(groundM[0], groundM[1]);
            if (part.columns == width && part.rows == height)
                return signs.look(read) ? signs.verdict() : Optional.empty();
            int columns = Math.min(SPOT_SIDE, width);
            int rows = Math.min(SPOT_SIDE, height);
            for (int i = 0; i < SPOTS_A_SIDE * SPOTS_A_SIDE; i++) {
                int x = (int) ((i % SPOTS_A_SIDE + 0.5) / SPOTS_A_SIDE * (width - columns));
                int y = (int) ((i / SPOTS_A_SIDE + 0.5) / SPOTS_A_SIDE * (height - rows));
                if (!signs.look(new GeoTiffTile(part.image, part.scaling, this, x, y, columns, rows).read()))
                    return Optional.empty();
            }
            return signs.verdict();
        }
    }

    private GeoTiffTile(TiffImage image, Scaling scaling, Proof proof, int x, int y, int columns, int rows) {
        this.image = image;
        this.scaling = scaling;
        this.proof = proof;
        this.x = x;
        this.y = y;
        this.columns = columns;
        this.rows = rows;
    }

    /** Reads tags only; a large image gives several parts that share their edges. */
    static List<TileHeader> drafts(Path file) throws IOException {
        TiffHeader header = TiffHeader.read(file);
        GeoKeys keys = new GeoKeys(header);
        HeaderSigns.against(file, header, keys).ifPresent(fault -> {
            throw fault;
        });
        TiffImage image = TiffImage.of(file, header);
        TiffGrid grid = TiffGrid.of(file, header, keys);
        Scaling scaling = scaling(header, keys);
        Proof proof = new Proof(grid, header.name());
        boolean isWhole = (long) image.width() * image.height() <= WHOLE_POSTS;
        int partWidth = isWhole || !image.isTiled() ? image.width() : PART_SIDE;
        int partHeight = isWhole
                ? image.height()
                : image.isTiled() ? PART_SIDE : (int) Math.max(2, PART_SIDE * (long) PART_SIDE / image.width());
        if ((long) image.width() / partWidth * (image.height() / partHeight) > MOST_PARTS)
            throw new InputFault(header.name(), 0, "is too large. Cut it into several files.");
        List<TileHeader> drafts = new ArrayList<>();
        for (int y = 0; y < image.height() - 1; y += partHeight)
            for (int x = 0; x < image.width() - 1; x += partWidth)
                drafts.add(grid.draft(
                        header.name(),
                        new GeoTiffTile(
                                image,
                                scaling,
                                proof,
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
        for (GdalMetadata.Item item : GdalMetadata.items(header.text(TiffHeader.GDAL_METADATA))) {
            switch (item.role()) {
                case "unittype" -> {
                    if (FEET.contains(item.text())) unitM = FOOT_M;
                    else if (SURVEY_FEET.contains(item.text())) unitM = SURVEY_FOOT_M;
                }
                case "scale" -> scale = number(item.text(), 1);
                case "offset" -> offset = number(item.text(), 0);
                default -> {
                    // says nothing of the values
                }
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
        SoundPart part = image.part(new Rectangle(x, y, columns, rows));
        missing = part.told();
        return image.sample() == TiffImage.Sample.SIGNED_16 && scaling.isPlain() ? whole(part) : fractions(part);
    }

    @Override
    public Optional<String> missing() {
        return missing;
    }

    @Override
    public Optional<String> against(Posts read) {
        return proof.against(this, read);
    }

    private Posts whole(SoundPart part) {
        short[] heightM = new short[rows * columns];
        short[] line = new short[columns];
        for (int row = 0; row < rows; row++) {
            part.values().getDataElements(0, row, columns, 1, line);
            for (int column = 0; column < columns; column++)
                heightM[row * columns + column] = isVoid(line[column]) ? ShortPosts.VOID : line[column];
        }
        for (Rectangle none : part.lost())
            for (int row = none.y; row < none.y + none.height; row++)
                Arrays.fill(heightM, row * columns + none.x, row * columns + none.x + none.width, ShortPosts.VOID);
        return new ShortPosts(rows, columns, heightM);
    }

    private Posts fractions(SoundPart part) {
        float[] heightM = new float[rows * columns];
        double[] line = new double[columns];
        for (int row = 0; row < rows; row++) {
            part.values().getSamples(0, row, columns, 1, 0, line);
            for (int column = 0; column < columns; column++)
                heightM[row * columns + column] =
                        isVoid(line[column]) ? Float.NaN : (float) (line[column] * scaling.factor + scaling.offsetM);
        }
        for (Rectangle none : part.lost())
            for (int row = none.y; row < none.y + none.height; row++)
                Arrays.fill(heightM, row * columns + none.x, row * columns + none.x + none.width, Float.NaN);
        return new FloatPosts(rows, columns, heightM);
    }

    private boolean isVoid(double stored) {
        if (Double.isNaN(stored) || stored == COMMON_NODATA || stored == Short.MIN_VALUE) return true;
        if (stored == scaling.nodata || (float) stored == (float) scaling.nodata) return true;
        return !EarthHeight.holds(stored * scaling.factor + scaling.offsetM);
    }
}
