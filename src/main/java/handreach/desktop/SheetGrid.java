package handreach.desktop;

import handreach.report.page.Sheet;
import javafx.geometry.HPos;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.text.TextAlignment;

/** A table of the report in the window. */
final class SheetGrid extends VBox {
    SheetGrid(Sheet sheet) {
        super(4);
        getStyleClass().add("sheet");
        if (!sheet.caption().isBlank()) {
            Label caption = new Label(sheet.caption());
            caption.getStyleClass().add("quiet");
            caption.setWrapText(true);
            caption.setMinHeight(Region.USE_PREF_SIZE);
            getChildren().add(caption);
        }
        GridPane grid = new GridPane();
        grid.setHgap(14);
        grid.setVgap(3);
        for (int column = 0; column < sheet.columns().size(); column++) {
            Sheet.Column about = sheet.columns().get(column);
            ColumnConstraints constraints = new ColumnConstraints();
            constraints.setHalignment(about.isNumber() ? HPos.RIGHT : HPos.LEFT);
            constraints.setHgrow(about.isNumber() ? Priority.NEVER : Priority.SOMETIMES);
            grid.getColumnConstraints().add(constraints);
            Label head = cell(about.head(), about.isNumber());
            head.getStyleClass().add("sheet-head");
            grid.add(head, column, 0);
        }
        for (int row = 0; row < sheet.rows().size(); row++)
            for (int column = 0; column < sheet.columns().size(); column++) {
                Sheet.Row cells = sheet.rows().get(row);
                Label cell = cell(
                        cells.cells().get(column), sheet.columns().get(column).isNumber());
                if (cells.isSum()) cell.getStyleClass().add("strong");
                grid.add(cell, column, row + 1);
            }
        getChildren().add(grid);
    }

    private static Label cell(String words, boolean isNumber) {
        Label cell = new Label(words);
        cell.setWrapText(true);
        cell.setMinHeight(Region.USE_PREF_SIZE);
        if (isNumber) {
            cell.setMinWidth(52);
            cell.setMaxWidth(84);
            cell.setAlignment(Pos.TOP_RIGHT);
            cell.setTextAlignment(TextAlignment.RIGHT);
        }
        GridPane.setValignment(cell, VPos.TOP);
        return cell;
    }
}
