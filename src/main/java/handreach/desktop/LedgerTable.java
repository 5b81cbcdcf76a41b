package handreach.desktop;

import handreach.budget.TwoWayLedger;
import handreach.report.LedgerRow;
import handreach.report.page.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.text.TextAlignment;

/** Both directions of a link beside each other; a line that is pointed at or stepped to is explained. */
final class LedgerTable extends VBox implements Aside.Divided {
    private static final PseudoClass WEAKER = PseudoClass.getPseudoClass("weaker");
    private static final PseudoClass SUM = PseudoClass.getPseudoClass("sum");

    private static final int USUAL_LINES = 18;
    private static final int SOME_LINES = 6;

    private final BiConsumer<String, String> explain;
    private final Line head = new Line();
    private final List<Line> lines = new ArrayList<>();
    private final Button unfold;
    private boolean isUnfolded;

    /** {@code explain} is told the title of a line and what it means; both empty when none is pointed at. */
    LedgerTable(BiConsumer<String, String> explain) {
        this.explain = explain;
        setId("path-ledger");
        getStyleClass().add("ledger");
        head.getStyleClass().add("ledger-head");
        unfold = Labels.link("", () -> {
            isUnfolded = !isUnfolded;
            foldNothing();
        });
        unfold.setId("ledger-unfold");
        getChildren().addAll(head, unfold);
    }

    /**
     * Steps that write a link into the lines that stand there already, as far as they go: the looks of new ones have to be worked out
     * first.
     */
    List<Runnable> steps(PathView view) {
        TwoWayLedger ledger = view.answer().ledger().orElseThrow();
        boolean isThereWeaker = ledger.weaker().equals(ledger.there());
        Table<LedgerRow> table = view.ledger();
        List<Runnable> steps = new ArrayList<>();
        steps.add(() -> head.fill(
                List.of(
                        table.head(0),
                        table.head(1).replace(", ", ",\n"),
                        table.head(2).replace(", ", ",\n")),
                isThereWeaker));
        for (int each = 0; each < table.rowCount(); each++) {
            int row = each;
            steps.add(() -> fill(view, row, isThereWeaker));
        }
        steps.add(() -> {
            while (lines() > table.rowCount()) getChildren().remove(lines.remove(lines() - 1));
            foldNothing();
        });
        return steps;
    }

    private void fill(PathView view, int row, boolean isThereWeaker) {
        Table<LedgerRow> table = view.ledger();
        Line line = line(row);
        line.fill(List.of(table.cell(row, 0), table.cell(row, 1), table.cell(row, 2)), isThereWeaker);
        line.answer(table.row(row).title(), view.meanings().get(row));
        line.pseudoClassStateChanged(SUM, table.isSum(row));
        line.isNothing = !table.isSum(row) && isNothing(table.cell(row, 1)) && isNothing(table.cell(row, 2));
    }

    private int lines() {
        return lines.size();
    }

    /** What neither gives nor takes is folded: it would hide what does. */
    private void foldNothing() {
        int nothing = 0;
        for (int i = 0; i < lines(); i++) {
            Line line = line(i);
            if (line.isNothing) nothing++;
            boolean isShown = !line.isNothing || isUnfolded;
            line.setVisible(isShown);
            line.setManaged(isShown);
        }
        unfold.setVisible(nothing > 0);
        unfold.setManaged(nothing > 0);
        unfold.setText((isUnfolded ? "Fold " : "Show ") + nothing + (nothing == 1 ? " line" : " lines") + " of 0.0 dB");
    }

    private static boolean isNothing(String cell) {
        return cell.matches("[+\u2212-]?0\\.0|\u2013|");
    }

    /** Puts in some empty lines for the first link; false when there are as many as it is likely to have. */
    boolean prepareNext() {
        int lines = lines();
        for (int i = 0; i < SOME_LINES && lines + i < USUAL_LINES; i++) line(lines + i);
        return lines < USUAL_LINES;
    }

    /** A line below the head, by its number; a new one where there is none yet. */
    private Line line(int number) {
        if (number < lines()) return lines.get(number);
        Line line = new Line();
        line.stand(number);
        lines.add(line);
        getChildren().add(1 + number, line);
        return line;
    }

    private final class Line extends HBox {
        private final Label words = new Label();
        private final Label there = number();
        private final Label back = number();
        private String title = "";
        private String meaning = "";
        private boolean isNothing;

        Line() {
            words.setWrapText(true);
            words.setMinHeight(Region.USE_PREF_SIZE);
            words.setMaxWidth(Double.MAX_VALUE);
            HBox.setHgrow(words, Priority.ALWAYS);
            getChildren().addAll(words, there, back);
            getStyleClass().add("ledger-row");
        }

        private static Label number() {
            Label number = new Label();
            number.setMaxHeight(Double.MAX_VALUE);
            number.setAlignment(Pos.TOP_RIGHT);
            number.setTextAlignment(TextAlignment.RIGHT);
            number.getStyleClass().add("ledger-number");
            return number;
        }

        void fill(List<String> cells, boolean isThereWeaker) {
            words.setText(cells.get(0));
            there.setText(cells.get(1));
            back.setText(cells.get(2));
            there.pseudoClassStateChanged(WEAKER, isThereWeaker);
            back.pseudoClassStateChanged(WEAKER, !isThereWeaker);
        }

        /** What is told to who points at the line or steps to it. */
        void answer(String newTitle, String newMeaning) {
            title = newTitle;
            meaning = newMeaning;
            setAccessibleText(title + ". " + meaning);
            if (isHover() || isFocused()) explain.accept(title, meaning);
        }

        void stand(int number) {
            setId("ledger-line-" + number);
            setFocusTraversable(true);
            setAccessibleRole(AccessibleRole.TEXT);
            setOnMouseEntered(in -> explain.accept(title, meaning));
            setOnMouseClicked(click -> requestFocus());
            focusedProperty().addListener((focus, was, is) -> {
                if (is) explain.accept(title, meaning);
            });
            setOnKeyPressed(key -> {
                int step = key.getCode() == KeyCode.DOWN ? 1 : key.getCode() == KeyCode.UP ? -1 : 0;
                List<Node> all = LedgerTable.this.getChildren();
                int next = all.indexOf(this) + step;
                while (step != 0
                        && next >= 1
                        && next < all.size()
                        && !all.get(next).isVisible()) next += step;
                if (step == 0 || next < 1 || next >= all.size()) return;
                all.get(next).requestFocus();
                key.consume();
            });
        }
    }
}
