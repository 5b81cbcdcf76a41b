package handreach.desktop;

import handreach.bench.BenchAnalysis;
import handreach.bench.match.MatchAnalysis;
import handreach.cartography.LoadoutMark;
import handreach.loadout.ElevationPattern;
import handreach.loadout.Loadout;
import handreach.plan.Equipment;
import handreach.plan.Plan;
import handreach.report.AntennaCost;
import handreach.report.BenchComposer;
import handreach.report.BenchFiles;
import handreach.report.BenchView;
import handreach.report.MatchComposer;
import handreach.report.figure.Curve;
import handreach.report.figure.PatternFigure;
import handreach.report.page.Block;
import handreach.report.page.Notes;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.study.HandDelta;
import handreach.study.Scene;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** What the bench says, as the report says it, and beside it the pattern of what is carried. */
final class BenchFindings extends VBox {
    private static final double BESIDE_PX = 950;
    private static final double GAP_PX = 18;
    /** Edge and padding of a figure's sheet. */
    private static final double FRAME_PX = 16;

    private static final double WIDEST_FIGURE_PX = 900;

    private final Session session;
    private final FigurePane pattern;
    private final VBox patternNotes = new VBox(4);
    private final VBox left = new VBox(10);
    private final VBox right = new VBox(10);
    private final Worker.LatestOnly composing;
    private final Worker.InPieces laying;
    private Optional<Shown> shown = Optional.empty();
    private Optional<Drawn> drawn = Optional.empty();
    private double drawnPx;

    /** What the words on the screen were made of. */
    private record Drawn(Shown of, double roomPx) {
        /** Another loadout changes the pattern alone. */
        boolean saysTheSame(Shown now) {
            return of.scene == now.scene && of.analysis.equals(now.analysis) && of.sweeps.equals(now.sweeps);
        }
    }

    /**
     * What is to be shown.
     *
     * @param scene the plan, for channel, burden and patterns
     * @param analysis deltas, if there are readings
     * @param sweeps reflection over frequency
     * @param loadouts whose patterns are drawn, the one carried first
     */
    record Shown(Scene scene, Optional<BenchAnalysis> analysis, List<MatchAnalysis> sweeps, List<Loadout> loadouts) {}

    BenchFindings(Session session) {
        super(GAP_PX);
        this.session = session;
        this.pattern = new FigurePane(session);
        this.composing = session.worker().latestOnly();
        this.laying = session.worker().inPieces();
        setId("bench-findings");
        getStyleClass().add("bench-findings");
        widthProperty().addListener((width, was, is) -> {
            if (Math.abs(is.doubleValue() - drawnPx) > 12) draw();
        });
    }

    void show(Shown now) {
        shown = Optional.of(now);
        Set<String> notes = new LinkedHashSet<>();
        notes.add(
                "From the side, the horizon to the right. The ledger takes the difference between the horizon and the angle"
                        + " of the path from it; hand, body and mismatch are lines of their own.");
        for (Loadout loadout : now.loadouts())
            notes.addAll(patternOf(now.scene(), loadout).notes());
        patternNotes
                .getChildren()
                .setAll(notes.stream().map(note -> Labels.line(note, "quiet")).toList());
        draw();
    }

    private static List<Section> costs(Shown now) {
        List<AntennaCost> costs = AntennaCost.of(now.scene().plan());
        return costs.isEmpty()
                ? List.of()
                : List.of(Section.of("What it buys and what it costs", BenchComposer.costs(costs, now.analysis())));
    }

    private static List<Section> readings(Shown now, double figurePx) {
        if (now.analysis().isEmpty())
            return List.of(Section.of(
                    "Bench: level over the control", Paragraph.quiet("No readings of received level are here.")));
        Plan plan = now.scene().plan();
        BenchView.Question question = BenchView.Question.of(
                        plan.equipment().bench().map(Equipment.Bench::mount))
                .drawn(figurePx);
        BenchComposer composer = BenchComposer.of(new BenchView(
                plan.header().title(),
                question,
                now.analysis().get(),
                List.of(),
                List.of(),
                List.of(),
                HandDelta.of(now.scene().file(), now.analysis().get()),
                ""));
        List<Section> sections = new ArrayList<>();
        sections.add(new Section("What the antennas are worth", composer.answer()));
        sections.addAll(composer.readings());
        composer.notes().ifPresent(sections::add);
        return sections;
    }

    private static List<Section> match(Shown now, double figurePx) {
        if (now.sweeps().isEmpty())
            return List.of(
                    Section.of(
                            "Bench: match",
                            Paragraph.quiet(
                                    "No sweep is here. Drop a Touchstone file (.s1p) on the window, or lay it beside the bench file.")));
        List<String> warnings = new ArrayList<>();
        for (MatchAnalysis sweep : now.sweeps())
            for (String warning : sweep.warnings()) warnings.add(sweep.name() + ": " + warning);
        List<Block> blocks = new ArrayList<>(MatchComposer.blocks(
                now.sweeps(), List.of(BenchFiles.mark(now.scene().plan().channel())), figurePx));
        for (String note : Notes.once(warnings)) blocks.add(Paragraph.warning(note));
        return List.of(new Section("Bench: match", blocks));
    }

    private static ElevationPattern patternOf(Scene scene, Loadout loadout) {
        return loadout.antenna()
                .pattern(scene.plan().channel().frequency(), loadout.carry().carry());
    }

    private void draw() {
        double roomPx = getWidth() - getInsets().getLeft() - getInsets().getRight();
        if (shown.isEmpty() || roomPx <= 0) return;
        drawnPx = getWidth();
        boolean isBeside = roomPx >= BESIDE_PX;
        double leftPx = isBeside ? Math.floor(0.55 * roomPx) : roomPx;
        double rightPx = isBeside ? roomPx - leftPx - GAP_PX : roomPx;
        Shown now = shown.get();
        double radiusPx = Math.min(230, rightPx - FRAME_PX - 150);
        pattern.show(() -> patternFigure(now, radiusPx), rightPx - FRAME_PX);
        if (drawn.filter(before -> before.saysTheSame(now) && before.roomPx == roomPx)
                .isPresent()) return;
        drawn = Optional.of(new Drawn(now, roomPx));
        composing.ask(
                progress -> List.of(readings(now, figurePx(leftPx)), match(now, figurePx(rightPx)), costs(now)),
                parts -> {
                    BlockView readings = new BlockView(session, figurePx(leftPx));
                    BlockView match = new BlockView(session, figurePx(rightPx));
                    BlockView costs = new BlockView(session, figurePx(roomPx));
                    left.getChildren().setAll(readings);
                    right.getChildren()
                            .setAll(
                                    match,
                                    Labels.line("Pattern of what is carried", "panel-head"),
                                    pattern,
                                    patternNotes);
                    arrange(isBeside, leftPx, rightPx, costs);
                    List<Runnable> steps = new ArrayList<>(costs.steps(parts.get(2)));
                    steps.addAll(readings.steps(parts.get(0)));
                    steps.addAll(match.steps(parts.get(1)));
                    laying.begin(steps);
                },
                session::tell);
    }

    private static double figurePx(double roomPx) {
        return Math.min(WIDEST_FIGURE_PX, roomPx - FRAME_PX);
    }

    private void arrange(boolean isBeside, double leftPx, double rightPx, BlockView costs) {
        left.setPrefWidth(leftPx);
        right.setPrefWidth(rightPx);
        left.setMinWidth(0);
        right.setMinWidth(0);
        if (isBeside) {
            HBox beside = new HBox(GAP_PX, left, right);
            HBox.setHgrow(right, Priority.ALWAYS);
            getChildren().setAll(costs, beside);
        } else {
            getChildren().setAll(left, costs, right);
        }
    }

    private static PatternFigure patternFigure(Shown now, double radiusPx) {
        List<Curve> curves = new ArrayList<>();
        for (Loadout loadout : now.loadouts()) {
            ElevationPattern pattern = patternOf(now.scene(), loadout);
            List<Double> across = new ArrayList<>();
            List<Double> up = new ArrayList<>();
            for (int deg = -90; deg <= 90; deg++) {
                across.add((double) deg);
                up.add(pattern.gainDbi(deg));
            }
            curves.add(new Curve(LoadoutMark.of(now.scene().loadouts().indexOf(loadout)), loadout.name(), across, up));
        }
        return PatternFigure.of("Gain over elevation", curves, radiusPx);
    }
}
