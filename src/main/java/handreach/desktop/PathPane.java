package handreach.desktop;

import handreach.plan.CalibrationFile;
import handreach.plan.Places;
import handreach.report.PathComposer;
import handreach.study.Scene;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Duration;

/** The path between two places: the cut through the ground, and both directions of the link line by line. */
final class PathPane extends BorderPane {
    /** Narrower, cut and ledger stand one above the other. */
    private static final double BESIDE_PX = 860;

    private static final String HINT =
            "Point at a line of the ledger, or step to it, to read what it means and who says so."
                    + " Point at the cut to read the ground.";

    private final Session session;
    private final Worker.LatestOnly asking;
    private final Worker.Debounce tables;
    private final Worker.InPieces laying;
    private final EndPicker from;
    private final EndPicker to;
    private final Label verdict = words("path-verdict", "strong");
    private final Label inTheWay = words("path-in-the-way", "plain");
    private final Label reading = words("path-reading", "quiet");
    private final Label warnings = words("path-warnings", "quiet");
    private final Label title = words("path-line-title", "strong");
    private final Label meaning = words("path-line-meaning", "plain");
    private final FaultLines faults = new FaultLines();
    private final ProfileChart chart;
    private final LedgerTable ledger = new LedgerTable(this::explain);
    private final ModelSpread models;
    private final GapPane gap;
    private final VBox answer = new VBox(4);
    private final VBox cut = new VBox(4);
    private final VBox lines = new VBox(12);
    private final ScrollPane scroll = new ScrollPane();
    private final FlowPane bar = new FlowPane(14, 6);
    private final BorderPane foot = new BorderPane();
    private Optional<String> fromChosen = Optional.empty();
    private Optional<String> toChosen = Optional.empty();
    private Optional<PathView> shown = Optional.empty();
    private boolean isBeside;

    PathPane(Session session) {
        this.session = session;
        this.asking = session.worker().latestOnly();
        this.tables = session.worker().debounce(Duration.millis(60), this::showLedger);
        this.laying = session.worker().inPieces();
        this.chart = new ProfileChart(session.palette(), session.alongPath()::set, this::read);
        this.models = new ModelSpread(session);
        this.gap = new GapPane(session);
        this.from = new EndPicker("from", this::startAt, name -> {
            fromChosen = Optional.of(name);
            ask();
        });
        this.to = new EndPicker("to", this::endAt, name -> {
            toChosen = Optional.of(name);
            ask();
        });
        getStyleClass().add("path-pane");
        setId("path-pane");
        layOut();
        explain("", "");
        session.pulled().addListener((pulled, before, now) -> turned(before, now));
        session.scene().addListener((scene, before, now) -> follow());
        session.moving().addListener((moving, before, now) -> follow());
        session.carried().addListener((which, before, now) -> ask());
    }

    private static Label words(String id, String style) {
        Label label = new Label();
        label.setId(id);
        label.getStyleClass().add(style);
        label.setWrapText(true);
        label.setMinHeight(Region.USE_PREF_SIZE);
        return label;
    }

    private void layOut() {
        Button turn = new Button("Swap");
        turn.setId("path-turn");
        turn.setOnAction(pressed -> turnRound());
        bar.setAlignment(Pos.CENTER_LEFT);
        bar.getStyleClass().add("path-bar");
        bar.getChildren().addAll(from, to, turn);
        // Narrower than its names, a choice is cut within its frame rather than with it.
        bar.setMinWidth(0);
        for (EndPicker end : List.of(from, to)) Labels.fitInto(end, bar);
        VBox.setVgrow(chart, Priority.ALWAYS);
        cut.getChildren().addAll(chart, reading);
        answer.getChildren().addAll(verdict, gap);
        answer.getStyleClass().add("path-answer");
        lines.getChildren().addAll(ledger, inTheWay, models, warnings);
        lines.getStyleClass().add("path-lines");
        scroll.setFitToWidth(true);
        scroll.setId("path-scroll");
        scroll.setAccessibleText("The path and its ledger");
        scroll.getStyleClass().add("drawer-scroll");
        scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        foot.setTop(title);
        foot.setCenter(meaning);
        BorderPane.setAlignment(meaning, Pos.TOP_LEFT);
        foot.getStyleClass().add("path-foot");
        foot.setMinHeight(72);
        foot.setPrefHeight(72);
        setBottom(foot);
        arrange(true);
        widthProperty().addListener((width, was, is) -> {
            if (is.doubleValue() >= BESIDE_PX != isBeside) arrange(!isBeside);
        });
    }

    private void arrange(boolean beside) {
        isBeside = beside;
        if (scroll.getContent() instanceof VBox before) before.getChildren().clear();
        scroll.setContent(null);
        setTop(null);
        setCenter(null);
        if (beside) {
            HBox middle = new HBox(8, cut, scroll);
            HBox.setHgrow(cut, Priority.ALWAYS);
            cut.setPrefWidth(520);
            scroll.setMinWidth(390);
            scroll.setPrefWidth(430);
            scroll.setContent(new VBox(answer, lines));
            setTop(new VBox(bar, faults));
            setCenter(middle);
        } else {
            chart.setPrefHeight(270);
            scroll.setContent(new VBox(bar, faults, answer, cut, lines));
            setCenter(scroll);
        }
    }

    /** What asking for a relay does. */
    void onRelay(Runnable step) {
        gap.onRelay(step);
    }

    /** Puts the keyboard where the ends are chosen. */
    void focusEnds() {
        from.focus();
    }

    private void explain(String head, String words) {
        boolean isNone = head.isEmpty();
        title.setText(isNone ? "Nothing pointed at" : head);
        meaning.setText(isNone ? HINT : words);
    }

    private void read(String words) {
        reading.setText(words.isEmpty() ? shown.map(PathPane::groundWords).orElse("") : words);
    }

    private static String groundWords(PathView view) {
        return PathComposer.groundSentence(view.answer(), view.lengths());
    }

    /** Another end makes another question; what was chosen by hand for the ends that were there goes with them. */
    private void turned(Optional<PulledPath> before, Optional<PulledPath> now) {
        if (now.isEmpty()) {
            asking.drop();
            shown = Optional.empty();
            fromChosen = Optional.empty();
            toChosen = Optional.empty();
            chart.show(shown);
            gap.clear();
            return;
        }
        // Another path begins with its answer, wherever the one before was read.
        if (before.isEmpty()) scroll.setVvalue(0);
        if (now.get().given().isPresent()) {
            fromChosen = Optional.empty();
            toChosen = Optional.empty();
        }
        if (before.filter(was -> was.from().name().equals(now.get().from().name()))
                .isEmpty()) fromChosen = Optional.empty();
        if (before.filter(was -> was.to().name().equals(now.get().to().name())).isEmpty()) toChosen = Optional.empty();
        ask();
    }

    /** The ends go where their positions go, under the hand and after an edit. */
    private void follow() {
        Scene scene = session.scene().get();
        if (scene == null) return;
        session.pulled().get().ifPresent(path -> {
            PulledPath.End start =
                    PathEnds.followed(scene, path.from(), session.moving().get());
            PulledPath.End end =
                    PathEnds.followed(scene, path.to(), session.moving().get());
            boolean isSame = start.equals(path.from()) && end.equals(path.to());
            PulledPath after = new PulledPath(
                    start, end, path.isFinished(), path.given().filter(given -> isSame && session.fits(given.scene())));
            if (after.equals(path)) ask();
            else session.pulled().set(Optional.of(after));
        });
    }

    private void startAt(String name) {
        put(name, true);
    }

    private void endAt(String name) {
        put(name, false);
    }

    private void put(String name, boolean isStart) {
        Scene scene = session.scene().get();
        Optional<Places.PositionEntry> entry = scene.plan().places().positions().stream()
                .filter(each -> each.name().equals(name))
                .findFirst();
        if (entry.isEmpty()) return;
        PulledPath.End end = PulledPath.End.of(entry.get().at(), entry);
        session.pulled()
                .get()
                .ifPresent(path -> session.pulled()
                        .set(Optional.of(new PulledPath(
                                isStart ? end : path.from(), isStart ? path.to() : end, path.isFinished()))));
    }

    private void turnRound() {
        Optional<String> wasFrom = fromChosen;
        Optional<String> wasTo = toChosen;
        session.pulled().get().ifPresent(path -> {
            session.pulled().set(Optional.of(new PulledPath(path.to(), path.from(), path.isFinished())));
            fromChosen = wasTo;
            toChosen = wasFrom;
            ask();
        });
    }

    private void ask() {
        Scene scene = session.scene().get();
        Optional<PulledPath> path = session.pulled().get();
        if (scene == null || path.isEmpty() || session.carried().get() == null) return;
        Optional<PulledPath.Given> given = path.get().given();
        if (given.isPresent() && fromChosen.isEmpty() && toChosen.isEmpty()) {
            PathEnds known = PathEnds.of(scene, path.get(), given.get());
            from.show(known, known.from());
            to.show(known, known.to());
            asking.ask(progress -> PathView.of(known, given.get().answer()), this::show, this::refuse);
            return;
        }
        PathEnds ends = new PathEnds(
                scene,
                PathEnds.Spot.of(
                        scene, path.get().from(), fromChosen, session.carried().get()),
                PathEnds.Spot.of(
                        scene, path.get().to(), toChosen, session.carried().get()));
        from.show(ends, ends.from());
        to.show(ends, ends.to());
        asking.ask(progress -> PathView.of(ends), this::show, this::refuse);
    }

    private void show(PathView view) {
        shown = Optional.of(view);
        faults.clear();
        lines.setVisible(true);
        answer.setVisible(true);
        cut.setVisible(true);
        gap.clear();
        explain("", "");
        chart.show(shown);
        laying.drop();
        tables.begin();
        read("");
        verdict.setText(PathComposer.verdict(view.answer()));
        inTheWay.setText(PathComposer.inTheWay(view.answer(), view.lengths()));
        List<String> words = new ArrayList<>(view.answer().warnings());
        view.answer().calibration().map(CalibrationFile::words).ifPresent(words::add);
        warnings.setText(String.join("\n", words));
        warnings.setManaged(!words.isEmpty());
    }

    /** Tables take longer to lay out than a picture may: they come when the hand rests, a line after the other. */
    private void showLedger() {
        if (shown.isEmpty()) return;
        PathView view = shown.get();
        List<Runnable> steps = new ArrayList<>(ledger.steps(view));
        if (session.pulled().get().filter(PulledPath::isFinished).isPresent()) steps.add(() -> gap.show(view));
        steps.addAll(models.steps(view.answer()));
        laying.begin(steps);
    }

    /** Makes lines for the ledger of the first path ahead of it, some at a time; false when there are enough. */
    boolean prepareNext() {
        return ledger.prepareNext();
    }

    private void refuse(RuntimeException wrong) {
        shown = Optional.empty();
        laying.drop();
        faults.show(wrong);
        gap.clear();
        lines.setVisible(false);
        answer.setVisible(false);
        cut.setVisible(false);
        chart.show(shown);
        read("");
        explain("", "");
    }
}
