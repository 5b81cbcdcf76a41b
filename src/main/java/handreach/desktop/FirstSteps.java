package handreach.desktop;

import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The way round, on a small sheet over the map: shown once by itself, later when asked for. */
final class FirstSteps extends VBox {
    private static final List<Step> STEPS = List.of(
            new Step(
                    1,
                    "Move somebody",
                    "The square with a ring is where the reach starts. Drag it: the colours follow your hand, coarse at first, then in"
                            + " full. Undo takes it back."),
            new Step(
                    0,
                    "Try another antenna",
                    "Choose a loadout on the right, or press 1 to 6. Lay \"Bought by one over another\" on the map to see which places"
                            + " the bigger one adds."),
            new Step(
                    2,
                    "Look along a path",
                    "Press \"Pull a path\" and drag from one place to another: the ground between them, and every decibel of the link,"
                            + " line by line."),
            new Step(
                    3, "Ask for a relay", "The fourth question tells whether one is needed and where it should stand."),
            new Step(
                    4,
                    "Walk it",
                    "Carry the prediction into the field, bring the log back, and the fifth question says how right it was. Odds are no"
                            + " promise: carry a second means of calling for help."));

    private final QuestionList way;
    private final Label title = new Label();
    private final Label text = new Label();
    private final Label count = new Label();
    private final Button next = new Button();
    private int at;

    private record Step(int question, String title, String text) {}

    FirstSteps(QuestionList way) {
        super(7);
        this.way = way;
        setId("first-steps");
        getStyleClass().addAll("key", "first-steps");
        setMaxSize(330, Region.USE_PREF_SIZE);
        title.getStyleClass().add("step-asks");
        text.setWrapText(true);
        text.setMinHeight(Region.USE_PREF_SIZE);
        count.getStyleClass().add("quiet");
        next.setId("next-step");
        next.setOnAction(pressed -> show(at + 1));
        Button leave = new Button("Leave");
        leave.setId("leave-steps");
        leave.getStyleClass().add("link");
        leave.setOnAction(pressed -> end());
        HBox foot = new HBox(10, next, leave, count);
        foot.setAlignment(Pos.CENTER_LEFT);
        getChildren().addAll(title, text, foot);
        setVisible(false);
        setManaged(false);
    }

    void begin() {
        setVisible(true);
        setManaged(true);
        show(0);
    }

    private void show(int number) {
        if (number >= STEPS.size()) {
            end();
            return;
        }
        at = number;
        Step step = STEPS.get(number);
        title.setText(step.title());
        text.setText(step.text());
        count.setText((number + 1) + " of " + STEPS.size());
        next.setText(number + 1 < STEPS.size() ? "Next" : "Done");
        way.open(step.question());
    }

    private void end() {
        setVisible(false);
        setManaged(false);
        way.open(0);
        RecentPlans.wayShown();
    }
}
