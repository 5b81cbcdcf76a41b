package handreach.desktop;

import java.util.Map;
import java.util.function.Consumer;
import javafx.collections.FXCollections;
import javafx.scene.control.ComboBox;
import javafx.util.StringConverter;

/** A choice among the words of a plan key, shown by what they mean. */
final class WordChoice extends ComboBox<String> {
    private boolean isFilling;

    /** {@code meanings} by word, in the order shown; {@code chosen} is told of a choice by hand. */
    WordChoice(String id, Map<String, String> meanings, Consumer<String> chosen) {
        setId(id);
        setMaxWidth(Double.MAX_VALUE);
        setItems(FXCollections.observableArrayList(meanings.keySet()));
        setConverter(new StringConverter<>() {
            @Override
            public String toString(String word) {
                return word == null ? "" : meanings.getOrDefault(word, word);
            }

            @Override
            public String fromString(String shown) {
                return getValue();
            }
        });
        Labels.told(this);
        setOnAction(choice -> {
            if (!isFilling && getValue() != null) chosen.accept(getValue());
        });
    }

    /** Shows what the plan says, without telling anybody. */
    void fill(String word) {
        isFilling = true;
        setValue(word);
        isFilling = false;
    }
}
