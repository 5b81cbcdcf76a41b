package handreach.desktop;

import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.input.Sources;
import handreach.plan.CalibrationFile;
import handreach.plan.PlanText;
import handreach.plan.Questions;
import handreach.report.WalkComposer;
import handreach.report.WalkNextComposer;
import handreach.report.file.AnswerFile;
import handreach.report.page.Bullets;
import handreach.study.Scene;
import handreach.study.WalkAnswer;
import handreach.study.WalkNextAnswer;
import handreach.study.WalkNextStudy;
import handreach.study.WalkStudy;
import handreach.walk.NextWalk;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.value.ObservableValue;
import javafx.collections.ListChangeListener;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TitledPane;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** Was it right: the walks of the plan beside the prediction, what they teach, and which walk would teach most next. */
final class WalkPanel extends VBox implements Aside.Divided {
    private static final int PROPOSED = 6;
    private static final double FIGURE_PX = 328;

    private final Session session;
    private final Consumer<Position> look;
    private final VBox walks = new VBox(3);
    private final Button compare = new Button("Compare");
    private final Button learn = new Button("Learn from these walks");
    private final Button next = new Button("Which walk next?");
    private final Label stale =
            Labels.line("The plan has been edited since this comparison: compare again.", "caution");
    /** Beside the button, where the hand and the eye are. */
    private final Label learned = Labels.line("", "caution");

    private final Label accepted = Labels.line("", "quiet");
    private final VBox sheet = new VBox(8);
    private final VBox proposal = new VBox(4);
    private final ReadOnlyStringWrapper answer = new ReadOnlyStringWrapper("");
    private final Worker.LatestOnly composing;
    private final Worker.InPieces laying;
    private final Worker.LatestOnly proposals;
    private final Worker.InPieces layingProposal;
    private WatchedWork comparing;
    private WatchedWork proposing;

    /** {@code look} brings a place into view. */
    WalkPanel(Session session, Consumer<Position> look) {
        super(10);
        this.session = session;
        this.look = look;
        this.composing = session.worker().latestOnly();
        this.laying = session.worker().inPieces();
        this.proposals = session.worker().latestOnly();
        this.layingProposal = session.worker().inPieces();
        compare.setId("walk-compare");
        compare.setOnAction(pressed -> compare());
        learn.setId("walk-learn");
        learn.setOnAction(pressed -> learn());
        next.setId("walk-next");
        next.setOnAction(pressed -> propose());
        stale.setId("walk-stale");
        sheet.setId("walk-answer");
        proposal.setId("walk-proposal");
        accepted.setId("walk-accepted");
        learned.setId("walk-learned");
        sayLearned("");
        getChildren()
                .addAll(new FlowPane(8, 6, compare, next), stale, sheet, learn, learned, accepted, proposal, walks);
        session.scene().addListener((scene, before, now) -> show(now));
        session.walked().addListener((found, before, now) -> {
            sayLearned("");
            fill();
        });
        session.nextWalk().addListener((found, before, now) -> fillProposal(now));
        session.worker().watched().addListener((ListChangeListener<WatchedWork>) change -> rest());
        fill();
    }

    ObservableValue<String> answer() {
        return answer.getReadOnlyProperty();
    }

    private void rest() {
        boolean hasWalks = session.scene().get() != null
                && !session.scene().get().plan().questions().walks().isEmpty();
        compare.setDisable(!hasWalks || session.worker().watched().contains(comparing));
        next.setDisable(session.worker().watched().contains(proposing));
    }

    private void show(Scene scene) {
        walks.getChildren().clear();
        List<Questions.WalkEntry> entries = scene.plan().questions().walks();
        for (Questions.WalkEntry walk : entries)
            walks.getChildren()
                    .add(Labels.line(
                            walk.name() + ": " + walk.reports().getFileName()
                                    + walk.track()
                                            .map(track -> " along " + track.getFileName())
                                            .orElse(""),
                            "plain"));
        if (entries.isEmpty())
            walks.getChildren()
                    .add(Labels.line(
                            "The plan names no walk yet. Walk, note every call, those without an answer too, and bring in the"
                                    + " track (GPX): drop it on the window, or Bring in in the menu. The reports (CSV) stand"
                                    + " beside the plan.",
                            "quiet"));
        Optional<CalibrationFile> calibration = scene.calibration();
        accepted.setText(calibration
                .map(file -> "The plan uses what walks have taught. " + file.words())
                .orElse(""));
        accepted.setVisible(calibration.isPresent());
        accepted.setManaged(calibration.isPresent());
        rest();
        age();
    }

    private void compare() {
        Scene scene = session.scene().get();
        if (scene == null) return;
        comparing = session.worker()
                .watched(
                        "Walked against predicted",
                        progress -> WalkStudy.run(scene, progress),
                        found -> {
                            session.walked().set(Optional.of(found));
                            session.layer().set(Layer.WALK);
                        },
                        session::tell);
        rest();
    }

    private void age() {
        Optional<WalkAnswer> found = session.walked().get();
        boolean isOld = found.isPresent() && !session.fitsWalks(found.get().scene());
        stale.setVisible(isOld);
        stale.setManaged(isOld);
        learn.setVisible(found.isPresent());
        learn.setManaged(found.isPresent());
        learn.setDisable(isOld);
        if (found.isEmpty()) {
            boolean hasNone = session.scene().get() == null
                    || session.scene().get().plan().questions().walks().isEmpty();
            answer.set(hasNone ? "No walk yet." : "Not compared yet.");
            return;
        }
        answer.set((isOld ? "Before the last edits: " : "") + WalkComposer.headline(found.get()));
    }

    private void fill() {
        age();
        composing.drop();
        laying.drop();
        sheet.getChildren().clear();
        session.walked().get().ifPresent(this::fill);
    }

    private void fill(WalkAnswer found) {
        BlockView view = new BlockView(
                session,
                FIGURE_PX,
                new BlockView.RowVerb<>(WalkAnswer.Seen.class, "Show the path of line", this::pull));
        composing.ask(
                progress -> WalkComposer.screen(found),
                page -> laying.begin(view.stepsUnderHeadline(page)),
                session::tell);
        sheet.getChildren().add(view);
        if (found.warnings().isEmpty()) return;
        BlockView doubts = new BlockView(session, FIGURE_PX);
        doubts.showBlocks(List.of(new Bullets(found.warnings())));
        TitledPane pane = new TitledPane("Doubtful (" + found.warnings().size() + ")", doubts);
        pane.setExpanded(false);
        pane.setAnimated(false);
        sheet.getChildren().add(pane);
    }

    private void pull(WalkAnswer.Seen seen) {
        session.pulled()
                .set(Optional.of(new PulledPath(
                        new PulledPath.End(
                                seen.base().at(),
                                seen.base().name(),
                                Optional.of(seen.base().loadout().name())),
                        new PulledPath.End(
                                seen.pair().spot().at(),
                                Optional.empty(),
                                Optional.of(seen.pair().link().loadout())),
                        true)));
    }

    /** Writes what the walks teach beside the plan, and names it in the plan: an edit that can be undone. */
    private void learn() {
        Optional<WalkAnswer> found = session.walked().get();
        Scene scene = session.scene().get();
        if (found.isEmpty() || scene == null) return;
        Optional<String> refusal = found.get().learned().refusal();
        if (refusal.isPresent()) {
            session.tell(new InputFault("walk", 0, refusal.get()));
            return;
        }
        String text = found.get().learned().file().text();
        Path folder = scene.file().folder();
        session.worker()
                .inOrder(
                        () -> written(folder, text, scene.file().sources()),
                        name -> {
                            session.edit(
                                    "learn from walks",
                                    plan -> PlanText.withValue(plan, "calibration", "file", PlanText.quoted(name)));
                            sayLearned("Learned: " + name
                                    + " was written beside the plan, and the plan names it. Undo takes the"
                                    + " name out again; the file stays.");
                        },
                        session::tell);
    }

    private void sayLearned(String words) {
        learned.setText(words);
        learned.setVisible(!words.isEmpty());
        learned.setManaged(!words.isEmpty());
    }

    /** A file that is there already and says something else is left alone: an undone edit may come back to it. */
    private static String written(Path folder, String text, Sources sources) {
        String name = "calibration.toml";
        for (int number = 2; Files.exists(folder.resolve(name)); number++) {
            if (holds(folder.resolve(name), text)) return name;
            name = "calibration-" + number + ".toml";
        }
        AnswerFile.write(folder.resolve(name), text, sources);
        return name;
    }

    private static boolean holds(Path file, String text) {
        try {
            byte[] wanted = text.getBytes(StandardCharsets.UTF_8);
            return Files.isRegularFile(file)
                    && Files.size(file) == wanted.length
                    && java.util.Arrays.equals(Files.readAllBytes(file), wanted);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void propose() {
        Scene scene = session.scene().get();
        if (scene == null) return;
        List<Path> tracks = Stream.concat(
                        scene.plan().questions().walks().stream().flatMap(walk -> walk.track().stream()),
                        scene.plan().places().routes().stream().map(route -> route.file()))
                .distinct()
                .toList();
        proposing = session.worker()
                .watched(
                        "Which walk next",
                        progress -> WalkNextStudy.run(
                                scene,
                                WalkNextAnswer.Decision.LOADOUT,
                                NextWalk.Instrument.COPY,
                                tracks,
                                PROPOSED,
                                progress),
                        found -> {
                            session.nextWalk().set(Optional.of(found));
                            session.layer().set(Layer.WALK);
                        },
                        session::tell);
        rest();
    }

    private void fillProposal(Optional<WalkNextAnswer> found) {
        proposals.drop();
        layingProposal.drop();
        proposal.getChildren().clear();
        if (found.isEmpty()) return;
        BlockView view = new BlockView(
                session,
                FIGURE_PX,
                new BlockView.RowVerb<>(
                        WalkNextAnswer.Stop.class,
                        "Show stop",
                        stop -> look.accept(stop.spot().at())));
        Button put = Labels.link(
                "Put the stops into the plan",
                () -> new PlaceVerbs(session)
                        .add(
                                "stop",
                                found.get().stops().stream()
                                        .map(stop -> stop.spot().at())
                                        .toList()));
        put.setId("walk-put-stops");
        put.setTooltip(new Tooltip("As positions, so that they stand on the card and on the map"));
        proposal.getChildren().add(view);
        if (!found.get().stops().isEmpty()) proposal.getChildren().add(put);
        proposals.ask(
                progress -> WalkNextComposer.page(found.get()),
                page -> layingProposal.begin(view.steps(page)),
                session::tell);
    }
}
