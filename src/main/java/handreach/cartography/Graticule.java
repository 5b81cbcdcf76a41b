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

    /** A map over more zones is no map to read grid coordinates off. */
    private static final int MOST_ZONES = 4;

    private static final int HALVINGS = 12;
    private static final int ZONE_SAMPLES = 8;

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
     * Lines of the UTM grid at a round step of metres, labelled in kilometres; each zone has its own, which end where it ends.
     *
     * @shape  one frame in, about {@code wanted} lines each way out, at most 34 points a line; pure
     * @unit   labels km, the last two digits of the kilometres being those people read off first
     * @valid  80 S to 84 N and over at most four zones, a hemisphere counting as one, else none
     * @error  lines bend by less than 0.1 px between their points on maps up to 200 km across
     * @source NGA.STND.0037, Universal Grids, from memory
     */
    public static List<GridLine> utm(MapFrame frame, int wanted) {
        if (wanted < 1) throw new IllegalArgumentException("wanted lines " + wanted);
        if (!UtmZone.covers(frame.centre())) return List.of();
        List<Shown> zones = zones(frame);
        if (zones.size() > MOST_ZONES) return List.of();
        double[] middle = utmBox(UtmZone.of(frame.centre()), frame);
        double wishM = Math.max(middle[2] - middle[0], middle[3] - middle[1]) / wanted;
        double step = 1;
        while (step < NEAR_ENOUGH * wishM) step *= String.valueOf((long) step).startsWith("2") ? 2.5 : 2;
        List<GridLine> lines = new ArrayList<>();
        for (Shown each : zones) {
            double[] box = utmBox(each.zone(), frame);
            for (double e = Math.ceil(box[0] / step) * step; e <= box[2]; e += step)
                for (LineString part : inZone(each, frame, e, box[1], e, box[3]))
                    lines.add(new GridLine(kilometres(e, step) + " E", true, part, each.name()));
            for (double n = Math.ceil(box[1] / step) * step; n <= box[3]; n += step)
                for (LineString part : inZone(each, frame, box[0], n, box[2], n))
                    lines.add(new GridLine(kilometres(n, step) + " N", false, part, each.name()));
        }
        return lines;
    }

    /** A zone that a map shows, with the name of zone and band, that of the map's middle where it can be. */
    private record Shown(UtmZone zone, String name) {
        static Shown at(Position at, double middleLatitudeDeg) {
            Shown here = new Shown(UtmZone.of(at), PlaceForm.UTM.format(at).split(" ")[0]);
            Position level = new Position(middleLatitudeDeg, at.longitudeDeg());
            return here.holds(level)
                    ? new Shown(here.zone(), PlaceForm.UTM.format(level).split(" ")[0])
                    : here;
        }

        boolean holds(Position at) {
            if (!UtmZone.covers(at)) return false;
            UtmZone own = UtmZone.of(at);
            return own.number() == zone.number() && own.isSouth() == zone.isSouth();
        }
    }

    /** That of the middle first. */
    private static List<Shown> zones(MapFrame frame) {
        double middleDeg = frame.centre().latitudeDeg();
        List<Shown> zones = new ArrayList<>(List.of(Shown.at(frame.centre(), middleDeg)));
        for (int i = 0; i <= ZONE_SAMPLES; i++)
            for (int k = 0; k <= ZONE_SAMPLES; k++) {
                Position at = new Position(
                        frame.latitudeDeg(frame.heightPx() * (double) k / ZONE_SAMPLES),
                        frame.longitudeDeg(frame.widthPx() * (double) i / ZONE_SAMPLES));
                if (UtmZone.covers(at) && zones.stream().noneMatch(zone -> zone.holds(at)))
                    zones.add(Shown.at(at, middleDeg));
            }
        return zones;
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

    /** What of a straight line of the grid lies in its own zone, to some ten thousandth of the line. */
    private static List<LineString> inZone(Shown zone, MapFrame frame, double e0, double n0, double e1, double n1) {
        List<LineString> parts = new ArrayList<>();
        List<Coordinate> part = new ArrayList<>();
        DoubleFunction<Position> along = t -> zone.zone().position(e0 + (e1 - e0) * t, n0 + (n1 - n0) * t);
        boolean wasIn = false;
        for (int i = 0; i <= POINTS; i++) {
            double t = (double) i / POINTS;
            boolean isIn = zone.holds(along.apply(t));
            if (i > 0 && isIn != wasIn) part.add(point(frame, along.apply(edge(zone, along, t - 1.0 / POINTS, t))));
            if (isIn) part.add(point(frame, along.apply(t)));
            if (!isIn || i == POINTS) {
                if (part.size() > 1) parts.add(GEOMETRY.createLineString(part.toArray(new Coordinate[0])));
                part.clear();
            }
            wasIn = isIn;
        }
        return parts;
    }

    /** Where a line leaves or enters its zone, by halving; the side of the zone. */
    private static double edge(Shown zone, DoubleFunction<Position> along, double from, double to) {
        boolean isFromIn = zone.holds(along.apply(from));
        double in = isFromIn ? from : to;
        double out = isFromIn ? to : from;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (in + out) / 2;
            if (zone.holds(along.apply(middle))) in = middle;
            else out = middle;
        }
        return in;
    }

    private static Coordinate point(MapFrame frame, Position at) {
        return new Coordinate(
                frame.westDeg() + frame.xPx(at.longitudeDeg()) * frame.degreesEastPerPx(), at.latitudeDeg());
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
        // Nought from the other side is nought.
        return String.format(Locale.ROOT, "%." + decimals + "f", value + 0.0);
    }
}
