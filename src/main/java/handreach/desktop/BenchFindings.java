package handreach.desktop;

import handreach.bench.AntennaResult;
import handreach.bench.BenchAnalysis;
import handreach.bench.MountResult;
import handreach.bench.match.MatchAnalysis;
import handreach.cartography.LoadoutMark;
import handreach.loadout.ElevationPattern;
import handreach.loadout.Loadout;
import handreach.report.AntennaCost;
import handreach.report.BenchFiles;
import handreach.report.BenchReport;
import handreach.report.BenchWords;
import handreach.report.figure.Curve;
import handreach.report.figure.DeltaFigure;
import handreach.report.figure.DeltaRow;
import handreach.report.figure.PatternFigure;
import handreach.report.figure.SwrFigure;
import handreach.study.Scene;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What the bench says, in pictures, words and tables: deltas, match, pattern, burden. */
final class BenchFindings extends VBox {
    private static final double BESIDE_PX = 950;
    private static final double GAP_PX = 18;
    /** Edge and padding of a figure's sheet. */
    private static final double FRAME_PX = 16;

    private final FigurePane deltas;
    private final FigurePane match;
    private final FigurePane pattern;
    private final VBox verdicts = new VBox(4);
    private final VBox channels = new VBox();
    private final VBox costs = new VBox();
    private final VBox known = new VBox(4);
    private final VBox patternNotes = new VBox(4);
    private final Label bareDeltas = words("", "quiet");
    private final Label bareMatch = words("", "quiet");
    private final VBox left = new VBox(10);
    private final VBox right = new VBox(10);
    private Optional<Shown> shown = Optional.empty();
    private double drawnPx;

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
        this.deltas = new FigurePane(session);
        this.match = new FigurePane(session);
        this.pattern = new FigurePane(session);
        setId("bench-findings");
        getStyleClass().add("bench-findings");
        left.getChildren()
                .addAll(head("Level over the control, with 95 % intervals"), bareDeltas, deltas, verdicts, known);
        right.getChildren()
                .addAll(
                        head("Match over frequency"),
                        bareMatch,
                        match,
                        channels,
                        head("Pattern of what is carried"),
                        pattern,
                        patternNotes);
        widthProperty().addListener((width, was, is) -> {
            if (Math.abs(is.doubleValue() - drawnPx) > 12) draw();
        });
    }

    private static Label head(String words) {
        return words(words, "bench-head");
    }

    private static Label words(String words, String look) {
        Label label = new Label(words);
        label.getStyleClass().add(look);
        label.setWrapText(true);
        label.setMinHeight(Region.USE_PREF_SIZE);
        return label;
    }

    void show(Shown now) {
        shown = Optional.of(now);
        verdicts.getChildren()
                .setAll(now.analysis().map(BenchFindings::verdictLines).orElse(List.of()));
        channels.getChildren().clear();
        BenchReport.channels(now.sweeps())
                .ifPresent(sheet -> channels.getChildren().add(new SheetGrid(sheet)));
        List<AntennaCost> burden = AntennaCost.of(now.scene().plan());
        costs.getChildren().clear();
        if (!burden.isEmpty())
            costs.getChildren()
                    .addAll(
                            head("What it buys and what it costs"),
                            new SheetGrid(BenchReport.costs(burden, now.analysis())));
        known.getChildren().setAll(remarks(now));
        patternNotes.getChildren().setAll(patternWords(now));
        draw();
    }

    private static List<Node> verdictLines(BenchAnalysis analysis) {
        List<Node> lines = new ArrayList<>();
        for (MountResult mount : analysis.mounts()) {
            lines.add(words(BenchReport.group(mount), "strong"));
            lines.add(words(BenchWords.ranking(mount), "bench-ranking"));
            for (AntennaResult antenna : mount.antennas())
                lines.add(words(BenchWords.verdict(mount, antenna), "bench-verdict"));
            for (List<String> alike : mount.alike())
                lines.add(words("Cannot be told from one another: " + String.join(", ", alike) + ".", "quiet"));
        }
        return lines;
    }

    private static List<Node> remarks(Shown now) {
        Set<String> all = new LinkedHashSet<>();
        now.analysis().ifPresent(analysis -> all.addAll(analysis.warnings()));
        for (MatchAnalysis sweep : now.sweeps())
            for (String warning : sweep.warnings()) all.add(sweep.name() + ": " + warning);
        List<Node> lines = new ArrayList<>();
        if (!all.isEmpty()) lines.add(head("To be known"));
        for (String remark : all) lines.add(words(remark, "quiet"));
        return lines;
    }

    private static List<Node> patternWords(Shown now) {
        List<Node> lines = new ArrayList<>();
        lines.add(words(
                "From the side, the horizon to the right. The ledger takes the difference between the horizon and the angle"
                        + " of the path from it; hand, body and mismatch are lines of their own.",
                "quiet"));
        Set<String> notes = new LinkedHashSet<>();
        for (Loadout loadout : now.loadouts())
            notes.addAll(patternOf(now.scene(), loadout).notes());
        for (String note : notes) lines.add(words(note, "quiet"));
        return lines;
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
        arrange(isBeside, leftPx, rightPx);
        Shown now = shown.get();
        drawDeltas(now, Math.min(900, leftPx - FRAME_PX));
        drawMatch(now, Math.min(900, rightPx - FRAME_PX));
        double radiusPx = Math.min(230, rightPx - FRAME_PX - 150);
        pattern.show(() -> patternFigure(now, radiusPx), rightPx - FRAME_PX);
    }

    private void arrange(boolean isBeside, double leftPx, double rightPx) {
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

    private void drawDeltas(Shown now, double widthPx) {
        List<DeltaRow> rows = now.analysis().map(BenchReport::rows).orElse(List.of());
        bareDeltas.setText(
                now.analysis().isEmpty()
                        ? "No readings of received level are here."
                        : "Nothing was read often enough to say how sure it is.");
        bareDeltas.setVisible(rows.isEmpty());
        bareDeltas.setManaged(rows.isEmpty());
        if (rows.isEmpty()) {
            deltas.clear();
            return;
        }
        String control = now.analysis().flatMap(BenchAnalysis::control).orElse("the control");
        deltas.show(() -> DeltaFigure.of("Level over the control", control, rows, widthPx), widthPx);
    }

    private void drawMatch(Shown now, double widthPx) {
        List<MatchAnalysis> sweeps = now.sweeps();
        bareMatch.setText(
                "No sweep is here. Drop a Touchstone file (.s1p) on the window, or lay it beside the bench file.");
        bareMatch.setVisible(sweeps.isEmpty());
        bareMatch.setManaged(sweeps.isEmpty());
        if (sweeps.isEmpty()) {
            match.clear();
            return;
        }
        match.show(
                () -> SwrFigure.of(
                        "Standing-wave ratio over frequency",
                        BenchReport.curves(sweeps),
                        List.of(BenchFiles.mark(now.scene().plan().channel())),
                        widthPx),
                widthPx);
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
