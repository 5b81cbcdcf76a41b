package handreach.study;

import handreach.geodesy.Compass;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.input.Faults;
import handreach.plan.Places;
import handreach.reach.Progress;
import handreach.walk.GpxTrack;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Places at a fixed step along what could be walked: given tracks, or straight lines from the base where none are given. */
final class WalkTracks {
    /** Most places looked at; longer tracks get a wider step. */
    private static final int MOST_SPOTS = 300;

    private static final int BEARINGS = 8;
    private static final int FEW_PLACES = 3;

    private WalkTracks() {}

    /** A line with a name. */
    record Line(String name, List<Position> points) {
        double lengthM() {
            double sum = 0;
            for (int i = 1; i < points.size(); i++) sum += GeodesicLine.distanceM(points.get(i - 1), points.get(i));
            return sum;
        }
    }

    /** A place on a line. */
    record Place(String track, double alongM, Position at) {}

    /** Unbroken lines of GPX files; all files that look exchanged are told together. */
    static List<Line> given(List<Path> files, Position area, Progress progress) {
        List<Line> lines = new ArrayList<>();
        Faults faults = new Faults();
        for (Path file : files) {
            GpxTrack track = GpxTrack.read(file, progress);
            track.swapHint(area).ifPresent(words -> faults.add(track.name(), 0, words));
            for (List<Position> points : track.lines()) lines.add(new Line(track.name(), points));
        }
        faults.throwIfAny();
        return lines;
    }

    /** Straight lines to the other positions, and on eight bearings where those are few. */
    static List<Line> straight(Scene scene, WalkBase base) {
        List<Line> lines = new ArrayList<>();
        for (Places.PositionEntry entry : scene.plan().places().positions())
            if (!base.name().equals(Optional.of(entry.name())))
                lines.add(new Line("towards " + entry.name(), List.of(base.at(), entry.at())));
        if (lines.size() >= FEW_PLACES) return lines;
        double radiusM = 1000 * scene.plan().places().area().radiusKm();
        for (int b = 0; b < BEARINGS; b++) {
            double azimuth = 360.0 * b / BEARINGS;
            lines.add(new Line(
                    "towards the " + Compass.word(azimuth),
                    List.of(base.at(), GeodesicLine.destination(base.at(), azimuth, radiusM))));
        }
        return lines;
    }

    /** Places at an even step; the way goes on counting from line to line of one name. */
    static List<Place> places(List<Line> lines, double leastStepM) {
        double whole = lines.stream().mapToDouble(Line::lengthM).sum();
        double stepM = Math.max(leastStepM, whole / MOST_SPOTS);
        List<Place> places = new ArrayList<>();
        String name = "";
        double startM = 0;
        for (Line line : lines) {
            if (!line.name().equals(name)) startM = 0;
            name = line.name();
            startM += along(line, stepM, startM, places);
        }
        return places;
    }

    private static double along(Line line, double stepM, double startM, List<Place> places) {
        List<Position> points = line.points();
        places.add(new Place(line.name(), startM, points.get(0)));
        double walkedM = 0;
        double nextM = stepM;
        for (int i = 1; i < points.size(); i++) {
            GeodesicLine leg = GeodesicLine.between(points.get(i - 1), points.get(i));
            for (; nextM <= walkedM + leg.lengthM(); nextM += stepM)
                places.add(new Place(line.name(), startM + nextM, leg.at(nextM - walkedM)));
            walkedM += leg.lengthM();
        }
        return walkedM;
    }
}
