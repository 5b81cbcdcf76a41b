package handreach.cartography;

import handreach.geodesy.PlaceForm;
import handreach.geodesy.Position;
import handreach.geodesy.UtmZone;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleFunction;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/** Lines of a coordinate grid over a map, at round values, with the words to write on them. */
public final class Graticule {
    private static final double[] STEPS_DEG = {
        0.0005, 0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20
    };
    /** A round step this much below the wish is taken, so that a map never has one lonely line. */
    private static final double NEAR_ENOUGH = 0.7;

    /** Pieces of a bent line. */
    private static final int POINTS = 32;

    private static final double[] STEPS_MIN = {
        0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 1200
    };
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private Graticule() {}

    /** The grid in which the user writes places: UTM for both metric grids, else parallels and meridians. */
    public static List<GridLine> of(MapFrame frame, PlaceForm form, int wanted) {
        return switch (form) {
            case DECIMAL -> latitudeLongitude(frame, wanted);
            case DEGREES_MINUTES -> minutes(frame, wanted);
            case UTM, MGRS -> {
                List<GridLine> lines = utm(frame, wanted);
                yield lines.isEmpty() ? latitudeLongitude(frame, wanted) : lines;
            }
        };
    }

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
        double step = step(spanDeg(frame) / wanted, STEPS_DEG);
        int decimals = (int) Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
        return degreeLines(frame, step, degrees -> number(degrees, decimals) + "°");
    }

    /**
     * Parallels and meridians at a round step of minutes of arc.
     *
     * @shape  as {@link #latitudeLongitude}
     * @unit   labels in degrees and minutes
     * @valid  as {@link #latitudeLongitude}
     * @error  none
     * @source arithmetic
     */
    public static List<GridLine> minutes(MapFrame frame, int wanted) {
        if (wanted < 1) throw new IllegalArgumentException("wanted lines " + wanted);
        double stepMin = step(60 * spanDeg(frame) / wanted, STEPS_MIN);
        int decimals = stepMin >= 1 ? 0 : stepMin >= 0.1 ? 1 : 2;
        return degreeLines(frame, stepMin / 60, degrees -> {
            double scale = Math.pow(10, decimals);
            long parts = Math.round(degrees * 60 * scale);
            long perDegree = Math.round(60 * scale);
            String minutes = number(parts % perDegree / scale, decimals);
            return parts / perDegree + "°" + (parts % perDegree / scale < 10 ? "0" : "") + minutes + "'";
        });
    }

    private static double spanDeg(MapFrame frame) {
        return Math.max(frame.northDeg() - frame.southDeg(), frame.eastDeg() - frame.westDeg());
    }

    private static List<GridLine> degreeLines(MapFrame frame, double step, DoubleFunction<String> text) {
        double south = frame.southDeg();
        double north = frame.northDeg();
        double west = frame.westDeg();
        double east = frame.eastDeg();
        List<GridLine> lines = new ArrayList<>();
        for (long k = (long) Math.ceil(west / step); k * step <= east; k++) {
            double shown = k * step >= 180 ? k * step - 360 : k * step;
            String label = text.apply(Math.abs(shown)) + side(shown, step, " E", " W");
            lines.add(new GridLine(label, true, line(k * step, south, k * step, north), ""));
        }
        for (long k = (long) Math.ceil(south / step); k * step <= north; k++) {
            String label = text.apply(Math.abs(k * step)) + side(k * step, step, " N", " S");
            lines.add(new GridLine(label, false, line(west, k * step, east, k * step), ""));
        }
        return lines;
    }

    /**
     * Lines of the UTM grid of the map's middle, at a round step of metres, labelled in kilometres.
     *
     * @shape  one frame in, about {@code wanted} lines each way out, 33 points a line; pure
     * @unit   labels km, the last two digits of the kilometres being those people read off first
     * @valid  80 S to 84 N, else none; a map over two zones shows the grid of its middle throughout
     * @error  lines bend by less than 0.1 px between their points on maps up to 200 km across
     * @source NGA.STND.0037, Universal Grids, from memory
     */
    public static List<GridLine> utm(MapFrame frame, int wanted) {
        if (wanted < 1) throw new IllegalArgumentException("wanted lines " + wanted);
        if (!UtmZone.covers(frame.centre())) return List.of();
        UtmZone zone = UtmZone.of(frame.centre());
        double[] box = utmBox(zone, frame);
        double wishM = Math.max(box[2] - box[0], box[3] - box[1]) / wanted;
        double step = 1;
        while (step < NEAR_ENOUGH * wishM) step *= String.valueOf((long) step).startsWith("2") ? 2.5 : 2;
        String name = PlaceForm.UTM.format(frame.centre()).split(" ")[0];
        List<GridLine> lines = new ArrayList<>();
        for (double e = Math.ceil(box[0] / step) * step; e <= box[2]; e += step)
            lines.add(
                    new GridLine(kilometres(e, step) + " E", true, gridLine(zone, frame, e, box[1], e, box[3]), name));
        for (double n = Math.ceil(box[1] / step) * step; n <= box[3]; n += step)
            lines.add(
                    new GridLine(kilometres(n, step) + " N", false, gridLine(zone, frame, box[0], n, box[2], n), name));
        return lines;
    }

    /** Least and greatest easting and northing along the edge of a map, m. */
    private static double[] utmBox(UtmZone zone, MapFrame frame) {
        double[] box = {Double.MAX_VALUE, Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE};
        double[] at = new double[2];
        for (int i = 0; i <= POINTS; i++) {
            double x = frame.widthPx() * (double) i / POINTS;
            double y = frame.heightPx() * (double) i / POINTS;
            for (double[] p : new double[][] {{x, 0}, {x, frame.heightPx()}, {0, y}, {frame.widthPx(), y}}) {
                zone.project(frame.latitudeDeg(p[1]), frame.longitudeDeg(p[0]), at);
                box[0] = Math.min(box[0], at[0]);
                box[1] = Math.min(box[1], at[1]);
                box[2] = Math.max(box[2], at[0]);
                box[3] = Math.max(box[3], at[1]);
            }
        }
        return box;
    }

    private static LineString gridLine(UtmZone zone, MapFrame frame, double e0, double n0, double e1, double n1) {
        Coordinate[] points = new Coordinate[POINTS + 1];
        double west = frame.westDeg();
        for (int i = 0; i <= POINTS; i++) {
            double t = (double) i / POINTS;
            Position at = zone.position(e0 + (e1 - e0) * t, n0 + (n1 - n0) * t);
            double x = frame.xPx(at.longitudeDeg());
            points[i] = new Coordinate(west + x * frame.degreesEastPerPx(), at.latitudeDeg());
        }
        return GEOMETRY.createLineString(points);
    }

    private static String kilometres(double metres, double stepM) {
        return number(metres / 1000, stepM >= 1000 ? 0 : stepM >= 100 ? 1 : stepM >= 10 ? 2 : 3);
    }

    private static double step(double wish, double[] steps) {
        for (double step : steps) if (step >= NEAR_ENOUGH * wish) return step;
        return steps[steps.length - 1];
    }

    private static LineString line(double x0, double y0, double x1, double y1) {
        return GEOMETRY.createLineString(new Coordinate[] {new Coordinate(x0, y0), new Coordinate(x1, y1)});
    }

    private static String side(double degrees, double step, String positive, String negative) {
        if (Math.abs(degrees) < step / 2) return "";
        return degrees > 0 ? positive : negative;
    }

    private static String number(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }
}
