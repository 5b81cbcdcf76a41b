package handreach.desktop;

import java.util.List;
import java.util.Optional;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.geometry.Pos;
import javafx.scene.Cursor;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.image.PixelWriter;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.paint.Color;

/** What the colours of the layer mean, on a small sheet over the map that can be folded and drawn aside. */
final class KeyPane extends VBox {
    private static final double SWATCH_PX = 24;
    private static final double SWATCH_HIGH_PX = 14;
    private static final double LOWEST_MAP_PX = 320;
    private static final double SCALE_HIGH_PX = 80;
    /** A narrower map begins with the key folded: open, it would cover half of it. */
    private static final double NARROW_MAP_PX = 560;
    /** Widths in letters of the usual size. */
    private static final double WIDE = 270 / MapFonts.USUAL_PX;

    private static final double WORDS_WIDE = 235 / MapFonts.USUAL_PX;

    private final MapView map;
    private final BooleanProperty folded = new SimpleBooleanProperty();
    private Optional<LayerRaster.Key> shown = Optional.empty();
    private String channel = "";
    private double graspedX;
    private double graspedY;
    /** How far the hand has drawn it, px; kept while a small window shows it elsewhere. */
    private double drawnX;

    private double drawnY;
    private boolean isChosen;

    KeyPane(MapView map) {
        this.map = map;
        map.palette().addListener((palette, before, now) -> show(shown));
        map.layerStrength().addListener((strength, before, now) -> show(shown));
        map.fonts().addListener((size, before, now) -> show(shown));
        map.backdrop().picture().addListener((laid, before, now) -> show(shown));
        folded.addListener((is, before, now) -> show(shown));
        map.heightProperty().addListener((height, before, now) -> {
            if (before.doubleValue() < LOWEST_MAP_PX != now.doubleValue() < LOWEST_MAP_PX) show(shown);
            stayInside();
        });
        map.widthProperty().addListener((width, before, now) -> {
            boolean isNarrow = now.doubleValue() < NARROW_MAP_PX;
            boolean isOther = before.doubleValue() == 0 ? isNarrow : before.doubleValue() < NARROW_MAP_PX != isNarrow;
            if (!isChosen && isOther) folded.set(isNarrow);
            stayInside();
        });
        getStyleClass().add("key");
        setId("map-key");
        setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
        setPickOnBounds(false);
        setVisible(false);
    }

    /** Whether a hand folded it, not a narrow map. */
    boolean isFoldedByHand() {
        return isChosen && folded.get();
    }

    void foldByHand() {
        isChosen = true;
        folded.set(true);
    }

    /** What the picture was computed for, under every title. */
    void showChannel(String words) {
        if (words.equals(channel)) return;
        channel = words;
        show(shown);
    }

    void show(Optional<LayerRaster.Key> key) {
        shown = key;
        getChildren().clear();
        setVisible(key.isPresent() && !key.get().title().isEmpty());
        if (!isVisible()) return;
        getChildren().add(head(key.get().title()));
        if (!channel.isEmpty()) getChildren().add(line(channel, "key-channel", WIDE));
        if (folded.get()) return;
        if (map.backdrop().picture().get().isPresent())
            getChildren().add(line("On the map mixed with the backdrop.", "quiet", WIDE));
        if (isTight()) {
            getChildren().add(line("More height shows what the colours mean.", "quiet", WIDE));
            return;
        }
        for (LayerRaster.KeyEntry entry : key.get().entries()) {
            HBox line = new HBox(8, swatch(entry), line(entry.words(), "plain", WORDS_WIDE));
            line.setAlignment(Pos.CENTER_LEFT);
            getChildren().add(line);
        }
        if (!key.get().note().isEmpty()) getChildren().add(line(key.get().note(), "quiet", WIDE));
    }

    /** Where its left edge stands beside the scale of the map, px; the map's right edge while it is not there. */
    double leftPx() {
        boolean isBeside =
                isVisible() && getLayoutY() + getTranslateY() + getHeight() > map.getHeight() - SCALE_HIGH_PX;
        return isBeside ? getLayoutX() + getTranslateX() : map.getWidth();
    }

    private Label line(String words, String hand, double wide) {
        Label line = Labels.line(words, hand);
        line.setMaxWidth(wide * map.fonts().get().sizePx());
        return line;
    }

    private HBox head(String title) {
        Label words = line(title, "key-title", WIDE - 2);
        words.setCursor(Cursor.MOVE);
        HBox.setHgrow(words, Priority.ALWAYS);
        Button fold = new Button(folded.get() ? "+" : "\u2212");
        fold.setId("key-fold");
        fold.getStyleClass().add("key-fold");
        String does = folded.get() ? "Show what the colours mean" : "Fold the key to its title";
        fold.setTooltip(new Tooltip(does));
        fold.setAccessibleText(does);
        fold.setOnAction(pressed -> {
            isChosen = true;
            folded.set(!folded.get());
        });
        Region between = new Region();
        HBox.setHgrow(between, Priority.ALWAYS);
        HBox head = new HBox(8, words, between, fold);
        head.setAlignment(Pos.TOP_LEFT);
        words.setOnMousePressed(this::grasp);
        words.setOnMouseDragged(this::drag);
        return head;
    }

    private void grasp(MouseEvent press) {
        graspedX = press.getSceneX() - getTranslateX();
        graspedY = press.getSceneY() - getTranslateY();
        press.consume();
    }

    private void drag(MouseEvent drag) {
        drawnX = drag.getSceneX() - graspedX;
        drawnY = drag.getSceneY() - graspedY;
        stayInside();
        drawnX = getTranslateX();
        drawnY = getTranslateY();
        drag.consume();
    }

    private void stayInside() {
        if (drawnX == 0 && drawnY == 0) {
            setTranslateX(0);
            setTranslateY(0);
            return;
        }
        setTranslateX(Math.max(-getLayoutX(), Math.min(map.getWidth() - getWidth() - getLayoutX(), drawnX)));
        setTranslateY(Math.max(-getLayoutY(), Math.min(map.getHeight() - getHeight() - getLayoutY(), drawnY)));
    }

    /** Whether the map is too low for the whole key beside the bar above it. */
    private boolean isTight() {
        return map.getHeight() > 0 && map.getHeight() < LOWEST_MAP_PX;
    }

    private Canvas swatch(LayerRaster.KeyEntry entry) {
        Canvas canvas = new Canvas(SWATCH_PX, entry.mark().isPresent() ? 22 : SWATCH_HIGH_PX);
        GraphicsContext gc = canvas.getGraphicsContext2D();
        if (entry.mark().isPresent()) {
            MapPen pen =
                    new MapPen(gc, map.frame().get(), map.palette().get(), new MapFonts(MapFonts.USUAL_PX), List.of());
            entry.mark().get().draw(pen, SWATCH_PX / 2, 11);
            return canvas;
        }
        MapRaster.Manner manner = map.manner();
        PixelWriter pixels = gc.getPixelWriter();
        int paper = map.palette().get().paper().levelRgb();
        for (int x = 0; x < SWATCH_PX; x++)
            for (int y = 0; y < SWATCH_HIGH_PX; y++)
                pixels.setArgb(x, y, 0xFF000000 | manner.laid(paper, entry.argb(x, y)));
        gc.setStroke(Color.web("#7b8689"));
        gc.setLineWidth(1);
        gc.strokeRect(0.5, 0.5, SWATCH_PX - 1, SWATCH_HIGH_PX - 1);
        return canvas;
    }
}
