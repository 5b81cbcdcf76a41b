package handreach.desktop;

import java.util.Arrays;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.util.StringConverter;

/** Over the map: which layer lies on it and how strongly, and the way to pull a path. Takes a second line where it has no room. */
final class LayerBar extends FlowPane {
    private static final double GAP_PX = 9;
    /** What the map keeps free beside it: the margin on the left, the arrow to the north on the right. */
    private static final double BESIDE_PX = 78;

    LayerBar(Session session, MapView map) {
        super(GAP_PX, 6);
        getStyleClass().add("layer-bar");
        setId("layer-bar");
        setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
        setRowValignment(javafx.geometry.VPos.CENTER);
        setAlignment(Pos.CENTER_LEFT);
        ComboBox<Layer> layer = new ComboBox<>();
        layer.setId("layer");
        layer.setAccessibleText("Layer on the map");
        layer.getItems()
                .setAll(Arrays.stream(Layer.values())
                        .filter(each -> !each.isOfAtlas())
                        .toList());
        session.atlas().addListener((atlas, before, now) -> offer(layer, now.isPresent()));
        layer.setConverter(new StringConverter<>() {
            @Override
            public String toString(Layer chosen) {
                return chosen == null ? "" : chosen.words();
            }

            @Override
            public Layer fromString(String words) {
                return layer.getValue();
            }
        });
        layer.valueProperty().bindBidirectional(session.layer());
        Slider strength = new Slider(0, 1, 0.85);
        strength.setId("layer-strength");
        strength.setPrefWidth(86);
        strength.setAccessibleText("Strength of the layer");
        strength.setTooltip(new Tooltip("How strongly the layer lies on the relief"));
        map.layerStrength().bind(strength.valueProperty());
        ToggleButton pull = new ToggleButton("Pull a path");
        pull.setId("pull-path");
        pull.setTooltip(new Tooltip("Then drag from one place to another (key P, or drag with Shift)"));
        pull.selectedProperty().bindBidirectional(session.isPulling());
        Button whole = new Button("Whole area");
        whole.setId("whole-area");
        whole.setTooltip(new Tooltip("The area and all positions, in the free part of the map (key Home)"));
        whole.setOnAction(pressed -> {
            if (session.scene().get() != null) map.lookAt(session.scene().get());
        });
        Slider under = new Slider(0, 1, map.backdrop().strength().get());
        under.setId("backdrop-strength");
        under.setPrefWidth(70);
        under.setAccessibleText("Strength of the backdrop");
        under.setTooltip(new Tooltip("How strongly the map picture stands against the relief"));
        under.valueProperty().bindBidirectional(map.backdrop().strength());
        HBox backdrop = new HBox(GAP_PX, new Label("backdrop"), under);
        backdrop.visibleProperty().bind(map.backdrop().picture().map(java.util.Optional::isPresent));
        backdrop.managedProperty().bind(backdrop.visibleProperty());
        Label over = new Label("Lay over it");
        HBox what = new HBox(GAP_PX, over, layer);
        HBox how = new HBox(GAP_PX, new Label("strength"), strength);
        for (HBox pair : List.of(what, how, backdrop)) pair.setAlignment(Pos.CENTER_LEFT);
        getChildren().addAll(what, how, backdrop, new HBox(GAP_PX, pull, whole));
        for (Node child : getChildren()) ((HBox) child).setMinWidth(USE_PREF_SIZE);
        for (Region part : List.of(over, pull, whole)) part.setMinWidth(USE_PREF_SIZE);
        // With large words a long name is cut rather than the questions beside the map pushed out.
        Labels.told(layer);
        layer.setMinWidth(0);
        what.setMinWidth(0);
        Labels.fitInto(what, this);
        map.widthProperty().addListener((width, was, is) -> fitInto(is.doubleValue()));
        fitInto(map.getWidth());
    }

    /** Layers of an atlas only while one is there; the others stay where they are, and so does the choice. */
    private static void offer(ComboBox<Layer> layer, boolean hasAtlas) {
        layer.getItems().removeIf(each -> each.isOfAtlas() && (!hasAtlas || layer.getValue() != each));
        for (Layer each : Layer.values())
            if (hasAtlas && !layer.getItems().contains(each)) layer.getItems().add(each.ordinal(), each);
    }

    private void fitInto(double mapPx) {
        setPrefWrapLength(Math.max(200, mapPx - BESIDE_PX - GAP_PX));
    }

    /** No wider than what stands in it. */
    @Override
    protected double computePrefWidth(double heightPx) {
        double row = 0;
        double widest = 0;
        for (Node child : getManagedChildren()) {
            double next = row == 0 ? child.prefWidth(-1) : row + GAP_PX + child.prefWidth(-1);
            row = next > getPrefWrapLength() ? child.prefWidth(-1) : next;
            widest = Math.max(widest, row);
        }
        return Math.ceil(widest + getInsets().getLeft() + getInsets().getRight()) + 1;
    }
}
