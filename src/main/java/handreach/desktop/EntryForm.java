package handreach.desktop;

import handreach.input.InputFault;
import handreach.input.NumberText;
import handreach.plan.PlanText;
import handreach.study.Scene;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.WeakChangeListener;
import javafx.collections.FXCollections;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/**
 * One entry of the plan as a form: a field a key, with its unit and limits, and what is wrong under it. A field is taken with Enter or
 * when it is left, and an emptied one goes out of the plan; Escape puts back what the plan says.
 */
final class EntryForm extends VBox {
    private static final String UNSAID = "";
    private static final KeyCombination UNDO = new KeyCodeCombination(KeyCode.Z, KeyCombination.SHORTCUT_DOWN);

    private final Session session;
    private final Entry entry;
    private final Map<String, Field> fields = new LinkedHashMap<>();
    /** What was typed and waits for the keys that belong to it. */
    private final Map<String, String> waiting = new HashMap<>();
    /** Held here, as the session only holds it weakly: forms come and go. */
    private final ChangeListener<Scene> filling = (scene, before, now) -> follow();

    EntryForm(Session session, Entry entry, List<EntryKey> keys) {
        super(5);
        this.session = session;
        this.entry = entry;
        getStyleClass().add("entry-form");
        for (EntryKey key : keys) {
            Field field = new Field(key);
            fields.put(key.key(), field);
            getChildren().add(field);
        }
        session.scene().addListener(new WeakChangeListener<>(filling));
        fill();
    }

    /** What waited goes along as soon as what it waited for is there. */
    private void follow() {
        fill();
        for (String key : List.copyOf(waiting.keySet())) {
            EntryKey waited = fields.get(key).key;
            if (missing(waited).isEmpty()) send(waited, fields.get(key));
        }
    }

    private String text() {
        return session.scene().get().file().text();
    }

    private void fill() {
        if (session.scene().get() == null) return;
        fields.values().forEach(Field::fill);
    }

    /** What the plan says of a key, as a field shows it. */
    private String said(EntryKey key) {
        return entry.value(text(), key.key()).map(Entry::plain).orElse(UNSAID);
    }

    private void take(EntryKey key, String typed) {
        Field field = fields.get(key.key());
        Optional<String> wrong = wrong(key, typed);
        if (wrong.isPresent()) {
            field.say(wrong.get());
            return;
        }
        waiting.put(key.key(), typed);
        List<String> missing = missing(key);
        if (!missing.isEmpty()) {
            field.say("Waits for " + String.join(", ", missing) + ": they mean something only together.");
            return;
        }
        send(key, field);
    }

    private static Optional<String> wrong(EntryKey key, String typed) {
        if (key.kind() != EntryKey.Kind.NUMBER || typed.isEmpty()) return Optional.empty();
        OptionalDouble number = NumberText.parse(typed);
        if (number.isEmpty())
            return Optional.of("is \"" + typed + "\", but a number is needed, from " + key.limits() + ".");
        return key.range().filter(range -> !range.accepts(number.getAsDouble())).map(range -> range.fault(typed));
    }

    /** What is empty of the keys that belong together, while another of them is not. */
    private List<String> missing(EntryKey key) {
        List<EntryKey> together = new ArrayList<>();
        together.add(key);
        key.needs().forEach(other -> together.add(fields.get(other).key));
        boolean isAnySaid = together.stream().anyMatch(one -> !now(one).isEmpty());
        return isAnySaid
                ? together.stream()
                        .filter(one -> now(one).isEmpty())
                        .map(EntryKey::words)
                        .toList()
                : List.of();
    }

    private String now(EntryKey key) {
        return waiting.getOrDefault(key.key(), said(key));
    }

    /** Sends what was typed, with all that waited for it. */
    private void send(EntryKey key, Field field) {
        Map<EntryKey, String> sent = new LinkedHashMap<>();
        sent.put(key, waiting.remove(key.key()));
        for (String other : key.needs()) {
            String typed = waiting.remove(other);
            if (typed != null) sent.put(fields.get(other).key, typed);
        }
        String name = entry.name().map(named -> " of " + named).orElse("");
        session.edit(key.words() + name, plan -> edited(plan, sent), refused -> {
            if (refused instanceof InputFault fault)
                field.say(fault.faults().stream().map(one -> one.text()).collect(Collectors.joining(" ")));
            else session.tell(refused);
        });
    }

    private String edited(String plan, Map<EntryKey, String> sent) {
        String text = plan;
        for (Map.Entry<EntryKey, String> one : sent.entrySet()) {
            EntryKey key = one.getKey();
            String typed = one.getValue();
            if (typed.isEmpty()) {
                text = entry.without(text, key.key());
                continue;
            }
            for (String other : key.instead()) text = entry.without(text, other);
            text = entry.with(text, key.key(), written(key, typed));
        }
        return text;
    }

    private static String written(EntryKey key, String typed) {
        return switch (key.kind()) {
            case NUMBER -> PlanText.number(NumberText.parse(typed).orElseThrow());
            case FLAG -> typed;
            case TEXT, CHOICE -> PlanText.quoted(typed);
        };
    }

    /** One key: its name, what sets it, unit and limits, and what is wrong. */
    private final class Field extends VBox {
        private final EntryKey key;
        private final Node control;
        private final Label wrong = Labels.line("", "field-fault");
        private boolean isFilling;

        Field(EntryKey key) {
            super(2);
            this.key = key;
            this.control = control();
            control.setId("field-" + key.key());
            control.setAccessibleText(key.words());
            Label words = new Label(key.words());
            words.setMinWidth(135);
            words.setLabelFor(control);
            Label limits = new Label(key.limits());
            limits.getStyleClass().add("quiet");
            limits.setMinWidth(Region.USE_PREF_SIZE);
            HBox line = new HBox(8, words, control, limits);
            line.setAlignment(Pos.CENTER_LEFT);
            wrong.setId("fault-" + key.key());
            getChildren().addAll(line, wrong);
            say("");
        }

        private Node control() {
            return switch (key.kind()) {
                case FLAG -> flag();
                case CHOICE -> choice();
                case NUMBER, TEXT -> typed();
            };
        }

        private Node flag() {
            CheckBox box = new CheckBox();
            box.setOnAction(chosen -> take(key, box.isSelected() ? "true" : UNSAID));
            return box;
        }

        private Node choice() {
            List<String> words = new ArrayList<>(key.choices());
            words.add(0, UNSAID);
            ComboBox<String> box = new ComboBox<>(FXCollections.observableArrayList(words));
            box.setPromptText("not said");
            box.setPrefWidth(210);
            box.setOnAction(chosen -> {
                if (!isFilling && box.getValue() != null) take(key, box.getValue());
            });
            return box;
        }

        private Node typed() {
            TextField field = new TextField();
            boolean isNumber = key.kind() == EntryKey.Kind.NUMBER;
            field.setPrefColumnCount(isNumber ? 7 : 18);
            if (!isNumber) HBox.setHgrow(field, Priority.SOMETIMES);
            field.setOnAction(entered -> takeTyped(field));
            field.focusedProperty().addListener((focus, was, is) -> {
                if (!is) takeTyped(field);
            });
            // A field in which nothing is being typed has nothing of its own to undo.
            field.addEventFilter(KeyEvent.KEY_PRESSED, pressed -> {
                if (!UNDO.match(pressed) || !field.getText().strip().equals(said(key))) return;
                session.undo();
                pressed.consume();
            });
            field.addEventHandler(KeyEvent.KEY_PRESSED, pressed -> {
                if (pressed.getCode() != KeyCode.ESCAPE) return;
                waiting.remove(key.key());
                fill();
                pressed.consume();
            });
            return field;
        }

        private void takeTyped(TextField field) {
            String typed = field.getText().strip();
            if (typed.equals(now(key))) return;
            take(key, typed);
        }

        void fill() {
            if (waiting.containsKey(key.key())) return;
            isFilling = true;
            String said = said(key);
            if (control instanceof CheckBox box) box.setSelected(said.equals("true"));
            if (control instanceof ComboBox<?> box) fillChoice(box, said);
            if (control instanceof TextField field) field.setText(said);
            isFilling = false;
            say("");
        }

        @SuppressWarnings("unchecked")
        private void fillChoice(ComboBox<?> box, String said) {
            ((ComboBox<String>) box).setValue(said);
        }

        void say(String words) {
            wrong.setText(words.isEmpty() ? "" : key.words() + " " + words);
            wrong.setVisible(!words.isEmpty());
            wrong.setManaged(!words.isEmpty());
        }
    }
}
