package handreach.desktop;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableBooleanValue;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What to do first, in the middle of a window without a plan. */
final class StartPane extends VBox {
    private static final int MOST_RECENT = 4;

    /** What its buttons do: begin, open, open one of those opened lately; it stands back while {@code isCovered}. */
    StartPane(Session session, Runnable begin, Runnable open, Consumer<Path> recent, ObservableBooleanValue isCovered) {
        super(10);
        setId("start");
        getStyleClass().addAll("key", "start");
        setMaxSize(470, Region.USE_PREF_SIZE);
        Label title = new Label("Begin with the ground you go to");
        title.getStyleClass().add("start-title");
        Label words = Labels.line(
                "Drop an elevation tile, or a folder of tiles, on this window. Or choose one: then put yourself on the map, give channel"
                        + " and power, and save. Nothing is fetched; Help, Elevation tiles, tells where they come from.",
                "plain");
        Button fresh = new Button("New plan\u2026");
        fresh.setId("start-new");
        fresh.setOnAction(pressed -> begin.run());
        Button other = new Button("Open a plan\u2026");
        other.setId("start-open");
        other.setOnAction(pressed -> open.run());
        getChildren().addAll(title, words, new FlowPane(8, 6, fresh, other));
        List<Path> lately = RecentPlans.list();
        if (!lately.isEmpty()) getChildren().add(new Label("Opened lately:"));
        for (Path plan : lately.subList(0, Math.min(MOST_RECENT, lately.size()))) {
            Button button = new Button(plan.toString());
            button.getStyleClass().add("link");
            button.setWrapText(true);
            button.setMnemonicParsing(false);
            button.setOnAction(pressed -> recent.accept(plan));
            getChildren().add(button);
        }
        visibleProperty().bind(Bindings.and(session.scene().isNull(), Bindings.not(isCovered)));
        managedProperty().bind(visibleProperty());
    }
}
