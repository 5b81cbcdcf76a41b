package handreach.desktop;

import handreach.plan.Plan;
import handreach.plan.PlanText;
import handreach.study.Scene;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Everything the plan says as forms: what there is on the left, the one chosen beside it. */
final class EntryPane extends BorderPane {
    private static final PseudoClass CHOSEN = PseudoClass.getPseudoClass("chosen");
    /** Keys that hold on one entry alone, and do not go along to another like it. */
    private static final Set<String> ONE_ALONE = Set.of("control", "base");

    /** Narrower than so many lists, list and form do not stand side by side. */
    private static final double NARROW = 2.6;

    private final Session session;
    /** Nothing is made before somebody wants to see it, nor kept for longer. */
    private boolean isAsked;

    private final VBox list = new VBox(1);
    private final VBox sheet = new VBox(8);
    private final ScrollPane left;
    private final ScrollPane right;
    /** In a narrow place list and form take turns. */
    private final Button parts;

    private boolean isTriedOut;
    private boolean isReading;
    private boolean isReadAhead;
    private boolean isListing;
    /** The text that was read last, and what it has. */
    private String read = "";

    private List<Entry> entries = List.of();
    private final Map<Entry, Button> buttons = new LinkedHashMap<>();
    private Entry shown = Entry.of(EntryKind.CHANNEL.section());
    /** What the list and the sheet were made of: they are made anew only when it changes. */
    private List<String> listed = List.of();

    private Optional<Made> made = Optional.empty();
    private Optional<Entry> wanted = Optional.empty();
    /** A kind of which a fresh entry is being written. */
    private Optional<EntryKind> fresh = Optional.empty();

    private final Worker.LatestOnly reading;
    private final Worker.InPieces listing;
    private final Worker.InPieces filling;

    private record Made(Entry entry, List<EntryKey> keys, Lengths lengths, boolean isThere) {}

    EntryPane(Session session) {
        this.session = session;
        this.reading = session.worker().latestOnly();
        this.listing = session.worker().inPieces();
        this.filling = session.worker().inPieces();
        this.left = scroll(list, "Parts of the plan");
        this.right = scroll(sheet, "Form");
        this.parts = Labels.link("", () -> {
            isListing = !isListing;
            arrange();
        });
        setId("kit");
        list.getStyleClass().add("kit-list");
        sheet.getStyleClass().add("kit-sheet");
        left.getStyleClass().add("kit-parts");
        parts.setId("kit-parts");
        arrange();
        widthProperty().addListener((width, was, is) -> arrange());
        session.scene().addListener((scene, before, now) -> {
            if (isAsked) fill(now);
        });
    }

    private static ScrollPane scroll(Node content, String words) {
        ScrollPane scroll = new ScrollPane(content);
        scroll.setFitToWidth(true);
        scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        scroll.setAccessibleText(words);
        scroll.getStyleClass().add("drawer-scroll");
        return scroll;
    }

    private void arrange() {
        boolean isNarrow = getWidth() > 0 && getWidth() < NARROW * left.prefWidth(-1);
        setLeft(null);
        setCenter(isNarrow && isListing ? left : right);
        setTop(isNarrow ? parts : null);
        if (!isNarrow) setLeft(left);
        parts.setText(isListing ? "Back to the form" : "All parts of the plan");
    }

    /** Shows the form of an entry; of one that is not there, of the first of its kind. */
    void show(Entry entry) {
        if (session.scene().get() == null) return;
        isAsked = true;
        shown = entry;
        fresh = Optional.empty();
        made = Optional.empty();
        isListing = false;
        arrange();
        fill(session.scene().get());
    }

    /** Lets go of list and form: on the screen again, the looks of all of it would be worked out at once. */
    void leave() {
        isAsked = false;
        listing.drop();
        filling.drop();
        list.getChildren().clear();
        sheet.getChildren().clear();
        listed = List.of();
        made = Optional.empty();
        fresh = Optional.empty();
    }

    /**
     * Fills list and form out of sight, and empties them with the next call: the first form a hand asks for is quick then. False when there
     * is nothing to do, as when somebody looks at it.
     */
    boolean tryOut(boolean isShown) {
        if (isShown || session.scene().get() == null || isTriedOut && !isAsked) return false;
        if (!isReadAhead) {
            readAhead(session.scene().get().file().text());
            return true;
        }
        if (isTriedOut) leave();
        else show(Entry.of(EntryKind.LOADOUT.section()));
        isTriedOut = true;
        return true;
    }

    private void fill(Scene scene) {
        String text = scene.file().text();
        boolean isOther = !text.equals(read) || listed.isEmpty();
        if (isOther) {
            read = text;
            entries = entries(text);
        }
        wanted.filter(entries::contains).ifPresent(entry -> {
            shown = entry;
            wanted = Optional.empty();
            fresh = Optional.empty();
        });
        boolean isNone = entries.stream().noneMatch(entry -> entry.section().equals(shown.section()));
        if (isNone) fresh = Optional.of(EntryKind.of(shown));
        if (!entries.contains(shown))
            shown = entries.stream()
                    .filter(entry -> entry.section().equals(shown.section()))
                    .findFirst()
                    .orElse(entries.get(0));
        if (isOther) fillList(text);
        buttons.forEach(this::mark);
        if (fresh.isEmpty()) fillSheet(scene, text);
        else if (isNone) begin(fresh.get());
    }

    /** What reads a plan's text part by part is loaded off the screen thread. */
    private void readAhead(String text) {
        if (isReading) return;
        isReading = true;
        reading.ask(
                progress -> entries(text).stream()
                        .map(entry -> EntryKind.of(entry).words(text, entry))
                        .toList(),
                read -> isReadAhead = true,
                wrong -> isReadAhead = true);
    }

    private static List<Entry> entries(String text) {
        return Arrays.stream(EntryKind.values())
                .flatMap(kind -> kind.entries(text).stream())
                .toList();
    }

    private void fillList(String text) {
        List<String> words = entries.stream()
                .map(entry -> entry.section() + " " + EntryKind.of(entry).words(text, entry))
                .toList();
        if (words.equals(listed)) return;
        listed = words;
        list.getChildren().clear();
        buttons.clear();
        List<Runnable> lines = new ArrayList<>();
        String group = "";
        for (EntryKind kind : EntryKind.values()) {
            if (!kind.group().equals(group)) lines.add(() -> put(list, head(kind)));
            group = kind.group();
            for (Entry entry : entries)
                if (EntryKind.of(entry) == kind) lines.add(() -> put(list, button(entry, kind.words(text, entry))));
        }
        listing.begin(lines);
    }

    private static void put(VBox onto, Node line) {
        onto.getChildren().add(line);
        line.applyCss();
    }

    private Node head(EntryKind kind) {
        Label words = new Label(kind.group());
        words.getStyleClass().add("panel-head");
        if (!kind.isSeveral()) return words;
        Button add = Labels.link("Add", () -> begin(kind));
        add.setId("add-" + kind.section());
        add.setAccessibleText("Add " + kind.fresh().toLowerCase(java.util.Locale.ROOT));
        Region between = new Region();
        HBox.setHgrow(between, Priority.ALWAYS);
        HBox line = new HBox(4, words, between, add);
        line.setAlignment(Pos.BASELINE_LEFT);
        return line;
    }

    private Button button(Entry entry, String words) {
        Button button = new Button(words);
        button.setMnemonicParsing(false);
        button.setWrapText(true);
        button.setMaxWidth(Double.MAX_VALUE);
        button.setAlignment(Pos.CENTER_LEFT);
        button.getStyleClass().addAll("link", "kit-entry");
        button.setOnAction(pressed -> show(entry));
        mark(entry, button);
        buttons.put(entry, button);
        return button;
    }

    private void mark(Entry entry, Button button) {
        button.pseudoClassStateChanged(CHOSEN, entry.equals(shown) && fresh.isEmpty());
    }

    /** Shows an empty form. */
    private void begin(EntryKind kind) {
        fresh = Optional.of(kind);
        made = Optional.empty();
        isListing = false;
        arrange();
        buttons.values().forEach(button -> button.pseudoClassStateChanged(CHOSEN, false));
        List<EntryKey> keys = new ArrayList<>(kind.keys(session.scene().get().plan()));
        boolean isNamed = kind.several() == EntryKind.Several.NAMED;
        if (isNamed) keys.add(0, EntryKey.text("name", "name"));
        EntryForm form = EntryForm.fresh(session, kind.section(), keys);
        Label wrong = Labels.line("", "field-fault");
        wrong.setId("fault-add");
        Button add = new Button("Add it to the plan");
        add.setId("kit-add");
        add.setOnAction(pressed -> {
            wrong.setText("");
            int next = PlanText.count(session.scene().get().file().text(), kind.section());
            wanted = Optional.of(
                    isNamed
                            ? Entry.of(kind.section(), form.typed("name"))
                            : Entry.at(kind.section(), kind == EntryKind.CHANNEL ? Math.max(1, next) : next));
            form.add(wrong::setText);
        });
        Button leave = new Button("Leave");
        leave.setId("kit-leave");
        leave.setOnAction(pressed -> show(shown));
        sheet.getChildren().setAll(title(kind.fresh()), form);
        List<Runnable> steps = new ArrayList<>(form.steps());
        steps.add(() -> put(sheet, wrong));
        steps.add(() -> put(sheet, new FlowPane(8, 6, add, leave)));
        filling.begin(steps);
    }

    private static Label title(String words) {
        Label title = new Label(words);
        title.getStyleClass().add("drawer-title");
        return title;
    }

    private void fillSheet(Scene scene, String text) {
        Entry entry = shown;
        EntryKind kind = EntryKind.of(entry);
        List<EntryKey> keys = kind.keys(scene.plan());
        boolean isThere = PlanText.hasSection(text, kind.section());
        Optional<Made> now =
                Optional.of(new Made(entry, keys, scene.plan().header().lengths(), isThere));
        if (now.equals(made)) return;
        made = now;
        sheet.getChildren().setAll(title(kind.words(text, entry)));
        if (entry.name().isPresent()) sheet.getChildren().add(naming(entry));
        if (entry.number().isPresent() || kind.several() == EntryKind.Several.OPTIONAL && isThere)
            sheet.getChildren().add(out(entry, kind.words(text, entry)));
        EntryForm form = EntryForm.of(session, entry, keys);
        sheet.getChildren().add(form);
        List<Runnable> steps = new ArrayList<>(form.steps());
        steps.add(() -> put(
                sheet,
                Labels.line(
                        "Enter takes a field, Escape puts the old value back; an emptied field goes out of the plan.",
                        "quiet")));
        filling.begin(steps);
    }

    private Button out(Entry entry, String words) {
        Button out = new Button("Take it out");
        out.setId("kit-out");
        out.setOnAction(pressed -> session.edit("take out " + words, entry::gone));
        return out;
    }

    /** Name, and what can be done to one of several. */
    private Node naming(Entry entry) {
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
        another.setOnAction(pressed -> another(entry));
        FlowPane line = new FlowPane(8, 6, new Label("name"), field, another, out(entry, name));
        line.setRowValignment(VPos.CENTER);
        return line;
    }

    private void rename(Entry entry, String other) {
        String name = entry.name().orElseThrow();
        if (other.isEmpty() || other.equals(name)) return;
        wanted = Optional.of(Entry.of(entry.section(), other));
        session.edit(
                "rename " + name,
                text -> EntryKind.of(entry)
                        .nameKind()
                        .map(kind -> PlanText.rename(text, kind, name, other))
                        .orElseGet(() -> entry.with(text, "name", PlanText.quoted(other))));
    }

    /** A second one with the same values, to be changed where it differs. */
    private void another(Entry entry) {
        String name = entry.name().orElseThrow();
        Plan plan = session.scene().get().plan();
        int number = 2;
        List<Entry> taken =
                EntryKind.of(entry).entries(session.scene().get().file().text());
        while (taken.contains(Entry.of(entry.section(), name + " " + number))) number++;
        String other = name + " " + number;
        wanted = Optional.of(Entry.of(entry.section(), other));
        List<EntryKey> keys = EntryKind.of(entry).keys(plan);
        boolean isOnBench = entry.section().equals("antenna")
                && plan.equipment().bench().isPresent()
                && plan.equipment().antennas().stream()
                        .anyMatch(antenna -> antenna.name().equals(name)
                                && antenna.delta().deltaDb().isEmpty());
        session.edit("another like " + name, text -> {
            List<String> lines = new ArrayList<>(List.of("name = " + PlanText.quoted(other)));
            for (EntryKey key : keys)
                if (!ONE_ALONE.contains(key.key()))
                    entry.value(text, key.key()).ifPresent(value -> lines.add(key.key() + " = " + value));
            if (isOnBench && entry.value(text, "bench").isEmpty()) lines.add("bench = " + PlanText.quoted(name));
            return PlanText.withEntry(text, entry.section(), lines);
        });
    }
}
