package handreach.report.card;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.report.figure.RosePoint;
import handreach.report.figure.RoseTrace;
import handreach.terrain.Elevation;
import handreach.units.Bearings;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Where copy is not to be expected, in words: sectors in which reach falls far behind the rest, and what stands there. */
public final class DeadGround {
    /** A bearing is dead when its reach is below this share of the median of all; our suggestion. */
    private static final double SHARE_OF_MEDIAN = 0.6;

    private static final int MOST_SECTORS = 5;
    private static final int SAMPLES = 200;
    /** Height of an eye or antenna over ground, from which the rise is judged, m. */
    private static final double EYE_M = 1.5;

    /** What rises nearer than this is the slope that one stands on, not something that stands in the way, m; our suggestion. */
    private static final double FEET_M = 50;

    private static final List<String> WINDS =
            List.of("N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW");

    private final Elevation elevation;
    private final Position middle;
    private final Lengths style;
    private final Bearings bearings;

    private DeadGround(Elevation elevation, Position middle, Lengths style, Bearings bearings) {
        this.elevation = elevation;
        this.middle = middle;
        this.style = style;
        this.bearings = bearings;
    }

    /** Neighbouring bearings with the shortest and longest reach among them. */
    private record Sector(List<RosePoint> points) {
        double from() {
            return points.get(0).bearingDeg();
        }

        double to() {
            return points.get(points.size() - 1).bearingDeg();
        }

        RosePoint middle() {
            return points.get(points.size() / 2);
        }
    }

    /**
     * Sentences for a card, the widest sector first, at most five.
     *
     * @shape  one trace in, at most five lines out; reads one cut of the ground a sector
     * @unit   bearings degrees from true north; lengths as the style says
     * @valid  every trace; bearings without heights are told apart from dead ones
     * @error  the rise named is the one with the greatest elevation angle on the sector's middle bearing, to 1/200 of its length; the
     *     slope of the first 50 m is not named
     * @source definition ours: below six tenths of the median reach
     */
    public static List<CardLine> lines(
            RoseTrace trace, Elevation elevation, Position middle, Lengths style, Bearings bearings) {
        DeadGround words = new DeadGround(elevation, middle, style, bearings);
        List<RosePoint> known =
                trace.points().stream().filter(RosePoint::isKnown).toList();
        List<CardLine> lines = new ArrayList<>();
        if (!known.isEmpty()) {
            double[] reaches =
                    known.stream().mapToDouble(RosePoint::distanceKm).sorted().toArray();
            double limit = SHARE_OF_MEDIAN * reaches[reaches.length / 2];
            sectors(trace.points(), limit).stream()
                    .sorted(Comparator.comparingInt((Sector s) -> s.points().size())
                            .reversed())
                    .limit(MOST_SECTORS)
                    .forEach(sector -> lines.add(words.line(sector)));
        }
        if (lines.isEmpty() && !known.isEmpty())
            lines.add(CardLine.of("No bearing falls far behind the rest; expect gaps in hollows all the same."));
        words.unknown(trace.points()).ifPresent(lines::add);
        return lines;
    }

    /** On how many bearings heights end before copy does, and how near the nearest of these ends is. */
    private Optional<CardLine> unknown(List<RosePoint> points) {
        List<RosePoint> ended =
                points.stream().filter(point -> !point.isKnown()).toList();
        if (ended.isEmpty()) return Optional.empty();
        double nearest = ended.stream()
                .mapToDouble(point -> point.unknownBeyondKm().orElseThrow())
                .min()
                .orElseThrow();
        return Optional.of(new CardLine(
                "Unknown:",
                "on " + ended.size() + " of " + points.size() + " bearings heights end before copy does, the nearest "
                        + style.text(1000 * nearest) + " from the middle. Nothing is claimed beyond."));
    }

    /** Runs of bearings below the limit, one over north taken whole. */
    private static List<Sector> sectors(List<RosePoint> points, double limitKm) {
        int n = points.size();
        int start = 0;
        while (start < n && isDead(points.get(start), limitKm)) start++;
        List<Sector> sectors = new ArrayList<>();
        if (start == n) return List.of(new Sector(points));
        List<RosePoint> run = new ArrayList<>();
        for (int k = 1; k <= n; k++) {
            RosePoint p = points.get((start + k) % n);
            if (isDead(p, limitKm)) run.add(p);
            else if (!run.isEmpty()) {
                sectors.add(new Sector(run));
                run = new ArrayList<>();
            }
        }
        return sectors;
    }

    private static boolean isDead(RosePoint point, double limitKm) {
        return point.isKnown() && point.distanceKm() < limitKm;
    }

    private CardLine line(Sector sector) {
        double near = sector.points().stream()
                .mapToDouble(RosePoint::distanceKm)
                .min()
                .orElse(0);
        double far = sector.points().stream()
                .mapToDouble(RosePoint::distanceKm)
                .max()
                .orElse(0);
        String beyond = style.range(1000 * near, 1000 * far);
        OptionalDouble again = sector.points().stream()
                .flatMapToDouble(point -> point.againKm().stream())
                .max();
        String words = again.isEmpty()
                ? "nothing sure beyond " + beyond + rise(sector.middle())
                : "a gap from " + beyond + " on" + rise(sector.middle())
                        + "; some ground beyond it is reached again, as far as "
                        + style.text(1000 * again.getAsDouble());
        return new CardLine(name(sector) + ":", words + ".");
    }

    private String name(Sector sector) {
        if (sector.points().size() == 1) return wind(sector.from()) + " " + bearings.text(sector.from());
        String winds = wind(sector.from()).equals(wind(sector.to()))
                ? wind(sector.from())
                : wind(sector.from()) + " to " + wind(sector.to());
        return winds + " (" + bearings.range(sector.from(), sector.to()) + ")";
    }

    private static String wind(double bearingDeg) {
        return WINDS.get((int) Math.round(bearingDeg / 22.5) % WINDS.size());
    }

    /** What stands highest against the sky on the way and a little beyond; empty where heights are missing or it is level. */
    private String rise(RosePoint point) {
        double lengthM = Math.max(300, point.distanceKm() * 1250);
        Position end = GeodesicLine.destination(middle, point.bearingDeg(), lengthM);
        double[] latitude = new double[SAMPLES + 1];
        double[] longitude = new double[SAMPLES + 1];
        double[] height = new double[SAMPLES + 1];
        boolean[] isVoid = new boolean[SAMPLES + 1];
        double east = end.longitudeDeg() - middle.longitudeDeg();
        if (east > 180) east -= 360;
        if (east < -180) east += 360;
        for (int i = 0; i <= SAMPLES; i++) {
            double t = (double) i / SAMPLES;
            latitude[i] = middle.latitudeDeg() + t * (end.latitudeDeg() - middle.latitudeDeg());
            longitude[i] = new Position(0, middle.longitudeDeg() + t * east).longitudeDeg();
        }
        elevation.heights(latitude, longitude, SAMPLES + 1, height, isVoid);
        if (isVoid[0]) return "";
        int best = -1;
        double steepest = 0;
        for (int i = (int) Math.ceil(SAMPLES * FEET_M / lengthM); i <= SAMPLES; i++) {
            double slope = (height[i] - height[0] - EYE_M) / (lengthM * i / SAMPLES);
            if (!isVoid[i] && slope > steepest) {
                steepest = slope;
                best = i;
            }
        }
        if (best < 0) return "";
        String where = style.text(lengthM * best / SAMPLES);
        return ", behind the rise of " + style.heightText(height[best]) + " at " + where;
    }
}
