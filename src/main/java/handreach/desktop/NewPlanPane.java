package handreach.desktop;

import handreach.geodesy.Place;
import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.input.NumberText;
import handreach.input.Range;
import handreach.loadout.Radio;
import handreach.plan.BlankPlan;
import handreach.plan.Channel;
import handreach.study.Scene;
import handreach.terrain.Cover;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import javafx.collections.FXCollections;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** From nothing to a saved plan in three steps: the ground, the three figures that only the person knows, the place. */
final class NewPlanPane extends ScrollPane {
    private static final double NARROW_PX = 300;

    private final Session session;
    private final Label ground =
            Labels.line("No tiles yet. Choose them, or drop a tile or a folder of tiles on the window.", "quiet");
    private final FaultLines groundFault = new FaultLines();
    private final TextField title = new TextField("New plan");
    private final TextField mhz = new TextField();
    private final TextField watts = new TextField();
    private final ComboBox<String> cover = new ComboBox<>(FXCollections.observableArrayList(Cover.KEYWORD.words()));
    private final Label wrong = Labels.line("", "field-fault");
    private final Button show = new Button("Show the ground");
    private final TextField at = new TextField();
    private final ToggleButton byClick = new ToggleButton("Put me by a click on the map");
    private final Label placeWrong = Labels.line("", "field-fault");
    private final Button save = new Button("Save the plan\u2026");
    private final Runnable placed;
    private Optional<NewPlan> begun = Optional.empty();

    /** {@code placed} is told when the place was put by a click or typed. */
    NewPlanPane(
            Session session,
            Supplier<Optional<Path>> folder,
            Supplier<Optional<Path>> tile,
            Runnable saving,
            Runnable placed) {
        this.session = session;
        this.placed = placed;
        setId("new-plan");
        setFitToWidth(true);
        setHbarPolicy(ScrollBarPolicy.NEVER);
        getStyleClass().add("drawer-scroll");
        FlowPane steps = new FlowPane(26, 14, groundStep(folder, tile), figuresStep(), placeStep(saving));
        steps.getStyleClass().add("new-plan");
        setContent(steps);
        session.scene().addListener((scene, before, now) -> fillPlace(now));
        if (session.scene().get() != null) fillPlace(session.scene().get());
        rest();
    }

    private static VBox step(String asks, Node... content) {
        Label head = new Label(asks);
        head.getStyleClass().add("panel-head");
        VBox step = new VBox(8, head);
        step.getChildren().addAll(content);
        step.setPrefWidth(NARROW_PX);
        return step;
    }

    private VBox groundStep(Supplier<Optional<Path>> folder, Supplier<Optional<Path>> tile) {
        Button some = new Button("A folder of tiles\u2026");
        some.setOnAction(pressed -> folder.get().ifPresent(this::look));
        Button one = new Button("One tile\u2026");
        one.setOnAction(pressed -> tile.get().ifPresent(this::look));
        ground.setId("new-ground");
        groundFault.setId("new-ground-fault");
        return step("1  On what ground?", new FlowPane(8, 6, some, one), ground, groundFault);
    }

    private VBox figuresStep() {
        title.setId("new-title");
        mhz.setId("new-mhz");
        mhz.setPrefColumnCount(7);
        watts.setId("new-watts");
        watts.setPrefColumnCount(7);
        cover.setId("new-cover");
        cover.setPromptText("choose");
        wrong.setId("new-wrong");
        show.setId("new-show");
        show.setOnAction(pressed -> begin());
        mhz.textProperty().addListener((words, before, now) -> rest());
        watts.textProperty().addListener((words, before, now) -> rest());
        cover.valueProperty().addListener((choice, before, now) -> rest());
        Node form = new FormGrid()
                .with("name", title)
                .with("channel", unit(mhz, "MHz, " + Channel.FREQUENCY.words()))
                .with("power", unit(watts, "W, " + Radio.POWER.words()))
                .with("stands there", cover);
        return step("2  What do you know?", form, wrong, show);
    }

    private VBox placeStep(Runnable saving) {
        at.setId("new-at");
        at.setAccessibleText("Where you start from");
        at.setPromptText("a coordinate, in any form");
        at.setOnAction(entered -> place());
        byClick.setId("new-by-click");
        placeWrong.setId("new-place-wrong");
        save.setId("new-save");
        save.setOnAction(pressed -> saving.run());
        return step(
                "3  Where do you start from?",
                Labels.line("Drag the square on the map, put it by a click, or type where it is.", "quiet"),
                byClick,
                at,
                placeWrong,
                save);
    }

    private static HBox unit(TextField field, String words) {
        Label unit = new Label(words);
        unit.getStyleClass().add("quiet");
        unit.setMinWidth(Region.USE_PREF_SIZE);
        HBox line = new HBox(6, field, unit);
        line.setAlignment(Pos.CENTER_LEFT);
        HBox.setHgrow(unit, Priority.ALWAYS);
        return line;
    }

    /** Looks at a tile or a folder of tiles and tells what it is. */
    void look(Path tileOrFolder) {
        groundFault.clear();
        session.worker()
                .inOrder(
                        () -> NewPlan.of(tileOrFolder),
                        found -> {
                            begun = Optional.of(found);
                            ground.setText(found.words());
                            rest();
                        },
                        fault -> groundFault.show(fault));
    }

    private void rest() {
        String words = begun.isPresent() ? fault().orElse("") : "Choose the ground first.";
        wrong.setText(words);
        show.setDisable(!words.isEmpty());
        boolean isOpen = isMine(session.scene().get());
        at.setDisable(!isOpen);
        byClick.setDisable(!isOpen);
        save.setDisable(!isOpen);
    }

    private Optional<String> fault() {
        if (begun.orElseThrow().middle().isEmpty()) return Optional.of("These tiles hold no height. Choose others.");
        return fault("The channel", mhz, Channel.FREQUENCY)
                .or(() -> fault("The power", watts, Radio.POWER))
                .or(() -> cover.getValue() == null
                        ? Optional.of("Say what stands on the ground: it can cost more than distance.")
                        : Optional.empty());
    }

    private static Optional<String> fault(String what, TextField field, Range range) {
        String typed = field.getText().strip();
        OptionalDouble number = NumberText.parse(typed);
        if (typed.isEmpty()) return Optional.of(what + " is needed, from " + range.words() + ".");
        if (number.isPresent() && range.accepts(number.getAsDouble())) return Optional.empty();
        return Optional.of(what + " " + range.fault(typed));
    }

    private void begin() {
        if (begun.isEmpty()) return;
        NewPlan plan = begun.get();
        String name = title.getText().isBlank() ? "New plan" : title.getText().strip();
        NewPlan.Figures figures = new NewPlan.Figures(
                name,
                NumberText.parse(mhz.getText().strip()).orElseThrow(),
                NumberText.parse(watts.getText().strip()).orElseThrow(),
                cover.getValue());
        session.begin(() -> plan.file(figures), fault -> groundFault.show(fault));
    }

    private static boolean isMine(Scene scene) {
        return scene != null && scene.file().isFresh();
    }

    private void fillPlace(Scene scene) {
        placeWrong.setText("");
        if (isMine(scene))
            scene.plan().places().positions().stream()
                    .filter(entry -> entry.name().equals(BlankPlan.HERE))
                    .forEach(entry ->
                            at.setText(scene.plan().header().placeForm().format(entry.at())));
        rest();
    }

    private void place() {
        try {
            put(Place.parse("the place", at.getText()));
        } catch (InputFault fault) {
            placeWrong.setText(fault.getMessage());
        }
    }

    /** Whether the next click on the map is the place. */
    boolean isPuttingByClick() {
        return byClick.isSelected() && isMine(session.scene().get());
    }

    void put(Position place) {
        byClick.setSelected(false);
        if (begun.isPresent() && !begun.get().box().holds(place.latitudeDeg(), place.longitudeDeg())) {
            placeWrong.setText("That is off the tiles. Take a place on them, or tiles of that place.");
            return;
        }
        placed.run();
        new PlaceVerbs(session).move(BlankPlan.HERE, place);
    }
}
