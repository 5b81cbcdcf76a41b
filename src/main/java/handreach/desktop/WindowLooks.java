package handreach.desktop;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import javafx.geometry.Rectangle2D;
import javafx.scene.Parent;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.stage.Screen;
import javafx.stage.Stage;
import javafx.stage.WindowEvent;

/** How the window looks, and that it looks the same tomorrow: its place, the size of its words, night, what is folded away. */
final class WindowLooks {
    static final double USUAL_PX = 13;
    private static final double SMALLEST_PX = 12;
    private static final double LARGEST_PX = 24;
    private static final double STEP = 1.1;
    private static final double USUAL_WIDTH_PX = 1440;
    private static final double USUAL_HEIGHT_PX = 900;

    private static final Set<KeyCode> LARGER = Set.of(KeyCode.PLUS, KeyCode.EQUALS, KeyCode.ADD);
    private static final Set<KeyCode> SMALLER = Set.of(KeyCode.MINUS, KeyCode.SUBTRACT, KeyCode.UNDERSCORE);
    private static final Set<KeyCode> USUAL = Set.of(KeyCode.DIGIT0, KeyCode.NUMPAD0);

    private final Stage stage;
    private final Parent root;
    private final MapView map;
    private final SidePane side;
    private final KeyPane key;
    private final Consumer<Runnable> piecewise;
    private double textPx = USUAL_PX;
    /** Where the window should stand: told once more when it is shown, for some window managers make it as small as it may be. */
    private Optional<Rectangle2D> stand = Optional.empty();

    /** {@code piecewise} makes a change of looks that would otherwise be worked out for all of the window at once. */
    WindowLooks(Stage stage, Parent root, MapView map, SidePane side, KeyPane key, Consumer<Runnable> piecewise) {
        this.piecewise = piecewise;
        this.stage = stage;
        this.root = root;
        this.map = map;
        this.side = side;
        this.key = key;
        root.addEventFilter(KeyEvent.KEY_PRESSED, this::key);
        stage.addEventHandler(WindowEvent.WINDOW_SHOWN, shown -> stand.ifPresent(this::stand));
        stage.addEventHandler(WindowEvent.WINDOW_HIDDEN, gone -> remember().write());
    }

    double textPx() {
        return textPx;
    }

    /** Puts everything as the last window left it; what it left unsaid is as usual, within the screen. */
    void recall() {
        WindowMemory memory = WindowMemory.read();
        memory.number("words").ifPresent(this::words);
        memory.number("side").ifPresent(side.wanted()::set);
        side.folded().set(memory.isYes("side-folded"));
        if (memory.isYes("key-folded")) key.foldByHand();
        map.backdrop().recall(memory);
        map.palette().set(memory.isYes("night") ? Palette.NIGHT : Palette.DAY);
        Rectangle2D screen = Screen.getPrimary().getVisualBounds();
        stand = memory.place()
                .filter(place -> !Screen.getScreensForRectangle(place).isEmpty())
                .or(() -> Optional.of(usual(screen)));
        stand.ifPresent(this::stand);
        if (memory.isYes("whole-screen")) stage.setMaximized(true);
    }

    private static Rectangle2D usual(Rectangle2D screen) {
        double wide = Math.min(USUAL_WIDTH_PX, screen.getWidth());
        double high = Math.min(USUAL_HEIGHT_PX, screen.getHeight());
        return new Rectangle2D(
                screen.getMinX() + (screen.getWidth() - wide) / 2,
                screen.getMinY() + (screen.getHeight() - high) / 2,
                wide,
                high);
    }

    private void stand(Rectangle2D place) {
        stage.setX(place.getMinX());
        stage.setY(place.getMinY());
        stage.setWidth(place.getWidth());
        stage.setHeight(place.getHeight());
    }

    private WindowMemory remember() {
        WindowMemory memory = WindowMemory.read();
        memory.keep("words", textPx);
        memory.keep("side", side.wanted().get());
        memory.keep("side-folded", side.folded().get());
        memory.keep("key-folded", key.isFoldedByHand());
        memory.keep("night", map.palette().get() == Palette.NIGHT);
        map.backdrop().remember(memory);
        memory.keep("whole-screen", stage.isMaximized());
        if (!stage.isMaximized() && stage.getWidth() > 0)
            memory.keep(new Rectangle2D(stage.getX(), stage.getY(), stage.getWidth(), stage.getHeight()));
        return memory;
    }

    void larger() {
        words(textPx * STEP);
    }

    void smaller() {
        words(textPx / STEP);
    }

    void usual() {
        words(USUAL_PX);
    }

    /** Size of all words and controls, those on the map included. */
    private void words(double wantedPx) {
        double was = textPx;
        textPx = Math.max(SMALLEST_PX, Math.min(LARGEST_PX, wantedPx));
        String style = String.format(Locale.ROOT, "-fx-font-size: %.1fpx;", textPx);
        if (textPx != was) piecewise.accept(() -> root.setStyle(style));
        map.fonts().set(new MapFonts(textPx));
        side.wanted().set(side.wanted().get() * textPx / was);
    }

    /** Plus stands on another key of every keyboard, and most people press it without Shift. */
    private void key(KeyEvent event) {
        if (event.getCode() == KeyCode.F9) {
            side.folded().set(!side.folded().get());
            event.consume();
        }
        if (!event.isShortcutDown() || event.isAltDown()) return;
        if (LARGER.contains(event.getCode()) || event.getText().equals("+")) larger();
        else if (SMALLER.contains(event.getCode())) smaller();
        else if (USUAL.contains(event.getCode())) usual();
        else return;
        event.consume();
    }
}
