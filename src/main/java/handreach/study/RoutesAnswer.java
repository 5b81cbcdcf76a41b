package handreach.study;

import handreach.geodesy.Position;
import handreach.relay.HopPath;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * When people on the move can talk: with the base, and two routes with one another.
 *
 * @param base who is called; empty where the plan has nobody, and then no route is computed
 * @param routes those that say when people go, in the plan's order
 * @param meetings every two of them that are on the way at once
 * @param apart every two of them that are never on the way at once
 * @param warnings what was doubtful
 */
public record RoutesAnswer(
        Optional<String> base, List<Route> routes, List<Meeting> meetings, List<Apart> apart, List<String> warnings) {
    /** How it stands with contact. */
    public enum Contact {
        /** The wanted odds both ways, at the pessimistic end, too. */
        SURE,
        /** The wanted odds both ways. */
        LIKELY,
        SILENT,
        /** Over unknown ground. */
        UNKNOWN;

        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }

        /** Whether the wanted odds are there. */
        public boolean isTalk() {
            return this == SURE || this == LIKELY;
        }
    }

    /**
     * A route.
     *
     * @param name in the plan
     * @param loadout what is carried
     * @param isUtc whether its times are those of the track, UTC; else the crew's own clock
     * @param points evenly along it
     * @param stretches that make it up, in order
     */
    public record Route(String name, String loadout, boolean isUtc, List<Point> points, List<Stretch> stretches) {
        public Route {
            points = List.copyOf(points);
            stretches = List.copyOf(stretches);
        }

        /** The first and the last place from which contact is sure. */
        public Optional<Point> sure(boolean isFirst) {
            return points.stream()
                    .filter(point -> point.contact() == Contact.SURE)
                    .reduce((one, other) -> isFirst ? one : other);
        }

        /** The next place from which contact is sure, at this one or after it. */
        public Optional<Point> nextSure(double alongM) {
            return points.stream()
                    .filter(point -> point.alongM() >= alongM && point.contact() == Contact.SURE)
                    .findFirst();
        }

        /** The last place before this one from which contact is sure. */
        public Optional<Point> lastSure(double alongM) {
            return points.stream()
                    .filter(point -> point.alongM() < alongM && point.contact() == Contact.SURE)
                    .reduce((one, other) -> other);
        }
    }

    /**
     * A place on the way.
     *
     * @param timeS when: s since midnight by the crew's clock, or since 1970 UTC; empty where it is not known
     * @param alongM from the start, m
     * @param at where
     * @param odds there is towards the base; empty over unknown ground
     * @param contact what they amount to
     */
    public record Point(
            OptionalDouble timeS, double alongM, Position at, Optional<HopPath.HopOdds> odds, Contact contact) {}

    /**
     * A part of the way with the same contact: from its first point to the first of the next.
     *
     * @param contact of all its points
     * @param from its first point
     * @param to the first point of the next, or the end of the way
     */
    public record Stretch(Contact contact, Point from, Point to) {
        public double lengthM() {
            return to.alongM() - from.alongM();
        }
    }

    /**
     * Two routes at once.
     *
     * @param a name of the first
     * @param b name of the second
     * @param isUtc as of the routes
     * @param fromS from when both are on the way
     * @param toS until when
     * @param windows when they have the wanted odds both ways
     */
    public record Meeting(String a, String b, boolean isUtc, double fromS, double toS, List<Window> windows) {
        public Meeting {
            windows = List.copyOf(windows);
        }
    }

    /**
     * Two routes that are never on the way at once.
     *
     * @param a name of the first
     * @param first when it goes
     * @param b name of the second
     * @param second when that goes
     * @param isUtc as of the routes
     */
    public record Apart(String a, Window first, String b, Window second, boolean isUtc) {}

    /** A time span, s. */
    public record Window(double fromS, double toS) {}

    public RoutesAnswer {
        routes = List.copyOf(routes);
        meetings = List.copyOf(meetings);
        apart = List.copyOf(apart);
        warnings = List.copyOf(warnings);
    }
}
