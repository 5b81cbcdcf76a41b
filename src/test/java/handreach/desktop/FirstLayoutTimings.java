package handreach.desktop;

import handreach.plan.Places;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.geometry.Point2D;
import javafx.scene.control.Button;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/**
 * The longest that the screen thread is at work in one go before something shows for the first time, in its own processor time: that
 * says the same on a busy machine. Prints, and asks nothing: run by hand, as {@link DeskTimings}.
 */
@Isolated
class FirstLayoutTimings {
    @TempDir
    private Path folder;

    private WindowRun run;
    private final List<String> told = new ArrayList<>();

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    private void measure(String what, Runnable step) {
        try (ScreenWatch watch = ScreenWatch.on(run, 0, Integer.getInteger("first.told", 10_000))) {
            run.onScreen(step);
            run.settle();
            double[] pieces = watch.sorted(ScreenWatch.Wait::screenMs);
            double[] drawn = watch.sorted(ScreenWatch.Wait::ownMs);
            told.add(String.format(
                    Locale.ROOT,
                    "%s %.0f of %.0f, with the drawing thread %.0f",
                    what,
                    pieces[pieces.length - 1],
                    Arrays.stream(pieces).sum(),
                    drawn[drawn.length - 1]));
        }
    }

    /** Off the map no menu opens, and one that is open goes. */
    private void rightClick(double acrossShare, double downShare) {
        MapView map = run.window().map();
        double x = acrossShare * map.getWidth();
        double y = downShare * map.getHeight();
        Point2D at = map.localToScreen(x, y);
        MouseButton button = acrossShare > 1 ? MouseButton.PRIMARY : MouseButton.SECONDARY;
        map.fireEvent(new MouseEvent(
                MouseEvent.MOUSE_PRESSED,
                x,
                y,
                at.getX(),
                at.getY(),
                button,
                1,
                false,
                false,
                false,
                false,
                true,
                false,
                false,
                true,
                false,
                true,
                null));
    }

    private PulledPath path(String from, String to) {
        return new PulledPath(end(from), end(to), true);
    }

    private PulledPath.End end(String name) {
        Places.PositionEntry entry = run.session().scene().get().position(name);
        return PulledPath.End.of(entry.at(), Optional.of(entry));
    }

    @Test
    void printWhatTheScreenThreadDoesAtFirstSights() {
        run = WindowRun.justBegun(folder, "forest-hills");
        measure("rest after the first picture", () -> {});
        for (int question = 1; question <= 5; question++) {
            int number = question;
            measure("question " + number, () -> run.window().way().open(number - 1));
        }
        measure("reach figures", () -> {
            run.window().way().open(2);
            run.session().carried().set(run.session().scene().get().loadouts().get(3));
        });
        measure("path", () -> run.session().pulled().set(Optional.of(path("spike camp", "creek crew"))));
        run.onScreen(() -> run.window().way().open(3));
        measure("relay answer", () -> ((Button) run.node("#relay-find")).fire());
        run.onScreen(() -> run.window().way().open(4));
        measure("walk answer", () -> ((Button) run.node("#walk-compare")).fire());
        measure("which walk next", () -> ((Button) run.node("#walk-next")).fire());
        measure(
                "moved",
                () -> new PlaceVerbs(run.session())
                        .move(
                                "north spur",
                                handreach.geodesy.GeodesicLine.destination(run.position("north spur"), 90, 300)));
        run.onScreen(() -> run.session().undo());
        run.settle();
        for (EntryKind kind : EntryKind.values())
            measure("form " + kind.section(), () -> run.window().showEquipment(Entry.of(kind.section())));
        measure("menu of the map", () -> rightClick(0.4, 0.4));
        measure("menu of the map again", () -> rightClick(0.5, 0.6));
        measure("menu away", () -> rightClick(2, 2));
        measure("bench", () -> run.window().showBench());
        measure("text", () -> run.window().showPlanText());
        for (HelpPane.Topic topic : HelpPane.Topic.values())
            measure("help " + topic.words(), () -> run.window().showHelp(topic));
        measure("new plan", () -> run.window().showNewPlan());
        measure("night", () -> run.session().palette().set(Palette.NIGHT));
        measure("larger words", () -> run.window().looks().larger());
        System.out.println("ms of the screen thread at once, and in all: " + String.join("; ", told));
    }
}
