package handreach.desktop;

import handreach.cartography.MapFrame;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.plan.Places;
import handreach.study.Scene;
import handreach.terrain.Elevation;
import handreach.terrain.GroundPicture;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.application.Platform;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.collections.FXCollections;
import javafx.collections.ListChangeListener;
import javafx.collections.ObservableList;
import javafx.geometry.Bounds;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.image.ImageView;
import javafx.scene.layout.Pane;
import javafx.scene.paint.Color;
import javafx.scene.shape.Rectangle;
import javafx.util.Duration;
import org.locationtech.jts.geom.Envelope;

/**
 * The ground: relief with a layer on it, ink on top. Knows where it looks and how to draw; what hands do to it is
 * {@link MapGestures}'s.
 */
final class MapView extends Pane {
    private static final double FINEST_M_PER_PX = 0.5;
    private static final double COARSEST_M_PER_PX = 2000;
    /** Room for words and the layer bar at the edge of the map. */
    private static final double MARGIN_PX = 80;
    /** Edge that tells that the keys move the map. */
    private static final double RING_PX = 2.5;
    /** What the whole area keeps from the edge, and how much larger than it its room is. */
    private static final double EDGE_PX = 20;

    private static final double ROOM = 1.03;
    /** Positions farther from the middle than this many radii are pointed to, not shown. */
    private static final double FAR_RADII = 3;
    /** Usual sizes of the bar and the key, until they are there. */
    private static final double BAR_PX = 660;

    private static final double KEY_WIDE_PX = 300;
    private static final double KEY_HIGH_PX = 260;
    /** How far the relief is painted beyond the window, so that a pan shows ground at once. */
    private static final double BEYOND = 1.3;

    private final Worker.LatestOnly painting;
    private final Session session;
    private final Worker.LatestOnly composing;
    private final ImageView sheet = new ImageView();
    private final DoubleProperty strength = new SimpleDoubleProperty(1);
    private final Backdrop backdrop;
    private final Canvas ink = new Canvas();
    private List<MapPen.Written> names = List.of();
    private List<Envelope> said = List.of();
    private final ObservableList<MapOverlay> overlays = FXCollections.observableArrayList();
    private final List<Node> over = new ArrayList<>();
    private final ReadOnlyObjectWrapper<MapFrame> frame = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyObjectWrapper<Relief> painted = new ReadOnlyObjectWrapper<>();
    private final Worker.Debounce rest;
    private final Worker.Debounce refit;
    private Optional<LayerRaster> overlay = Optional.empty();
    private Elevation ground;
    private Position centre = new Position(0, 0);
    private double metresPerPx = 30;
    private boolean isDrawPending;
    /** The plan whose whole area is shown, also one that came before the map had a size; null once the hand has moved the map. */
    private Scene fitted;
    /** Whether the whole area was fitted before what lies over the map had taken its place. */
    private boolean isFitRough;
    /** Whether all that lies over the map has come. */
    private boolean isFurnished;

    private Lengths lengths = Lengths.METRIC;
    /** Where the picture on the screen belongs; null while there is none. */
    private MapFrame shown;

    private final ReadOnlyObjectWrapper<MapRaster> laid = new ReadOnlyObjectWrapper<>();
    private Runnable firstPicture = () -> {};

    MapView(Session session) {
        this.session = session;
        this.backdrop = new Backdrop(session);
        this.rest = session.worker().debounce(Duration.millis(90), this::paintRelief);
        // What lies over the map takes its new place after the map has.
        this.refit = session.worker().debounce(Duration.millis(120), this::fitAgain);
        this.painting = session.worker().latestOnly();
        this.composing = session.worker().latestOnly();
        getStyleClass().add("ground");
        setFocusTraversable(true);
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        setAccessibleText("Map of the area. Arrow keys move it, plus and minus zoom, Home shows the whole area.");
        sheet.setPreserveRatio(false);
        sheet.setManaged(false);
        ink.setManaged(false);
        ink.setMouseTransparent(true);
        getChildren().addAll(sheet, ink);
        Rectangle window = new Rectangle();
        window.widthProperty().bind(widthProperty());
        window.heightProperty().bind(heightProperty());
        setClip(window);
        widthProperty().addListener((size, before, now) -> reframe());
        heightProperty().addListener((size, before, now) -> reframe());
        overlays.addListener((ListChangeListener<MapOverlay>) change -> redraw());
        session.palette().addListener((which, before, now) -> restyle());
        session.moving().addListener((moving, before, now) -> {
            if (now.isEmpty()) keepWhole();
        });
        strength.addListener((value, before, now) -> compose());
        backdrop.strength().addListener((value, before, now) -> compose());
        backdrop.picture().addListener((laid, before, now) -> paintRelief());
        backdrop.names().addListener((laid, before, now) -> redraw());
        focusVisibleProperty().addListener((focus, was, is) -> redraw());
        session.fonts().addListener((size, before, now) -> redraw());
    }

    /** What is drawn on top, in this order. */
    ObservableList<MapOverlay> overlays() {
        return overlays;
    }

    /** The hand in which words stand on the map. */
    ObjectProperty<MapFonts> fonts() {
        return session.fonts();
    }

    ReadOnlyObjectProperty<MapFrame> frame() {
        return frame.getReadOnlyProperty();
    }

    /** The relief last painted; null before the first. */
    ReadOnlyObjectProperty<Relief> painted() {
        return painted.getReadOnlyProperty();
    }

    ObjectProperty<Palette> palette() {
        return session.palette();
    }

    /** Map picture and names out of the user's own files. */
    Backdrop backdrop() {
        return backdrop;
    }

    /** How strongly the layer lies on the relief, 0 to 1. */
    DoubleProperty layerStrength() {
        return strength;
    }

    /** Takes the ground of a plan; looks at its whole area if it lies elsewhere. */
    void show(Scene scene) {
        boolean isNew = ground != scene.tiles();
        boolean isOtherUnit = lengths != scene.plan().header().lengths();
        ground = scene.tiles();
        lengths = scene.plan().header().lengths();
        if (isNew) {
            painted.set(null);
            sheet.setImage(null);
            shown = null;
            lookAt(scene);
            return;
        }
        if (fitted != null) fitted = scene;
        if (isOtherUnit) paintRelief();
    }

    /** The whole area of a plan with all positions near it, as large as the free part of the map allows; stays so in another size. */
    void lookAt(Scene scene) {
        if (isSized()) fit(scene);
        fitted = scene;
    }

    /** Waits until sizes have come to rest, then brings out what they hide of the whole area. */
    private void keepWhole() {
        isFurnished |= !over.isEmpty() && over.stream().allMatch(Node::isVisible);
        if (fitted != null) refit.begin();
    }

    /** The map stays under a hand that draws a mark over it. */
    private void fitAgain() {
        if (fitted == null || session.moving().get().isPresent()) return;
        layOutWhatLiesOver();
        if (isFitRough || isPartHidden(fitted)) lookAt(fitted);
    }

    /** Whether something that lies over the map hides a part of the whole area; where a hand has put it, it may. */
    private boolean isPartHidden(Scene scene) {
        MapFrame now = frame.get();
        Position middle = scene.plan().places().area().centre();
        double x = now.xPx(middle.longitudeDeg());
        double y = now.yPx(middle.latitudeDeg());
        Envelope all = wholeM(scene);
        Envelope pixels = new Envelope(
                x + all.getMinX() / metresPerPx,
                x + all.getMaxX() / metresPerPx,
                y + all.getMinY() / metresPerPx,
                y + all.getMaxY() / metresPerPx);
        return over.stream()
                .filter(node -> node.isVisible() && node.getTranslateX() == 0 && node.getTranslateY() == 0)
                .map(this::room)
                .anyMatch(pixels::intersects);
    }

    /** The area with all positions near it, m east and south of its middle. */
    private static Envelope wholeM(Scene scene) {
        Position middle = scene.plan().places().area().centre();
        double radiusM = 1000 * scene.plan().places().area().radiusKm();
        MapFrame metres = metresAbout(middle);
        Envelope all = new Envelope(-radiusM, radiusM, -radiusM, radiusM);
        for (Places.PositionEntry entry : scene.plan().places().positions()) {
            double east = metres.xPx(entry.at().longitudeDeg()) - 1;
            double south = metres.yPx(entry.at().latitudeDeg()) - 1;
            // A typing error must not make the area a speck; the edge points to such a place.
            if (Math.hypot(east, south) <= FAR_RADII * radiusM) all.expandToInclude(east, south);
        }
        return all;
    }

    private static MapFrame metresAbout(Position middle) {
        return new MapFrame(middle, 1, 2, 2);
    }

    private void fit(Scene scene) {
        Position middle = scene.plan().places().area().centre();
        MapFrame metres = metresAbout(middle);
        Envelope all = wholeM(scene);
        Envelope whole = new Envelope(EDGE_PX, getWidth() - EDGE_PX, 1.5 * EDGE_PX, getHeight() - EDGE_PX);
        Envelope room = MapRoom.free(whole, sheets(), all.getWidth(), all.getHeight());
        double scale = ROOM * Math.max(all.getWidth() / room.getWidth(), all.getHeight() / room.getHeight());
        double east =
                all.centre().getX() + scale * (getWidth() / 2 - room.centre().getX());
        double south =
                all.centre().getY() + scale * (getHeight() / 2 - room.centre().getY());
        lookAt(
                new Position(
                        middle.latitudeDeg() - south * metres.degreesNorthPerPx(),
                        middle.longitudeDeg() + east * metres.degreesEastPerPx()),
                scale);
        isFitRough = !isFurnished;
    }

    /** What lies over the map; before it is there, what will. */
    private List<Envelope> sheets() {
        if (!isFurnished) {
            double lines = getWidth() < BAR_PX ? 2 : 1;
            return List.of(
                    new Envelope(0, Math.min(getWidth(), BAR_PX), 0, 34 + 42 * lines),
                    new Envelope(getWidth() - KEY_WIDE_PX, getWidth(), getHeight() - KEY_HIGH_PX, getHeight()));
        }
        return over.stream().filter(Node::isVisible).map(this::room).toList();
    }

    /** Another middle at the same scale, unless the place is well in view already. */
    void centreOn(Position at) {
        MapFrame now = frame.get();
        if (now == null) return;
        double x = now.xPx(at.longitudeDeg());
        double y = now.yPx(at.latitudeDeg());
        boolean isInView = x > 60 && y > 60 && x < now.widthPx() - 60 && y < now.heightPx() - 60;
        if (!isInView) lookAt(at, metresPerPx);
    }

    /** Another middle at the same scale. */
    void middleOn(Position at) {
        lookAt(at, metresPerPx);
    }

    void lookAt(Position at, double wantedMetresPerPx) {
        fitted = null;
        centre = at;
        metresPerPx = Math.max(FINEST_M_PER_PX, Math.min(COARSEST_M_PER_PX, wantedMetresPerPx));
        reframe();
    }

    /** Shows both places, moving and widening the view no more than that needs. */
    void bringIntoView(Position one, Position other) {
        if (frame.get() == null || (isWellInside(one) && isWellInside(other))) return;
        GeodesicLine between = GeodesicLine.between(one, other);
        double side = Math.max(120, Math.min(getWidth(), getHeight()) - 2 * MARGIN_PX);
        lookAt(between.at(between.lengthM() / 2), Math.max(metresPerPx, between.lengthM() / side));
    }

    private boolean isWellInside(Position at) {
        double x = frame.get().xPx(at.longitudeDeg());
        double y = frame.get().yPx(at.latitudeDeg());
        return x > MARGIN_PX && x < getWidth() - MARGIN_PX && y > MARGIN_PX && y < getHeight() - MARGIN_PX / 2;
    }

    /** Moves the ground under the window, px. */
    void pan(double rightPx, double downPx) {
        if (frame.get() == null) return;
        double latitude = frame.get().latitudeDeg(getHeight() / 2 - downPx);
        if (Math.abs(latitude) > 85) return;
        lookAt(new Position(latitude, frame.get().longitudeDeg(getWidth() / 2 - rightPx)), metresPerPx);
    }

    /** Zooms so that the ground under a pixel stays there. */
    void zoom(double factor, double xPx, double yPx) {
        if (frame.get() == null) return;
        double next = Math.max(FINEST_M_PER_PX, Math.min(COARSEST_M_PER_PX, metresPerPx / factor));
        double keep = next / metresPerPx;
        double middleX = xPx + (getWidth() / 2 - xPx) * keep;
        double middleY = yPx + (getHeight() / 2 - yPx) * keep;
        double latitude = frame.get().latitudeDeg(middleY);
        if (Math.abs(latitude) > 85) return;
        lookAt(new Position(latitude, frame.get().longitudeDeg(middleX)), next);
    }

    void showOverlay(Optional<LayerRaster> fresh) {
        overlay = fresh;
        compose();
    }

    Optional<LayerRaster> overlay() {
        return overlay;
    }

    private void restyle() {
        redraw();
        paintRelief();
    }

    private boolean isOtherSize() {
        return frame.get().widthPx() != (int) Math.ceil(getWidth())
                || frame.get().heightPx() != (int) Math.ceil(getHeight());
    }

    private boolean isSized() {
        return getWidth() >= 2 && getHeight() >= 2;
    }

    private void reframe() {
        if (!isSized()) return;
        if (fitted != null && (frame.get() == null || isOtherSize())) {
            lookAt(fitted);
            isFitRough = true;
            refit.begin();
            return;
        }
        try {
            frame.set(new MapFrame(centre, metresPerPx, (int) Math.ceil(getWidth()), (int) Math.ceil(getHeight())));
        } catch (IllegalArgumentException tooNearAPole) {
            return;
        }
        place();
        redraw();
        // The first picture waits for nothing; those after it for a hand at rest.
        if (painted.get() == null) paintRelief();
        else rest.begin();
    }

    /** Puts the pictures where they belong in the present frame; both are linear in degrees, so stretching is exact. */
    private void place() {
        MapFrame now = frame.get();
        if (now == null) return;
        if (shown == null) return;
        boolean isSameScale = shown.metresPerPx() == now.metresPerPx()
                && shown.centre().latitudeDeg() == now.centre().latitudeDeg();
        double width = (shown.eastDeg() - shown.westDeg()) / now.degreesEastPerPx();
        double height = (shown.northDeg() - shown.southDeg()) / now.degreesNorthPerPx();
        boolean isAlmostSame = Math.abs(width - shown.widthPx()) < 1 && Math.abs(height - shown.heightPx()) < 1;
        boolean isCopied = isSameScale || isAlmostSame;
        double x = now.xPx(shown.westDeg());
        double y = now.yPx(shown.northDeg());
        // Whole pixels and no stretching: the picture is copied, not resampled.
        sheet.setX(isCopied ? Math.rint(x) : x);
        sheet.setY(isCopied ? Math.rint(y) : y);
        sheet.setFitWidth(isCopied ? 0 : width);
        sheet.setFitHeight(isCopied ? 0 : height);
        // A stretched picture stands for a moment only, and takes longer to draw when smoothed.
        sheet.setSmooth(isCopied);
    }

    /** How layers are laid on the relief now. */
    MapRaster.Manner manner() {
        Palette palette = session.palette().get();
        return new MapRaster.Manner(
                strength.get(),
                palette.layerDarkens(),
                palette.edgeArgb(),
                backdrop.strength().get());
    }

    /** Lays the layer on the relief and shows both in one step. */
    private void compose() {
        Relief under = painted.get();
        if (under == null) return;
        Optional<LayerRaster> over = overlay;
        MapRaster.Manner manner = manner();
        composing.ask(
                progress -> MapRaster.of(under, over, manner),
                fresh -> {
                    shown = fresh.frame();
                    sheet.setImage(fresh.image());
                    place();
                    redraw();
                    laid.set(fresh);
                    firstPicture.run();
                    firstPicture = () -> {};
                },
                session::tell);
    }

    /** Relief and layer as they came to the screen last; null before the first. */
    ReadOnlyObjectProperty<MapRaster> laid() {
        return laid.getReadOnlyProperty();
    }

    /** What follows once there is something to look at. */
    void onFirstPicture(Runnable step) {
        firstPicture = step;
    }

    private void paintRelief() {
        if (ground == null || frame.get() == null) return;
        MapFrame now = frame.get();
        MapFrame wanted;
        try {
            double beyond = painted.get() == null ? 1 : BEYOND;
            wanted = new MapFrame(
                    now.centre(), now.metresPerPx(), (int) (now.widthPx() * beyond), (int) (now.heightPx() * beyond));
        } catch (IllegalArgumentException tooNearAPole) {
            return;
        }
        Elevation elevation = ground;
        Lengths style = lengths;
        Relief.Paper paper = session.palette().get().paper();
        Optional<Backdrop.Laid<GroundPicture>> laid = backdrop.picture().get();
        painting.ask(
                progress -> Relief.paint(elevation, wanted, paper, style, progress)
                        .over(backdrop.under(wanted, laid, progress)),
                fresh -> {
                    painted.set(fresh);
                    compose();
                },
                session::tell);
    }

    /** On a busy machine what lies over the map has not yet taken its new size when the hand has long come to rest. */
    private void layOutWhatLiesOver() {
        if (getParent() == null) return;
        getParent().applyCss();
        getParent().layout();
    }

    double metresPerPx() {
        return metresPerPx;
    }

    /** The names that stand on the map now. */
    List<MapPen.Written> names() {
        return names;
    }

    /** Where other words than names stand on the map now: those of grid and scale. */
    List<Envelope> said() {
        return said;
    }

    /** Names keep clear of these, which lie over the map. */
    void laidOver(Node... nodes) {
        over.addAll(List.of(nodes));
        for (Node node : nodes) {
            node.visibleProperty().addListener((visible, was, is) -> {
                redraw();
                keepWhole();
            });
            node.boundsInParentProperty().addListener((bounds, was, is) -> redraw());
            // A key that a hand moves elsewhere leaves the map alone; one that grows does not hide the area.
            node.layoutBoundsProperty().addListener((bounds, was, is) -> keepWhole());
        }
    }

    private Envelope room(Node node) {
        Bounds box = sceneToLocal(node.localToScene(node.getLayoutBounds()));
        return new Envelope(box.getMinX(), box.getMaxX(), box.getMinY(), box.getMaxY());
    }

    /** Four thin boxes: one stroke all round would cost as much as the whole map. */
    private static void ring(MapPen pen, MapFrame now) {
        Color ink = pen.palette().accent();
        pen.box(ink, 0, 0, now.widthPx(), RING_PX);
        pen.box(ink, 0, now.heightPx() - RING_PX, now.widthPx(), RING_PX);
        pen.box(ink, 0, 0, RING_PX, now.heightPx());
        pen.box(ink, now.widthPx() - RING_PX, 0, RING_PX, now.heightPx());
    }

    /** What a picture of the map is taken by: at once, on the screen thread. */
    <T> T withoutFocusRing(Supplier<T> taking) {
        draw(false);
        T taken = taking.get();
        redraw();
        return taken;
    }

    /** Draws the ink anew before the next picture. */
    void redraw() {
        if (isDrawPending) return;
        isDrawPending = true;
        Platform.runLater(() -> {
            isDrawPending = false;
            draw(isFocusVisible());
        });
    }

    private void draw(boolean hasRing) {
        MapFrame now = frame.get();
        if (now == null) return;
        if (ink.getWidth() != now.widthPx() || ink.getHeight() != now.heightPx()) {
            ink.setWidth(now.widthPx());
            ink.setHeight(now.heightPx());
        }
        ink.getGraphicsContext2D().clearRect(0, 0, now.widthPx(), now.heightPx());
        MapPen pen = new MapPen(
                ink.getGraphicsContext2D(),
                now,
                session.palette().get(),
                session.fonts().get(),
                over.stream().filter(Node::isVisible).map(this::room).toList());
        for (MapOverlay each : overlays) each.draw(pen, now);
        if (hasRing) ring(pen, now);
        names = pen.writeNames();
        said = pen.said();
    }
}
