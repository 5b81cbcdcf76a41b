package handreach.terrain;

import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.input.Range;
import java.nio.file.Path;

/** Where the pixel centres of a GeoTIFF file stand. */
final class TiffGrid {
    private static final int PIXEL_IS_POINT = 2;
    private static final Range PIXEL = new Range("pixel", 1e-6, 1e6, "degrees or m");
    private static final Range PLACE = new Range("place of the first", -1e8, 1e8, "degrees or m");

    private final TiffFrame.Named plane;
    private final double westX;
    private final double northY;
    private final double pixelX;
    private final double pixelY;

    private TiffGrid(TiffFrame.Named plane, double westX, double northY, double pixelX, double pixelY) {
        this.plane = plane;
        this.westX = westX;
        this.northY = northY;
        this.pixelX = pixelX;
        this.pixelY = pixelY;
    }

    static TiffGrid of(Path file, TiffHeader header, GeoKeys keys) {
        double[] matrix = header.numbers(TiffHeader.TRANSFORMATION);
        double[] scale = header.numbers(TiffHeader.PIXEL_SCALE);
        double[] tie = header.numbers(TiffHeader.TIE_POINTS);
        double pixelX;
        double pixelY;
        double originX;
        double originY;
        if (matrix.length >= 8) {
            if (Math.abs(matrix[1]) > 1e-9 * Math.abs(matrix[0]) || Math.abs(matrix[4]) > 1e-9 * Math.abs(matrix[5]))
                throw fault(header, "is turned against north. Warp it to EPSG:4326 with a GIS tool.");
            pixelX = matrix[0];
            pixelY = -matrix[5];
            originX = matrix[3];
            originY = matrix[7];
        } else if (scale.length >= 2 && tie.length >= 6) {
            pixelX = scale[0];
            pixelY = scale[1];
            originX = tie[3] - tie[0] * pixelX;
            originY = tie[4] + tie[1] * pixelY;
        } else {
            throw fault(
                    header,
                    "does not tell where it lies. Fetch a GeoTIFF with its georeference, or assign one with a GIS tool.");
        }
        if (!(pixelX > 0) || !(pixelY > 0) || !Double.isFinite(pixelX + pixelY + originX + originY))
            throw fault(
                    header,
                    "has pixels of " + pixelX + " by " + pixelY + "; rows must run from north to south."
                            + " Warp it to EPSG:4326 with a GIS tool.");
        checkPixels(header.name(), pixelX, pixelY, originX, originY);
        double toCentre = keys.code(GeoKeys.RASTER_TYPE) == PIXEL_IS_POINT ? 0 : 0.5;
        return new TiffGrid(
                TiffFrame.of(file, keys, originX, originY),
                originX + toCentre * pixelX,
                originY - toCentre * pixelY,
                pixelX,
                pixelY);
    }

    /** Sizes and places beyond all reason would overrun the index of posts. */
    static void checkPixels(String name, double pixelX, double pixelY, double x, double y) {
        if (PIXEL.accepts(pixelX) && PIXEL.accepts(pixelY) && PLACE.accepts(x) && PLACE.accepts(y)) return;
        throw new InputFault(
                name,
                0,
                "has pixels of " + pixelX + " by " + pixelY + " at " + x + ", " + y
                        + ", which is beyond all maps. Its header is damaged; fetch it again.");
    }

    /** The tile that begins at a pixel. */
    TileHeader draft(String name, PostSource source, int x, int y) {
        return drafted(name, "GeoTIFF", plane, fit(x, y), source);
    }

    GridFit fit(int x, int y) {
        return new GridFit(plane.frame(), westX + x * pixelX, northY - y * pixelY, 1 / pixelX, 1 / pixelY);
    }

    /** A draft with its bounds and spacing worked out; also for the other formats that may be projected. */
    static TileHeader drafted(String name, String format, TiffFrame.Named plane, GridFit fit, PostSource source) {
        TileBounds bounds = bounds(name, fit, source.rows(), source.columns());
        double[] ground = Tile.groundSpacingM(fit, bounds);
        if (!(Math.min(ground[0], ground[1]) > 0))
            throw new InputFault(
                    name, 0, "lies where its projection knows no ground. Check its coordinate reference system.");
        boolean isDegrees = fit.frame().isDegrees();
        double unit = isDegrees ? 3600 : 1;
        TileSummary summary = new TileSummary(
                name,
                format,
                bounds,
                new PostSpacing(
                        unit / fit.postsPerY(),
                        unit / fit.postsPerX(),
                        isDegrees ? "arc-seconds" : "units of the grid",
                        Math.min(ground[0], ground[1])),
                plane.crs(),
                TileProvenance.of(name));
        return new TileHeader(summary, fit, source);
    }

    /** Extent in degrees; edges of projected grids are bent, so they are followed in steps. */
    static TileBounds bounds(String name, GridFit fit, int rows, int columns) {
        double east = fit.westX() + (columns - 1) / fit.postsPerX();
        double south = fit.northY() - (rows - 1) / fit.postsPerY();
        if (fit.frame().isDegrees()) {
            if (fit.northY() > 90.001
                    || south < -90.001
                    || fit.westX() < -360
                    || east > 360.001
                    || east - fit.westX() > 360.001)
                throw new InputFault(
                        name,
                        0,
                        "lies at " + fit.westX() + " to " + east + " east, " + south + " to " + fit.northY()
                                + " north, which is not on earth. Check its coordinate reference system.");
            return new TileBounds(Math.max(-90, south), turned(fit.westX()), Math.min(90, fit.northY()), turned(east));
        }
        if (fit.frame() instanceof UtmFrame utm && !(utm.holds(fit.westX(), fit.northY()) && utm.holds(east, south)))
            throw new InputFault(
                    name,
                    0,
                    "lies at eastings " + whole(fit.westX()) + " to " + whole(east) + ", northings " + whole(south)
                            + " to "
                            + whole(fit.northY())
                            + ", which is not in its UTM zone. Take a zone number off its eastings, or check its coordinate"
                            + " reference system.");
        double[] box = {90, 540, -90, -540};
        Position centre = fit.frame().toPosition((fit.westX() + east) / 2, (fit.northY() + south) / 2);
        int steps = 32;
        for (int i = 0; i <= steps; i++) {
            double x = fit.westX() + (east - fit.westX()) * i / steps;
            double y = south + (fit.northY() - south) * i / steps;
            widen(box, centre, fit.frame().toPosition(x, fit.northY()));
            widen(box, centre, fit.frame().toPosition(x, south));
            widen(box, centre, fit.frame().toPosition(fit.westX(), y));
            widen(box, centre, fit.frame().toPosition(east, y));
        }
        if (box[3] - box[1] > 180)
            throw new InputFault(
                    name, 0, "covers more than half of the earth in its projection. Cut it, or warp it to EPSG:4326.");
        return new TileBounds(box[0], turned(box[1]), box[2], turned(box[3]));
    }

    private static String whole(double metres) {
        return String.valueOf(Math.round(metres));
    }

    private static void widen(double[] box, Position centre, Position place) {
        double lon = centre.longitudeDeg() + Math.IEEEremainder(place.longitudeDeg() - centre.longitudeDeg(), 360);
        box[0] = Math.min(box[0], place.latitudeDeg());
        box[1] = Math.min(box[1], lon);
        box[2] = Math.max(box[2], place.latitudeDeg());
        box[3] = Math.max(box[3], lon);
    }

    private static double turned(double longitudeDeg) {
        double lon = longitudeDeg;
        while (lon > 180) lon -= 360;
        while (lon < -180) lon += 360;
        return lon;
    }

    private static InputFault fault(TiffHeader header, String text) {
        return new InputFault(header.name(), 0, text);
    }
}
