package handreach.desktop;

import handreach.input.SourceText;
import handreach.input.Table;
import handreach.plan.PlanText;
import handreach.terrain.AreaPolygons;
import handreach.walk.GpxTrack;
import handreach.walk.TrackPoint;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import javafx.beans.value.ObservableValue;
import org.locationtech.jts.geom.Geometry;

/** Takes tracks, waypoints and polygons into the plan. Reads first, so that a file's faults are told before anybody chooses. */
final class ImportFiles {
    private final Session session;

    ImportFiles(Session session) {
        this.session = session;
    }

    /** What undo would take back: the proof that an edit was taken. */
    ObservableValue<Optional<String>> lastEdit() {
        return session.undoable();
    }

    /** A log of reports, with the tracks that may belong to it. */
    record Log(Path file, List<Path> tracks) {}

    /** Tells logs of walks from readings of the bench by their column names, and hands on each to its own. */
    void readCsv(Path file, Consumer<Log> walked, Consumer<Path> measured) {
        Path folder = session.scene().get() == null
                ? file.toAbsolutePath().getParent()
                : session.scene().get().file().folder();
        session.worker()
                .inOrder(
                        () -> isLog(file)
                                ? Optional.of(new Log(file, beside(file, folder, ".gpx")))
                                : Optional.<Log>empty(),
                        log -> log.ifPresentOrElse(walked, () -> measured.accept(file)),
                        session::tell);
    }

    private static boolean isLog(Path file) {
        List<String> columns = Table.headsOf(SourceText.readTable(file));
        return !columns.contains("antenna")
                && columns.stream()
                        .anyMatch(List.of("copy", "readability", "level_dbm", "sinad_db", "direction")::contains);
    }

    /** What was read of a GPX file. */
    record Gpx(Path file, GpxTrack track, List<Path> logs) {}

    void readGpx(Path file, Consumer<Gpx> then) {
        if (session.scene().get() == null) return;
        Path folder = session.scene().get().file().folder();
        session.worker()
                .inOrder(
                        () -> new Gpx(file, GpxTrack.read(file), beside(file, folder, ".csv")),
                        read -> {
                            read.track().notes().stream()
                                    .filter(note -> read.track().waypoints().isEmpty())
                                    .forEach(note -> session.tell(Notice.remark(note)));
                            then.accept(read);
                        },
                        session::tell);
    }

    /** Files of a kind that may belong to one: those beside it and beside the plan. */
    private static List<Path> beside(Path file, Path folder, String ending) {
        return Stream.of(file.toAbsolutePath().getParent(), folder.toAbsolutePath())
                .distinct()
                .flatMap(each -> filesIn(each, ending))
                .distinct()
                .toList();
    }

    private static Stream<Path> filesIn(Path folder, String ending) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.getFileName().toString().endsWith(ending)).sorted().toList().stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    void readAreas(Path file, Consumer<Geometry> then) {
        if (session.scene().get() == null) return;
        session.worker().inOrder(() -> AreaPolygons.read(file), then, session::tell);
    }

    /** Waypoints become positions; a name that is taken gets a number. */
    void positions(List<TrackPoint> waypoints) {
        Set<String> taken = new HashSet<>(names());
        session.edit("bring in positions", plan -> {
            String text = plan;
            for (TrackPoint point : waypoints)
                text = PlanText.withEntry(
                        text,
                        "position",
                        List.of(
                                "name = " + PlanText.quoted(free(taken, point.name(), "place")),
                                "at = " + PlanText.place(point.at())));
            return text;
        });
    }

    /** People who move along the track. */
    void route(Path file) {
        mover(file, "route", "file");
    }

    /** A walk that was made, with the log of its reports; without a track the log says where. */
    void walk(Optional<Path> track, Path log) {
        Set<String> taken = new HashSet<>(session.scene().get().plan().questions().walks().stream()
                .map(walk -> walk.name())
                .toList());
        Path folder = session.scene().get().file().folder();
        session.worker()
                .inOrder(
                        () -> {
                            List<String> lines = new ArrayList<>();
                            lines.add("name = " + PlanText.quoted(free(taken, stem(track.orElse(log)), "walk")));
                            if (track.isPresent()) lines.add("track = " + PlanText.quoted(beside(folder, track.get())));
                            lines.add("reports = " + PlanText.quoted(beside(folder, log)));
                            return lines;
                        },
                        lines -> session.edit("bring in a walk", plan -> PlanText.withEntry(plan, "walk", lines)),
                        session::tell);
    }

    /** People who move anywhere within the polygons. */
    void sector(Path file) {
        mover(file, "sector", "polygon");
    }

    /** An entry of this kind, with a free name after the file that its key names. */
    private void mover(Path file, String kind, String key) {
        Set<String> taken = new HashSet<>(names());
        refer(
                file,
                "bring in a " + kind,
                named -> plan -> PlanText.withEntry(
                        plan,
                        kind,
                        List.of(
                                "name = " + PlanText.quoted(free(taken, stem(file), kind)),
                                key + " = " + PlanText.quoted(named))));
    }

    /** A file that a key of a plain section names. */
    void key(Path file, String what, String section, String key) {
        refer(file, what, named -> plan -> PlanText.withValue(plan, section, key, PlanText.quoted(named)));
    }

    private interface Naming {
        UnaryOperator<String> edit(String named);
    }

    private void refer(Path file, String what, Naming naming) {
        Path folder = session.scene().get().file().folder();
        session.worker()
                .inOrder(() -> beside(folder, file), named -> session.edit(what, naming.edit(named)), session::tell);
    }

    /** How the plan names a file: from its own folder; a file from elsewhere is copied there under a free name first. */
    private static String beside(Path planFolder, Path file) {
        Path folder = planFolder.toAbsolutePath().normalize();
        Path from = file.toAbsolutePath().normalize();
        if (from.startsWith(folder)) return slashed(folder.relativize(from));
        String name = from.getFileName().toString();
        int dot = name.lastIndexOf('.');
        try {
            for (int number = 1; ; number++) {
                Path to = folder.resolve(
                        number == 1 ? name : name.substring(0, dot) + "-" + number + name.substring(dot));
                if (Files.isRegularFile(to) && Files.mismatch(from, to) < 0) return slashed(to.getFileName());
                try {
                    Files.copy(from, to);
                    return slashed(to.getFileName());
                } catch (FileAlreadyExistsException taken) {
                    continue;
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String slashed(Path path) {
        return path.toString().replace('\\', '/');
    }

    private static String stem(Path file) {
        String name = file.getFileName().toString();
        return name.substring(0, name.lastIndexOf('.'));
    }

    private Set<String> names() {
        Set<String> names = new HashSet<>();
        var places = session.scene().get().plan().places();
        places.positions().forEach(entry -> names.add(entry.name()));
        places.routes().forEach(entry -> names.add(entry.name()));
        places.sectors().forEach(entry -> names.add(entry.name()));
        return names;
    }

    /** A name nobody has yet; from then on it is taken. */
    private static String free(Set<String> taken, String wanted, String otherwise) {
        String base = wanted.isBlank() ? otherwise : wanted.strip();
        String name = base;
        for (int number = 2; !taken.add(name); number++) name = base + " " + number;
        return name;
    }
}
