package handreach.desktop;

import handreach.input.Fault;
import handreach.input.InputFault;
import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What is wrong, in the reader's own lines, at the place where the answer would stand. */
final class FaultLines extends VBox {
    private static final int MOST_LINES = 40;

    FaultLines() {
        super(4);
        getStyleClass().addAll("notice", "fault");
        clear();
    }

    void show(Throwable wrong) {
        List<String> lines = wrong instanceof InputFault fault
                ? fault.faults().stream().map(Fault::message).toList()
                : List.of(Notice.of(wrong).text());
        getChildren().clear();
        lines.stream().limit(MOST_LINES).map(FaultLines::line).forEach(getChildren()::add);
        if (lines.size() > MOST_LINES)
            getChildren().add(line("And " + (lines.size() - MOST_LINES) + " more like these."));
        setAccessibleText(String.join(" ", lines));
        setVisible(true);
        setManaged(true);
    }

    void clear() {
        setVisible(false);
        setManaged(false);
    }

    private static Label line(String words) {
        Label label = new Label(words);
        label.setWrapText(true);
        label.setMinHeight(Region.USE_PREF_SIZE);
        return label;
    }
}
