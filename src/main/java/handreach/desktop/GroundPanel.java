package handreach.desktop;

import handreach.geodesy.Place;
import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.loadout.Loadout;
import handreach.plan.ModelWish;
import handreach.plan.Places;
import handreach.plan.PlanText;
import handreach.reach.AreaRequest;
import handreach.study.ModelChoice;
import handreach.study.Scene;
import handreach.terrain.Cover;
import handreach.terrain.TileSummary;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.value.ObservableValue;
import javafx.collections.FXCollections;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What ground: the area, its tiles, what stands on it, and the positions of people. */
final class GroundPanel extends VBox implements Aside.Divided {
    private final Session session;
    private final PlaceVerbs places;
    private final NumberField radius;
    private final NumberField cell;
    private final ComboBox<String> model = new ComboBox<>();
    private final ComboBox<String> cover = new ComboBox<>();
    private final Label tiles = new Label();
    /** Which model the program chose, and why. */
    private final Label chosen = new Label();

    private final VBox positions = new VBox(5);
    private final ReadOnlyStringWrapper answer = new ReadOnlyStringWrapper("");
    private final List<Row> rows = new ArrayList<>();
    private List<String> rowsMadeOf = List.of();
    private boolean isFilling;

    GroundPanel(Session session) {
        super(10);
        this.session = session;
        this.places = new PlaceVerbs(session);
        this.radius = new NumberField(
                "radius",
                "The radius",
                AreaRequest.RADIUS,
                typed -> session.edit("radius", plan -> PlanText.withValue(plan, "area", "radius_km", typed)));
        this.cell = new NumberField(
                "cell",
                "The side of a cell",
                AreaRequest.CELL,
                typed -> session.edit("cells", plan -> PlanText.withValue(plan, "reach", "cell_m", typed)));
        tiles.setWrapText(true);
        tiles.getStyleClass().add("quiet");
        Label heading = new Label("Positions");
        heading.getStyleClass().add("strong");
        Label hint = new Label("Drag one on the map to move it; a double click puts a new one.");
        hint.setWrapText(true);
        hint.getStyleClass().add("quiet");
        chosen.setId("model-choice");
        chosen.setWrapText(true);
        chosen.getStyleClass().add("quiet");
        chosen.managedProperty().bind(chosen.textProperty().isNotEmpty());
        getChildren().addAll(settings(), chosen, tiles, heading, hint, positions);
        session.scene().addListener((scene, before, now) -> show(now));
    }

    ObservableValue<String> answer() {
        return answer.getReadOnlyProperty();
    }

    private Node settings() {
        model.setItems(FXCollections.observableArrayList(ModelWish.KEYWORD.words()));
        model.setId("model");
        cover.setItems(FXCollections.observableArrayList(Cover.KEYWORD.words()));
        model.setMaxWidth(Double.MAX_VALUE);
        cover.setMaxWidth(Double.MAX_VALUE);
        onChoice(
                model,
                word -> session.edit(
                        "model", plan -> PlanText.withValue(plan, "reach", "model", PlanText.quoted(word))));
        onChoice(
                cover,
                word -> session.edit(
                        "cover", plan -> PlanText.withValue(plan, "ground", "cover", PlanText.quoted(word))));
        return new FormGrid()
                .with("radius", radius)
                .with("cells", cell)
                .with("stands on it", cover)
                .with("loss model", model);
    }

    private Lengths lengths() {
        Scene scene = session.scene().get();
        return scene == null ? Lengths.METRIC : scene.plan().header().lengths();
    }

    private void onChoice(ComboBox<String> box, Consumer<String> verb) {
        box.setOnAction(chosen -> {
            if (!isFilling && box.getValue() != null) verb.accept(box.getValue());
        });
    }

    private void show(Scene scene) {
        isFilling = true;
        radius.fill(scene.plan().places().area().radiusKm(), lengths());
        cell.fill(scene.plan().questions().reach().cellM(), lengths());
        model.setValue(scene.plan().questions().reach().wish().word());
        cover.setValue(scene.plan().ground().cover().everywhere().word());
        tiles.setText(tileWords(scene));
        chosen.setText(scene.choice().map(ModelChoice::words).orElse(""));
        showPositions(scene);
        answer.set(String.format(
                Locale.ROOT,
                "%s; %d position%s, %s round",
                scene.plan().header().title(),
                scene.plan().places().positions().size(),
                scene.plan().places().positions().size() == 1 ? "" : "s",
                scene.plan()
                        .header()
                        .lengths()
                        .text(1000 * scene.plan().places().area().radiusKm())));
        isFilling = false;
    }

    private static String tileWords(Scene scene) {
        List<TileSummary> all = scene.tiles().tiles();
        String formats = String.join(
                ", ", all.stream().map(TileSummary::format).distinct().toList());
        String count = all.size() == 1 ? "1 tile" : all.size() + " tiles";
        return count + " (" + formats + ") read as " + scene.cut().surface().word() + ", from "
                + scene.plan().ground().tiles().getFileName();
    }

    /** Fills the rows; makes them anew only when other people or loadouts are in the plan, so that typing is not interrupted. */
    private void showPositions(Scene scene) {
        List<Places.PositionEntry> entries = scene.plan().places().positions();
        List<String> made = Stream.concat(
                        entries.stream().map(Places.PositionEntry::name),
                        scene.loadouts().stream().map(Loadout::name))
                .toList();
        if (!made.equals(rowsMadeOf)) {
            rowsMadeOf = made;
            rows.clear();
            entries.forEach(entry -> rows.add(new Row(entry.name(), scene.loadouts())));
            positions.getChildren().setAll(rows);
        }
        for (int i = 0; i < rows.size(); i++) rows.get(i).fill(scene, entries.get(i));
    }

    /** One position: its name, what it carries, where it is. */
    private final class Row extends VBox {
        private final ComboBox<String> loadout;
        private final TextField at = new TextField();
        private final Label wrong = Labels.line("", "field-fault");
        private final String position;

        Row(String position, List<Loadout> loadouts) {
            super(2);
            this.position = position;
            TextField name = new TextField(position);
            name.setPrefColumnCount(9);
            name.setAccessibleText("Name of " + position);
            HBox.setHgrow(name, Priority.ALWAYS);
            name.setOnAction(entered -> {
                String fresh = name.getText().strip();
                if (!fresh.isEmpty() && !fresh.equals(position)) places.rename(position, fresh);
            });
            loadout = new ComboBox<>(FXCollections.observableArrayList(
                    loadouts.stream().map(Loadout::name).toList()));
            loadout.setPromptText("the control");
            loadout.setMaxWidth(Double.MAX_VALUE);
            Labels.told(loadout);
            loadout.setAccessibleText("Loadout of " + position);
            loadout.setOnAction(chosen -> {
                if (!isFilling) places.carry(position, Optional.ofNullable(loadout.getValue()));
            });
            Button out = new Button("Remove");
            out.setMinWidth(Region.USE_PREF_SIZE);
            out.getStyleClass().add("link");
            out.setAccessibleText("Take " + position + " out of the plan");
            out.setOnAction(pressed -> places.remove(position));
            HBox line = new HBox(6, name, out);
            line.setAlignment(Pos.CENTER_LEFT);
            at.setAccessibleText("Where " + position + " is");
            at.getStyleClass().add("quiet-field");
            at.setOnAction(entered -> placed());
            at.setOnKeyPressed(key -> {
                if (key.getCode() != KeyCode.ESCAPE) return;
                show(session.scene().get());
                say("");
                key.consume();
            });
            getChildren().addAll(line, loadout, at, wrong);
            say("");
        }

        void fill(Scene scene, Places.PositionEntry entry) {
            String place = scene.plan().header().placeForm().format(entry.at());
            if (!place.equals(at.getText())) at.setText(place);
            loadout.setValue(entry.loadout().orElse(null));
            say("");
        }

        private void say(String words) {
            wrong.setText(words);
            wrong.setVisible(!words.isEmpty());
            wrong.setManaged(!words.isEmpty());
        }

        /** Moves the position to a place typed in any form. */
        private void placed() {
            try {
                Position there = Place.parse(position, at.getText());
                places.move(position, there);
                places.doubt(position, there);
            } catch (InputFault fault) {
                say(fault.getMessage());
            }
        }
    }
}
