package handreach.desktop;

import handreach.loadout.Loadout;
import handreach.plan.Places;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javafx.collections.FXCollections;
import javafx.geometry.Pos;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;

/** Chooses where one end of a path is and what is carried there. */
final class EndPicker extends HBox implements Aside.Divided {
    private final ComboBox<String> place = new ComboBox<>();
    private final ComboBox<String> loadout = new ComboBox<>();
    private boolean isFilling;

    EndPicker(String word, Consumer<String> choosePlace, Consumer<String> chooseLoadout) {
        super(6);
        for (ComboBox<String> box : List.of(place, loadout)) {
            box.getStyleClass().add("end-choice");
            Labels.told(box);
            box.setMinWidth(0);
        }
        setAlignment(Pos.CENTER_LEFT);
        place.setId("path-" + word);
        place.setAccessibleText("place " + word);
        loadout.setId("path-" + word + "-loadout");
        loadout.setAccessibleText("loadout " + word);
        place.setOnAction(chosen -> {
            if (!isFilling && place.getValue() != null) choosePlace.accept(place.getValue());
        });
        loadout.setOnAction(chosen -> {
            if (!isFilling && loadout.getValue() != null) chooseLoadout.accept(loadout.getValue());
        });
        getChildren().addAll(label(word), place, label("with"), loadout);
    }

    private static Label label(String words) {
        Label label = new Label(words);
        label.setMinWidth(Region.USE_PREF_SIZE);
        return label;
    }

    void show(PathEnds ends, PathEnds.Spot spot) {
        isFilling = true;
        List<String> places = new ArrayList<>(ends.scene().plan().places().positions().stream()
                .map(Places.PositionEntry::name)
                .toList());
        if (!places.contains(spot.words())) places.add(0, spot.words());
        fill(place, places, spot.words());
        fill(
                loadout,
                ends.scene().loadouts().stream().map(Loadout::name).toList(),
                spot.loadout().name());
        isFilling = false;
    }

    void focus() {
        place.requestFocus();
    }

    private static void fill(ComboBox<String> box, List<String> items, String value) {
        if (!box.getItems().equals(items)) box.setItems(FXCollections.observableArrayList(items));
        box.setValue(value);
    }
}
