package handreach.desktop;

import handreach.bench.DeltaOverControl;
import handreach.cartography.LoadoutMark;
import handreach.input.NumberText;
import handreach.loadout.Burden;
import handreach.loadout.Carry;
import handreach.loadout.Loadout;
import handreach.loadout.Radiator;
import handreach.plan.Channel;
import handreach.plan.Equipment;
import handreach.plan.PlanText;
import handreach.study.Scene;
import handreach.units.Decibels;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.value.ObservableValue;
import javafx.collections.FXCollections;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.paint.Color;
import javafx.scene.shape.Line;

/** What do we carry: the loadouts of the plan, the one looked at, the one it is held against, and a new one. */
final class CarryPanel extends VBox implements Aside.Divided {
    private static final PseudoClass CHOSEN = PseudoClass.getPseudoClass("chosen");
    private final Session session;
    private final Consumer<Entry> edit;
    private final Button channel = Labels.link("", this::editChannel);
    private Optional<String> added = Optional.empty();
    private final VBox rows = new VBox(2);
    private final List<Node> loadouts = new ArrayList<>();
    /** Of the names of the loadouts, in their order. */
    private ToggleGroup choice = new ToggleGroup();

    private final ComboBox<String> against = new ComboBox<>();
    private final VBox form = new VBox(6);
    private final ReadOnlyStringWrapper answer = new ReadOnlyStringWrapper("");
    /** What the rows were made of: they are made anew only when it changes. */
    private Equipment shownEquipment;

    private Lengths shownLengths;

    private boolean isFilling;

    /** {@code evidence} shows what the bench says of the antennas, {@code edit} the form of an entry of the plan. */
    CarryPanel(Session session, Runnable evidence, Consumer<Entry> edit) {
        super(9);
        this.session = session;
        this.edit = edit;
        channel.setId("channel");
        channel.setTooltip(new Tooltip("Edit the channel"));
        channel.getStyleClass().add("channel");
        against.setMaxWidth(Double.MAX_VALUE);
        against.setId("held-against");
        Labels.told(against);
        against.setAccessibleText("Loadout it is held against");
        against.setOnAction(chosen -> choose(against.getValue(), session.compared()::set));
        HBox.setHgrow(against, Priority.ALWAYS);
        Label words = new Label("held against");
        words.setMinWidth(Region.USE_PREF_SIZE);
        HBox line = new HBox(8, words, against);
        line.setAlignment(Pos.CENTER_LEFT);
        Button add = new Button("Add a loadout");
        add.setOnAction(pressed -> openForm());
        Button drop = new Button("Take this one out");
        drop.setOnAction(pressed -> takeOut());
        form.setVisible(false);
        form.setManaged(false);
        form.getStyleClass().add("form");
        Button bench = new Button("Bench evidence");
        bench.setId("bench-evidence");
        bench.setOnAction(pressed -> evidence.run());
        FlowPane verbs = new FlowPane(8, 6, add, drop, bench);
        getChildren().addAll(channel, rows, line, verbs, form);
        session.scene().addListener((scene, before, now) -> {
            show();
            lookAtAdded(now);
        });
        session.carried().addListener((which, before, now) -> show());
        session.compared().addListener((which, before, now) -> show());
    }

    ObservableValue<String> answer() {
        return answer.getReadOnlyProperty();
    }

    private void choose(String name, Consumer<Loadout> verb) {
        if (isFilling || name == null || session.scene().get() == null) return;
        session.scene().get().loadouts().stream()
                .filter(loadout -> loadout.name().equals(name))
                .findFirst()
                .ifPresent(verb);
    }

    private void show() {
        Scene scene = session.scene().get();
        if (scene == null
                || session.carried().get() == null
                || session.compared().get() == null) return;
        isFilling = true;
        channel.setText(channelWords(scene));
        List<String> names = scene.loadouts().stream().map(Loadout::name).toList();
        if (!against.getItems().equals(names)) against.setItems(FXCollections.observableArrayList(names));
        against.setValue(session.compared().get().name());
        Lengths lengths = scene.plan().header().lengths();
        if (!scene.plan().equipment().equals(shownEquipment) || lengths != shownLengths) {
            shownEquipment = scene.plan().equipment();
            shownLengths = lengths;
            loadouts.clear();
            choice = new ToggleGroup();
            for (int i = 0; i < scene.loadouts().size(); i++) loadouts.add(row(scene, i));
            rows.getChildren().setAll(loadouts);
        }
        markChosen(names.indexOf(session.carried().get().name()));
        Loadout carried = session.carried().get();
        answer.set(carried.name() + ", " + Math.round(watts(scene, carried) * 10) / 10.0 + " W");
        isFilling = false;
    }

    private void markChosen(int number) {
        for (int i = 0; i < loadouts.size(); i++) loadouts.get(i).pseudoClassStateChanged(CHOSEN, i == number);
        if (number >= 0) choice.selectToggle(choice.getToggles().get(number));
    }

    private static String channelWords(Scene scene) {
        Channel channel = scene.plan().channel();
        String powers = scene.plan().equipment().radios().stream()
                .map(radio -> radio.name() + " " + NumberText.plain(radio.powerW()) + " W")
                .collect(Collectors.joining(", "));
        return channel.name() + ", " + NumberText.plain(channel.frequency().mhz()) + " MHz; " + powers;
    }

    private void editChannel() {
        edit.accept(Entry.of(EntryKind.CHANNEL.section()));
    }

    private static double watts(Scene scene, Loadout loadout) {
        return scene.plan().equipment().radios().stream()
                .filter(radio -> radio.name().equals(loadout.radio().name()))
                .mapToDouble(Equipment.RadioEntry::powerW)
                .findFirst()
                .orElse(0);
    }

    private Node row(Scene scene, int number) {
        Loadout loadout = scene.loadouts().get(number);
        LoadoutMark mark = LoadoutMark.of(number);
        RadioButton name = new RadioButton(loadout.name());
        name.setToggleGroup(choice);
        name.setMnemonicParsing(false);
        name.getStyleClass().add("loadout-name");
        name.setWrapText(true);
        name.setId("loadout-" + number);
        name.setOnAction(chosen -> choose(loadout.name(), session.carried()::set));
        Label details = new Label(details(scene, number, loadout));
        details.getStyleClass().add("quiet");
        details.setWrapText(true);
        VBox words = new VBox(1, name, details);
        HBox.setHgrow(words, Priority.ALWAYS);
        Button change = Labels.link("Edit", () -> edit.accept(Entry.of("loadout", loadout.name())));
        change.setId("edit-loadout-" + number);
        change.setAccessibleText("Edit " + loadout.name());
        HBox row = new HBox(10, badge(mark), words, change);
        row.getStyleClass().add("loadout-row");
        row.setOnMouseClicked(click -> choose(loadout.name(), session.carried()::set));
        return row;
    }

    /** Letter and line of a loadout, as on maps and roses. */
    static Node badge(LoadoutMark mark) {
        Label letter = new Label(mark.letter());
        letter.getStyleClass().add("badge");
        Line line = new Line(0, 0, 24, 0);
        line.setStrokeWidth(2.6);
        Color colour = Color.web(handreach.cartography.Srgb.hex(mark.rgb()));
        line.setStroke(mark.rgb() == LoadoutMark.of(0).rgb() ? Color.web("#6d7679") : colour);
        line.getStrokeDashArray().setAll(mark.dashPx());
        VBox badge = new VBox(3, letter, line);
        badge.setAlignment(Pos.TOP_CENTER);
        badge.setMinWidth(28);
        return badge;
    }

    private static String details(Scene scene, int number, Loadout loadout) {
        Equipment.LoadoutEntry entry = scene.plan().equipment().loadouts().get(number);
        StringBuilder words = new StringBuilder(entry.antenna());
        if (entry.counterpoise()) words.append(" with wire");
        Lengths lengths = scene.plan().header().lengths();
        words.append(String.format(
                Locale.ROOT,
                ", %s, %.1f %s up",
                loadout.carry().carry().word(),
                loadout.heightM() / lengths.shortUnitM(),
                lengths.shortUnit()));
        Burden burden = loadout.antenna().burden();
        if (burden.lengthCm() > 0)
            words.append("; ")
                    .append(lengths.antenna(burden.lengthCm()))
                    .append(burden.lengthIsUsual() ? ", " + Burden.USUAL_LENGTH : "");
        if (burden.massG().isPresent())
            words.append(", ").append(lengths.mass(burden.massG().getAsDouble()).replace(' ', '\u00a0'));
        benchWords(scene, entry).ifPresent(delta -> words.append('\n').append(delta));
        return words.toString();
    }

    /** What the bench says of the antenna in the mounting that the plan uses. */
    private static Optional<String> benchWords(Scene scene, Equipment.LoadoutEntry entry) {
        Equipment.AntennaEntry antenna = antenna(scene, entry.antenna());
        if (antenna.delta().deltaDb().isPresent())
            return Optional.of(Decibels.signed(antenna.delta().deltaDb().getAsDouble(), 1)
                    + " dB over the control, as the plan declares");
        if (scene.bench().isEmpty() || scene.plan().equipment().bench().isEmpty()) return Optional.empty();
        String mount = scene.plan().equipment().bench().get().mount();
        String name = entry.counterpoise()
                ? antenna.delta().withWire().orElse(antenna.delta().benchName())
                : antenna.delta().benchName();
        return scene.bench().get().deltas(name).stream()
                .filter(delta -> delta.mounting().name().equals(mount))
                .findFirst()
                .map(CarryPanel::deltaWords);
    }

    private static Equipment.AntennaEntry antenna(Scene scene, String name) {
        return scene.plan().equipment().antennas().stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static String deltaWords(DeltaOverControl delta) {
        String interval = delta.interval95()
                .map(i -> " (" + Decibels.signed(i.low(), 1) + " to " + Decibels.signed(i.high(), 1) + ")")
                .orElse("");
        return String.format(
                Locale.ROOT,
                "%s dB over the control%s, %s",
                Decibels.signed(delta.db(), 1),
                interval,
                delta.mounting().name());
    }

    /** A loadout that was just added is the one to look at. */
    private void lookAtAdded(Scene scene) {
        scene.loadouts().stream()
                .filter(loadout -> added.equals(Optional.of(loadout.name())))
                .findFirst()
                .ifPresent(loadout -> {
                    added = Optional.empty();
                    session.carried().set(loadout);
                });
    }

    private void openForm() {
        Scene scene = session.scene().get();
        if (scene == null) return;
        TextField name = new TextField();
        name.setId("new-loadout-name");
        ComboBox<String> antenna = choice(scene.plan().equipment().antennas().stream()
                .map(Equipment.AntennaEntry::name)
                .toList());
        antenna.setId("new-loadout-antenna");
        ComboBox<String> radio = choice(scene.plan().equipment().radios().stream()
                .map(Equipment.RadioEntry::name)
                .toList());
        ComboBox<String> carry = choice(Carry.KEYWORD.words());
        CheckBox wire = new CheckBox("with the counterpoise wire");
        wire.setId("new-loadout-wire");
        // Only an antenna that was read or is known with the wire can be carried with it.
        antenna.valueProperty().addListener((choice, before, now) -> offerWire(wire, scene, now));
        offerWire(wire, scene, antenna.getValue());
        Button add = new Button("Add");
        add.setDefaultButton(false);
        add.setId("new-loadout-add");
        add.setOnAction(pressed -> {
            List<String> lines = new ArrayList<>(List.of(
                    "name = " + PlanText.quoted(name.getText().strip()),
                    "radio = " + PlanText.quoted(radio.getValue()),
                    "antenna = " + PlanText.quoted(antenna.getValue()),
                    "carry = " + PlanText.quoted(carry.getValue())));
            if (wire.isSelected()) lines.add("counterpoise = true");
            added = Optional.of(name.getText().strip());
            session.edit("add a loadout", plan -> PlanText.withEntry(plan, "loadout", lines));
            closeForm();
        });
        add.disableProperty().bind(name.textProperty().map(String::isBlank));
        Button leave = new Button("Leave");
        leave.setOnAction(pressed -> closeForm());
        Button other = Labels.link("Another antenna\u2026", () -> edit.accept(Entry.of(EntryKind.ANTENNA.section())));
        other.setId("new-loadout-other");
        other.setTooltip(new Tooltip("One that the plan has not yet: from the bench, or from its data sheet"));
        Node fields = new FormGrid()
                .with("name", name)
                .with("antenna", antenna)
                .with("", other)
                .with("radio", radio)
                .with("carried", carry)
                .with("", wire);
        form.getChildren().setAll(fields, new HBox(8, add, leave));
        form.setVisible(true);
        form.setManaged(true);
        name.requestFocus();
    }

    private static void offerWire(CheckBox wire, Scene scene, String antenna) {
        Equipment.AntennaEntry entry = antenna(scene, antenna);
        boolean isKnown = entry.radiator() == Radiator.QUARTER_WAVE
                || entry.delta().withWire().isPresent();
        if (!isKnown) wire.setSelected(false);
        wire.setDisable(!isKnown);
    }

    private static ComboBox<String> choice(List<String> words) {
        ComboBox<String> box = new ComboBox<>(FXCollections.observableArrayList(words));
        box.setMaxWidth(Double.MAX_VALUE);
        box.getSelectionModel().selectFirst();
        return box;
    }

    private void closeForm() {
        form.getChildren().clear();
        form.setVisible(false);
        form.setManaged(false);
    }

    private void takeOut() {
        Loadout gone = session.carried().get();
        Scene scene = session.scene().get();
        if (gone == null || scene == null) return;
        String users = scene.plan().places().positions().stream()
                .filter(entry -> entry.loadout().equals(Optional.of(gone.name())))
                .map(entry -> entry.name())
                .collect(Collectors.joining(", "));
        if (!users.isEmpty()) {
            session.tell(new Notice(
                    true, "\"" + gone.name() + "\" is carried by " + users + ". Give them another loadout first."));
            return;
        }
        session.edit("take out " + gone.name(), plan -> PlanText.withoutEntry(plan, "loadout", gone.name()));
    }
}
