package handreach.desktop;

import javafx.beans.property.BooleanProperty;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.scene.AccessibleRole;
import javafx.scene.Cursor;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The questions beside the map: as wide as the hand draws them, or folded away so that the map has the room. */
final class SidePane extends HBox {
    private static final double USUAL_PX = 408;
    private static final double LEAST_PX = 388;
    /** What the map keeps beside it. */
    private static final double MAP_PX = 480;

    private static final double EDGE_PX = 22;
    private static final double STEP_PX = 24;

    private final BooleanProperty folded = new SimpleBooleanProperty();
    private final DoubleProperty wanted = new SimpleDoubleProperty(USUAL_PX);
    private final StackPane content = new StackPane();
    private final Region grip = new Region();
    private final Button fold = new Button();
    private final Tooltip says = new Tooltip();
    private double roomPx = 1440;

    SidePane() {
        getStyleClass().add("side");
        fold.setId("side-fold");
        fold.getStyleClass().add("side-fold");
        fold.setTooltip(says);
        fold.setOnAction(pressed -> folded.set(!folded.get()));
        grip.setId("side-grip");
        grip.getStyleClass().add("side-grip");
        grip.setCursor(Cursor.H_RESIZE);
        grip.setFocusTraversable(true);
        grip.setAccessibleRole(AccessibleRole.SLIDER);
        grip.setAccessibleText("Width of the questions: left and right make them wider and narrower.");
        grip.setOnMousePressed(press -> grip.requestFocus());
        grip.setOnMouseDragged(drag -> wanted.set(localToScene(getWidth(), 0).getX() - drag.getSceneX()));
        grip.setOnKeyPressed(key -> {
            if (key.getCode() == KeyCode.LEFT) wanted.set(shownPx() + STEP_PX);
            else if (key.getCode() == KeyCode.RIGHT) wanted.set(shownPx() - STEP_PX);
            else return;
            key.consume();
        });
        VBox.setVgrow(grip, Priority.ALWAYS);
        VBox edge = new VBox(fold, grip);
        edge.getStyleClass().add("side-edge");
        getChildren().addAll(edge, content);
        folded.addListener((is, before, now) -> arrange());
        wanted.addListener((width, before, now) -> arrange());
        arrange();
    }

    /** Whether only the edge is left of it. */
    BooleanProperty folded() {
        return folded;
    }

    /** How wide it was drawn, px; it is narrower where the window has no room. */
    DoubleProperty wanted() {
        return wanted;
    }

    void hold(Node questions) {
        content.getChildren().setAll(questions);
    }

    boolean holds(Node questions) {
        return content.getChildren().contains(questions);
    }

    /** How wide the window is for map and questions together. */
    void fitInto(double widthPx) {
        roomPx = widthPx;
        arrange();
    }

    private double shownPx() {
        return Math.max(LEAST_PX, Math.min(roomPx - MAP_PX - EDGE_PX, wanted.get()));
    }

    private void arrange() {
        boolean isOpen = !folded.get();
        content.setVisible(isOpen);
        content.setManaged(isOpen);
        content.setMinWidth(shownPx());
        content.setPrefWidth(shownPx());
        content.setMaxWidth(shownPx());
        grip.setVisible(isOpen);
        fold.setText(isOpen ? "\u203a" : "\u2039");
        String words = isOpen ? "Fold the questions away (F9)" : "Show the questions (F9)";
        says.setText(words);
        fold.setAccessibleText(words);
    }
}
