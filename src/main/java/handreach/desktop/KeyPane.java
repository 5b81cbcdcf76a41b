package handreach.desktop;

import handreach.cartography.Hatch;
import handreach.cartography.Srgb;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.paint.Color;

/** What the colours of the layer mean, on a small sheet over the map. */
final class KeyPane extends VBox {
    private static final double SWATCH_PX = 24;
    private static final double LOWEST_MAP_PX = 320;

    private final MapView map;
    private Optional<Overlay.Key> shown = Optional.empty();

    KeyPane(MapView map) {
        this.map = map;
        map.palette().addListener((palette, before, now) -> show(shown));
        map.heightProperty().addListener((height, before, now) -> {
            if (before.doubleValue() < LOWEST_MAP_PX != now.doubleValue() < LOWEST_MAP_PX) show(shown);
        });
        getStyleClass().add("key");
        setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
        setPickOnBounds(false);
        setVisible(false);
    }

    void show(Optional<Overlay.Key> key) {
        shown = key;
        getChildren().clear();
        setVisible(key.isPresent() && !key.get().title().isEmpty());
        if (!isVisible()) return;
        Label title = new Label(key.get().title());
        title.getStyleClass().add("key-title");
        title.setWrapText(true);
        title.setMaxWidth(270);
        getChildren().add(title);
        if (isTight()) {
            Label more = new Label("More height shows what the colours mean.");
            more.getStyleClass().add("quiet");
            getChildren().add(more);
            return;
        }
        for (Overlay.KeyEntry entry : key.get().entries()) {
            Label words = new Label(entry.words());
            words.setWrapText(true);
            words.setMaxWidth(235);
            HBox line = new HBox(8, swatch(entry), words);
            line.setAlignment(Pos.CENTER_LEFT);
            getChildren().add(line);
        }
        if (key.get().note().isEmpty()) return;
        Label note = new Label(key.get().note());
        note.getStyleClass().add("quiet");
        note.setWrapText(true);
        note.setMaxWidth(270);
        getChildren().add(note);
    }

    /** Whether the map is too low for the whole key beside the bar above it. */
    private boolean isTight() {
        return map.getHeight() > 0 && map.getHeight() < LOWEST_MAP_PX;
    }

    private Canvas swatch(Overlay.KeyEntry entry) {
        Canvas canvas = new Canvas(SWATCH_PX, entry.mark().isPresent() ? 22 : 14);
        GraphicsContext gc = canvas.getGraphicsContext2D();
        if (entry.mark().isPresent()) {
            MapPen pen = new MapPen(gc, map.frame().get(), map.palette().get(), new WordWidths());
            entry.mark().get().draw(pen, SWATCH_PX / 2, 11);
            return canvas;
        }
        Color colour = entry.isClear() ? Color.TRANSPARENT : Color.web(Srgb.hex(entry.rgb()));
        boolean isHatched = entry.hatch() != Hatch.NONE;
        gc.setFill(isHatched ? colour.interpolate(Color.WHITE, 0.5) : colour);
        gc.fillRect(0, 0, SWATCH_PX, 14);
        gc.setFill(colour.deriveColor(0, 1, 0.75, 1));
        for (int x = 0; isHatched && x < SWATCH_PX; x++)
            for (int y = 0; y < 14; y++) if (entry.hatch().inks(x, y)) gc.fillRect(x, y, 1, 1);
        gc.setStroke(Color.web("#5b6669"));
        gc.setLineWidth(1);
        gc.strokeRect(0.5, 0.5, SWATCH_PX - 1, 13);
        return canvas;
    }
}
