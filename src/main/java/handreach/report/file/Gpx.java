package handreach.report.file;

import handreach.report.draw.Typeface;
import handreach.report.figure.MapPlace;
import io.jenetics.jpx.GPX;
import io.jenetics.jpx.Route;
import io.jenetics.jpx.WayPoint;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;

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
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            GPX.Writer.of(new GPX.Writer.Indent("  ")).write(gpx.build(), out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString(StandardCharsets.UTF_8);
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
