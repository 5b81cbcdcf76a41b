package handreach.desktop;

import handreach.plan.Places;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.scene.text.Text;

/** Goes through everything that the window can show of the forest hills, and stops at each sight. */
final class WindowTour {
    private final WindowRun run;
    private final Consumer<String> visitor;

    /** {@code visitor} is told the name of each sight, on the test's own thread. */
    WindowTour(WindowRun run, Consumer<String> visitor) {
        this.run = run;
        this.visitor = visitor;
    }

    void go() {
        questions();
        forms();
        drawers();
    }

    private void questions() {
        for (int question = 1; question <= 3; question++) open(question);
        run.onScreen(() -> run.window().way().open(3));
        if (run.session().relay().get().isEmpty()) run.press("#relay-find");
        run.await(() -> run.session().relay().get().isPresent());
        run.settle();
        open(4);
        run.onScreen(() -> run.window().way().open(4));
        if (run.session().walked().get().isEmpty()) run.press("#walk-compare");
        run.await(() -> run.session().walked().get().isPresent());
        run.settle();
        open(5);
    }

    private void open(int question) {
        run.onScreen(() -> run.window().way().open(question - 1));
        run.settle();
        visitor.accept("question-" + question);
    }

    private void forms() {
        for (EntryKind kind : EntryKind.values()) {
            run.onScreen(() -> run.window().showEquipment(Entry.of(kind.section())));
            run.settle();
            visitor.accept("form-" + (kind.section().isEmpty() ? "plan" : kind.section()));
        }
    }

    private void drawers() {
        run.onScreen(() -> run.session().pulled().set(Optional.of(path("spike camp", "creek crew"))));
        run.await(() -> run.stage().getScene().lookup("#path-gap-1") != null);
        run.settle();
        visitor.accept("path");
        run.onScreen(() -> run.window().showBench());
        run.settle();
        visitor.accept("bench");
        run.onScreen(() -> run.window().showPlanText());
        run.settle();
        run.onScreen(() -> {
            javafx.scene.control.TextArea text =
                    (javafx.scene.control.TextArea) run.stage().getScene().lookup("#plan-text");
            text.setText(text.getText().replace("count = 2", "count = 20"));
        });
        run.settle();
        visitor.accept("text");
        for (HelpPane.Topic topic : HelpPane.Topic.values()) {
            run.onScreen(() -> run.window().showHelp(topic));
            run.settle();
            visitor.accept("help-" + topic.ordinal());
        }
        run.onScreen(() -> run.window().showNewPlan());
        run.settle();
        visitor.accept("new-plan");
        run.onScreen(() -> {
            run.window().goTo();
            run.session().tell(Notice.remark("A remark.").with(new Notice.Verb("Do it", () -> {}, true)));
        });
        run.settle();
        visitor.accept("go-to");
    }

    private PulledPath path(String from, String to) {
        return new PulledPath(end(from), end(to), true);
    }

    private PulledPath.End end(String name) {
        Places.PositionEntry entry = run.session().scene().get().plan().places().positions().stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
        return PulledPath.End.of(entry.at(), Optional.of(entry));
    }

    /** Everything that can be seen now, scrolled out of view or not. */
    List<Node> shown() {
        List<Node> shown = new ArrayList<>();
        gather(run.stage().getScene().getRoot(), shown);
        return shown;
    }

    private static void gather(Node node, List<Node> shown) {
        if (!node.isVisible()) return;
        shown.add(node);
        if (node instanceof ScrollPane pane && pane.getContent() != null) gather(pane.getContent(), shown);
        else if (node instanceof Parent parent) parent.getChildrenUnmodifiable().forEach(child -> gather(child, shown));
    }

    /** Whether a label is so narrow that a line of it ends within a word. */
    static boolean breaksAWord(Labeled label) {
        if (!label.isWrapText() || label.getText() == null || label.getWidth() <= 0) return false;
        Text measured = new Text();
        measured.setFont(label.getFont());
        for (String word : label.getText().split("[\\s/-]+")) {
            measured.setText(word);
            if (measured.getLayoutBounds().getWidth() > label.getWidth() + 1) return true;
        }
        return false;
    }
}
