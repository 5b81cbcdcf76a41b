package handreach.walk;

import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.input.SourceText;
import io.jenetics.jpx.GPX;
import io.jenetics.jpx.WayPoint;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Lines out of a GPX file (1.0 and 1.1): segments of tracks, and routes. */
public final class GpxTrack {
    private GpxTrack() {}

    /**
     * The lines of a file, each a row of at least one position.
     *
     * @shape file in, lines out
     * @unit degrees
     * @valid well-formed GPX with at least one track or route point and no document type; else {@link InputFault}
     * @error none; elevations and times in the file are not used
     * @source GPX 1.1 schema
     */
    public static List<List<Position>> lines(Path file) {
        SourceText source = SourceText.read(file);
        // A document type could name other files; no navigator writes one.
        if (source.text().toUpperCase(Locale.ROOT).contains("<!DOCTYPE"))
            throw new InputFault(source.name(), 0, "has a document type, which GPX has not. Export the track again.");
        GPX gpx;
        try {
            gpx = GPX.Reader.of(GPX.Reader.Mode.LENIENT)
                    .read(new ByteArrayInputStream(source.text().getBytes(StandardCharsets.UTF_8)));
        } catch (IOException | RuntimeException e) {
            String reason = Optional.ofNullable(e.getMessage()).orElse("cannot be read").lines().findFirst().orElse("");
            throw new InputFault(source.name(), 0, "is not GPX (" + reason + "). Export the track as GPX 1.1.");
        }
        List<List<Position>> lines = new ArrayList<>();
        gpx.tracks().flatMap(track -> track.segments()).forEach(segment -> add(lines, segment.getPoints()));
        gpx.routes().forEach(route -> add(lines, route.getPoints()));
        if (lines.isEmpty())
            throw new InputFault(source.name(), 0, "has no track and no route, at least one is needed. Export the track, not waypoints.");
        return lines;
    }

    private static void add(List<List<Position>> lines, List<WayPoint> points) {
        if (points.isEmpty()) return;
        lines.add(points.stream()
                .map(p -> new Position(p.getLatitude().doubleValue(), p.getLongitude().doubleValue()))
                .toList());
    }
}
