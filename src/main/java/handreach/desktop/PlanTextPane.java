package handreach.desktop;

import handreach.input.Fault;
import handreach.input.InputFault;
import handreach.plan.PlanFile;
import handreach.plan.PlanText;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextArea;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Duration;

/**
 * The plan as text with its line numbers, checked while it is typed; taken over when the person says so. What is wrong is a list that
 * leads to the lines. A plan that cannot be opened is mended here.
 */
final class PlanTextPane extends BorderPane {
    private static final KeyCombination FIND = new KeyCodeCombination(KeyCode.F, KeyCombination.SHORTCUT_DOWN);

    private final Session session;
    private final Worker.LatestOnly checking;
    private final TextArea text = new TextArea();
    private final LineGutter gutter = new LineGutter(text);
    private final TextField find = new TextField();
    private final Label state = new Label();
    private final VBox faults = new VBox(5);
    private final Button take = new Button("Take over");
    private final Button tiles = new Button("Choose the folder of tiles\u2026");
    private final Button leave = new Button("Leave it");
    private final Worker.Debounce rest;
    /** Whether the plan has been edited while this was out of sight. */
    private boolean isOld;

    /** {@code folder} asks the person for a folder of tiles. */
    PlanTextPane(Session session, Supplier<Optional<Path>> folder) {
        this.session = session;
        this.rest = session.worker().debounce(Duration.millis(300), this::check);
        this.checking = session.worker().latestOnly();
        getStyleClass().add("plan-text");
        text.getStyleClass().add("mono");
        text.setId("plan-text");
        text.setAccessibleText("The plan as text");
        state.setWrapText(true);
        state.setId("plan-text-state");
        take.setId("plan-text-take");
        take.setOnAction(pressed -> takeOver());
        Button back = new Button("As it was");
        back.setOnAction(pressed -> fill());
        tiles.setId("plan-text-tiles");
        tiles.setOnAction(pressed -> folder.get().ifPresent(this::takeTiles));
        leave.setId("plan-text-leave");
        leave.setOnAction(pressed -> session.leaveFaulty());
        HBox line = new HBox(10, take, back, tiles, leave, state);
        line.setAlignment(Pos.CENTER_LEFT);
        line.getStyleClass().add("drawer-foot");
        HBox.setHgrow(text, Priority.ALWAYS);
        setTop(finder());
        setCenter(new HBox(gutter, text));
        setRight(faultList());
        setBottom(line);
        addEventHandler(KeyEvent.KEY_PRESSED, key -> {
            if (!FIND.match(key)) return;
            find.requestFocus();
            find.selectAll();
            key.consume();
        });
        text.textProperty().addListener((words, before, now) -> rest.begin());
        session.scene().addListener((scene, before, now) -> {
            boolean isUntouched =
                    before == null || text.getText().equals(before.file().text());
            if (isUntouched || isOld) fillOnceSeen();
        });
        visibleProperty().addListener((visible, was, is) -> {
            if (isOld) fillOnceSeen();
        });
        session.faulty().addListener((plan, before, now) -> mend(now));
        fill();
        mend(session.faulty().get());
    }

    private HBox finder() {
        find.setId("plan-text-find");
        find.setPromptText("a word to find");
        find.setAccessibleText("Find in the plan");
        Button next = new Button("Find next");
        next.setId("plan-text-next");
        next.setOnAction(pressed -> findNext());
        find.setOnAction(entered -> findNext());
        HBox finder = new HBox(8, new Label("find"), find, next);
        finder.setAlignment(Pos.CENTER_LEFT);
        finder.getStyleClass().add("drawer-foot");
        return finder;
    }

    private ScrollPane faultList() {
        faults.setId("plan-text-faults");
        faults.getStyleClass().add("fault-list");
        ScrollPane scroll = new ScrollPane(faults);
        scroll.setAccessibleText("What is wrong with the plan");
        scroll.setFitToWidth(true);
        scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        scroll.setPrefWidth(360);
        scroll.getStyleClass().add("drawer-scroll");
        scroll.visibleProperty().bind(javafx.beans.binding.Bindings.isNotEmpty(faults.getChildren()));
        scroll.managedProperty().bind(scroll.visibleProperty());
        return scroll;
    }

    private void findNext() {
        String wanted = find.getText().toLowerCase(Locale.ROOT);
        if (wanted.isEmpty()) return;
        String all = text.getText().toLowerCase(Locale.ROOT);
        int at = all.indexOf(wanted, text.getSelection().getEnd());
        if (at < 0) at = all.indexOf(wanted);
        if (at < 0) {
            state.setText("\"" + find.getText() + "\" is nowhere in the plan.");
            return;
        }
        text.selectRange(at, at + wanted.length());
        gutter.show(
                1 + (int) all.substring(0, at).chars().filter(c -> c == '\n').count());
    }

    /** Selects a line, from 1. */
    private void goTo(int line) {
        int start = 0;
        for (int i = 1; i < line && start >= 0; i++) start = text.getText().indexOf('\n', start) + 1;
        int end = text.getText().indexOf('\n', start);
        text.requestFocus();
        text.selectRange(start, end < 0 ? text.getLength() : end);
        gutter.show(line);
    }

    private void mend(Optional<FaultyPlan> plan) {
        leave.setVisible(plan.isPresent());
        leave.setManaged(plan.isPresent());
        boolean isWithoutTiles = plan.filter(FaultyPlan::isWithoutTiles).isPresent();
        tiles.setVisible(isWithoutTiles);
        tiles.setManaged(isWithoutTiles);
        if (plan.isEmpty()) {
            fill();
            return;
        }
        if (!text.getText().equals(plan.get().text())) text.setText(plan.get().text());
        tell(plan.get().faults(), false);
    }

    /** Out of sight nobody reads it, and each edit would be laid out for nobody. */
    private void fillOnceSeen() {
        isOld = getScene() != null && !isVisible();
        if (!isOld) fill();
    }

    private void fill() {
        Optional<FaultyPlan> plan = session.faulty().get();
        if (plan.isPresent()) text.setText(plan.get().onDisk());
        else if (session.scene().get() != null)
            text.setText(session.scene().get().file().text());
    }

    /** Another folder of tiles, or the folder of one tile. */
    void takeTiles(Path tileOrFolder) {
        Path folder = java.nio.file.Files.isDirectory(tileOrFolder)
                ? tileOrFolder
                : tileOrFolder.toAbsolutePath().getParent();
        text.setText(PlanText.withValue(
                text.getText(),
                "ground",
                "tiles",
                PlanText.quoted(folder.toAbsolutePath().toString())));
        takeOver();
    }

    private void takeOver() {
        String typed = text.getText();
        if (session.faulty().get().isPresent()) session.mend(typed);
        else
            session.edit("edit the text", plan -> typed, wrong -> {
                if (wrong instanceof InputFault fault) tell(fault.faults(), false);
                else session.tell(wrong);
            });
    }

    private void check() {
        String typed = text.getText();
        Optional<FaultyPlan> plan = session.faulty().get();
        if (plan.isPresent()) {
            checking.ask(progress -> plan.get().faultsOf(typed), found -> tell(found, false), session::tell);
            return;
        }
        if (session.scene().get() == null) return;
        PlanFile file = session.scene().get().file();
        checking.ask(
                progress -> Session.faultsOf(file, typed),
                found -> tell(found, typed.equals(file.text())),
                session::tell);
    }

    private void tell(List<Fault> found, boolean isSame) {
        take.setDisable(!found.isEmpty() || isSame);
        gutter.mark(found.stream().map(Fault::line).filter(line -> line > 0).collect(Collectors.toSet()));
        faults.getChildren().clear();
        for (Fault fault : found) faults.getChildren().add(leading(fault));
        String sound = isSame ? "As in the plan." : "Sound; not yet taken over.";
        String wrong = found.size() == 1 ? "One thing is wrong." : found.size() + " things are wrong.";
        state.setText(found.isEmpty() ? sound : wrong);
    }

    private Button leading(Fault fault) {
        Button button = new Button(fault.line() > 0 ? "line " + fault.line() + ": " + fault.text() : fault.message());
        button.getStyleClass().addAll("link", "fault-line");
        button.setMnemonicParsing(false);
        button.setWrapText(true);
        button.setMinHeight(Region.USE_PREF_SIZE);
        button.setMaxWidth(Double.MAX_VALUE);
        button.setOnAction(pressed -> {
            if (fault.line() > 0) goTo(fault.line());
        });
        return button;
    }
}
