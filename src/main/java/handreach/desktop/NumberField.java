package handreach.desktop;

import handreach.input.NumberText;
import handreach.input.Range;
import handreach.plan.PlanText;
import handreach.units.Lengths;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** A number of the plan with its unit and limits, taken with Enter or when left; what is wrong stands under it, as typed. */
final class NumberField extends VBox {
    private final TextField field = new TextField();
    private final Label limits = new Label();
    private final Label wrong = Labels.line("", "field-fault");
    private final String what;
    private final Range range;
    private final Consumer<String> taken;
    private Lengths lengths = Lengths.METRIC;
    private String last = "";
    /** What the plan says. */
    private String said = "";

    /** {@code what} it is, at the start of a sentence; {@code taken} is handed the number as the plan writes it. */
    NumberField(String id, String what, Range range, Consumer<String> taken) {
        super(2);
        this.what = what;
        this.range = range;
        this.taken = taken;
        field.setId(id);
        field.setAccessibleText(what);
        field.setPrefColumnCount(5);
        wrong.setId(id + "-fault");
        limits.getStyleClass().add("quiet");
        limits.setMinWidth(Region.USE_PREF_SIZE);
        field.setOnAction(entered -> take());
        field.setOnKeyPressed(key -> {
            if (key.getCode() != KeyCode.ESCAPE) return;
            last = said;
            field.setText(said);
            say("");
            key.consume();
        });
        field.focusedProperty().addListener((focus, was, is) -> {
            if (!is) take();
        });
        HBox line = new HBox(6, field, limits);
        line.setAlignment(Pos.CENTER_LEFT);
        getChildren().addAll(line, wrong);
        say("");
    }

    /** Shows what the plan says, in its own unit for lengths. */
    void fill(double planned, Lengths own) {
        lengths = own;
        limits.setText(OwnUnit.limits(range, lengths).words());
        said = PlanText.number(OwnUnit.shown(planned, OwnUnit.of(range, lengths)));
        last = said;
        field.setText(last);
        say("");
    }

    private void take() {
        String typed = field.getText().strip();
        if (typed.equals(last)) return;
        last = typed;
        Range allowed = OwnUnit.limits(range, lengths);
        OptionalDouble number = NumberText.parse(typed);
        if (number.isEmpty())
            say(what + " is \"" + typed + "\", but a number is needed, from " + allowed.words() + ".");
        else if (!allowed.accepts(number.getAsDouble())) say(what + " " + allowed.fault(typed));
        else {
            say("");
            taken.accept(PlanText.number(NumberText.parse(OwnUnit.planned(typed, OwnUnit.of(range, lengths)))
                    .orElseThrow()));
        }
    }

    private void say(String words) {
        wrong.setText(words);
        wrong.setVisible(!words.isEmpty());
        wrong.setManaged(!words.isEmpty());
    }
}
