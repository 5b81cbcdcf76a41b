package handreach.desktop;

import handreach.input.NumberText;
import handreach.plan.PlanText;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;

/** A number of the plan: taken with Enter or when left; what is no number is told and stays as typed. */
final class NumberField extends TextField {
    private final String what;
    private final Consumer<String> taken;
    private final Consumer<Notice> told;
    private String last = "";
    /** What the plan says. */
    private String said = "";

    /** {@code what} it is, at the start of a sentence; {@code taken} is handed the number as the plan writes it. */
    NumberField(String id, String what, Consumer<String> taken, Consumer<Notice> told) {
        this.what = what;
        this.taken = taken;
        this.told = told;
        setId(id);
        setPrefColumnCount(5);
        setOnAction(entered -> take());
        setOnKeyPressed(key -> {
            if (key.getCode() != KeyCode.ESCAPE) return;
            last = said;
            setText(said);
            key.consume();
        });
        focusedProperty().addListener((focus, was, is) -> {
            if (!is) take();
        });
    }

    /** Shows what the plan says. */
    void fill(double value) {
        said = PlanText.number(value);
        last = said;
        setText(last);
    }

    private void take() {
        String typed = getText().strip();
        if (typed.equals(last)) return;
        last = typed;
        OptionalDouble number = NumberText.parse(typed);
        if (number.isPresent()) taken.accept(PlanText.number(number.getAsDouble()));
        else
            told.accept(new Notice(true, what + " is \"" + typed + "\", but a number is needed, such as 5 or 2.5.")
                    .as(Notice.Kind.REFUSED));
    }
}
