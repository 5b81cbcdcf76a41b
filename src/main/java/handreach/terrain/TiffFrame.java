package handreach.terrain;

import handreach.geodesy.UtmZone;
import handreach.input.InputFault;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;

/** The plane of a GeoTIFF file: known without a projection library where that is possible, else asked of it. */
final class TiffFrame {
    private static final int USER_DEFINED = 32767;
    private static final int DEGREE = 9102;
    private static final int METRE = 9001;
    private static final int TRANSVERSE_MERCATOR = 1;

    /** Geographic systems whose positions lie within about two metres of WGS 84: a tenth of the finest posts met. */
    private static final Set<Integer> LIKE_WGS84 = Set.of(
            4326, 4979, 4269, 4258, 4283, 7844, 4167, 4612, 4617, 4674, 4152, 4759, 6318, 4171, 4148, 9057, 9755);

    /** WGS 84 with three axes, the third a height above the ellipsoid; the library tells the others of this kind. */
    private static final int WITH_ELLIPSOIDAL_HEIGHTS = 4979;

    private static final Set<Integer> LIKE_WGS84_ELLIPSOIDS = Set.of(7030, 7019);

    /**
     * @param frame the plane
     * @param crs its name, such as {@code EPSG:4326}
     */
    record Named(Frame frame, String crs) {}

    private TiffFrame() {}

    /** Whether a geographic system counts heights from the ellipsoid, as far as its code tells without a projection library. */
    static boolean hasEllipsoidalHeights(int geographicCode) {
        return geographicCode == WITH_ELLIPSOIDAL_HEIGHTS;
    }

    /** The point is any of the tile, in its own coordinates. */
    static Named of(Path file, GeoKeys keys, double x, double y) {
        int model = keys.code(GeoKeys.MODEL_TYPE);
        if (model == 2) {
            int code = keys.code(GeoKeys.GEOGRAPHIC);
            int unit = keys.code(GeoKeys.ANGULAR_UNITS);
            if (LIKE_WGS84.contains(code) && (unit == 0 || unit == DEGREE))
                return new Named(Frame.DEGREES, "EPSG:" + code);
            if (code == USER_DEFINED && isLikeWgs84(keys) && (unit == 0 || unit == DEGREE))
                return new Named(Frame.DEGREES, "like EPSG:4326");
            return asked(file, code, x, y);
        }
        if (model != 1)
            throw new InputFault(
                    String.valueOf(file.getFileName()),
                    0,
                    "does not tell its coordinate reference system. Assign one, such as EPSG:4326, with a GIS tool.");
        int code = keys.code(GeoKeys.PROJECTED);
        int unit = keys.code(GeoKeys.LINEAR_UNITS);
        Optional<UtmZone> zone = unit == 0 || unit == METRE ? utm(code, keys) : Optional.empty();
        if (zone.isEmpty()) return asked(file, code, x, y);
        UtmFrame frame = new UtmFrame(zone.get());
        return new Named(
                frame, code == USER_DEFINED || code == 0 ? "UTM " + frame.key().substring(4) : "EPSG:" + code);
    }

    private static Named asked(Path file, int code, double x, double y) {
        Frame frame = CrsFrame.of(file, code == USER_DEFINED ? 0 : code, x, y);
        return new Named(frame, code == USER_DEFINED || code == 0 ? frame.key() : "EPSG:" + code);
    }

    /** Zones of WGS 84, NAD 83, ETRS89 and GDA94, and those spelled out by their parameters. */
    private static Optional<UtmZone> utm(int code, GeoKeys keys) {
        if (code > 32600 && code <= 32660) return Optional.of(new UtmZone(code - 32600, false));
        if (code > 32700 && code <= 32760) return Optional.of(new UtmZone(code - 32700, true));
        if (code > 26900 && code <= 26923) return Optional.of(new UtmZone(code - 26900, false));
        if (code >= 25828 && code <= 25838) return Optional.of(new UtmZone(code - 25800, false));
        if (code >= 28348 && code <= 28358) return Optional.of(new UtmZone(code - 28300, true));
        return code == USER_DEFINED ? spelledOut(keys) : Optional.empty();
    }

    private static Optional<UtmZone> spelledOut(GeoKeys keys) {
        if (!isLikeWgs84(keys)) return Optional.empty();
        int projection = keys.code(GeoKeys.PROJECTION);
        if (projection > 16000 && projection <= 16060) return Optional.of(new UtmZone(projection - 16000, false));
        if (projection > 16100 && projection <= 16160) return Optional.of(new UtmZone(projection - 16100, true));
        double number = (keys.number(GeoKeys.ORIGIN_LONGITUDE, Double.NaN) + 183) / 6;
        double northing = keys.number(GeoKeys.FALSE_NORTHING, Double.NaN);
        boolean isUtm = keys.code(GeoKeys.PROJECTION_METHOD) == TRANSVERSE_MERCATOR
                && keys.number(GeoKeys.ORIGIN_LATITUDE, Double.NaN) == 0
                && Math.abs(keys.number(GeoKeys.ORIGIN_SCALE, 0) - 0.9996) < 1e-12
                && keys.number(GeoKeys.FALSE_EASTING, 0) == 500_000
                && (northing == 0 || northing == 10_000_000)
                && number == Math.rint(number)
                && number >= 1
                && number <= 60;
        return isUtm ? Optional.of(new UtmZone((int) number, northing > 0)) : Optional.empty();
    }

    /** A geographic system of the list, or one spelled out on an ellipsoid like that of WGS 84. */
    private static boolean isLikeWgs84(GeoKeys keys) {
        int geographic = keys.code(GeoKeys.GEOGRAPHIC);
        if (geographic != USER_DEFINED) return LIKE_WGS84.contains(geographic);
        return LIKE_WGS84_ELLIPSOIDS.contains(keys.code(GeoKeys.ELLIPSOID))
                || (Math.abs(keys.number(GeoKeys.SEMI_MAJOR_AXIS, 0) - 6_378_137) < 0.01
                        && Math.abs(keys.number(GeoKeys.INVERSE_FLATTENING, 0) - 298.257) < 0.001);
    }
}
