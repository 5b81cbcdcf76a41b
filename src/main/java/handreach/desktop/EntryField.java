package handreach.desktop;

import handreach.units.Lengths;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** A line of a form: what a key is called, what sets it, unit and limits, and what is wrong under it. */
final class EntryField extends VBox {
    private final EntryKey key;
    private final Label wrong = Labels.line("", "field-fault");
    private Optional<EntryControl> control = Optional.empty();
    private String said = "";

    EntryField(EntryKey key) {
        super(2);
        this.key = key;
        tell("");
    }

    /** Makes what stands on the line; until then it only remembers what it is to show. */
    void lay(Lengths lengths, Session session, EntryControl.Listener listener) {
        EntryControl setter = EntryControl.of(key, session, listener);
        Label words = new Label(key.words());
        words.getStyleClass().add("field-words");
        words.setLabelFor(setter.labelled());
        words.setTooltip(new Tooltip(key.key() + " in the plan"));
        Label limits = new Label(
                key.range().map(range -> OwnUnit.limits(range, lengths).words()).orElse(""));
        limits.getStyleClass().add("quiet");
        limits.setMinWidth(Region.USE_PREF_SIZE);
        HBox setting = new HBox(8, setter.node(), limits);
        setting.setAlignment(Pos.CENTER_LEFT);
        // Where there is no room beside the words, it stands under them.
        FlowPane line = new FlowPane(8, 2, words, setting) {
            @Override
            protected double computeMinWidth(double height) {
                return 0;
            }
        };
        setting.maxWidthProperty().bind(line.widthProperty());
        line.setRowValignment(VPos.CENTER);
        wrong.setId("fault-" + key.key());
        setter.show().accept(said);
        control = Optional.of(setter);
        getChildren().addAll(line, wrong);
    }

    EntryKey key() {
        return key;
    }

    /** Puts in what the plan says; what was wrong is forgotten. */
    void show(String plain) {
        said = plain;
        control.ifPresent(setter -> setter.show().accept(plain));
        tell("");
    }

    /** What is wrong, to follow the name of the key. */
    void say(String words) {
        tell(key.words() + " " + words);
    }

    /** What is wrong, in whole sentences. */
    void tell(String words) {
        wrong.setText(words);
        wrong.setVisible(!words.isEmpty());
        wrong.setManaged(!words.isEmpty());
    }
}
