package handreach.desktop;

import handreach.report.page.Table;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.layout.VBox;

/** A table of an answer where there is no room for its columns: row under row, each cell after the head of its column. */
final class TableList extends VBox {
    TableList(Table<?> table, List<BlockView.RowVerb<?>> verbs) {
        super(5);
        if (!table.caption().isBlank()) getChildren().add(Labels.line(table.caption(), "quiet"));
        for (int row = 0; row < table.rowCount(); row++) {
            Node first = BlockView.RowVerb.link(table, row, verbs)
                    .<Node>map(link -> link)
                    .orElse(Labels.line(table.cell(row, 0), table.isSum(row) ? "strong" : "plain"));
            VBox entry = new VBox(1, first, Labels.line(rest(table, row), "quiet"));
            entry.getStyleClass().add("relay-site");
            getChildren().add(entry);
        }
    }

    /** The row behind its first cell; an empty cell says nothing. */
    private static String rest(Table<?> table, int row) {
        StringBuilder words = new StringBuilder();
        for (int column = 1; column < table.columnCount(); column++) {
            String cell = table.cell(row, column);
            if (cell.isBlank()) continue;
            if (!words.isEmpty()) words.append("; ");
            words.append(table.head(column)).append(": ").append(cell.replace("\n", "; "));
        }
        return words.toString();
    }
}
