package handreach.desktop;

import handreach.geodesy.Position;
import handreach.input.Fault;
import handreach.input.InputFault;
import handreach.loadout.Loadout;
import handreach.plan.PlanFile;
import handreach.plan.PlanText;
import handreach.report.AtlasSight;
import handreach.study.ModelChoice;
import handreach.study.RelayAnswer;
import handreach.study.Scene;
import handreach.study.WalkAnswer;
import handreach.study.WalkNextAnswer;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/**
 * What the window is about: one plan opened, what was done to it, what is looked at. Lives on the screen thread.
 *
 * <p>Every edit makes a new plan from the text of the one before; an edit the plan cannot bear is refused with the reader's own
 * words and changes nothing.
 */
final class Session {
    private static final int MOST_STEPS_BACK = 200;
    private static final long FIRST_PLAN_MS = 1500;

    private final Worker worker;
    private final ReadOnlyObjectWrapper<Scene> scene = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyBooleanWrapper isEdited = new ReadOnlyBooleanWrapper();
    private final ReadOnlyObjectWrapper<Optional<String>> undoable = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<String>> redoable = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ObjectProperty<Loadout> carried = new SimpleObjectProperty<>();
    private final ObjectProperty<Loadout> compared = new SimpleObjectProperty<>();
    private final ObjectProperty<Palette> palette = new SimpleObjectProperty<>(Palette.DAY);
    private final ObjectProperty<MapFonts> fonts = new SimpleObjectProperty<>(new MapFonts(MapFonts.USUAL_PX));
    private final ObjectProperty<Layer> layer = new SimpleObjectProperty<>(Layer.ODDS);
    private final ObservableList<Notice> notices = FXCollections.observableArrayList();
    private final ReadOnlyObjectWrapper<Optional<FaultyPlan>> faulty = new ReadOnlyObjectWrapper<>(Optional.empty());
    private Consumer<Path> shown = file -> {};
    private final Deque<Step> past = new ArrayDeque<>();
    private final Deque<Step> future = new ArrayDeque<>();
    private final Deque<Edit> waiting = new ArrayDeque<>();
    private boolean isEditing;
    /** A saving elsewhere that came while edits were on their way. */
    private Optional<Runnable> afterEdits = Optional.empty();

    private final ObjectProperty<Optional<Position>> cursor = new SimpleObjectProperty<>(Optional.empty());
    private final ObjectProperty<Optional<Moving>> moving = new SimpleObjectProperty<>(Optional.empty());
    private final ObjectProperty<Optional<PulledPath>> pulled = new SimpleObjectProperty<>(Optional.empty());
    private final ObjectProperty<Optional<Position>> alongPath = new SimpleObjectProperty<>(Optional.empty());
    private final BooleanProperty isPulling = new SimpleBooleanProperty();
    private final ObjectProperty<Optional<RelayAnswer>> relay = new SimpleObjectProperty<>(Optional.empty());
    private final ObjectProperty<Optional<WalkAnswer>> walked = new SimpleObjectProperty<>(Optional.empty());
    private final ObjectProperty<Optional<WalkNextAnswer>> nextWalk = new SimpleObjectProperty<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<AtlasSight>> atlas = new ReadOnlyObjectWrapper<>(Optional.empty());

    /**
     * A position on its way under the hand, not yet in the plan.
     *
     * @param name the position
     * @param to where it is held
     */
    record Moving(String name, Position to) {}

    /** A text that was left, and what was done to it. */
    private record Step(String what, String text) {}

    private record Edit(String what, UnaryOperator<String> change, EditKind way, Consumer<RuntimeException> refused) {}

    private enum EditKind {
        NEW,
        BACK,
        AGAIN
    }

    Session(Worker worker) {
        this.worker = worker;
    }

    Worker worker() {
        return worker;
    }

    /** The plan with all it names opened; null before the first one. */
    ReadOnlyObjectProperty<Scene> scene() {
        return scene.getReadOnlyProperty();
    }

    ReadOnlyBooleanProperty isEdited() {
        return isEdited.getReadOnlyProperty();
    }

    /** What undo would take back. */
    ReadOnlyObjectProperty<Optional<String>> undoable() {
        return undoable.getReadOnlyProperty();
    }

    ReadOnlyObjectProperty<Optional<String>> redoable() {
        return redoable.getReadOnlyProperty();
    }

    /** The loadout looked at. */
    ObjectProperty<Loadout> carried() {
        return carried;
    }

    /** The loadout it is held against. */
    ObjectProperty<Loadout> compared() {
        return compared;
    }

    ObjectProperty<Layer> layer() {
        return layer;
    }

    /** Colours by day or by night. */
    ObjectProperty<Palette> palette() {
        return palette;
    }

    /** How large words are. */
    ObjectProperty<MapFonts> fonts() {
        return fonts;
    }

    /** Where the mouse is on the ground. */
    ObjectProperty<Optional<Position>> cursor() {
        return cursor;
    }

    /** A position under the hand; empty once the plan has it. */
    ObjectProperty<Optional<Moving>> moving() {
        return moving;
    }

    /** The line pulled between two places. */
    ObjectProperty<Optional<PulledPath>> pulled() {
        return pulled;
    }

    /** The place on the ground that is pointed at in a profile. */
    ObjectProperty<Optional<Position>> alongPath() {
        return alongPath;
    }

    /** Whether the next pull on the map makes a path. */
    BooleanProperty isPulling() {
        return isPulling;
    }

    /** Whether a relay is needed, as last found out for this plan. */
    ObjectProperty<Optional<RelayAnswer>> relay() {
        return relay;
    }

    /** Walks against predictions, as last compared for this plan. */
    ObjectProperty<Optional<WalkAnswer>> walked() {
        return walked;
    }

    /** Where another walk would teach most, as last asked for this plan. */
    ObjectProperty<Optional<WalkNextAnswer>> nextWalk() {
        return nextWalk;
    }

    /** The atlas that lies over the map. */
    ReadOnlyObjectProperty<Optional<AtlasSight>> atlas() {
        return atlas.getReadOnlyProperty();
    }

    /** Lays the atlas of a folder over the map; what cannot be read is told, and what lies there stays. */
    void layAtlas(Path folder) {
        worker.inOrder(() -> AtlasSight.read(folder), this::laid, this::tell);
    }

    private void laid(AtlasSight fresh) {
        atlas.set(Optional.of(fresh));
        if (!layer.get().isOfAtlas()) layer.set(Layer.ATLAS_MEDIAN);
        tell(Notice.done("An atlas of " + fresh.count() + " positions lies over the map: \"" + fresh.title()
                + "\". Click a place for its figures."));
        if (fresh.missing() > 0)
            tell(
                    Notice.remark(
                            "Of this atlas " + fresh.missing()
                                    + " blocks are not there or not whole; nothing is shown of them. The same atlas command goes on with them."));
        if (scene.get() != null && fresh.positions().indexOf(scene.get().middle()) < 0)
            tell(Notice.remark("The atlas lies elsewhere than the middle of the reach of this plan."));
    }

    void takeAtlasAway() {
        if (layer.get().isOfAtlas()) layer.set(Layer.ODDS);
        atlas.set(Optional.empty());
    }

    /** Whether an answer about a scene still fits the plan to the last word, what walks have taught included. */
    boolean fits(Scene answered) {
        return scene.get() != null
                && scene.get().file().text().equals(answered.file().text());
    }

    /** Whether a comparison with walks still fits: what they have taught may have been accepted since, no more. */
    boolean fitsWalks(Scene answered) {
        return scene.get() != null && withoutCalibration(scene.get()).equals(withoutCalibration(answered));
    }

    private static String withoutCalibration(Scene of) {
        return PlanText.withValue(of.file().text(), "calibration", "file", "\"\"");
    }

    /** Where the rose stands now, a position under the hand included. */
    Position stand() {
        Scene now = scene.get();
        Position middle = now.middle();
        return moving.get()
                .filter(held -> now.position(held.name()).at().equals(middle))
                .map(Moving::to)
                .orElse(middle);
    }

    /** Who opens a file or folder with the program that the person has for it. */
    void showWith(Consumer<Path> opener) {
        shown = opener;
    }

    void show(Path fileOrFolder) {
        shown.accept(fileOrFolder);
    }

    ObservableList<Notice> notices() {
        return notices;
    }

    void tell(Notice notice) {
        boolean isDone = notice.kind() == Notice.Kind.DONE;
        notices.removeIf(told -> told.says(notice) || isDone && told.kind() == Notice.Kind.DONE);
        notices.add(0, notice);
        if (notices.size() > 6) notices.remove(notices.size() - 1);
    }

    void tell(Throwable wrong) {
        tell(Notice.of(wrong));
    }

    /** Opens a plan; what is open now stays if it cannot be opened, and the text is there to be mended. */
    void open(Path planOrFolder) {
        worker.inOrder(() -> Opening.read(planOrFolder), this::opened, this::tell);
    }

    /** Goes on with a plan that was made here; {@code refused} is told why it cannot be. */
    void begin(Supplier<PlanFile> making, Consumer<RuntimeException> refused) {
        worker.inOrder(() -> Opening.of(Scene.open(making.get())), this::opened, refused);
    }

    /** A plan that could not be read, while it is being mended. */
    ReadOnlyObjectProperty<Optional<FaultyPlan>> faulty() {
        return faulty.getReadOnlyProperty();
    }

    /** Goes on with another text of the plan that could not be read. */
    void mend(String text) {
        faulty.get().ifPresent(plan -> worker.inOrder(() -> Opening.mended(plan, text), this::opened, this::tell));
    }

    /** Leaves it as it is. */
    void leaveFaulty() {
        faulty.set(Optional.empty());
    }

    /**
     * Takes over the first plan. Asked before the window is on the screen, where nothing can freeze: a plan that is open soon
     * is then laid out once instead of twice.
     */
    void open(FirstPlan first) {
        try {
            first.opening(FIRST_PLAN_MS)
                    .ifPresentOrElse(this::opened, () -> worker.inOrder(first::opening, this::opened, this::tell));
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        } catch (RuntimeException wrong) {
            tell(wrong);
        }
    }

    private void opened(Opening opening) {
        opening.faulty().ifPresent(plan -> {
            faulty.set(Optional.of(plan));
            tell(new Notice(true, plan.words()));
        });
        opening.scene().ifPresent(fresh -> {
            opened(fresh);
            opening.left().ifPresent(left -> left.offer(this));
        });
    }

    private void opened(Scene fresh) {
        faulty.set(Optional.empty());
        past.clear();
        future.clear();
        waiting.clear();
        notices.clear();
        carried.set(null);
        compared.set(null);
        relay.set(Optional.empty());
        walked.set(Optional.empty());
        nextWalk.set(Optional.empty());
        takeAtlasAway();
        pulled.set(Optional.empty());
        accept(fresh);
        // What was chosen stands beside the choice, in question 2.
        String chosen = fresh.choice().map(ModelChoice::words).orElse("");
        for (String words : fresh.warnings()) if (!words.equals(chosen)) tell(Notice.remark(words));
    }

    /** Changes the text of the plan; {@code what} says in a few words what undo would take back. */
    void edit(String what, UnaryOperator<String> change) {
        edit(what, change, wrong -> tell(Notice.of(wrong).as(Notice.Kind.REFUSED)));
    }

    /** The same; {@code refused} is told why the plan cannot bear it, in place of the person. */
    void edit(String what, UnaryOperator<String> change, Consumer<RuntimeException> refused) {
        enqueue(new Edit(what, change, EditKind.NEW, refused));
    }

    void undo() {
        enqueue(new Edit("", UnaryOperator.identity(), EditKind.BACK, this::tell));
    }

    void redo() {
        enqueue(new Edit("", UnaryOperator.identity(), EditKind.AGAIN, this::tell));
    }

    private void enqueue(Edit edit) {
        if (scene.get() == null) return;
        waiting.add(edit);
        next();
    }

    private void next() {
        if (isEditing) return;
        if (waiting.isEmpty()) {
            Optional<Runnable> step = afterEdits;
            afterEdits = Optional.empty();
            step.ifPresent(Runnable::run);
            return;
        }
        Edit edit = waiting.remove();
        Deque<Step> from = edit.way() == EditKind.BACK ? past : future;
        if (edit.way() != EditKind.NEW && from.isEmpty()) {
            next();
            return;
        }
        Scene before = scene.get();
        String what = edit.way() == EditKind.NEW ? edit.what() : from.peek().what();
        UnaryOperator<String> change =
                edit.way() == EditKind.NEW ? edit.change() : taken(from.peek().text());
        isEditing = true;
        worker.inOrder(
                () -> {
                    String text = change.apply(before.file().text());
                    return text.equals(before.file().text())
                            ? before
                            : before.with(before.file().withText(text));
                },
                after -> {
                    isEditing = false;
                    if (after != before) {
                        notices.removeIf(told -> told.kind() == Notice.Kind.REFUSED);
                        keep(edit.way(), new Step(what, before.file().text()));
                        accept(after);
                    }
                    next();
                },
                wrong -> {
                    isEditing = false;
                    moving.set(Optional.empty());
                    edit.refused().accept(wrong);
                    next();
                });
    }

    private static UnaryOperator<String> taken(String text) {
        return ignored -> text;
    }

    private void keep(EditKind way, Step left) {
        switch (way) {
            case NEW -> {
                past.push(left);
                future.clear();
            }
            case BACK -> {
                past.pop();
                future.push(left);
            }
            case AGAIN -> {
                future.pop();
                past.push(left);
            }
        }
        if (past.size() > MOST_STEPS_BACK) past.removeLast();
    }

    /** Writes the plan in place; {@code then} follows when it stands on disk, {@code refused} is told why it does not. */
    void save(Runnable then, Consumer<RuntimeException> refused) {
        if (scene.get() == null) return;
        Scene saved = scene.get();
        worker.inOrder(() -> saved.with(saved.file().save()), fresh -> written(saved, fresh, then), refused);
    }

    /** Writes the plan under another name and goes on with that one; in another folder its files follow as asked. */
    void saveAs(Path file, PlanFile.Named named, Runnable then) {
        if (scene.get() == null) return;
        if (isEditing) {
            afterEdits = Optional.of(() -> saveAs(file, named, then));
            return;
        }
        Scene saved = scene.get();
        // Edits wait: the names of files in the text are about to change.
        isEditing = true;
        worker.inOrder(
                () -> {
                    PlanFile other = saved.file().saveAs(file, named, () -> true);
                    RecentPlans.remember(other.file());
                    return other.folder().equals(saved.file().folder()) ? saved.with(other) : Scene.open(other);
                },
                fresh -> {
                    isEditing = false;
                    if (!fresh.file().text().equals(saved.file().text())) {
                        past.clear();
                        future.clear();
                    }
                    written(saved, fresh, then);
                    next();
                },
                wrong -> {
                    isEditing = false;
                    tell(wrong);
                    next();
                });
    }

    /** An edit that came in while the plan was being written stays an edit. */
    private void written(Scene saved, Scene fresh, Runnable then) {
        Path file = fresh.file().file().toAbsolutePath();
        tell(Notice.done(
                "Saved as " + file + ".", new Notice.Verb("Show in folder", () -> show(file.getParent()), false)));
        Scene now = scene.get();
        if (now == saved) {
            accept(fresh);
        } else {
            String text = now.file().text();
            worker.inOrder(() -> fresh.with(fresh.file().withText(text)), this::accept, this::tell);
        }
        then.run();
    }

    private void accept(Scene fresh) {
        Optional<String> wasCarried = Optional.ofNullable(carried.get()).map(Loadout::name);
        Optional<String> wasCompared = Optional.ofNullable(compared.get()).map(Loadout::name);
        scene.set(fresh);
        moving.set(Optional.empty());
        isEdited.set(fresh.file().isEdited());
        undoable.set(Optional.ofNullable(past.peek()).map(Step::what));
        redoable.set(Optional.ofNullable(future.peek()).map(Step::what));
        Loadout control = fresh.controlLoadout();
        compared.set(named(fresh, wasCompared).orElse(control));
        // A panel may have looked at a loadout that it added, when it heard of the new scene.
        Optional<String> looksAt = Optional.ofNullable(carried.get()).map(Loadout::name);
        if (looksAt.equals(wasCarried)) carried.set(named(fresh, wasCarried).orElse(control));
    }

    private static Optional<Loadout> named(Scene in, Optional<String> name) {
        return name.flatMap(wanted -> in.loadouts().stream()
                .filter(loadout -> loadout.name().equals(wanted))
                .findFirst());
    }

    /** Everything wrong with a text, or nothing; for a text that is being typed. */
    static List<Fault> faultsOf(PlanFile file, String text) {
        try {
            file.withText(text);
            return List.of();
        } catch (InputFault wrong) {
            return wrong.faults();
        }
    }
}
