package handreach.study;

import handreach.budget.LinkEnd;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.loadout.Loadout;
import handreach.plan.Places;
import handreach.reach.Progress;
import handreach.relay.HopPath;
import handreach.relay.Party;
import handreach.relay.TalkBook;
import handreach.study.RoutesAnswer.Contact;
import handreach.walk.GpxTrack;
import handreach.walk.TrackPoint;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Goes along the routes that say when people are where, and computes one exact path a point. */
final class RouteStudy {
    private static final int MOST_POINTS = 120;
    private static final double LEAST_STEP_M = 50;
    private static final int MEETING_STEPS = 60;
    private static final double DAY_S = 86_400;

    private final Scene scene;
    private final TalkBook book;
    private final Progress progress;
    private final double wanted;
    private final List<String> warnings = new ArrayList<>();
    private final List<RoutesAnswer.Apart> apart = new ArrayList<>();

    private RouteStudy(Scene scene, TalkBook book, Progress progress) {
        this.scene = scene;
        this.book = book;
        this.progress = progress;
        this.wanted = scene.plan().channel().wish().odds();
    }

    static RoutesAnswer run(Scene scene, TalkBook book, Progress progress) {
        return new RouteStudy(scene, book, progress).answer();
    }

    private RoutesAnswer answer() {
        List<Places.RouteEntry> asked = scene.plan().places().routes().stream()
                .filter(entry -> entry.schedule().isPresent())
                .toList();
        Optional<Places.PositionEntry> base = scene.base();
        List<Way> ways = new ArrayList<>();
        if (!asked.isEmpty() && base.isEmpty())
            warnings.add(
                    "The routes say when people go, but the plan has no position with base = true whom they could call.");
        else for (Places.RouteEntry entry : asked) ways.add(way(entry));
        for (Places.RouteEntry entry : scene.plan().places().routes())
            if (!asked.isEmpty() && entry.schedule().isEmpty())
                warnings.add(entry.name()
                        + " does not say when it goes and is left out here: add start and pace_kmh, or timed = true.");
        List<RoutesAnswer.Route> routes =
                ways.stream().map(way -> route(way, base.orElseThrow())).toList();
        List<RoutesAnswer.Meeting> meetings = meetings(ways);
        return new RoutesAnswer(base.map(Places.PositionEntry::name), routes, meetings, apart, warnings);
    }

    /**
     * A route as it is walked.
     *
     * @param alongM way to each corner of the line, m
     * @param timeS when each corner is reached; empty where that is not known
     */
    private record Way(
            Places.RouteEntry entry,
            Loadout loadout,
            boolean isUtc,
            List<Position> line,
            double[] alongM,
            Optional<double[]> timeS) {
        /** The same, a day later by the clock. */
        Way nextDay() {
            double[] later = timeS.orElseThrow().clone();
            for (int i = 0; i < later.length; i++) later[i] += DAY_S;
            return new Way(entry, loadout, isUtc, line, alongM, Optional.of(later));
        }

        RoutesAnswer.Window span() {
            double[] times = timeS.orElseThrow();
            return new RoutesAnswer.Window(times[0], times[times.length - 1]);
        }

        /** Whether people go past midnight by the crew's clock, which has no day. */
        boolean passesMidnight() {
            return !isUtc && span().toS() >= DAY_S;
        }

        double lengthM() {
            return alongM[alongM.length - 1];
        }

        Position at(double along) {
            return RelayDemands.point(line, alongM, along);
        }

        OptionalDouble time(double along) {
            return timeS.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(between(alongM, timeS.get(), along));
        }

        double along(double time) {
            return between(timeS.orElseThrow(), alongM, time);
        }

        /** Straight between the corners; a pause counts to its end. */
        private static double between(double[] x, double[] y, double at) {
            int i = 1;
            while (i < x.length - 1 && x[i] < at) i++;
            if (x.length < 2) return y[0];
            double share = x[i] > x[i - 1] ? Math.min(1, Math.max(0, (at - x[i - 1]) / (x[i] - x[i - 1]))) : 1;
            return y[i - 1] + share * (y[i] - y[i - 1]);
        }
    }

    private Way way(Places.RouteEntry entry) {
        Places.Schedule schedule = entry.schedule().orElseThrow();
        Loadout loadout = entry.loadout().map(scene::loadout).orElseGet(scene::controlLoadout);
        if (schedule.startS().isEmpty()) {
            List<TrackPoint> timed = GpxTrack.read(entry.file(), progress).timed();
            if (timed.size() > 1) {
                List<Position> line = timed.stream().map(TrackPoint::at).toList();
                double[] timeS = timed.stream()
                        .map(point -> point.time().orElseThrow())
                        .mapToDouble(RouteStudy::seconds)
                        .toArray();
                return new Way(entry, loadout, true, line, along(line), Optional.of(timeS));
            }
            warnings.add(
                    entry.name()
                            + " has timed = true, but its track has no times: it is told by distance alone. Add start and pace_kmh in place of it.");
        }
        List<Position> line = new ArrayList<>();
        GpxTrack.lines(entry.file()).forEach(line::addAll);
        double[] along = along(line);
        Optional<double[]> timeS = Optional.empty();
        if (schedule.startS().isPresent()) {
            double[] reached = new double[along.length];
            for (int i = 0; i < reached.length; i++)
                reached[i] = schedule.startS().getAsDouble() + along[i] / (schedule.paceKmh() / 3.6);
            timeS = Optional.of(reached);
        }
        return new Way(entry, loadout, false, line, along, timeS);
    }

    private static double seconds(Instant moment) {
        return moment.getEpochSecond() + moment.getNano() * 1e-9;
    }

    private static double[] along(List<Position> line) {
        double[] along = new double[line.size()];
        for (int i = 1; i < along.length; i++)
            along[i] = along[i - 1] + GeodesicLine.distanceM(line.get(i - 1), line.get(i));
        return along;
    }

    private RoutesAnswer.Route route(Way way, Places.PositionEntry base) {
        Party called = new Party(
                base.name(),
                Optional.empty(),
                base.at(),
                scene.end(base.loadout().map(scene::loadout).orElseGet(scene::controlLoadout)),
                1,
                scene.headingDeg(base),
                true);
        LinkEnd end = scene.end(way.loadout());
        int steps = (int) Math.max(1, Math.min(MOST_POINTS, Math.ceil(way.lengthM() / LEAST_STEP_M)));
        List<RoutesAnswer.Point> points = new ArrayList<>();
        for (int i = 0; i <= steps; i++) {
            progress.goOn();
            double along = way.lengthM() * i / steps;
            Position at = way.at(along);
            Optional<HopPath.HopOdds> odds = odds(new Party(way.entry().name(), at, end), called);
            points.add(new RoutesAnswer.Point(way.time(along), along, at, odds, contact(odds)));
        }
        return new RoutesAnswer.Route(way.entry().name(), way.loadout().name(), way.isUtc(), points, stretches(points));
    }

    private Optional<HopPath.HopOdds> odds(Party a, Party b) {
        return scene.tiles().at(a.at()).isVoid() || scene.tiles().at(b.at()).isVoid()
                ? Optional.empty()
                : book.talk(a, b).map(TalkBook.Talk::odds);
    }

    private Contact contact(Optional<HopPath.HopOdds> odds) {
        if (odds.isEmpty()) return Contact.UNKNOWN;
        if (odds.get().weaker() < wanted) return Contact.SILENT;
        return odds.get().pessimistic() >= wanted ? Contact.SURE : Contact.LIKELY;
    }

    private static List<RoutesAnswer.Stretch> stretches(List<RoutesAnswer.Point> points) {
        List<RoutesAnswer.Stretch> stretches = new ArrayList<>();
        RoutesAnswer.Point from = points.get(0);
        for (RoutesAnswer.Point point : points) {
            if (point.contact() == from.contact()) continue;
            stretches.add(new RoutesAnswer.Stretch(from.contact(), from, point));
            from = point;
        }
        stretches.add(new RoutesAnswer.Stretch(from.contact(), from, points.get(points.size() - 1)));
        return stretches;
    }

    private List<RoutesAnswer.Meeting> meetings(List<Way> ways) {
        List<RoutesAnswer.Meeting> meetings = new ArrayList<>();
        for (int i = 0; i < ways.size(); i++)
            for (int j = i + 1; j < ways.size(); j++) {
                Way a = ways.get(i);
                Way b = ways.get(j);
                if (a.timeS().isEmpty() || b.timeS().isEmpty())
                    warnings.add(a.entry().name() + " and " + b.entry().name() + " are not held together: "
                            + (a.timeS().isEmpty() ? a : b).entry().name() + " has no times.");
                else if (a.isUtc() != b.isUtc())
                    warnings.add(
                            a.entry().name() + " and " + b.entry().name()
                                    + " go by different clocks, one by its track in UTC and one by start: they are not held together.");
                else
                    meeting(a, b)
                            .ifPresentOrElse(
                                    meetings::add,
                                    () -> apart.add(new RoutesAnswer.Apart(
                                            a.entry().name(),
                                            a.span(),
                                            b.entry().name(),
                                            b.span(),
                                            a.isUtc())));
            }
        return meetings;
    }

    /** Nothing where they are never on the way at once; who goes past midnight meets who starts after it. */
    private Optional<RoutesAnswer.Meeting> meeting(Way a, Way b) {
        Optional<RoutesAnswer.Meeting> meeting = sameDay(a, b);
        if (meeting.isEmpty() && a.passesMidnight()) meeting = sameDay(a, b.nextDay());
        if (meeting.isEmpty() && b.passesMidnight()) meeting = sameDay(a.nextDay(), b);
        return meeting;
    }

    private Optional<RoutesAnswer.Meeting> sameDay(Way a, Way b) {
        double from = Math.max(a.span().fromS(), b.span().fromS());
        double to = Math.min(a.span().toS(), b.span().toS());
        if (to <= from) return Optional.empty();
        LinkEnd endA = scene.end(a.loadout());
        LinkEnd endB = scene.end(b.loadout());
        List<RoutesAnswer.Window> windows = new ArrayList<>();
        double open = Double.NaN;
        for (int i = 0; i <= MEETING_STEPS; i++) {
            progress.goOn();
            double time = from + (to - from) * i / MEETING_STEPS;
            Party one = new Party(a.entry().name(), a.at(a.along(time)), endA);
            Party other = new Party(b.entry().name(), b.at(b.along(time)), endB);
            boolean talk = contact(odds(one, other)).isTalk();
            if (talk && Double.isNaN(open)) open = time;
            if (!Double.isNaN(open) && (!talk || i == MEETING_STEPS)) {
                windows.add(new RoutesAnswer.Window(open, time));
                open = Double.NaN;
            }
        }
        return Optional.of(new RoutesAnswer.Meeting(a.entry().name(), b.entry().name(), a.isUtc(), from, to, windows));
    }
}
