package handreach.desktop;

import handreach.plan.PlanText;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import javafx.collections.FXCollections;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;

/**
 * What sets one key of a form, by its kind. It shows a value without quotes, a list as the plan writes it, and nothing where the plan
 * says nothing.
 *
 * @param node what stands on the form
 * @param show puts a value in without telling anybody
 */
record EntryControl(Node node, Consumer<String> show) {
    private static final String TRUE = "true";
    private static final String NOT_SAID = "not said";
    private static final KeyCombination UNDO = new KeyCodeCombination(KeyCode.Z, KeyCombination.SHORTCUT_DOWN);

    /** Whom a control tells, and whom it asks. */
    interface Listener {
        /** Something was set; the same as before is told too. */
        void taken(String value);

        /** Escape: back to what the plan says. */
        void leave();

        /** Whether a field has nothing typed that the plan does not say. */
        boolean isAsSaid(String typed);

        void undo();
    }

    static EntryControl of(EntryKey key, Session session, Listener listener) {
        return switch (key.kind()) {
            case NUMBER -> typed(7, key, listener);
            case TEXT, NAME, PLACE -> typed(18, key, listener);
            case CHOICE, EITHER -> choice(key, listener);
            case FLAG, MARK -> flag(key, listener);
            case FILE, FOLDER -> file(key, session, listener);
            case NAMES -> names(key, listener);
            case PAIRS -> pairs(key, listener);
        };
    }

    private static <N extends Node> N named(N node, EntryKey key) {
        node.setId("field-" + key.key());
        node.setAccessibleText(key.words());
        return node;
    }

    private static EntryControl typed(int columns, EntryKey key, Listener listener) {
        TextField field = named(new TextField(), key);
        field.setPrefColumnCount(columns);
        if (key.kind() != EntryKey.Kind.NUMBER) HBox.setHgrow(field, Priority.SOMETIMES);
        if (key.kind() == EntryKey.Kind.PLACE) field.setPromptText("46.5, 8.1 or any other form");
        field.setOnAction(entered -> listener.taken(field.getText().strip()));
        field.focusedProperty().addListener((focus, was, is) -> {
            if (!is) listener.taken(field.getText().strip());
        });
        // A field in which nothing is being typed has nothing of its own to undo.
        field.addEventFilter(KeyEvent.KEY_PRESSED, pressed -> {
            if (!UNDO.match(pressed) || !listener.isAsSaid(field.getText().strip())) return;
            listener.undo();
            pressed.consume();
        });
        field.addEventHandler(KeyEvent.KEY_PRESSED, pressed -> {
            if (pressed.getCode() != KeyCode.ESCAPE) return;
            listener.leave();
            pressed.consume();
        });
        return new EntryControl(field, field::setText);
    }

    private static EntryControl choice(EntryKey key, Listener listener) {
        List<String> words = new ArrayList<>(key.choices());
        words.add(0, "");
        ComboBox<String> box = named(new ComboBox<>(FXCollections.observableArrayList(words)), key);
        box.setPromptText(NOT_SAID);
        box.setConverter(new StringConverter<>() {
            @Override
            public String toString(String word) {
                return "".equals(word) ? NOT_SAID : word;
            }

            @Override
            public String fromString(String words) {
                return NOT_SAID.equals(words) ? "" : words;
            }
        });
        Labels.told(box);
        boolean[] isFilling = {false};
        box.setOnAction(chosen -> {
            if (!isFilling[0] && box.getValue() != null) listener.taken(box.getValue());
        });
        return new EntryControl(box, said -> {
            isFilling[0] = true;
            box.setValue(said.isEmpty() ? null : said);
            isFilling[0] = false;
        });
    }

    private static EntryControl flag(EntryKey key, Listener listener) {
        CheckBox box = named(new CheckBox(), key);
        box.setOnAction(chosen -> listener.taken(box.isSelected() ? TRUE : ""));
        return new EntryControl(box, said -> box.setSelected(said.equals(TRUE)));
    }

    private static EntryControl file(EntryKey key, Session session, Listener listener) {
        EntryControl name = typed(18, key, listener);
        Button choose = new Button("Choose\u2026");
        choose.setId("choose-" + key.key());
        choose.setAccessibleText("Choose " + key.words());
        choose.setMinWidth(javafx.scene.layout.Region.USE_PREF_SIZE);
        choose.setOnAction(pressed -> {
            Path folder = session.scene().get().file().folder();
            FileAsked.one(choose.getScene().getWindow(), key, folder)
                    .ifPresent(file -> listener.taken(BenchImport.named(folder, file)));
        });
        HBox line = new HBox(6, name.node(), choose);
        line.setAlignment(Pos.CENTER_LEFT);
        HBox.setHgrow(name.node(), Priority.ALWAYS);
        HBox.setHgrow(line, Priority.SOMETIMES);
        return new EntryControl(line, name.show());
    }

    private static EntryControl names(EntryKey key, Listener listener) {
        FlowPane all = named(new FlowPane(12, 4), key);
        HBox.setHgrow(all, Priority.ALWAYS);
        List<CheckBox> boxes = new ArrayList<>();
        for (String choice : key.choices()) {
            CheckBox box = new CheckBox(choice);
            box.setMnemonicParsing(false);
            box.setId("field-" + key.key() + "-" + boxes.size());
            box.setAccessibleText(key.words() + ": " + choice);
            box.setOnAction(chosen -> listener.taken(list(boxes.stream()
                    .filter(CheckBox::isSelected)
                    .map(one -> PlanText.quoted(one.getText()))
                    .toList())));
            boxes.add(box);
        }
        all.getChildren().addAll(boxes);
        return new EntryControl(all, said -> {
            List<String> named = PlanText.texts(said);
            boxes.forEach(box -> box.setSelected(named.contains(box.getText())));
        });
    }

    private static String list(List<String> items) {
        return items.isEmpty() ? "" : "[" + String.join(", ", items) + "]";
    }

    private static EntryControl pairs(EntryKey key, Listener listener) {
        VBox rows = named(new VBox(3), key);
        HBox.setHgrow(rows, Priority.ALWAYS);
        ComboBox<String> one = end(key, "one of a pair");
        ComboBox<String> other = end(key, "the other of a pair");
        Button add = new Button("Add");
        add.setId("add-" + key.key());
        add.setMinWidth(Region.USE_PREF_SIZE);
        add.setAccessibleText("Add a pair that talks");
        add.disableProperty()
                .bind(one.valueProperty().isNull().or(other.valueProperty().isNull()));
        List<List<String>> pairs = new ArrayList<>();
        add.setOnAction(pressed -> {
            List<List<String>> more = new ArrayList<>(pairs);
            more.add(List.of(one.getValue(), other.getValue()));
            listener.taken(written(more));
        });
        HBox adding = new HBox(6, one, other, add);
        adding.setAlignment(Pos.CENTER_LEFT);
        return new EntryControl(rows, said -> {
            List<String> texts = PlanText.texts(said);
            pairs.clear();
            for (int i = 0; i + 1 < texts.size(); i += 2) pairs.add(List.of(texts.get(i), texts.get(i + 1)));
            rows.getChildren().clear();
            for (List<String> pair : pairs)
                rows.getChildren().add(pairRow(pair, () -> {
                    List<List<String>> fewer = new ArrayList<>(pairs);
                    fewer.remove(pair);
                    listener.taken(written(fewer));
                }));
            rows.getChildren().add(adding);
        });
    }

    private static ComboBox<String> end(EntryKey key, String words) {
        ComboBox<String> box = new ComboBox<>(FXCollections.observableArrayList(key.choices()));
        Labels.told(box);
        box.setAccessibleText(words);
        box.setId("field-" + key.key() + (words.startsWith("the") ? "-other" : "-one"));
        return box;
    }

    private static Node pairRow(List<String> pair, Runnable remove) {
        String words = pair.get(0) + " with " + pair.get(1);
        Button out = Labels.link("Remove", remove);
        out.setAccessibleText("Remove " + words);
        HBox row = new HBox(6, Labels.cell(words, "plain"), out);
        row.setAlignment(Pos.CENTER_LEFT);
        return row;
    }

    private static String written(List<List<String>> pairs) {
        return list(pairs.stream()
                .map(pair -> pair.stream().map(PlanText::quoted).collect(Collectors.joining(", ", "[", "]")))
                .toList());
    }

    /** What its name stands for. */
    Node labelled() {
        return node.getId() == null ? ((HBox) node).getChildren().get(0) : node;
    }
}
