package handreach.desktop;

import handreach.bench.BenchAnalysis;
import handreach.bench.match.MatchAnalysis;
import handreach.input.Fault;
import handreach.input.InputFault;
import handreach.loadout.Loadout;
import handreach.plan.Equipment;
import handreach.study.Scene;
import java.io.File;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.collections.FXCollections;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;

/** The evidence for what antennas are worth: the plan's bench file, or one just read that may be taken into the plan. */
final class BenchPane extends BorderPane {
    private final Session session;
    private final Worker.LatestOnly beside;
    private final BenchFindings findings;
    private final BenchNames names;
    private final FaultLines faults = new FaultLines();
    private final Label about = new Label();
    private final ComboBox<String> control = new ComboBox<>();
    private final ComboBox<String> mount = new ComboBox<>();
    private final Button take = new Button("Take into the plan");
    private final Button back = new Button("Back to the plan's");
    private final HBox controlLine = line("control", control);
    private final HBox mountLine = line("mounting", mount);
    private Optional<BenchImport> imported = Optional.empty();
    private List<MatchAnalysis> ownSweeps = new ArrayList<>();
    private List<MatchAnalysis> planSweeps = List.of();
    private boolean isFilling;

    BenchPane(Session session) {
        this.session = session;
        this.beside = session.worker().latestOnly();
        this.findings = new BenchFindings(session);
        this.names = new BenchNames(session);
        setId("bench-pane");
        about.setId("bench-about");
        about.setWrapText(true);
        control.setId("bench-control");
        mount.setId("bench-mount");
        control.setOnAction(chosen -> compareWith(control.getValue()));
        Button read = new Button("Read a file\u2026");
        read.setId("bench-read");
        read.setOnAction(pressed -> readAsked());
        take.setId("bench-take");
        take.setOnAction(pressed -> takeIn());
        back.setId("bench-back");
        back.setOnAction(pressed -> leave());
        FlowPane bar = new FlowPane(12, 6, about, controlLine, mountLine, take, back, read);
        bar.setAlignment(Pos.CENTER_LEFT);
        Labels.fitInto(about, bar);
        bar.getStyleClass().add("path-bar");
        ScrollPane scroll = new ScrollPane(findings);
        scroll.setFitToWidth(true);
        scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        scroll.setVbarPolicy(ScrollPane.ScrollBarPolicy.ALWAYS);
        scroll.setId("bench-scroll");
        scroll.setAccessibleText("What the bench says");
        scroll.getStyleClass().add("drawer-scroll");
        setTop(new VBox(bar, names, faults));
        setCenter(scroll);
        session.scene().addListener((scene, before, now) -> fresh(before, now));
        session.carried().addListener((which, before, now) -> show());
        session.compared().addListener((which, before, now) -> show());
        sceneProperty()
                .addListener(
                        (window, before, now) -> fresh(null, session.scene().get()));
    }

    private static HBox line(String words, ComboBox<String> box) {
        Label label = new Label(words);
        label.setMinWidth(Region.USE_PREF_SIZE);
        label.setLabelFor(box);
        HBox line = new HBox(6, label, box);
        line.setAlignment(Pos.CENTER_LEFT);
        return line;
    }

    /** A plan was opened or edited: what was read from files stays, unless the plan has it now. */
    private void fresh(Scene before, Scene now) {
        if (now == null) return;
        boolean isOther =
                before != null && !before.file().file().equals(now.file().file());
        boolean isTaken = imported.isPresent()
                && now.plan().equipment().bench().filter(this::isImported).isPresent();
        if (isOther || isTaken) imported = Optional.empty();
        if (isOther) ownSweeps = new ArrayList<>();
        if (getScene() == null) return;
        beside.ask(
                progress -> BenchImport.sweepsOf(now),
                found -> {
                    planSweeps = found.sweeps();
                    if (!found.wrong().isEmpty()) faults.show(all(found.wrong()));
                    show();
                },
                faults::show);
    }

    private boolean isImported(Equipment.Bench bench) {
        return imported.filter(read -> read.file()
                                .toAbsolutePath()
                                .normalize()
                                .equals(bench.file().toAbsolutePath().normalize())
                        && read.control().equalsIgnoreCase(bench.control()))
                .isPresent();
    }

    private static InputFault all(List<InputFault> wrong) {
        List<Fault> lines = new ArrayList<>();
        wrong.forEach(each -> lines.addAll(each.faults()));
        return new InputFault(lines);
    }

    private void readAsked() {
        FileChooser chooser = new FileChooser();
        chooser.setTitle("Read bench readings or a sweep");
        chooser.getExtensionFilters()
                .add(new FileChooser.ExtensionFilter("Readings and sweeps (*.csv, *.s1p)", "*.csv", "*.s1p"));
        List<File> files = chooser.showOpenMultipleDialog(getScene().getWindow());
        if (files != null) read(files.stream().map(File::toPath).toList());
    }

    /** Reads files of either kind; what cannot be read is told in place, and what was shown stays. */
    void read(List<Path> files) {
        Scene scene = session.scene().get();
        if (scene == null) {
            session.tell(Notice.remark("Open a plan first: readings are looked at for its channel and its loadouts."));
            return;
        }
        faults.clear();
        for (Path file : files) {
            if (file.toString().toLowerCase(Locale.ROOT).endsWith(".s1p"))
                session.worker().inOrder(() -> BenchImport.sweep(file, scene), this::add, faults::show);
            else
                session.worker()
                        .inOrder(
                                () -> BenchImport.read(file, scene),
                                found -> {
                                    imported = Optional.of(found);
                                    show();
                                },
                                faults::show);
        }
    }

    private void add(MatchAnalysis sweep) {
        ownSweeps.removeIf(each -> each.name().equals(sweep.name()));
        ownSweeps.add(sweep);
        show();
    }

    private void compareWith(String other) {
        if (isFilling || other == null || imported.isEmpty()) return;
        BenchImport read = imported.get();
        session.worker()
                .inOrder(
                        () -> read.against(other),
                        found -> {
                            if (imported.filter(read::equals).isEmpty()) return;
                            imported = Optional.of(found);
                            faults.clear();
                            show();
                        },
                        faults::show);
    }

    private void takeIn() {
        if (imported.isEmpty() || mount.getValue() == null) return;
        BenchImport read = imported.get();
        String chosen = mount.getValue();
        Path folder = session.scene().get().file().folder();
        session.edit("bench readings of " + read.file().getFileName(), plan -> read.takenInto(plan, folder, chosen));
    }

    private void leave() {
        imported = Optional.empty();
        ownSweeps = new ArrayList<>();
        faults.clear();
        show();
    }

    private void show() {
        Scene scene = session.scene().get();
        Loadout carried = session.carried().get();
        Loadout compared = session.compared().get();
        if (scene == null || carried == null || compared == null || getScene() == null) return;
        if (!scene.loadouts().contains(carried)) return;
        fillBar(scene);
        askForNames(scene);
        Optional<BenchAnalysis> analysis =
                imported.isPresent() ? imported.get().analysis().found() : scene.bench();
        List<MatchAnalysis> sweeps = new ArrayList<>(ownSweeps);
        if (imported.isEmpty())
            for (MatchAnalysis sweep : planSweeps)
                if (ownSweeps.stream().noneMatch(own -> own.name().equals(sweep.name()))) sweeps.add(sweep);
        List<Loadout> loadouts = new ArrayList<>(List.of(carried));
        if (!compared.equals(carried) && scene.loadouts().contains(compared)) loadouts.add(compared);
        findings.show(new BenchFindings.Shown(scene, analysis, sweeps, loadouts));
    }

    private void askForNames(Scene scene) {
        Optional<Equipment.Bench> planned = scene.plan().equipment().bench();
        if (imported.isPresent())
            names.show(
                    scene.plan().equipment(),
                    imported.get().readings(),
                    imported.get().control());
        else if (planned.isPresent() && scene.bench().isPresent())
            names.show(
                    scene.plan().equipment(),
                    scene.bench().get().file(),
                    planned.get().control());
        else names.clear();
    }

    private void fillBar(Scene scene) {
        about.setText(imported.map(
                        read -> "Just read, not in the plan: " + read.file().getFileName())
                .orElse(scene.plan()
                        .equipment()
                        .bench()
                        .map(bench -> "In the plan: " + bench.file().getFileName() + ", control " + bench.control()
                                + (bench.mount().isEmpty() ? "" : ", read " + bench.mount()))
                        .orElse("The plan has no bench file. Read one here, or drop a .csv or .s1p on the window.")));
        boolean isNew = imported.isPresent();
        for (Region each : List.of(controlLine, mountLine, take)) {
            each.setVisible(isNew);
            each.setManaged(isNew);
        }
        back.setVisible(isNew || !ownSweeps.isEmpty());
        back.setManaged(back.isVisible());
        if (imported.isEmpty()) return;
        BenchImport read = imported.get();
        isFilling = true;
        control.setItems(FXCollections.observableArrayList(read.antennas()));
        control.setValue(read.control());
        String before = mount.getValue();
        mount.setItems(FXCollections.observableArrayList(read.mounts()));
        mount.setValue(Optional.ofNullable(before)
                .or(() -> scene.plan().equipment().bench().map(Equipment.Bench::mount))
                .flatMap(wanted ->
                        read.mounts().stream().filter(wanted::equalsIgnoreCase).findFirst())
                .orElse(read.mounts().get(0)));
        isFilling = false;
        take.setDisable(read.analysis().found().isEmpty());
        read.analysis().wrong().ifPresent(faults::show);
    }
}
