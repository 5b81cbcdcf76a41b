package handreach.desktop;

import handreach.geodesy.PlaceForm;
import handreach.study.Scene;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.collections.ListChangeListener;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;
import javafx.util.Duration;

/** The one window: the ground in the middle, the person's questions beside it, a drawer below. */
final class DeskWindow {
    private final Stage stage;
    private final Worker worker;
    private final Session session;
    private final MapView map;
    private final LiveReach live;
    private final KeyPane key;
    private final Drawer drawer = new Drawer();
    private final BorderPane root = new BorderPane();
    private final StackPane middle;
    private final QuestionList way;
    private final PlanTextPane planText;
    private final PathPane path;
    private final BenchPane bench;
    private final WindowVerbs verbs;
    private final FirstSteps firstSteps;
    private final Worker.Rest ahead;
    private final FileDrop drop;
    private double textPx = 13;

    DeskWindow(Stage stage) {
        this.stage = stage;
        this.worker = new Worker(this::defect);
        this.session = new Session(worker);
        this.map = new MapView(session);
        this.middle = new StackPane(map);
        this.live = new LiveReach(session);
        this.key = new KeyPane(map);
        new LayerView(session, live, map, key);
        this.planText = new PlanTextPane(session);
        this.path = new PathPane(session);
        this.bench = new BenchPane(session);
        CarryPanel carry = new CarryPanel(session, this::showBench);
        GroundPanel ground = new GroundPanel(session);
        ReachPanel reach = new ReachPanel(session, live);
        RelayPanel relay = new RelayPanel(session, map::centreOn);
        WalkPanel walk = new WalkPanel(session, map::centreOn);
        this.way = new QuestionList(List.of(
                new Question("What do we carry?", carry.answer(), carry),
                new Question("On what ground?", ground.answer(), ground),
                new Question("How far does it reach?", reach.answer(), reach),
                new Question("Is a relay needed?", relay.answer(), relay),
                new Question("Was it right?", walk.answer(), walk)));
        new MapGestures(map, session);
        this.firstSteps = new FirstSteps(way);
        this.ahead = worker.rest(Duration.millis(150), this::prepareNext);
        this.verbs = new WindowVerbs(stage, session, worker::close);
        this.drop = new FileDrop(root, session);
        drop.hand(".toml", plans -> verbs.open(plans.get(0)));
        drop.hand(".csv", files -> files.forEach(this::readCsv));
        drop.hand(".s1p", this::readOnBench);
        drop.hand(".gpx", files -> bringOne(files, this::bringTrack));
        drop.hand(".geojson", files -> bringOne(files, this::bringAreas));
        drop.hand(".json", files -> bringOne(files, this::bringAreas));
        Theme.loadFaces();
        layOut();
        listen();
        stage.setScene(new javafx.scene.Scene(root, 1440, 900));
        stage.setMinWidth(900);
        stage.setMinHeight(600);
    }

    Session session() {
        return session;
    }

    LiveReach live() {
        return live;
    }

    MapView map() {
        return map;
    }

    QuestionList way() {
        return way;
    }

    FileDrop drop() {
        return drop;
    }

    WindowVerbs verbs() {
        return verbs;
    }

    private void defect(Throwable wrong) {
        session.tell(wrong);
    }

    /** The ground with room for the rest round it, which {@link #furnish} adds once the ground is there to look at. */
    private void layOut() {
        Theme.apply(root, map.palette().get());
        VBox.setVgrow(middle, Priority.ALWAYS);
        VBox centre = new VBox(middle, new CursorStatus(session, live), drawer);
        centre.setMinHeight(0);
        centre.heightProperty().addListener((height, was, is) -> drawer.fitInto(is.doubleValue()));
        VBox besides = new VBox();
        besides.getStyleClass().add("way");
        root.setCenter(centre);
        root.setRight(besides);
        root.setTop(new MenuStrip(this));
        map.inks()
                .setAll(
                        new GridInk(session.scene()::get),
                        new ReachInk(session),
                        new RelayInk(session),
                        new WalkInk(session),
                        new PathInk(session),
                        new PlacesInk(session),
                        new ScaleInk(
                                session.scene()::get,
                                () -> map.painted().get() == null
                                        ? 0
                                        : map.painted().get().contourIntervalM()));
    }

    private void furnish() {
        if (root.getRight() == way) return;
        live.groundIsShown();
        NoticePane notices = new NoticePane(session);
        notices.setMaxWidth(760);
        WorkPane work = new WorkPane(worker);
        LayerBar bar = new LayerBar(session, map);
        VBox upper = new VBox(8, bar, notices);
        upper.setPickOnBounds(false);
        upper.setMaxHeight(VBox.USE_PREF_SIZE);
        upper.setMaxWidth(VBox.USE_PREF_SIZE);
        StackPane.setAlignment(firstSteps, Pos.CENTER_LEFT);
        StackPane.setMargin(firstSteps, new Insets(0, 0, 0, 14));
        StackPane.setAlignment(key, Pos.BOTTOM_RIGHT);
        StackPane.setMargin(key, new Insets(0, 14, 14, 0));
        StackPane.setAlignment(upper, Pos.TOP_LEFT);
        StackPane.setMargin(upper, new Insets(26, 0, 0, 14));
        // Above the scale bar, on the side where the key is not.
        StackPane.setAlignment(work, Pos.BOTTOM_LEFT);
        StackPane.setMargin(work, new Insets(0, 0, 62, 14));
        middle.getChildren().addAll(key, upper, firstSteps, work);
        map.laidOver(bar, key);
        root.setRight(way);
        ahead.begin();
    }

    /** Folded steps are put on the screen one by one, while no picture is under way. */
    private void prepareNext() {
        if (live.isUnderway().get() || way.prepareNext() || drawer.keep(path) || path.prepareNext()) ahead.begin();
    }

    private void listen() {
        session.scene().addListener((scene, before, now) -> {
            map.show(now);
            map.redraw();
            title(now);
        });
        session.isEdited()
                .addListener((edited, was, is) -> title(session.scene().get()));
        session.moving().addListener((moving, before, now) -> map.redraw());
        session.pulled().addListener((pulled, before, now) -> {
            map.redraw();
            if (now.isEmpty() && drawer.shows(path)) drawer.putAway();
            now.filter(PulledPath::isFinished).ifPresent(this::showPath);
        });
        session.nextWalk().addListener((next, before, now) -> map.redraw());
        session.alongPath().addListener((along, before, now) -> map.redraw());
        map.painted().addListener((relief, before, now) -> map.redraw());
        map.palette().addListener((palette, before, now) -> Theme.apply(root, now));
        root.addEventFilter(KeyEvent.KEY_PRESSED, this::key);
    }

    private void key(KeyEvent event) {
        boolean isTyping = root.getScene().getFocusOwner() instanceof javafx.scene.control.TextInputControl;
        if (isTyping || event.isShortcutDown() || event.isAltDown()) return;
        if (event.getCode() == KeyCode.P)
            session.isPulling().set(!session.isPulling().get());
        if (event.getCode().isDigitKey()) {
            int number = event.getCode().ordinal() - KeyCode.DIGIT1.ordinal();
            Scene scene = session.scene().get();
            if (scene != null && number >= 0 && number < scene.loadouts().size())
                session.carried().set(scene.loadouts().get(number));
        }
    }

    /** What to run each time relief and layer have come to the screen. */
    void afterPainting(Runnable step) {
        map.onComposed(step);
    }

    private void title(Scene scene) {
        if (scene == null) return;
        stage.setTitle((scene.file().isEdited() ? "\u2022 " : "")
                + scene.plan().heading().title() + " \u2013 Handreach");
    }

    /** Shows the first plan, once it is open; without one, says how to begin. */
    void begin(Optional<FirstPlan> first) {
        first.ifPresentOrElse(
                session::open,
                () -> session.tell(Notice.remark("Open a plan to begin: a plan.toml, or the folder that holds one.")));
        if (RecentPlans.isFirstTime()) firstSteps.begin();
        if (session.scene().get() == null || !session.notices().isEmpty()) {
            furnish();
            return;
        }
        map.onFirstPicture(this::furnish);
        session.notices().addListener((ListChangeListener<Notice>) told -> furnish());
        // Laid out before it is shown, the map knows its size and is painted while the toolkit makes the window.
        root.applyCss();
        root.layout();
    }

    void showFirstSteps() {
        firstSteps.begin();
    }

    /** Makes words and controls larger or smaller; the map keeps its pixels. */
    void scale(double factor) {
        textPx = Math.max(12, Math.min(24, textPx * factor));
        root.setStyle(String.format(java.util.Locale.ROOT, "-fx-font-size: %.1fpx;", textPx));
    }

    void showPlanText() {
        drawer.show("The plan as text", planText);
    }

    void showBench() {
        drawer.show("Bench evidence", bench);
    }

    private void readOnBench(List<Path> files) {
        showBench();
        bench.read(files);
    }

    private void showPath(PulledPath pulled) {
        drawer.show("Path", path, () -> session.pulled().set(Optional.empty()));
        if (session.moving().get().isPresent()) return;
        Platform.runLater(() -> {
            root.layout();
            map.bringIntoView(pulled.from().at(), pulled.to().at());
        });
    }

    /** One file is asked about at a time; what else was dropped is named, so that nobody thinks it was taken. */
    private void bringOne(List<Path> files, Consumer<Path> reader) {
        reader.accept(files.get(0));
        if (files.size() > 1)
            session.tell(Notice.remark(files.get(0).getFileName() + " is looked at; bring in the other "
                    + (files.size() - 1) + " one at a time."));
    }

    private void bringTrack(Path file) {
        ImportFiles verbs = new ImportFiles(session);
        verbs.readGpx(file, read -> {
            PlaceForm form = session.scene().get().plan().heading().placeForm();
            drawer.show("Bring in " + file.getFileName(), ImportPane.of(verbs, read, form::format));
        });
    }

    private void readCsv(Path file) {
        ImportFiles verbs = new ImportFiles(session);
        verbs.readCsv(
                file,
                log -> drawer.show("Bring in " + file.getFileName(), ImportPane.of(verbs, log)),
                readings -> readOnBench(List.of(readings)));
    }

    private void bringAreas(Path file) {
        ImportFiles verbs = new ImportFiles(session);
        verbs.readAreas(file, areas -> drawer.show("Bring in " + file.getFileName(), ImportPane.of(verbs, file)));
    }

    ExportMenu handOver() {
        return new ExportMenu(stage, session, mapPicture());
    }

    MapPicture mapPicture() {
        return new MapPicture(map, key);
    }

    /** Shows the path that is pulled, or else one between two positions of the plan, to be chosen in the pane. */
    void showPath() {
        Scene scene = session.scene().get();
        if (scene == null) return;
        try {
            if (session.pulled().get().isEmpty()) session.pulled().set(Optional.of(PathEnds.between(scene)));
            path.focusEnds();
        } catch (handreach.input.InputFault tooFew) {
            session.tell(tooFew);
        }
    }
}
