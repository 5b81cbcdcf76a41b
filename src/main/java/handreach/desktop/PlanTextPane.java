package handreach.desktop;

import handreach.plan.PlanFile;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextArea;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.util.Duration;

/** The plan as text, checked while it is typed; taken over when the person says so. */
final class PlanTextPane extends BorderPane {
    private final Session session;
    private final Worker.Newest checking;
    private final TextArea text = new TextArea();
    private final Label state = new Label();
    private final Button take = new Button("Take over");
    private final Worker.Rest rest;

    PlanTextPane(Session session) {
        this.session = session;
        this.rest = session.worker().rest(Duration.millis(300), this::check);
        this.checking = session.worker().newest();
        getStyleClass().add("plan-text");
        text.getStyleClass().add("mono");
        text.setId("plan-text");
        state.setWrapText(true);
        take.setOnAction(pressed -> session.edit("edit the text", plan -> text.getText()));
        Button back = new Button("As it was");
        back.setOnAction(pressed -> fill());
        HBox line = new HBox(10, take, back, state);
        line.setAlignment(Pos.CENTER_LEFT);
        line.getStyleClass().add("drawer-foot");
        setCenter(text);
        setBottom(line);
        text.textProperty().addListener((words, before, now) -> rest.begin());
        session.scene().addListener((scene, before, now) -> {
            boolean isUntouched =
                    before == null || text.getText().equals(before.file().text());
            if (isUntouched) fill();
        });
        fill();
    }

    private void fill() {
        if (session.scene().get() == null) return;
        text.setText(session.scene().get().file().text());
    }

    private void check() {
        if (session.scene().get() == null) return;
        PlanFile file = session.scene().get().file();
        String typed = text.getText();
        checking.ask(progress -> Session.faultsOf(file, typed), this::tell, session::tell);
    }

    private void tell(List<String> faults) {
        boolean isSame = text.getText().equals(session.scene().get().file().text());
        take.setDisable(!faults.isEmpty() || isSame);
        state.setText(
                faults.isEmpty()
                        ? (isSame ? "As in the plan." : "Sound; not yet taken over.")
                        : faults.get(0) + (faults.size() > 1 ? "  (and " + (faults.size() - 1) + " more)" : ""));
    }
}
