package handreach.desktop;

import handreach.geodesy.Place;
import handreach.input.InputFault;
import handreach.input.NumberText;
import handreach.plan.NameKind;
import handreach.plan.PlanText;
import handreach.study.Scene;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.WeakChangeListener;
import javafx.scene.layout.VBox;

/**
 * One entry of the plan as a form: a field a key, with its unit and limits, and what is wrong under it. A field is taken with Enter or
 * when it is left, and an emptied one goes out of the plan; Escape puts back what the plan says. The form of an entry that is not in
 * the plan yet keeps what is typed until it is added.
 */
final class EntryForm extends VBox {
    private final Session session;
    private final Entry entry;
    private final boolean isFresh;
    private final Lengths lengths;
    private final Map<String, EntryField> fields = new LinkedHashMap<>();
    /** What was typed and waits for the keys that belong to it, or for the entry to be added. */
    private final Map<String, String> waiting = new HashMap<>();
    /** Held here, as the session only holds it weakly: forms come and go. */
    private final ChangeListener<Scene> filling = (scene, before, now) -> follow();

    private EntryForm(Session session, Entry entry, boolean isFresh, List<EntryKey> keys) {
        super(5);
        this.session = session;
        this.entry = entry;
        this.isFresh = isFresh;
        this.lengths = session.scene().get().plan().header().lengths();
        getStyleClass().add("entry-form");
        for (EntryKey key : keys) fields.put(key.key(), new EntryField(key));
        if (!isFresh) session.scene().addListener(new WeakChangeListener<>(filling));
    }

    /** The form of something the plan has. */
    static EntryForm of(Session session, Entry entry, List<EntryKey> keys) {
        return new EntryForm(session, entry, false, keys);
    }

    /** The form of a fresh entry of this section, which {@link #add} puts into the plan. */
    static EntryForm fresh(Session session, String section, List<EntryKey> keys) {
        int next = PlanText.count(session.scene().get().file().text(), section);
        return new EntryForm(session, Entry.at(section, next), true, keys);
    }

    /** Each puts a field more on the form, looks worked out; all at once they would hold up a picture. */
    List<Runnable> steps() {
        return fields.values().stream()
                .<Runnable>map(field -> () -> {
                    field.show(now(field.key()));
                    field.lay(lengths, session, new Told(field.key()));
                    getChildren().add(field);
                    field.applyCss();
                })
                .toList();
    }

    /** What waited goes along as soon as what it waited for is there. */
    private void follow() {
        fill();
        for (String key : List.copyOf(waiting.keySet())) {
            EntryKey waited = fields.get(key).key();
            if (missing(waited).isEmpty()) send(waited);
        }
    }

    private String text() {
        return session.scene().get().file().text();
    }

    private void fill() {
        if (session.scene().get() == null) return;
        for (EntryField field : fields.values())
            if (!waiting.containsKey(field.key().key())) field.show(said(field.key()));
    }

    /** What the plan says of a key, as a field shows it. */
    private String said(EntryKey key) {
        String plain = entry.value(text(), key.key()).map(Entry::plain).orElse("");
        OptionalDouble number = key.range().isPresent() ? NumberText.parse(plain) : OptionalDouble.empty();
        if (number.isEmpty()) return plain;
        double unit = OwnUnit.of(key.range().get(), lengths);
        return unit == 1 ? plain : PlanText.number(OwnUnit.shown(number.getAsDouble(), unit));
    }

    private String now(EntryKey key) {
        return waiting.getOrDefault(key.key(), said(key));
    }

    private void take(EntryKey key, String typed) {
        EntryField field = fields.get(key.key());
        if (typed.equals(now(key))) {
            if (!waiting.containsKey(key.key())) field.tell("");
            return;
        }
        Optional<String> wrong = wrong(key, typed);
        if (wrong.isPresent()) {
            field.say(wrong.get());
            return;
        }
        waiting.put(key.key(), typed);
        if (isFresh) {
            field.show(typed);
            return;
        }
        List<String> missing = missing(key);
        if (missing.isEmpty()) send(key);
        else field.say("Waits for " + String.join(", ", missing) + ": they mean something only together.");
    }

    private Optional<String> wrong(EntryKey key, String typed) {
        if (key.range().isEmpty() || typed.isEmpty()) return Optional.empty();
        var limits = OwnUnit.limits(key.range().get(), lengths);
        OptionalDouble number = NumberText.parse(typed);
        if (number.isEmpty())
            return Optional.of("is \"" + typed + "\", but a number is needed, from " + limits.words() + ".");
        return limits.accepts(number.getAsDouble()) ? Optional.empty() : Optional.of(limits.fault(typed));
    }

    /** What is empty of the keys that belong together, while another of them is not. */
    private List<String> missing(EntryKey key) {
        List<Set<String>> together = new ArrayList<>(key.ties().needs());
        together.add(Set.of(key.key()));
        boolean isAnySaid = together.stream().anyMatch(this::isSaid);
        if (!isAnySaid) return List.of();
        return together.stream()
                .filter(group -> !isSaid(group))
                .map(group -> fields.values().stream()
                        .map(EntryField::key)
                        .filter(one -> group.contains(one.key()))
                        .map(EntryKey::words)
                        .collect(Collectors.joining(" ")))
                .toList();
    }

    private boolean isSaid(Set<String> group) {
        return group.stream().anyMatch(other -> !now(fields.get(other).key()).isEmpty());
    }

    /** Sends what was typed, with all that waited for it. */
    private void send(EntryKey key) {
        Map<EntryKey, String> sent = new LinkedHashMap<>();
        sent.put(key, waiting.remove(key.key()));
        for (Set<String> group : key.ties().needs())
            for (String other : group) {
                String typed = waiting.remove(other);
                if (typed != null) sent.put(fields.get(other).key(), typed);
            }
        String name = entry.name().map(named -> " of " + named).orElse("");
        EntryField field = fields.get(key.key());
        session.edit(
                key.words() + name,
                plan -> edited(plan, sent),
                refused -> faults(refused).ifPresentOrElse(field::tell, () -> session.tell(refused)));
        if (key.kind() == EntryKey.Kind.PLACE) doubt(sent.get(key));
    }

    /** The reader's own words, which name the key. */
    private static Optional<String> faults(RuntimeException refused) {
        return refused instanceof InputFault fault
                ? Optional.of(fault.faults().stream().map(one -> one.text()).collect(Collectors.joining(" ")))
                : Optional.empty();
    }

    private void doubt(String typed) {
        try {
            new PlaceVerbs(session).doubt(entry.name().orElse("The place"), Place.parse("at", typed));
        } catch (InputFault told) {
            // the plan refuses it in the same words
            return;
        }
    }

    private String edited(String plan, Map<EntryKey, String> sent) {
        String text = plan;
        for (Map.Entry<EntryKey, String> one : sent.entrySet()) {
            EntryKey key = one.getKey();
            String typed = one.getValue();
            for (String other : typed.isEmpty() ? List.<String>of() : key.ties().instead())
                text = entry.without(text, other);
            text = typed.isEmpty() ? entry.without(text, key.key()) : with(text, key, typed);
        }
        return text;
    }

    private String with(String text, EntryKey key, String typed) {
        Optional<String> before = entry.value(text, key.key()).map(Entry::plain);
        if (key.kind() == EntryKey.Kind.NAME && before.isPresent())
            return PlanText.rename(text, NameKind.CHANNEL, before.get(), typed);
        String unmarked = text;
        if (key.kind() == EntryKey.Kind.MARK)
            for (int i = 0; i < PlanText.count(text, entry.section()); i++)
                unmarked = PlanText.withoutEntryValue(unmarked, entry.section(), i, key.key());
        return entry.with(unmarked, key.key(), written(key, typed));
    }

    private String written(EntryKey key, String typed) {
        return switch (key.kind()) {
            case NUMBER ->
                PlanText.number(NumberText.parse(
                                OwnUnit.planned(typed, OwnUnit.of(key.range().orElseThrow(), lengths)))
                        .orElseThrow());
            case FLAG, MARK, EITHER, NAMES, PAIRS -> typed;
            case TEXT, NAME, PLACE, CHOICE, FILE, FOLDER -> PlanText.quoted(typed);
        };
    }

    /** Puts a fresh entry into the plan; {@code refused} is told why the plan cannot bear it. */
    void add(Consumer<String> refused) {
        List<String> lines = fields.values().stream()
                .map(EntryField::key)
                .filter(key -> !now(key).isEmpty())
                .map(key -> key.key() + " = " + written(key, now(key)))
                .toList();
        session.edit(
                "add " + EntryKind.of(entry).fresh().toLowerCase(java.util.Locale.ROOT),
                plan -> PlanText.withEntry(PlanText.asEntries(plan, entry.section()), entry.section(), lines),
                wrong -> faults(wrong).ifPresentOrElse(refused, () -> session.tell(wrong)));
    }

    /** What is typed for a key of a fresh entry. */
    String typed(String key) {
        return waiting.getOrDefault(key, "");
    }

    private final class Told implements EntryControl.Listener {
        private final EntryKey key;

        Told(EntryKey key) {
            this.key = key;
        }

        @Override
        public void taken(String value) {
            take(key, value);
        }

        @Override
        public void leave() {
            waiting.remove(key.key());
            fields.get(key.key()).show(said(key));
        }

        @Override
        public boolean isAsSaid(String typed) {
            return typed.equals(said(key));
        }

        @Override
        public void undo() {
            session.undo();
        }
    }
}
