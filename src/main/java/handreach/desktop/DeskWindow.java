package handreach.desktop;

import handreach.cartography.MapFrame;
import handreach.geodesy.PlaceForm;
import handreach.geodesy.Position;
import handreach.plan.PlanFile;
import handreach.report.AtlasSight;
import handreach.report.ReachComposer;
import handreach.study.Scene;
import handreach.terrain.GroundPicture;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.collections.ListChangeListener;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBoxBase;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;
import javafx.util.Duration;

/** The one window: the ground in the middle, the person's questions beside it, a drawer below. */
final class DeskWindow {
    /** The question about a relay, from 0. */
    private static final int RELAY = 3;
    /** The question whether it was right. */
    private static final int WALK = 4;

    private static final String NAME = "Handreach";

    private final Stage stage;
    private final Worker worker;
    private final Session session;
    private final MapView map;
    private final LiveReach live;
    private final KeyPane key;
    private final ReachPanel reach;
    private final Drawer drawer = new Drawer();
    private final BorderPane root = new BorderPane();
    private final StackPane middle;
    private final QuestionList way;
    private final PlanTextPane planText;
    /** Made when it is first wanted. */
    private Optional<NewPlanPane> newPlan = Optional.empty();
    /** Whether the place of a new plan was just put, so that its area may lie elsewhere. */
    private boolean isPlaced;

    private final EntryPane entries;
    private final Autosave autosave;
    private final PathPane path;
    private final BenchPane bench;
    private final AtlasPane atlas;
    private final HelpPane help;
    private final WindowVerbs verbs;
    private final FirstSteps firstSteps;
    private final Worker.Debounce ahead;
    private final boolean preparesAtRest;
    private final Worker.InPieces dressing;
    private final FileDrop drop;
    private final MapTools tools = new MapTools();
    private final GoToPane goTo;
    private boolean isMenuTriedOut;
    private final SidePane side = new SidePane();
    private final WindowLooks looks;

    DeskWindow(Stage stage) {
        this(stage, true);
    }

    /** {@code preparesAtRest}: what is folded or put away is laid out at rest, as a person has it, or else when it is first wanted. */
    DeskWindow(Stage stage, boolean preparesAtRest) {
        this.stage = stage;
        this.preparesAtRest = preparesAtRest;
        stage.setTitle(NAME);
        this.worker = new Worker(this::defect);
        this.session = new Session(worker);
        this.map = new MapView(session);
        this.middle = new StackPane(map);
        this.live = new LiveReach(session);
        this.key = new KeyPane(map);
        new LayerView(session, live, map, key);
        this.autosave = new Autosave(session);
        this.verbs = new WindowVerbs(stage, session, this::leave);
        this.planText = new PlanTextPane(session, verbs::folderAsked);
        this.entries = new EntryPane(session);
        this.path = new PathPane(session);
        this.bench = new BenchPane(session);
        this.atlas = new AtlasPane(session);
        this.help = new HelpPane(session);
        CarryPanel carry = new CarryPanel(session, this::showBench, this::showEquipment);
        GroundPanel ground = new GroundPanel(session);
        this.reach = new ReachPanel(session, live);
        RelayPanel relay = new RelayPanel(session, map::centreOn);
        WalkPanel walk = new WalkPanel(session, map::centreOn);
        this.way = new QuestionList(List.of(
                new Question("What do we carry?", reach.advice(), carry),
                new Question(
                        "On what ground?",
                        ground.answer(),
                        withForms(
                                ground,
                                EntryKind.GROUND,
                                EntryKind.AREA,
                                EntryKind.POSITION,
                                EntryKind.ROUTE,
                                EntryKind.SECTOR,
                                EntryKind.STATION)),
                new Question(
                        "How far does it reach?",
                        reach.answer(),
                        withForms(reach, EntryKind.TARGET, EntryKind.REACH, EntryKind.DECIDE)),
                new Question("Is a relay needed?", relay.answer(), withForms(relay, EntryKind.RELAY, EntryKind.ASSIGN)),
                new Question(
                        "Was it right?",
                        walk.answer(),
                        withForms(walk, EntryKind.WALK, EntryKind.CALIBRATION, EntryKind.DOUBT))));
        this.goTo = new GoToPane(session, map, tools);
        new MapGestures(map, session, tools, goTo::ask);
        path.onRelay(() -> {
            way.open(RELAY);
            relay.askNow();
        });
        this.firstSteps = new FirstSteps(way);
        this.ahead = worker.debounce(Duration.millis(150), this::prepareNext);
        this.dressing = worker.inPieces();
        this.drop = new FileDrop(root, session);
        drop.handFolders(this::readFolder);
        for (String ending : List.of(".hgt", ".hgt.gz", ".zip", ".tif", ".tiff", ".asc"))
            drop.hand(ending, tiles -> readTilesOrPicture(tiles.get(0)));
        drop.hand(GroundPicture.TILED, files -> map.backdrop().lay(files.get(0)));
        drop.hand(".toml", plans -> verbs.open(plans.get(0)));
        drop.hand(".csv", files -> files.forEach(this::readCsv));
        drop.hand(".s1p", this::readOnBench);
        drop.hand(".gpx", files -> bringOne(files, this::bringTrack));
        drop.hand(".geojson", files -> bringOne(files, this::bringAreas));
        drop.hand(".json", files -> bringOne(files, this::bringAreas));
        Theme.loadFaces();
        this.looks = new WindowLooks(stage, root, map, side, key, this::dressPieceByPiece);
        layOut();
        listen();
        stage.setScene(new javafx.scene.Scene(root, 1440, 900));
        stage.setMinWidth(900);
        stage.setMinHeight(600);
        looks.recall();
    }

    Session session() {
        return session;
    }

    ReachPanel reach() {
        return reach;
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

    private NewPlanPane newPlan() {
        if (newPlan.isEmpty())
            newPlan = Optional.of(new NewPlanPane(
                    session, verbs::folderAsked, verbs::tileAsked, this::saveNewPlan, () -> isPlaced = true));
        return newPlan.get();
    }

    /** A plan that is saved is begun: its questions are next. */
    private void saveNewPlan() {
        verbs.save(drawer::putAway);
    }

    private void leave() {
        autosave.forget();
        worker.close();
    }

    private void defect(Throwable wrong) {
        session.tell(wrong);
    }

    /** The ground with room for the rest round it, which {@link #furnish} adds once the ground is there to look at. */
    private void layOut() {
        Theme.apply(root, map.palette().get());
        VBox.setVgrow(middle, Priority.ALWAYS);
        VBox centre = new VBox(middle, new CursorStatus(session, live, map::metresPerPx), drawer);
        centre.setMinHeight(0);
        drawer.leaveKeysTo(map);
        centre.heightProperty().addListener((height, was, is) -> drawer.fitInto(is.doubleValue()));
        root.setCenter(centre);
        root.setRight(side);
        root.widthProperty().addListener((width, was, is) -> side.fitInto(is.doubleValue()));
        root.setTop(new MenuStrip(this));
        map.overlays()
                .setAll(
                        new GridOverlay(session.scene()::get),
                        new HeightOverlay(map.painted()::get, session.scene()::get),
                        new NamesOverlay(map.backdrop().names()::get),
                        new ReachOverlay(session),
                        new RelayOverlay(session),
                        new WalkOverlay(session),
                        new PathOverlay(session),
                        new ToolOverlay(session, tools),
                        new PlacesOverlay(session),
                        new BeyondOverlay(session.scene()::get),
                        new BackdropOverlay(map.backdrop().picture()::get),
                        new ScaleOverlay(
                                session.scene()::get,
                                this::channel,
                                () -> map.painted().get() == null
                                        ? 0
                                        : map.painted().get().contourIntervalM(),
                                key::leftPx));
    }

    private void furnish() {
        if (side.holds(way)) return;
        live.groundIsShown();
        NoticePane notices = new NoticePane(session);
        notices.setMaxWidth(760);
        WorkPane work = new WorkPane(worker);
        LayerBar bar = new LayerBar(session, map);
        VBox upper = new VBox(8, bar, goTo, firstSteps, notices);
        upper.setPickOnBounds(false);
        upper.setMaxHeight(VBox.USE_PREF_SIZE);
        upper.setMaxWidth(VBox.USE_PREF_SIZE);
        StackPane.setAlignment(key, Pos.BOTTOM_RIGHT);
        StackPane.setMargin(key, new Insets(0, 14, 14, 0));
        StackPane.setAlignment(upper, Pos.TOP_LEFT);
        StackPane.setMargin(upper, new Insets(26, 0, 0, 14));
        // Above the scale bar, on the side where the key is not.
        StackPane.setAlignment(work, Pos.BOTTOM_LEFT);
        StackPane.setMargin(work, new Insets(0, 0, 104, 14));
        middle.getChildren().addAll(key, upper, work, dropHint());
        map.laidOver(bar, key);
        way.disableProperty().bind(session.scene().isNull());
        bar.disableProperty().bind(session.scene().isNull());
        side.hold(way);
        if (session.scene().get() == null)
            middle.getChildren()
                    .add(new StartPane(
                            session, this::showNewPlan, verbs::openAsked, verbs::open, drawer.visibleProperty()));
        ahead.begin();
    }

    /** What letting go would do, while files are held over the window. */
    private Node dropHint() {
        Label hint = new Label("Let go to bring it in");
        hint.setId("drop-hint");
        hint.getStyleClass().add("drop-hint");
        hint.setMouseTransparent(true);
        hint.visibleProperty().bind(drop.isOver());
        return hint;
    }

    /** Links from a question to the forms that have the rest of it. */
    private Node withForms(Node panel, EntryKind... kinds) {
        FlowPane links = new FlowPane(4, 2, Labels.cell("All the plan says:", "quiet"));
        links.setRowValignment(VPos.BASELINE);
        for (EntryKind kind : kinds) {
            Button link = Labels.link(
                    kind.isSeveral() ? kind.group() : kind.words("", Entry.of(kind.section())),
                    () -> showEquipment(Entry.of(kind.section())));
            link.setId("form-" + kind.section());
            links.getChildren().add(link);
        }
        return new VBox(10, panel, links);
    }

    /** What is folded or put away is put on the screen one by one, out of sight, while no picture is under way. */
    private void prepareNext() {
        if (!preparesAtRest) return;
        if (live.isUnderway().get()) {
            ahead.begin();
            return;
        }
        Optional<List<Runnable>> pieces = way.prepareNext()
                .or(() -> drawer.keep(path))
                .or(this::tryOutMenu)
                .or(() -> drawer.keep(entries))
                .or(() -> drawer.keep(newPlan()))
                .or(() -> drawer.keep(help))
                .or(() -> drawer.keep(planText));
        pieces.ifPresent(dressing::add);
        if (pieces.isPresent() || path.prepareNext() || entries.tryOut(drawer.shows(entries))) ahead.begin();
    }

    private Optional<List<Runnable>> tryOutMenu() {
        if (isMenuTriedOut) return Optional.empty();
        isMenuTriedOut = true;
        return Optional.of(List.of(MapGestures::tryOutMenu));
    }

    /**
     * Other colours or words: the map takes them first; the rest goes off the screen piece by piece, then what is left changes, and the
     * pieces come back in their new looks.
     */
    private void dressPieceByPiece(Runnable change) {
        if (!side.holds(way)) {
            change.run();
            return;
        }
        List<Runnable> back = new ArrayList<>();
        List<Runnable> steps = new ArrayList<>(way.setAside(back));
        steps.add(() -> back.addAll(drawer.setAside()));
        steps.add(() -> {
            change.run();
            // The next picture has enough to do with what is left.
            worker.leaveThisPicture();
            dressing.add(back);
            ahead.begin();
        });
        dressing.add(steps);
    }

    private void listen() {
        session.scene().addListener((scene, before, now) -> {
            map.show(now);
            if (isPlaced) map.lookAt(now);
            isPlaced = false;
            if (isWalkBroughtIn(before, now)) way.open(WALK);
            map.redraw();
            key.showChannel(channel());
            title(now);
        });
        session.faulty().addListener((plan, before, now) -> mend(now));
        map.addEventFilter(MouseEvent.MOUSE_CLICKED, this::putByClick);
        map.addEventHandler(MouseEvent.MOUSE_CLICKED, this::lookUpInAtlas);
        session.atlas().addListener((laid, before, now) -> {
            if (now.isEmpty() && drawer.shows(atlas)) drawer.putAway();
        });
        session.isEdited()
                .addListener((edited, was, is) -> title(session.scene().get()));
        session.moving().addListener((moving, before, now) -> map.redraw());
        session.carried().addListener((which, before, now) -> {
            key.showChannel(channel());
            map.redraw();
        });
        tools.looked().addListener((looked, before, now) -> map.redraw());
        tools.measured().addListener((line, before, now) -> map.redraw());
        session.cursor().addListener((cursor, before, now) -> {
            if (tools.isMeasuring()) map.redraw();
        });
        session.pulled().addListener((pulled, before, now) -> {
            map.redraw();
            if (now.isEmpty() && drawer.shows(path)) drawer.putAway();
            now.filter(PulledPath::isFinished).ifPresent(this::showPath);
        });
        session.nextWalk().addListener((next, before, now) -> map.redraw());
        session.alongPath().addListener((along, before, now) -> map.redraw());
        map.painted().addListener((relief, before, now) -> map.redraw());
        map.palette().addListener((palette, before, now) -> dressPieceByPiece(() -> Theme.apply(root, now)));
        drawer.heightProperty().addListener((height, was, is) -> {
            if (drawer.shows(path)) session.pulled().get().ifPresent(this::bringIntoView);
        });
        root.addEventFilter(KeyEvent.KEY_PRESSED, this::key);
    }

    private void key(KeyEvent event) {
        boolean isTyping = root.getScene().getFocusOwner() instanceof javafx.scene.control.TextInputControl;
        if (event.getCode() == KeyCode.ESCAPE
                && !isTyping
                && isInDrawer(root.getScene().getFocusOwner())) {
            drawer.putAway();
            event.consume();
        }
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

    /** A list that hangs open is closed first. */
    private boolean isInDrawer(Node owner) {
        if (owner instanceof ComboBoxBase<?> list && list.isShowing()) return false;
        return Labels.isWithin(owner, drawer);
    }

    /** What the picture on the map was computed for. */
    private String channel() {
        Scene scene = session.scene().get();
        return scene == null || session.carried().get() == null
                ? ""
                : ReachComposer.channel(scene, session.carried().get());
    }

    void goTo() {
        if (hasPlan()) goTo.ask();
    }

    /** What a walk says stands under its own question, which is asked next. */
    private static boolean isWalkBroughtIn(Scene before, Scene now) {
        return before != null
                && before.file().file().equals(now.file().file())
                && now.plan().questions().walks().size()
                        > before.plan().questions().walks().size();
    }

    private void title(Scene scene) {
        if (scene == null) return;
        Path file = scene.file().file().toAbsolutePath();
        String where = scene.file().isFresh()
                ? "not saved yet"
                : file.getFileName() + " in " + file.getParent().getFileName();
        stage.setTitle((scene.file().isEdited() ? "\u2022 " : "")
                + scene.plan().header().title() + " (" + where + ") \u2013 " + NAME);
    }

    private void mend(Optional<FaultyPlan> plan) {
        if (plan.isEmpty()) {
            if (drawer.shows(planText)) drawer.putAway();
            return;
        }
        if (session.scene().get() == null)
            stage.setTitle(plan.get().file().getFileName() + ", to be mended \u2013 " + NAME);
        drawer.show("To be mended: " + plan.get().file().toAbsolutePath(), planText, session::leaveFaulty);
    }

    private void putByClick(MouseEvent click) {
        if (newPlan.isEmpty() || !drawer.shows(newPlan()) || !newPlan().isPuttingByClick()) return;
        if (!click.isStillSincePress()) return;
        MapFrame frame = map.frame().get();
        newPlan().put(new Position(frame.latitudeDeg(click.getY()), frame.longitudeDeg(click.getX())));
        click.consume();
    }

    /** A click on a layer of an atlas asks it about the place. */
    private void lookUpInAtlas(MouseEvent click) {
        boolean isAsked = click.getButton() == MouseButton.PRIMARY
                && click.getClickCount() == 1
                && click.isStillSincePress()
                && session.layer().get().isOfAtlas()
                && session.scene().get() != null;
        if (!isAsked || session.atlas().get().isEmpty() || tools.isMeasuring()) return;
        MapFrame frame = map.frame().get();
        double latitude = frame.latitudeDeg(click.getY());
        if (Math.abs(latitude) > 89) return;
        atlas.show(session.atlas().get().get(), new Position(latitude, frame.longitudeDeg(click.getX())));
        tools.looked().set(atlas.shown().map(at -> new MapTools.Looked(at, "atlas")));
        drawer.show("The atlas at a place", atlas, () -> tools.looked().set(Optional.empty()));
    }

    void showNewPlan() {
        verbs.guarded(() -> drawer.show("New plan", newPlan()));
    }

    private void readTiles(Path tileOrFolder) {
        if (session.faulty().get().isPresent()) {
            planText.takeTiles(tileOrFolder);
            return;
        }
        drawer.show("New plan", newPlan());
        newPlan().look(tileOrFolder);
    }

    /** A file that is a picture by its own head is laid under the reach. */
    private void readTilesOrPicture(Path file) {
        if (session.scene().get() == null || session.faulty().get().isPresent()) {
            readTiles(file);
            return;
        }
        worker.inOrder(
                () -> GroundPicture.isOne(file),
                isPicture -> {
                    if (isPicture) map.backdrop().lay(file);
                    else readTiles(file);
                },
                session::tell);
    }

    /** A folder with a plan in it is that plan, one with an atlas that atlas; any other holds tiles. */
    private void readFolder(Path folder) {
        if (java.nio.file.Files.exists(folder.resolve(PlanFile.USUAL_NAME))) verbs.open(folder);
        else if (AtlasSight.isOne(folder) && session.scene().get() != null) session.layAtlas(folder);
        else readTiles(folder);
    }

    /** Shows the first plan, once it is open; without one, says how to begin. */
    void begin(Optional<FirstPlan> first) {
        first.ifPresent(session::open);
        Autosave.leftPlan().ifPresent(left -> left.offerPlan(session));
        if (session.scene().get() != null) showRound(session.scene().get());
        session.scene().addListener((scene, before, now) -> {
            if (before == null) showRound(now);
        });
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

    /** Once, on the first plan that is there to be looked at. */
    private void showRound(Scene scene) {
        if (RecentPlans.isFirstTime() && !scene.file().isFresh()) firstSteps.begin();
    }

    void showFirstSteps() {
        if (session.scene().get() != null) firstSteps.begin();
    }

    WindowLooks looks() {
        return looks;
    }

    SidePane side() {
        return side;
    }

    void showHelp(HelpPane.Topic topic) {
        drawer.show("Help", help);
        help.show(topic);
    }

    void showPlanText() {
        if (session.faulty().get().isPresent()) mend(session.faulty().get());
        else if (session.scene().get() == null) sayHowToBegin();
        else drawer.show("The plan as text", planText);
    }

    /** What is said where a verb needs a plan. */
    private void sayHowToBegin() {
        session.tell(Notice.remark("There is no plan yet. Make one, or open one, to begin.")
                .with(new Notice.Verb("New plan\u2026", this::showNewPlan, true)));
    }

    /** Whether there is a plan to do something with; says how to begin where there is none. */
    boolean hasPlan() {
        if (session.scene().get() == null) sayHowToBegin();
        return session.scene().get() != null;
    }

    /** Shows the form of a part of the plan. */
    void showEquipment(Entry entry) {
        if (!hasPlan()) return;
        drawer.show("What the plan says", entries, entries::leave);
        entries.show(entry);
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
        bringIntoView(pulled);
    }

    private void bringIntoView(PulledPath pulled) {
        if (session.moving().get().isPresent() || !pulled.isFinished()) return;
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
            PlaceForm form = session.scene().get().plan().header().placeForm();
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
        return new ExportMenu(stage, session, mapPicture(), this::hasPlan);
    }

    MapPicture mapPicture() {
        return new MapPicture(session, map, key);
    }

    /** Shows the path that is pulled, or else one between two positions of the plan, to be chosen in the pane. */
    void showPath() {
        if (!hasPlan()) return;
        try {
            if (session.pulled().get().isEmpty())
                session.pulled()
                        .set(Optional.of(PathEnds.between(session.scene().get())));
            path.focusEnds();
        } catch (handreach.input.InputFault tooFew) {
            session.tell(tooFew);
        }
    }
}
