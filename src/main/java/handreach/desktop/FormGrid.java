package handreach.desktop;

import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Settings one under the other: a word, and what sets it. */
final class FormGrid extends GridPane implements Aside.Divided {
    private int rows;

    FormGrid() {
        setHgap(10);
        setVgap(7);
        ColumnConstraints words = new ColumnConstraints();
        words.setMinWidth(Region.USE_PREF_SIZE);
        ColumnConstraints wide = new ColumnConstraints();
        wide.setHgrow(Priority.ALWAYS);
        getColumnConstraints().addAll(words, wide);
    }

    /** Adds a line below the others. */
    FormGrid with(String words, Node setting) {
        Label label = new Label(words);
        control(setting).ifPresent(label::setLabelFor);
        addRow(rows++, label, setting);
        return this;
    }

    /** The same with the words above, for what is too long to stand beside them. */
    FormGrid over(String words, Node setting) {
        Label label = new Label(words);
        control(setting).ifPresent(label::setLabelFor);
        add(new VBox(2, label, setting), 0, rows++, 2, 1);
        return this;
    }

    /** The first thing in it that takes keys. */
    private static Optional<Control> control(Node setting) {
        if (setting instanceof Control control && control.isFocusTraversable()) return Optional.of(control);
        return setting instanceof Parent parent
                ? parent.getChildrenUnmodifiable().stream()
                        .flatMap(child -> control(child).stream())
                        .findFirst()
                : Optional.empty();
    }
}
