package handreach.desktop;

import java.util.Arrays;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.util.StringConverter;

/** Over the map: which layer lies on it and how strongly, and the way to pull a path. */
final class LayerBar extends HBox {
    LayerBar(Session session, MapView map) {
        super(9);
        getStyleClass().add("layer-bar");
        setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
        setAlignment(Pos.CENTER_LEFT);
        ComboBox<Layer> layer = new ComboBox<>();
        layer.setId("layer");
        layer.getItems().setAll(Arrays.asList(Layer.values()));
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
        map.layerStrength().bind(strength.valueProperty());
        ToggleButton pull = new ToggleButton("Pull a path");
        pull.setId("pull-path");
        pull.setTooltip(new Tooltip("Then drag from one place to another (key P, or drag with Shift)"));
        pull.selectedProperty().bindBidirectional(session.isPulling());
        Button whole = new Button("Whole area");
        whole.setOnAction(pressed -> {
            if (session.scene().get() != null) map.lookAt(session.scene().get());
        });
        getChildren().addAll(new Label("Lay over it"), layer, strength, pull, whole);
    }
}
