package handreach.desktop;

import handreach.plan.Equipment;
import handreach.plan.NameKind;
import handreach.plan.Plan;
import handreach.plan.PlanText;
import handreach.study.Scene;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** Channel, radios, antennas, loadouts, ground and relay as forms: what there is on the left, the one chosen beside it. */
final class EntryPane extends BorderPane {
    private static final PseudoClass CHOSEN = PseudoClass.getPseudoClass("chosen");
    static final Entry CHANNEL = Entry.of("channel");

    /** Kinds of which there can be several. */
    private static final Map<String, NameKind> SEVERAL =
            Map.of("radio", NameKind.RADIO, "antenna", NameKind.ANTENNA, "loadout", NameKind.LOADOUT);

    private final Session session;
    /** Nothing is made before somebody wants to see it. */
    private boolean isAsked;

    private final VBox list = new VBox(1);
    private final VBox sheet = new VBox(8);
    private final Map<Entry, Button> buttons = new LinkedHashMap<>();
    private Entry shown = CHANNEL;
    /** What the list and the sheet were made of: they are made anew only when it changes. */
    private List<Entry> listed = List.of();

    private List<EntryKey> formed = List.of();
    private Optional<Entry> wanted = Optional.empty();

    EntryPane(Session session) {
        this.session = session;
        setId("kit");
        list.getStyleClass().add("kit-list");
        sheet.getStyleClass().add("kit-sheet");
        ScrollPane left = scroll(list);
        left.setPrefWidth(250);
        setLeft(left);
        setCenter(scroll(sheet));
        session.scene().addListener((scene, before, now) -> {
            if (isAsked) fill(now);
        });
    }

    private static ScrollPane scroll(Node content) {
        ScrollPane scroll = new ScrollPane(content);
        scroll.setFitToWidth(true);
        scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        scroll.getStyleClass().add("drawer-scroll");
        return scroll;
    }

    /** Shows the form of an entry. */
    void show(Entry entry) {
        if (session.scene().get() == null) return;
        isAsked = true;
        shown = entry;
        formed = List.of();
        fill(session.scene().get());
    }

    private static List<Entry> entries(Plan plan) {
        List<Entry> entries = new ArrayList<>(List.of(CHANNEL, Entry.of("target")));
        plan.equipment().radios().forEach(radio -> entries.add(Entry.of("radio", radio.name())));
        plan.equipment().antennas().forEach(antenna -> entries.add(Entry.of("antenna", antenna.name())));
        plan.equipment().loadouts().forEach(loadout -> entries.add(Entry.of("loadout", loadout.name())));
        if (plan.equipment().bench().isPresent()) entries.add(Entry.of("bench"));
        entries.add(Entry.of("ground"));
        entries.add(Entry.of("relay"));
        return entries;
    }

    private static List<EntryKey> keys(Plan plan, Entry entry) {
        return switch (entry.section()) {
            case "channel" -> EntryKeys.CHANNEL;
            case "target" -> EntryKeys.TARGET;
            case "radio" -> EntryKeys.RADIO;
            case "antenna" -> EntryKeys.ANTENNA;
            case "loadout" -> EntryKeys.loadout(plan);
            case "bench" -> EntryKeys.BENCH;
            case "ground" -> EntryKeys.GROUND;
            case "relay" -> EntryKeys.relay(plan);
            default -> throw new IllegalArgumentException(entry.section());
        };
    }

    private static String words(Entry entry) {
        return switch (entry.section()) {
            case "channel" -> "The channel";
            case "target" -> "What counts as copy";
            case "bench" -> "The bench readings";
            case "ground" -> "The ground";
            case "relay" -> "The relay";
            default -> entry.name().orElse("");
        };
    }

    private void fill(Scene scene) {
        List<Entry> entries = entries(scene.plan());
        wanted.filter(entries::contains).ifPresent(entry -> {
            shown = entry;
            wanted = Optional.empty();
        });
        if (!entries.contains(shown)) shown = CHANNEL;
        if (!entries.equals(listed)) fillList(entries);
        buttons.forEach((entry, button) -> button.pseudoClassStateChanged(CHOSEN, entry.equals(shown)));
        List<EntryKey> keys = keys(scene.plan(), shown);
        if (keys.equals(formed) && shown.equals(sheet.getUserData())) return;
        formed = keys;
        sheet.setUserData(shown);
        fillSheet(scene.plan(), keys);
    }

    private void fillList(List<Entry> entries) {
        listed = entries;
        list.getChildren().clear();
        buttons.clear();
        String kind = "";
        for (Entry entry : entries) {
            if (entry.name().isPresent() && !entry.section().equals(kind)) {
                Label head = new Label(
                        SEVERAL.get(entry.section()) == NameKind.RADIO
                                ? "Radios"
                                : entry.section().equals("antenna") ? "Antennas" : "Loadouts");
                head.getStyleClass().add("panel-head");
                list.getChildren().add(head);
            }
            kind = entry.section();
            Button button = new Button(words(entry));
            button.setMnemonicParsing(false);
            button.setMaxWidth(Double.MAX_VALUE);
            button.setAlignment(Pos.CENTER_LEFT);
            button.getStyleClass().addAll("link", "kit-entry");
            button.setOnAction(pressed -> show(entry));
            buttons.put(entry, button);
            list.getChildren().add(button);
        }
    }

    private void fillSheet(Plan plan, List<EntryKey> keys) {
        Entry entry = shown;
        Label title = new Label(words(entry));
        title.getStyleClass().add("drawer-title");
        sheet.getChildren().setAll(title);
        if (entry.name().isPresent()) sheet.getChildren().add(naming(plan, entry));
        sheet.getChildren().add(new EntryForm(session, entry, keys));
        sheet.getChildren()
                .add(Labels.line(
                        "Enter takes a field, Escape puts the old value back; an emptied field goes out of the plan. What is not here"
                                + " stands in the plan as text.",
                        "quiet"));
    }

    /** Name, and what can be done to one of several. */
    private Node naming(Plan plan, Entry entry) {
        String name = entry.name().orElseThrow();
        TextField field = new TextField(name);
        field.setId("field-name");
        field.setAccessibleText("Name");
        field.setOnAction(entered -> rename(entry, field.getText().strip()));
        field.addEventHandler(KeyEvent.KEY_PRESSED, key -> {
            if (key.getCode() == KeyCode.ESCAPE) field.setText(name);
        });
        Button another = new Button("Another like this");
        another.setId("kit-another");
        another.setOnAction(pressed -> another(plan, entry));
        Button out = new Button("Take it out");
        out.setId("kit-out");
        out.setOnAction(pressed ->
                session.edit("take out " + name, text -> PlanText.withoutEntry(text, entry.section(), name)));
        FlowPane line = new FlowPane(8, 6, new Label("name"), field, another, out);
        line.setRowValignment(javafx.geometry.VPos.CENTER);
        return line;
    }

    private void rename(Entry entry, String fresh) {
        String name = entry.name().orElseThrow();
        if (fresh.isEmpty() || fresh.equals(name)) return;
        wanted = Optional.of(Entry.of(entry.section(), fresh));
        session.edit("rename " + name, text -> PlanText.rename(text, SEVERAL.get(entry.section()), name, fresh));
    }

    /** A second one with the same values, to be changed where it differs. */
    private void another(Plan plan, Entry entry) {
        String name = entry.name().orElseThrow();
        Set<Entry> taken = Set.copyOf(listed);
        int number = 2;
        while (taken.contains(Entry.of(entry.section(), name + " " + number))) number++;
        String fresh = name + " " + number;
        wanted = Optional.of(Entry.of(entry.section(), fresh));
        List<EntryKey> keys = keys(plan, entry);
        boolean isOnBench = entry.section().equals("antenna")
                && plan.equipment().bench().isPresent()
                && plan.equipment().antennas().stream()
                        .filter(antenna -> antenna.name().equals(name))
                        .map(Equipment.AntennaEntry::delta)
                        .anyMatch(delta -> delta.deltaDb().isEmpty());
        session.edit("another like " + name, text -> {
            List<String> lines = new ArrayList<>(List.of("name = " + PlanText.quoted(fresh)));
            for (EntryKey key : keys)
                entry.value(text, key.key()).ifPresent(value -> lines.add(key.key() + " = " + value));
            if (isOnBench && entry.value(text, "bench").isEmpty()) lines.add("bench = " + PlanText.quoted(name));
            return PlanText.withEntry(text, entry.section(), lines);
        });
    }
}
