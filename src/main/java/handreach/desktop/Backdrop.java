package handreach.desktop;

import handreach.cartography.MapFrame;
import handreach.input.InputFault;
import handreach.reach.Progress;
import handreach.study.Scene;
import handreach.terrain.GroundPicture;
import handreach.terrain.NamedPoints;
import handreach.terrain.NamedPoints.NamedPoint;
import handreach.terrain.PictureWindow;
import handreach.walk.GpxTrack;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.application.Platform;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleDoubleProperty;

/**
 * What the user laid under the reach from files of his own: a map picture, and names of places. To look at; nothing is computed from
 * it, and it is no part of the plan. Lives on the screen thread.
 */
final class Backdrop {
    static final double USUAL_STRENGTH = 0.7;
    private static final String FILE = "backdrop";
    private static final String STRENGTH = "backdrop-strength";
    private static final String NAMES_FILE = "names";

    private final Session session;
    private final ReadOnlyObjectWrapper<Optional<Laid<GroundPicture>>> picture =
            new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<Laid<List<NamedPoint>>>> names =
            new ReadOnlyObjectWrapper<>(Optional.empty());
    private final DoubleProperty strength = new SimpleDoubleProperty(USUAL_STRENGTH);

    /** What was read, and the file that it is from. */
    record Laid<T>(Path file, T what) {}

    Backdrop(Session session) {
        this.session = session;
    }

    ReadOnlyObjectProperty<Optional<Laid<GroundPicture>>> picture() {
        return picture.getReadOnlyProperty();
    }

    ReadOnlyObjectProperty<Optional<Laid<List<NamedPoint>>>> names() {
        return names.getReadOnlyProperty();
    }

    /** How strongly the picture stands against the relief, 0 to 1. */
    DoubleProperty strength() {
        return strength;
    }

    /** Lays a picture under the reach; what it cannot read is told, and what lies there stays. */
    void lay(Path file) {
        read(file, GroundPicture::open, laid -> {
            picture.set(Optional.of(laid));
            tellWhereItIsNot(laid.what());
        });
    }

    private void tellWhereItIsNot(GroundPicture laid) {
        Scene scene = session.scene().get();
        if (scene == null) return;
        var centre = scene.plan().places().area().centre();
        if (!laid.bounds().holds(centre.latitudeDeg(), centre.longitudeDeg()))
            session.tell(Notice.remark(
                    laid.name() + " does not show the middle of the area of this plan. It lies there all the same."));
    }

    /** Writes the named points of a GPX or GeoJSON file on the map. */
    void name(Path file) {
        read(file, Backdrop::namesOf, laid -> {
            names.set(Optional.of(laid));
            session.tell(Notice.done(laid.what().size() + " names of " + file.getFileName()
                    + " stand on the map, where there is room."));
        });
    }

    private static List<NamedPoint> namesOf(Path file) {
        if (!file.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(".gpx")) return NamedPoints.read(file);
        List<NamedPoint> named = GpxTrack.read(file).waypoints().stream()
                .filter(point -> !point.name().isBlank())
                .map(point -> new NamedPoint(point.name(), point.at()))
                .toList();
        if (named.isEmpty())
            throw new InputFault(
                    String.valueOf(file.getFileName()),
                    0,
                    "has no waypoint with a name. Export waypoints, not a track.");
        return named;
    }

    private <T> void read(Path file, Function<Path, T> reader, Consumer<Laid<T>> then) {
        Path whole = file.toAbsolutePath();
        session.worker().inOrder(() -> new Laid<>(whole, reader.apply(whole)), then, session::tell);
    }

    void takePictureAway() {
        picture.set(Optional.empty());
    }

    void takeNamesAway() {
        names.set(Optional.empty());
    }

    /**
     * The picture in the pixels of a map, away from the screen thread; empty where there is none. A file that turns out damaged is
     * told once and taken away.
     */
    Optional<int[]> under(MapFrame frame, Optional<Laid<GroundPicture>> laid, Progress progress) {
        if (laid.isEmpty()) return Optional.empty();
        try {
            return Optional.of(laid.get().what().argb(window(frame), progress::goOn));
        } catch (InputFault damaged) {
            Platform.runLater(() -> {
                if (!picture.get().equals(laid)) return;
                takePictureAway();
                session.tell(damaged);
            });
            return Optional.empty();
        }
    }

    private static PictureWindow window(MapFrame frame) {
        return new PictureWindow(
                frame.northDeg(),
                frame.westDeg(),
                frame.degreesNorthPerPx(),
                frame.degreesEastPerPx(),
                frame.widthPx(),
                frame.heightPx());
    }

    /** Lays what the last window had, where its file is still there. */
    void recall(WindowMemory memory) {
        memory.number(STRENGTH).ifPresent(percent -> strength.set(Math.max(0, Math.min(1, percent / 100))));
        kept(memory, FILE).ifPresent(this::lay);
        kept(memory, NAMES_FILE).ifPresent(file -> read(file, Backdrop::namesOf, laid -> names.set(Optional.of(laid))));
    }

    private static Optional<Path> kept(WindowMemory memory, String word) {
        try {
            return memory.text(word).map(Path::of).filter(Files::isRegularFile);
        } catch (InvalidPathException e) {
            return Optional.empty();
        }
    }

    void remember(WindowMemory memory) {
        memory.keep(STRENGTH, 100 * strength.get());
        memory.keep(FILE, picture.get().map(laid -> laid.file().toString()).orElse(""));
        memory.keep(NAMES_FILE, names.get().map(laid -> laid.file().toString()).orElse(""));
    }
}
