package handreach.report.card;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.report.figure.RosePoint;
import handreach.report.figure.RoseTrace;
import handreach.terrain.Elevation;
import handreach.units.Bearings;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/**
 * Where copy is not to be expected, in words: sectors beyond which nothing is reached although elsewhere it is, then sectors where the
 * first gap begins early. A sentence says only what holds on every bearing of its sector.
 */
public final class DeadGround {
    /**
     * A bearing is dead when its farthest place is below this share of the median farthest place of all; of the others it has an early
     * gap when its continuous reach is below this share of the median one; our suggestion.
     */
    private static final double SHARE_OF_MEDIAN = 0.6;

    private static final int MOST_SECTORS = 5;
    private static final int SAMPLES = 200;
    /** Height of an eye or antenna over ground, from which the rise is judged, m. */
    private static final double EYE_M = 1.5;

    /** What rises nearer than this is the slope that one stands on, not something that stands in the way, m; our suggestion. */
    private static final double FEET_M = 50;

    /** How far behind the last place reached the ground must be hidden for a rise to be named, m; our suggestion. */
    private static final double[] BEHIND_M = {100, 200};

    /** What rises farther before the last place reached does not end the reach there: copy went on behind it, m; our suggestion. */
    private static final double NEAR_M = 200;

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

    /** Below which farthest place a bearing is dead, and below which continuous reach it has an early gap, km. */
    private record Limits(double farthestKm, double continuousKm) {
        static Limits of(List<RosePoint> known) {
            return new Limits(
                    SHARE_OF_MEDIAN * median(known, RosePoint::farthestKm),
                    SHARE_OF_MEDIAN * median(known, RosePoint::distanceKm));
        }

        private static double median(List<RosePoint> points, ToDoubleFunction<RosePoint> figure) {
            double[] sorted = points.stream().mapToDouble(figure).sorted().toArray();
            return sorted[sorted.length / 2];
        }

        boolean isDead(RosePoint point) {
            return point.isKnown() && point.farthestKm() < farthestKm;
        }

        boolean hasGap(RosePoint point) {
            return point.isKnown() && !isDead(point) && point.distanceKm() < continuousKm;
        }
    }

    /** Neighbouring bearings that are all dead, or all have an early gap. */
    private record Sector(List<RosePoint> points, boolean isDead) {
        double from() {
            return points.get(0).bearingDeg();
        }

        double to() {
            return points.get(points.size() - 1).bearingDeg();
        }

        Span span(ToDoubleFunction<RosePoint> figure) {
            DoubleSummaryStatistics all = points.stream().mapToDouble(figure).summaryStatistics();
            return new Span(all.getMin(), all.getMax());
        }
    }

    /** The least and the most of a figure over the bearings of a sector. */
    private record Span(double least, double most) {}

    /** What hides the ground behind it on one bearing. */
    private record Rise(double heightM, double distanceM) {}

    /**
     * Sentences for a card: dead sectors, then those with an early gap, of each kind the widest first, at most five in all.
     *
     * @shape  one trace in, at most five lines out; reads one cut of the ground a bearing of a sector that is told
     * @unit   bearings degrees from true north; lengths as the style says
     * @valid  every trace; bearings without heights are told apart from dead ones
     * @error  a rise is told only where each bearing of the sector has one that hides the ground 100 and 200 m beyond the last place
     *     reached, over a flat earth; its place to 1/200 of the way there; the slope of the first 50 m is not named
     * @source definition ours, see docs/definitions.md: below six tenths of the medians
     */
    public static List<CardLine> lines(
            RoseTrace trace, Elevation elevation, Position middle, Lengths style, Bearings bearings) {
        DeadGround words = new DeadGround(elevation, middle, style, bearings);
        List<RosePoint> known =
                trace.points().stream().filter(RosePoint::isKnown).toList();
        List<CardLine> lines = new ArrayList<>();
        if (!known.isEmpty()) {
            Limits limits = Limits.of(known);
            Comparator<Sector> widestFirst =
                    Comparator.comparingInt((Sector s) -> s.points().size()).reversed();
            Stream.of(true, false)
                    .flatMap(isDead ->
                            sectors(trace.points(), limits, isDead).stream().sorted(widestFirst))
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

    /** Runs of bearings of one kind, one over north taken whole. */
    private static List<Sector> sectors(List<RosePoint> points, Limits limits, boolean isDead) {
        Predicate<RosePoint> belongs = isDead ? limits::isDead : limits::hasGap;
        int n = points.size();
        int start = 0;
        while (start < n && belongs.test(points.get(start))) start++;
        List<Sector> sectors = new ArrayList<>();
        List<RosePoint> run = new ArrayList<>();
        for (int k = 1; k <= n; k++) {
            RosePoint p = points.get((start + k) % n);
            if (belongs.test(p)) run.add(p);
            else if (!run.isEmpty()) {
                sectors.add(new Sector(run, isDead));
                run = new ArrayList<>();
            }
        }
        return sectors;
    }

    private CardLine line(Sector sector) {
        return new CardLine(name(sector) + ":", (sector.isDead() ? dead(sector) : gap(sector)) + ".");
    }

    /** Beyond the farthest place of all its bearings nothing is reached on any of them. */
    private String dead(Sector sector) {
        Span end = sector.span(RosePoint::farthestKm);
        String most = style.text(1000 * end.most());
        String least = style.text(1000 * end.least());
        return "nothing sure beyond " + most + (least.equals(most) ? "" : ", on some bearings beyond " + least)
                + known(sector) + rise(sector, RosePoint::farthestKm);
    }

    private String gap(Sector sector) {
        Span begins = sector.span(RosePoint::distanceKm);
        Span again = sector.span(RosePoint::farthestKm);
        Span share =
                sector.span(point -> point.again().map(RosePoint.Again::share).orElse(0.0));
        return "first gap begins " + style.range(1000 * begins.least(), 1000 * begins.most()) + " out"
                + rise(sector, RosePoint::distanceKm) + "; beyond it " + Shares.shareRange(share.least(), share.most())
                + " of the ground is reached again, as far as "
                + style.range(1000 * again.least(), 1000 * again.most());
    }

    /** Where heights end on one of the bearings: nothing is claimed behind that. */
    private String known(Sector sector) {
        OptionalDouble nearest = sector.points().stream()
                .flatMapToDouble(point -> point.unknownBeyondKm().stream())
                .min();
        return nearest.isEmpty()
                ? ""
                : ", as far as heights are known (" + style.text(1000 * nearest.getAsDouble()) + ")";
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

    /** What hides the ground behind the last place reached, where on every bearing of the sector something does. */
    private String rise(Sector sector, ToDoubleFunction<RosePoint> lastKm) {
        List<Rise> rises = new ArrayList<>();
        for (RosePoint point : sector.points()) {
            Optional<Rise> rise = hiding(point.bearingDeg(), 1000 * lastKm.applyAsDouble(point));
            if (rise.isEmpty()) return "";
            rises.add(rise.get());
        }
        DoubleSummaryStatistics height =
                rises.stream().mapToDouble(Rise::heightM).summaryStatistics();
        DoubleSummaryStatistics distance =
                rises.stream().mapToDouble(Rise::distanceM).summaryStatistics();
        String which = style.heightRange(height.getMin(), height.getMax()) + " at "
                + style.range(distance.getMin(), distance.getMax());
        return rises.size() == 1 || !which.contains(" to ")
                ? ", where a rise of " + which + " hides the ground behind it"
                : ", where rises of " + which + " hide the ground behind them";
    }

    /**
     * What stands highest against the sky on the way to the last place reached, if it stands in the last 200 m and the ground just behind that place lies below the
     * line of sight over it; empty where it does not, where heights are missing or where it is level.
     */
    private Optional<Rise> hiding(double bearingDeg, double lastM) {
        if (lastM < FEET_M) return Optional.empty();
        double[] distance = new double[SAMPLES + BEHIND_M.length + 1];
        for (int i = 0; i <= SAMPLES; i++) distance[i] = lastM * i / SAMPLES;
        for (int k = 0; k < BEHIND_M.length; k++) distance[SAMPLES + 1 + k] = lastM + BEHIND_M[k];
        double[] latitude = new double[distance.length];
        double[] longitude = new double[distance.length];
        double[] height = new double[distance.length];
        boolean[] isVoid = new boolean[distance.length];
        for (int i = 0; i < distance.length; i++) {
            Position at = GeodesicLine.destination(middle, bearingDeg, distance[i]);
            latitude[i] = at.latitudeDeg();
            longitude[i] = at.longitudeDeg();
        }
        elevation.heights(latitude, longitude, distance.length, height, isVoid);
        if (isVoid[0]) return Optional.empty();
        int best = -1;
        double steepest = 0;
        for (int i = (int) Math.ceil(SAMPLES * FEET_M / lastM); i <= SAMPLES; i++) {
            double slope = (height[i] - height[0] - EYE_M) / distance[i];
            if (!isVoid[i] && slope > steepest) {
                steepest = slope;
                best = i;
            }
        }
        if (best < 0 || distance[best] < lastM - NEAR_M) return Optional.empty();
        for (int i = SAMPLES + 1; i < distance.length; i++)
            if (isVoid[i] || (height[i] - height[0]) / distance[i] >= steepest) return Optional.empty();
        return Optional.of(new Rise(height[best], distance[best]));
    }
}
