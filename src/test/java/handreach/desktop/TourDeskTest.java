package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;

import handreach.plan.PlanText;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.input.KeyCode;
import javafx.scene.text.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** Everything the window can show, gone through twice: in miles by day, and small by night with large words. */
@Isolated
class TourDeskTest {
    /** The larger words alone, or with {@code -Dhandreach.tour=whole} the usual ones before them. */
    private static final double[] SIZES = "whole".equals(System.getProperty("handreach.tour"))
            ? new double[] {WindowLooks.USUAL_PX, 1.5 * WindowLooks.USUAL_PX}
            : new double[] {1.5 * WindowLooks.USUAL_PX};

    private static final Pattern METRIC = Pattern.compile("(?s).*\\d (km|m|cm|km/h|km\u00b2)(?![\\w/\u00b2]).*|km|m");

    private static final Set<String> PICTURED =
            Set.of("question-2", "question-3", "question-4", "path", "bench", "new-plan", "form-relay", "form-station");

    @TempDir
    private Path folder;

    private WindowRun run;

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    @Test
    void everyControlHasANameAndARoleAndEveryLengthIsInMilesWhereAskedFor() {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        run.onScreen(() ->
                run.session().edit("units", text -> PlanText.withTopValue(text, "units", PlanText.quoted("imperial"))));
        run.settle();
        // A plan with unsaved edits would ask before a new one is begun.
        run.robot().push(KeyCode.SHORTCUT, KeyCode.S);
        run.settle();
        Set<String> nameless = new LinkedHashSet<>();
        Set<String> metric = new LinkedHashSet<>();
        WindowTour[] tour = new WindowTour[1];
        tour[0] = new WindowTour(
                run,
                sight -> run.onScreen(() -> {
                    List<Node> shown = tour[0].shown();
                    Set<Node> labelled = new LinkedHashSet<>();
                    for (Node node : shown)
                        if (node instanceof Label label && label.getLabelFor() != null)
                            labelled.add(label.getLabelFor());
                    for (Node node : shown) {
                        if (node.isFocusTraversable() && !hasName(node, labelled)) nameless.add(sight + ": " + node);
                        String words = node instanceof Labeled label
                                ? label.getText()
                                : node instanceof Text text ? text.getText() : "";
                        // The plan's text and help say what the plan's keys are, which are metric.
                        boolean isPlans = sight.startsWith("help") || sight.equals("text") || isOfTiles(words);
                        if (!isPlans && words != null && METRIC.matcher(words).matches())
                            metric.add(sight + ": " + words);
                    }
                }));
        tour[0].go();
        assertEquals(List.of(), List.copyOf(nameless));
        assertEquals(List.of(), List.copyOf(metric));
        run.onScreen(() -> run.window().way().open(2));
        run.onScreen(() -> run.stage().getScene().lookup("#step-3").requestFocus());
        List<String> order = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            order.add(run.onScreen(() -> run.stage().getScene().getFocusOwner().getId()));
            run.robot().push(KeyCode.TAB);
        }
        assertEquals(List.of("step-3", "reach-from", "copy-quality", "target-odds"), order);
    }

    /** What is said of tiles has the unit of the tiles. */
    private static boolean isOfTiles(String words) {
        return words != null && words.startsWith("The tiles hold part of the trees and roofs");
    }

    /** A word that it shows, a word for those who cannot see it, or a label beside it; a sign alone needs a tooltip too. */
    private static boolean hasName(Node node, Set<Node> labelled) {
        boolean isSpoken =
                node.getAccessibleText() != null && !node.getAccessibleText().isBlank();
        if (!(node instanceof Control control)) {
            AccessibleRole role = node.getAccessibleRole();
            return isSpoken && role != AccessibleRole.NODE && role != AccessibleRole.PARENT;
        }
        String words = control instanceof Labeled label && label.getText() != null ? label.getText() : "";
        if (control instanceof ButtonBase
                && !words.isEmpty()
                && words.codePoints().noneMatch(Character::isLetter)) return isSpoken && control.getTooltip() != null;
        return isSpoken || !words.isBlank() || labelled.contains(control);
    }

    @Test
    void nothingIsCutInASmallWindowByNightWithWordsHalfAsLargeAgain() {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        run.onScreen(() -> {
            run.window().map().palette().set(Palette.NIGHT);
            run.stage().setWidth(900);
            run.stage().setHeight(600);
        });
        run.settle();
        Set<String> cut = new LinkedHashSet<>();
        for (double words : SIZES) {
            while (run.onScreen(() -> run.window().looks().textPx()) < words - 1)
                run.onScreen(() -> run.window().looks().larger());
            run.settle();
            String size = words == WindowLooks.USUAL_PX ? "usual" : "large";
            WindowTour[] tour = new WindowTour[1];
            tour[0] = new WindowTour(run, sight -> {
                if (PICTURED.contains(sight)) run.snapshot("tour-" + size + "-" + sight);
                run.onScreen(() -> tour[0].shown().stream()
                        .filter(node -> isCut(node) || node instanceof Labeled label && WindowTour.breaksAWord(label))
                        .forEach(node -> cut.add(size + ", " + sight + ": " + ((Labeled) node).getText())));
                double over = right(".way-scroll") - 900;
                if (over > 1) cut.add(size + ", " + sight + ": " + over + " px of the questions");
                if (sight.equals("path") && right("#path-from-loadout") > right("#path-pane"))
                    cut.add("ends of the path");
            });
            tour[0].go();
        }
        assertEquals(List.of(), List.copyOf(cut));
    }

    private double right(String id) {
        return run.onScreen(() -> {
            Node node = run.node(id);
            return node.localToScene(node.getLayoutBounds()).getMaxX();
        });
    }

    /** Words that end in dots. */
    private static boolean isCut(Node node) {
        return node instanceof Labeled label
                && label.getText() != null
                && label.lookup(".text") instanceof Text text
                && text.getText().endsWith("...")
                && !label.getText().endsWith("...")
                && !isToldWhole(label);
    }

    /** What is chosen in a list is told whole by its tooltip. */
    private static boolean isToldWhole(Labeled cell) {
        return cell.getParent() instanceof ComboBox<?> box
                && box.getTooltip() != null
                && cell.getText().equals(box.getTooltip().getText());
    }
}
