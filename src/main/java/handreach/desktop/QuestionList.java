package handreach.desktop;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.css.PseudoClass;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/**
 * The way through the window: the person's questions one under the other, each with its answer; one is open at a time.
 */
final class QuestionList extends VBox {
    private static final PseudoClass OPEN = PseudoClass.getPseudoClass("open");
    private final List<Step> steps = new ArrayList<>();

    QuestionList(List<Question> questions) {
        getStyleClass().add("way");
        VBox column = new VBox();
        for (int i = 0; i < questions.size(); i++) steps.add(new Step(i, questions.get(i)));
        column.getChildren().addAll(steps);
        ScrollPane scroll = new ScrollPane(column);
        scroll.setFitToWidth(true);
        scroll.setAccessibleText("The five questions");
        scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        scroll.getStyleClass().add("way-scroll");
        VBox.setVgrow(scroll, Priority.ALWAYS);
        getChildren().add(scroll);
        open(0);
    }

    /** Unfolds one step and folds the others. */
    void open(int number) {
        for (int i = 0; i < steps.size(); i++) steps.get(i).unfold(i == number);
    }

    /**
     * Puts the next step that was never unfolded on the screen, still folded, so that the hand that unfolds it need not wait: what is
     * left of that to do, piece by piece; nothing when no step is left.
     */
    Optional<List<Runnable>> prepareNext() {
        return steps.stream()
                .filter(step -> step.body.getChildren().isEmpty())
                .findFirst()
                .map(step -> {
                    step.setAside();
                    step.body.getChildren().add(step.content);
                    return List.copyOf(step.parts);
                });
    }

    /**
     * Takes what stands in the steps off the screen, unless a hand is at work in it, a step a piece. Each adds to {@code back} what puts
     * it back, what is unfolded first.
     */
    List<Runnable> setAside(List<Runnable> back) {
        return steps.stream()
                .<Runnable>map(step -> () -> {
                    if (step.body.getChildren().isEmpty() || step.hasFocus()) return;
                    step.setAside();
                    back.addAll(step.isOpen() ? 0 : back.size(), step.parts);
                })
                .toList();
    }

    private final class Step extends VBox {
        private final HBox head;
        private final VBox body;
        private final Node content;
        /** Puts back what is aside; what is back already stays as it is. */
        private List<Aside.Part> parts = List.of();

        Step(int number, Question question) {
            getStyleClass().add("step");
            Label ordinal = new Label(Integer.toString(number + 1));
            ordinal.getStyleClass().add("step-number");
            ordinal.setMinWidth(USE_PREF_SIZE);
            Label asks = new Label(question.asks());
            asks.getStyleClass().add("step-asks");
            Label answer = new Label();
            answer.getStyleClass().add("step-answer");
            answer.setWrapText(true);
            answer.textProperty().bind(question.answer());
            VBox words = new VBox(1, asks, answer);
            HBox.setHgrow(words, Priority.ALWAYS);
            head = new HBox(11, ordinal, words);
            head.getStyleClass().add("step-head");
            head.setId("step-" + (number + 1));
            head.setFocusTraversable(true);
            head.setAccessibleRole(AccessibleRole.TOGGLE_BUTTON);
            head.accessibleTextProperty().bind(answer.textProperty().map(text -> question.asks() + " " + text));
            head.setOnMouseClicked(click -> turn(number));
            head.setOnKeyPressed(key -> {
                if (key.getCode() != KeyCode.ENTER && key.getCode() != KeyCode.SPACE) return;
                turn(number);
                key.consume();
            });
            content = question.content();
            body = new VBox();
            body.getStyleClass().add("step-body");
            getChildren().addAll(head, body);
        }

        private void turn(int number) {
            open(isOpen() ? -1 : number);
        }

        boolean isOpen() {
            return body.isVisible();
        }

        /** What was neither unfolded nor prepared is not on the screen at all, and costs no time at the start. */
        private void prepare() {
            if (body.getChildren().isEmpty()) {
                body.getChildren().add(content);
                content.applyCss();
            }
            parts.forEach(Runnable::run);
            parts = List.of();
        }

        private void setAside() {
            parts = Aside.of(content, parts);
        }

        private boolean hasFocus() {
            return getScene() != null && Labels.isWithin(getScene().getFocusOwner(), body);
        }

        void unfold(boolean isWanted) {
            if (isWanted) prepare();
            body.setVisible(isWanted);
            body.setManaged(isWanted);
            // A state, not another class, and of the head alone: else the looks of everything below would be worked out
            // anew.
            head.pseudoClassStateChanged(OPEN, isWanted);
        }
    }
}
