package handreach.desktop;

import handreach.budget.TwoWayLedger;
import handreach.report.LedgerPair;
import handreach.report.Sheet;
import java.util.function.BiConsumer;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.text.TextAlignment;

/** Both directions of a link beside each other; a line that is pointed at or stepped to is explained. */
final class LedgerTable extends VBox {
    private static final double NUMBER_PX = 74;

    private final BiConsumer<String, String> explain;

    /** {@code explain} is told the title of a line and what it means; both empty when none is pointed at. */
    LedgerTable(BiConsumer<String, String> explain) {
        this.explain = explain;
        setId("path-ledger");
        getStyleClass().add("ledger");
    }

    void show(PathView view) {
        TwoWayLedger ledger = view.answer().ledger().orElseThrow();
        boolean isThereWeaker = ledger.weaker().equals(ledger.there());
        getChildren().clear();
        HBox head = row(
                "dB, positive strengthens",
                isThereWeaker ? "there,\nweaker" : "there",
                isThereWeaker ? "back" : "back,\nweaker",
                isThereWeaker);
        head.getStyleClass().add("ledger-head");
        getChildren().add(head);
        int number = 0;
        for (LedgerPair pair : view.pairs()) {
            Sheet.Row cells = view.sheet().rows().get(number);
            String label = pair.first().label().equals(pair.second().label())
                    ? pair.first().label()
                    : pair.first().label() + "\nback: " + pair.second().label();
            HBox row = row(label, cells.cells().get(1), cells.cells().get(2), isThereWeaker);
            answering(row, number, LedgerWords.title(pair), LedgerWords.of(pair));
            getChildren().add(row);
            number++;
        }
        int sum = 0;
        for (Sheet.Row cells : view.sums()) {
            HBox row = row(
                    cells.cells().get(0), cells.cells().get(1), cells.cells().get(2), isThereWeaker);
            if (cells.isSum()) row.getStyleClass().add("sum");
            String doubt = cells.cells().get(3).isBlank()
                    ? ""
                    : "  Doubt, dB: " + cells.cells().get(3) + ".";
            String title = cells.cells().get(0) + ": " + cells.cells().get(1) + " there, "
                    + cells.cells().get(2) + " back";
            answering(
                    row,
                    number + sum,
                    Character.toUpperCase(title.charAt(0)) + title.substring(1),
                    LedgerWords.ofSum(sum) + doubt);
            getChildren().add(row);
            sum++;
        }
    }

    private static HBox row(String words, String there, String back, boolean isThereWeaker) {
        Label label = new Label(words);
        label.setWrapText(true);
        label.setMinHeight(Region.USE_PREF_SIZE);
        label.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(label, Priority.ALWAYS);
        Label first = number(there);
        Label second = number(back);
        (isThereWeaker ? first : second).getStyleClass().add("weaker");
        HBox row = new HBox(label, first, second);
        row.getStyleClass().add("ledger-row");
        return row;
    }

    private static Label number(String words) {
        Label number = new Label(words);
        number.setMinWidth(NUMBER_PX);
        number.setPrefWidth(NUMBER_PX);
        number.setMaxHeight(Double.MAX_VALUE);
        number.setAlignment(Pos.TOP_RIGHT);
        number.setTextAlignment(TextAlignment.RIGHT);
        number.getStyleClass().add("ledger-number");
        return number;
    }

    private void answering(HBox row, int number, String title, String meaning) {
        row.setId("ledger-line-" + number);
        row.setFocusTraversable(true);
        row.setAccessibleRole(AccessibleRole.TEXT);
        row.setAccessibleText(title + ". " + meaning);
        row.setOnMouseEntered(in -> explain.accept(title, meaning));
        row.setOnMouseClicked(click -> row.requestFocus());
        row.focusedProperty().addListener((focus, was, is) -> {
            if (is) explain.accept(title, meaning);
        });
        row.setOnKeyPressed(key -> {
            int step = key.getCode() == KeyCode.DOWN ? 1 : key.getCode() == KeyCode.UP ? -1 : 0;
            int next = getChildren().indexOf(row) + step;
            if (step == 0 || next < 1 || next >= getChildren().size()) return;
            getChildren().get(next).requestFocus();
            key.consume();
        });
    }
}
