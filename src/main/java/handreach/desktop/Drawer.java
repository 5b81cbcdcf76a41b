package handreach.desktop;

import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;

/** A sheet drawn out below the map for what needs width: a path, the bench, the plan as text. One thing at a time. */
final class Drawer extends BorderPane {
    private final Label title = new Label();

    Drawer() {
        getStyleClass().add("drawer");
        setId("drawer");
        title.getStyleClass().add("drawer-title");
        Button away = new Button("Put away");
        away.setId("drawer-away");
        away.getStyleClass().add("link");
        away.setOnAction(pressed -> putAway());
        Region between = new Region();
        HBox.setHgrow(between, Priority.ALWAYS);
        HBox head = new HBox(12, title, between, away);
        head.setAlignment(Pos.CENTER_LEFT);
        head.getStyleClass().add("drawer-head");
        setTop(head);
        putAway();
    }

    void show(String words, Node content) {
        title.setText(words);
        setCenter(content);
        setVisible(true);
        setManaged(true);
    }

    /** Whether this very content is drawn out. */
    boolean shows(Node content) {
        return isVisible() && getCenter() == content;
    }

    void putAway() {
        setCenter(null);
        setVisible(false);
        setManaged(false);
    }
}
