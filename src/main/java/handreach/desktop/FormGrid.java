package handreach.desktop;

import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;

/** Settings one under the other: a word, and what sets it. */
final class FormGrid extends GridPane {
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
        addRow(rows++, new Label(words), setting);
        return this;
    }
}
