package handreach.desktop;

import handreach.report.page.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
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
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import javafx.scene.text.TextAlignment;

/** A table of an answer in the window. The first cell of a row that carries a verb is a link. */
final class TableGrid extends VBox implements Aside.Divided {
    private static final double GAP_PX = 8;
    /** Width of a letter or figure at the usual size of words, px. */
    private static final double LETTER_PX = 7;
    /** The same in heads, which are bold. */
    private static final double HEAD_LETTER_PX = 7.7;

    private static final double LEAST_PX = 20;
    private static final double MOST_NUMBER_PX = 84;
    /** Words of so many letters never wrap. */
    private static final int SHORT = 14;

    private static final int LONG = 40;
    /** A column of longer words is not made narrower, or it reads like a ribbon. */
    private static final double NARROWEST_PX = 96;

    private final Table<?> table;
    private final List<BlockView.RowVerb<?>> verbs;
    private final GridPane grid = new GridPane();

    TableGrid(Table<?> table, List<BlockView.RowVerb<?>> verbs) {
        this(table, verbs, true);
    }

    private TableGrid(Table<?> table, List<BlockView.RowVerb<?>> verbs, boolean isWhole) {
        super(4);
        this.table = table;
        this.verbs = verbs;
        getStyleClass().add("sheet");
        if (!table.caption().isBlank()) getChildren().add(Labels.line(table.caption(), "quiet"));
        grid.setHgap(GAP_PX);
        grid.setVgap(3);
        for (int column = 0; column < table.columnCount(); column++) head(column);
        getChildren().add(grid);
        if (isWhole) for (int row = 0; row < table.rowCount(); row++) add(row);
    }

    /** Its heads alone; {@link #rows} puts in the rest. */
    static TableGrid ofHeads(Table<?> table, List<BlockView.RowVerb<?>> verbs) {
        return new TableGrid(table, verbs, false);
    }

    /** Each puts in a row, its looks worked out. */
    List<Runnable> rows() {
        List<Runnable> steps = new ArrayList<>();
        for (int each = 0; each < table.rowCount(); each++) {
            int row = each;
            steps.add(() -> add(row).forEach(Node::applyCss));
        }
        return steps;
    }

    private List<Node> add(int row) {
        List<Node> cells = new ArrayList<>();
        for (int column = 0; column < table.columnCount(); column++) {
            Node cell = cell(row, column);
            GridPane.setValignment(cell, VPos.TOP);
            grid.add(cell, column, row + 1);
            cells.add(cell);
        }
        return cells;
    }

    /** Whether a table can be read in so narrow a place. */
    static boolean fits(Table<?> table, double widthPx) {
        double needed = 0;
        for (int column = 0; column < table.columnCount(); column++) needed += GAP_PX + columnPx(table, column);
        return needed - GAP_PX <= widthPx;
    }

    /** What a column needs at least: its longest word, its longest short cell, or what longer ones need to wrap well. */
    private static double columnPx(Table<?> table, int column) {
        int heads = Stream.of(table.head(column).split("[\\s/]+"))
                .mapToInt(String::length)
                .max()
                .orElse(0);
        int letters = 0;
        for (int row = 0; row < table.rowCount(); row++) {
            int cell = table.cell(row, column).length();
            letters = Math.max(letters, table.isNumber(column) || cell <= SHORT ? cell : LONG);
        }
        double widthPx = Math.max(LEAST_PX, Math.max(heads * HEAD_LETTER_PX, letters * LETTER_PX));
        return table.isNumber(column) ? Math.min(MOST_NUMBER_PX, widthPx) : Math.min(NARROWEST_PX, widthPx);
    }

    private void head(int column) {
        boolean isNumber = table.isNumber(column);
        ColumnConstraints constraints = new ColumnConstraints();
        constraints.setHalignment(isNumber ? HPos.RIGHT : HPos.LEFT);
        constraints.setHgrow(isNumber ? Priority.NEVER : Priority.SOMETIMES);
        grid.getColumnConstraints().add(constraints);
        Label head = label(table.head(column), column);
        head.getStyleClass().add("sheet-head");
        grid.add(head, column, 0);
    }

    private Node cell(int row, int column) {
        Optional<Button> link = column > 0 ? Optional.empty() : BlockView.RowVerb.link(table, row, verbs);
        if (link.isPresent()) return link.get();
        Label cell = label(table.cell(row, column), column);
        if (table.isSum(row) || table.isMarked(row)) cell.getStyleClass().add("strong");
        return cell;
    }

    private Label label(String words, int column) {
        boolean isNumber = table.isNumber(column);
        double leastPx = isNumber ? columnPx(table, column) : NARROWEST_PX;
        Cell label = new Cell(words, leastPx, isNumber ? MOST_NUMBER_PX : Double.MAX_VALUE);
        label.setWrapText(true);
        label.setMinHeight(Region.USE_PREF_SIZE);
        if (isNumber) {
            label.setAlignment(Pos.TOP_RIGHT);
            label.setTextAlignment(TextAlignment.RIGHT);
        } else if (words.length() <= SHORT) label.setMinWidth(Region.USE_PREF_SIZE);
        return label;
    }

    /** Words that wrap, but never within one of them, at any size of words. */
    private static final class Cell extends LineLabel {
        private final double leastPx;
        private final double mostPx;
        private Font measured;
        private double longestPx;

        /** Widths at the usual size of words. */
        Cell(String words, double leastPx, double mostPx) {
            super(words);
            this.leastPx = leastPx;
            this.mostPx = mostPx;
        }

        @Override
        protected double computeMinWidth(double heightPx) {
            if (!getFont().equals(measured)) longestPx = longestWordPx(getText(), getFont());
            measured = getFont();
            return Math.max(leastPx * scale(), longestPx + 1);
        }

        @Override
        protected double computeMaxWidth(double heightPx) {
            return Math.max(mostPx * scale(), minWidth(heightPx));
        }

        private double scale() {
            return getFont().getSize() / MapFonts.USUAL_PX;
        }
    }

    private static double longestWordPx(String words, Font font) {
        Text measured = new Text();
        measured.setFont(font);
        double longest = 0;
        for (String word : words.split("\\s+|(?<=[-/])")) {
            measured.setText(word);
            longest = Math.max(longest, measured.getLayoutBounds().getWidth());
        }
        return Math.ceil(longest);
    }
}
