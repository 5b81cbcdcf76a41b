package handreach.cartography;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/** Lines of a coordinate grid over a map, at round values, with the words to write on them. */
public final class Graticule {
    private static final double[] STEPS_DEG = {
        0.0005, 0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20
    };
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private Graticule() {}

    /**
     * Parallels and meridians at a round step of decimal degrees.
     *
     * @shape  one frame in, about {@code wanted} lines each way out; pure
     * @unit   labels in degrees
     * @valid  every frame; across the 180th meridian labels turn from east to west
     * @error  none: the map is linear in degrees
     * @source arithmetic
     */
    public static List<GridLine> latitudeLongitude(MapFrame frame, int wanted) {
        if (wanted < 1) throw new IllegalArgumentException("wanted lines " + wanted);
        double south = frame.southDeg();
        double north = frame.northDeg();
        double west = frame.westDeg();
        double east = frame.eastDeg();
        double step = step(Math.max(north - south, east - west) / wanted);
        int decimals = (int) Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
        List<GridLine> lines = new ArrayList<>();
        for (long k = (long) Math.ceil(west / step); k * step <= east; k++)
            lines.add(new GridLine(longitudeText(k * step, decimals), true, line(k * step, south, k * step, north)));
        for (long k = (long) Math.ceil(south / step); k * step <= north; k++)
            lines.add(new GridLine(latitudeText(k * step, decimals), false, line(west, k * step, east, k * step)));
        return lines;
    }

    private static double step(double wishDeg) {
        for (double step : STEPS_DEG) if (step >= wishDeg) return step;
        return STEPS_DEG[STEPS_DEG.length - 1];
    }

    private static org.locationtech.jts.geom.LineString line(double x0, double y0, double x1, double y1) {
        return GEOMETRY.createLineString(new Coordinate[] {new Coordinate(x0, y0), new Coordinate(x1, y1)});
    }

    private static String latitudeText(double degrees, int decimals) {
        return number(Math.abs(degrees), decimals) + "°" + side(degrees, decimals, " N", " S");
    }

    private static String longitudeText(double degrees, int decimals) {
        double d = degrees >= 180 ? degrees - 360 : degrees;
        return number(Math.abs(d), decimals) + "°" + side(d, decimals, " E", " W");
    }

    private static String side(double degrees, int decimals, String positive, String negative) {
        if (Math.abs(degrees) < 0.5 * Math.pow(10, -decimals)) return "";
        return degrees > 0 ? positive : negative;
    }

    private static String number(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }
}
