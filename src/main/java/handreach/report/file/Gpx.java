package handreach.report.file;

import handreach.geodesy.Position;
import handreach.report.draw.Typeface;
import handreach.report.figure.MapPlace;
import io.jenetics.jpx.GPX;
import io.jenetics.jpx.Route;
import io.jenetics.jpx.TrackSegment;
import io.jenetics.jpx.WayPoint;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Places and an order to visit them for handheld navigators: GPX 1.1. */
public final class Gpx {
    private Gpx() {}

    /**
     * The text of a GPX file.
     *
     * @param places waypoints
     * @param routeName name of the route, used only if there is one
     * @param route places in the order of visit, may be empty
     */
    public static String text(List<MapPlace> places, String routeName, List<MapPlace> route) {
        GPX.Builder gpx = GPX.builder(GPX.Version.V11, "Handreach");
        for (MapPlace place : places) gpx.addWayPoint(point(place));
        if (!route.isEmpty())
            gpx.addRoute(Route.builder()
                    .name(legal(routeName))
                    .points(route.stream().map(Gpx::point).toList())
                    .build());
        return written(gpx);
    }

    private static String written(GPX.Builder gpx) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            GPX.Writer.of(new GPX.Writer.Indent("  ")).write(gpx.build(), out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString(StandardCharsets.UTF_8);
    }

    /**
     * A place on a track, or one to be marked.
     *
     * @param at where
     * @param name what is shown there
     * @param about what is to be known of it; may be empty
     * @param time when, where that is known with its day
     */
    public record Mark(Position at, String name, String about, Optional<Instant> time) {}

    /** Places in the order they are passed. */
    public record Track(String name, List<Mark> points) {
        public Track {
            points = List.copyOf(points);
        }
    }

    /** The text of a file of marks and tracks, with a sentence about all of it. */
    public static String text(String about, List<Mark> marks, List<Track> tracks) {
        GPX.Builder gpx = GPX.builder(GPX.Version.V11, "Handreach");
        gpx.metadata(metadata -> metadata.desc(legal(about)));
        for (Mark mark : marks) gpx.addWayPoint(point(mark, true));
        for (Track track : tracks)
            gpx.addTrack(io.jenetics.jpx.Track.builder()
                    .name(legal(track.name()))
                    .addSegment(TrackSegment.of(track.points().stream()
                            .map(point -> point(point, false))
                            .toList()))
                    .build());
        return written(gpx);
    }

    private static WayPoint point(Mark mark, boolean isNamed) {
        WayPoint.Builder point =
                WayPoint.builder().lat(mark.at().latitudeDeg()).lon(mark.at().longitudeDeg());
        mark.time().ifPresent(point::time);
        if (isNamed) point.name(legal(mark.name()));
        if (!mark.about().isBlank()) point.desc(legal(mark.about()));
        return point.build();
    }

    private static WayPoint point(MapPlace place) {
        String kind = place.kind().name().toLowerCase(Locale.ROOT);
        return WayPoint.builder()
                .lat(place.position().latitudeDeg())
                .lon(place.position().longitudeDeg())
                .name(place.label().isBlank() ? kind : legal(place.label()))
                .type(kind)
                .build();
    }

    private static String legal(String words) {
        return Typeface.clean(words);
    }
}
