package handreach.desktop;

import handreach.report.page.Table;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.layout.VBox;

/** A table of an answer where there is no room for its columns: row under row, each cell after the head of its column. */
final class TableList extends VBox implements Aside.Divided {
    private final Table<?> table;
    private final List<BlockView.RowVerb<?>> verbs;

    private TableList(Table<?> table, List<BlockView.RowVerb<?>> verbs) {
        super(5);
        this.table = table;
        this.verbs = verbs;
        if (!table.caption().isBlank()) getChildren().add(Labels.line(table.caption(), "quiet"));
    }

    static TableList whole(Table<?> table, List<BlockView.RowVerb<?>> verbs) {
        TableList list = new TableList(table, verbs);
        for (int row = 0; row < table.rowCount(); row++) list.add(row);
        return list;
    }

    /** Its caption alone; {@link #rows} puts in the rest. */
    static TableList ofCaption(Table<?> table, List<BlockView.RowVerb<?>> verbs) {
        return new TableList(table, verbs);
    }

    /** Each puts in a row, its looks worked out. */
    List<Runnable> rows() {
        List<Runnable> steps = new ArrayList<>();
        for (int each = 0; each < table.rowCount(); each++) {
            int row = each;
            steps.add(() -> add(row).applyCss());
        }
        return steps;
    }

    private Node add(int row) {
        Node first = BlockView.RowVerb.link(table, row, verbs)
                .<Node>map(link -> link)
                .orElse(Labels.line(table.cell(row, 0), table.isSum(row) ? "strong" : "plain"));
        VBox entry = new VBox(1, first, Labels.line(rest(table, row), "quiet"));
        entry.getStyleClass().add("relay-site");
        getChildren().add(entry);
        return entry;
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
