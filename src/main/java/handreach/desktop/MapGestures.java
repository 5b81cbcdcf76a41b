package handreach.desktop;

import handreach.cartography.MapFrame;
import handreach.geodesy.Position;
import handreach.plan.Places;
import java.util.List;
import java.util.Optional;
import javafx.scene.Cursor;
import javafx.scene.control.ContextMenu;
import javafx.scene.control.MenuItem;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.control.skin.ContextMenuSkin;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;

/** What mouse and keys do on the map: pan, zoom, move a position, pull a path, add a position. */
final class MapGestures {
    static final double GRASP_PX = 14;
    private static final double KEY_STEP_PX = 60;
    private static final double KEY_ZOOM = 1.3;

    private final MapView map;
    private final Session session;
    private final PlaceVerbs places;
    private final MapTools tools;
    private final Runnable goTo;
    private final ContextMenu menu = new ContextMenu();
    private final Worker.OncePerFrame moves;
    private Grasp grasp = Grasp.NOTHING;
    private Optional<Places.PositionEntry> held = Optional.empty();
    private double lastX;
    private double lastY;
    private double mouseX;
    private double mouseY;
    private boolean hasMoved;

    private enum Grasp {
        NOTHING,
        GROUND,
        POSITION,
        PATH
    }

    MapGestures(MapView map, Session session, MapTools tools, Runnable goTo) {
        this.map = map;
        this.session = session;
        this.places = new PlaceVerbs(session);
        this.tools = tools;
        this.goTo = goTo;
        this.moves = session.worker().oncePerFrame();
        map.addEventHandler(MouseEvent.MOUSE_PRESSED, this::press);
        map.addEventHandler(MouseEvent.MOUSE_DRAGGED, event -> moves.ask(() -> drag(event)));
        map.addEventHandler(MouseEvent.MOUSE_RELEASED, this::release);
        map.addEventHandler(MouseEvent.MOUSE_MOVED, event -> moves.ask(() -> move(event)));
        map.addEventHandler(
                MouseEvent.MOUSE_EXITED, out -> moves.ask(() -> session.cursor().set(Optional.empty())));
        map.frame().addListener((frame, before, now) -> rest());
        map.addEventHandler(ScrollEvent.SCROLL, this::scroll);
        map.addEventHandler(KeyEvent.KEY_PRESSED, this::key);
    }

    private Optional<Position> at(MouseEvent event) {
        return at(event.getX(), event.getY());
    }

    private Optional<Position> at(double x, double y) {
        MapFrame frame = map.frame().get();
        if (frame == null) return Optional.empty();
        double latitude = frame.latitudeDeg(y);
        return Math.abs(latitude) > 89
                ? Optional.empty()
                : Optional.of(new Position(asWritten(latitude), asWritten(frame.longitudeDeg(x))));
    }

    /** The mouse rests and the ground moves under it, or the map no longer comes down to it. */
    private void rest() {
        if (grasp != Grasp.NOTHING || session.cursor().get().isEmpty()) return;
        session.cursor().set(map.contains(mouseX, mouseY) ? at(mouseX, mouseY) : Optional.empty());
    }

    /** As the plan will write it, so that the picture under the hand is the picture that stays. */
    private static double asWritten(double degrees) {
        return Math.rint(degrees * 1e6) / 1e6;
    }

    /** The position under a pixel, the nearest if several. */
    private Optional<Places.PositionEntry> under(double x, double y) {
        if (session.scene().get() == null || map.frame().get() == null) return Optional.empty();
        MapFrame frame = map.frame().get();
        Optional<Places.PositionEntry> best = Optional.empty();
        double nearest = GRASP_PX;
        for (Places.PositionEntry entry : session.scene().get().plan().places().positions()) {
            double away = Math.hypot(
                    frame.xPx(entry.at().longitudeDeg()) - x,
                    frame.yPx(entry.at().latitudeDeg()) - y);
            if (away <= nearest) {
                nearest = away;
                best = Optional.of(entry);
            }
        }
        return best;
    }

    private void press(MouseEvent event) {
        moves.doNow();
        map.requestFocus();
        menu.hide();
        if (session.scene().get() == null) return;
        lastX = event.getX();
        lastY = event.getY();
        hasMoved = false;
        held = under(lastX, lastY);
        if (event.getButton() == MouseButton.SECONDARY) {
            openMenu(event);
            return;
        }
        if (event.getButton() != MouseButton.PRIMARY) return;
        if (tools.isMeasuring()) {
            at(event).ifPresent(tools::measureTo);
            grasp = Grasp.NOTHING;
            return;
        }
        if (event.isShiftDown() || session.isPulling().get()) grasp = Grasp.PATH;
        else grasp = held.isPresent() ? Grasp.POSITION : Grasp.GROUND;
        if (grasp == Grasp.PATH)
            at(event).ifPresent(start -> session.pulled().set(Optional.of(end(start, held, start, held))));
        if (event.getClickCount() == 2 && grasp == Grasp.GROUND) {
            grasp = Grasp.NOTHING;
            at(event).ifPresent(places::add);
        }
    }

    private static PulledPath end(
            Position from,
            Optional<Places.PositionEntry> fromEntry,
            Position to,
            Optional<Places.PositionEntry> toEntry) {
        return new PulledPath(PulledPath.End.of(from, fromEntry), PulledPath.End.of(to, toEntry), false);
    }

    private void drag(MouseEvent event) {
        double dx = event.getX() - lastX;
        double dy = event.getY() - lastY;
        if (!hasMoved && Math.hypot(dx, dy) < 3) return;
        switch (grasp) {
            case GROUND -> {
                map.setCursor(Cursor.CLOSED_HAND);
                map.pan(dx, dy);
                lastX = event.getX();
                lastY = event.getY();
            }
            case POSITION ->
                at(event)
                        .ifPresent(to -> session.moving()
                                .set(Optional.of(
                                        new Session.Moving(held.orElseThrow().name(), to))));
            case PATH -> at(event).ifPresent(to -> pull(to, event));
            case NOTHING -> {
                return;
            }
        }
        hasMoved = true;
        mouseX = event.getX();
        mouseY = event.getY();
        session.cursor().set(at(event));
    }

    private void pull(Position to, MouseEvent event) {
        session.pulled()
                .get()
                .ifPresent(path -> session.pulled()
                        .set(Optional.of(new PulledPath(
                                path.from(), PulledPath.End.of(to, under(event.getX(), event.getY())), false))));
    }

    private void release(MouseEvent event) {
        moves.doNow();
        Grasp was = grasp;
        grasp = Grasp.NOTHING;
        map.setCursor(Cursor.DEFAULT);
        if (was == Grasp.POSITION && hasMoved)
            session.moving().get().ifPresent(moving -> places.move(moving.name(), moving.to()));
        if (was == Grasp.PATH) {
            session.isPulling().set(false);
            Optional<PulledPath> path = session.pulled().get();
            session.pulled().set(hasMoved ? path.map(PulledPath::finished) : Optional.empty());
        }
    }

    private void move(MouseEvent event) {
        mouseX = event.getX();
        mouseY = event.getY();
        session.cursor().set(at(event));
        boolean isHandle = under(event.getX(), event.getY()).isPresent();
        map.setCursor(session.isPulling().get() ? Cursor.CROSSHAIR : isHandle ? Cursor.HAND : Cursor.DEFAULT);
    }

    private void scroll(ScrollEvent event) {
        moves.doNow();
        if (event.getDeltaY() == 0) return;
        double notches = Math.max(-3, Math.min(3, event.getDeltaY() / 40));
        double factor = 1 + 0.2 * Math.abs(notches);
        map.zoom(notches > 0 ? factor : 1 / factor, event.getX(), event.getY());
    }

    private void key(KeyEvent event) {
        moves.doNow();
        if (event.isShortcutDown() || event.isAltDown() || session.scene().get() == null) return;
        KeyCode code = event.getCode();
        boolean isTaken = true;
        switch (code) {
            case LEFT -> map.pan(KEY_STEP_PX, 0);
            case RIGHT -> map.pan(-KEY_STEP_PX, 0);
            case UP -> map.pan(0, KEY_STEP_PX);
            case DOWN -> map.pan(0, -KEY_STEP_PX);
            case PLUS, EQUALS, ADD -> map.zoom(KEY_ZOOM, map.getWidth() / 2, map.getHeight() / 2);
            case MINUS, SUBTRACT -> map.zoom(1 / KEY_ZOOM, map.getWidth() / 2, map.getHeight() / 2);
            case HOME -> map.lookAt(session.scene().get());
            case ESCAPE -> {
                session.isPulling().set(false);
                session.pulled().set(Optional.empty());
                tools.clear();
            }
            default -> isTaken = false;
        }
        if (isTaken) event.consume();
    }

    private void openMenu(MouseEvent event) {
        Optional<Position> at = at(event);
        if (at.isEmpty()) return;
        menu.getItems().clear();
        held.ifPresentOrElse(this::offerFor, () -> offerHere(at.get()));
        Position here = held.map(Places.PositionEntry::at).orElse(at.get());
        menu.getItems()
                .addAll(
                        new SeparatorMenuItem(),
                        item("Copy the coordinate", () -> GoToPane.copied(session, here)),
                        item("Measure from here", () -> tools.measureFrom(here)),
                        item("Middle of the map here", () -> map.middleOn(here)),
                        item("Whole area", () -> map.lookAt(session.scene().get())),
                        item("Go to a place\u2026", goTo));
        menu.show(map, event.getScreenX(), event.getScreenY());
    }

    /** Loads what a menu is made of before a hand waits for it, by a twin that is never shown. */
    static void tryOutMenu() {
        new ContextMenuSkin(new ContextMenu(item("Whole area", () -> {}), new SeparatorMenuItem())).dispose();
    }

    private void offerFor(Places.PositionEntry entry) {
        menu.getItems()
                .addAll(
                        item("Reach from " + entry.name(), () -> places.standAt(entry.name())),
                        item("Take " + entry.name() + " out of the plan", () -> places.remove(entry.name())));
        others(entry)
                .forEach(other -> menu.getItems()
                        .add(item(
                                "Path to " + other.name(),
                                () -> session.pulled()
                                        .set(Optional.of(
                                                end(entry.at(), Optional.of(entry), other.at(), Optional.of(other))
                                                        .finished())))));
    }

    private List<Places.PositionEntry> others(Places.PositionEntry entry) {
        return session.scene().get().plan().places().positions().stream()
                .filter(other -> !other.name().equals(entry.name()))
                .limit(12)
                .toList();
    }

    private void offerHere(Position at) {
        menu.getItems().add(item("Put a position here", () -> places.add(at)));
        menu.getItems()
                .add(item(
                        "Path from " + standName() + " to here",
                        () -> session.pulled()
                                .set(Optional.of(new PulledPath(
                                        PulledPath.End.of(session.scene().get().middle(), standEntry()),
                                        PulledPath.End.of(at, Optional.empty()),
                                        true)))));
    }

    private Optional<Places.PositionEntry> standEntry() {
        return under(
                map.frame().get().xPx(session.scene().get().middle().longitudeDeg()),
                map.frame().get().yPx(session.scene().get().middle().latitudeDeg()));
    }

    private String standName() {
        return standEntry().map(Places.PositionEntry::name).orElse("the middle");
    }

    private static MenuItem item(String words, Runnable verb) {
        MenuItem item = new MenuItem(words);
        item.setMnemonicParsing(false);
        item.setOnAction(chosen -> verb.run());
        return item;
    }
}
