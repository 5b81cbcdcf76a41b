package handreach.desktop;

import handreach.report.page.Table;
import java.util.List;
import java.util.Optional;
import javafx.geometry.HPos;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.text.TextAlignment;

/** A table of an answer in the window. The first cell of a row that carries a verb is a link. */
final class TableGrid extends VBox {
    private static final double GAP_PX = 14;
    private static final double NUMBER_PX = 62;
    /** A column of words that is narrower reads like a ribbon. */
    private static final double WORDS_PX = 70;
    /** Words of so many letters never wrap. */
    private static final int SHORT = 14;
    /** A column of longer words is not made narrower, or it reads like a ribbon. */
    private static final double NARROWEST_PX = 100;

    private final Table<?> table;
    private final List<BlockView.RowVerb<?>> verbs;
    private final GridPane grid = new GridPane();

    TableGrid(Table<?> table, List<BlockView.RowVerb<?>> verbs) {
        super(4);
        this.table = table;
        this.verbs = verbs;
        getStyleClass().add("sheet");
        if (!table.caption().isBlank()) getChildren().add(Words.line(table.caption(), "quiet"));
        grid.setHgap(GAP_PX);
        grid.setVgap(3);
        for (int column = 0; column < table.columnCount(); column++) head(column);
        for (int row = 0; row < table.rowCount(); row++)
            for (int column = 0; column < table.columnCount(); column++) {
                Node cell = cell(row, column);
                GridPane.setValignment(cell, VPos.TOP);
                grid.add(cell, column, row + 1);
            }
        getChildren().add(grid);
    }

    /** Whether a table can be read in so narrow a place. */
    static boolean fits(Table<?> table, double widthPx) {
        double needed = 0;
        for (int column = 0; column < table.columnCount(); column++)
            needed += GAP_PX + (table.isNumber(column) ? NUMBER_PX : WORDS_PX);
        return needed <= widthPx;
    }

    private void head(int column) {
        boolean isNumber = table.isNumber(column);
        ColumnConstraints constraints = new ColumnConstraints();
        constraints.setHalignment(isNumber ? HPos.RIGHT : HPos.LEFT);
        constraints.setHgrow(isNumber ? Priority.NEVER : Priority.SOMETIMES);
        grid.getColumnConstraints().add(constraints);
        Label head = label(table.head(column), isNumber);
        head.getStyleClass().add("sheet-head");
        grid.add(head, column, 0);
    }

    private Node cell(int row, int column) {
        Optional<Button> link = column > 0 ? Optional.empty() : BlockView.RowVerb.link(table, row, verbs);
        if (link.isPresent()) return link.get();
        Label cell = label(table.cell(row, column), table.isNumber(column));
        if (table.isSum(row) || table.isMarked(row)) cell.getStyleClass().add("strong");
        return cell;
    }

    private static Label label(String words, boolean isNumber) {
        Label label = new Label(words);
        label.setWrapText(true);
        label.setMinHeight(Region.USE_PREF_SIZE);
        if (isNumber) {
            label.setMinWidth(NUMBER_PX);
            label.setMaxWidth(84);
            label.setAlignment(Pos.TOP_RIGHT);
            label.setTextAlignment(TextAlignment.RIGHT);
        } else label.setMinWidth(words.length() > SHORT ? NARROWEST_PX : Region.USE_PREF_SIZE);
        return label;
    }
}
