package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.cartography.Luminance;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.plan.PlanText;
import handreach.profile.Profile;
import handreach.report.PathComposer;
import handreach.report.draw.Pen;
import handreach.report.draw.Picture;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.report.figure.ProfileFigure;
import handreach.report.figure.ProfileScale;
import handreach.study.PathAnswer;
import handreach.study.PathStudy;
import handreach.study.Scene;
import handreach.units.Lengths;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import javafx.embed.swing.SwingFXUtils;
import javafx.scene.paint.Color;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** The cut of a path in the real window is the one of the report. */
@Isolated
class ProfileChartTest {
    /** A path of 3.6 km over some 500 px, and a robot that points at whole pixels. */
    private static final double HALF_A_PIXEL_M = 5;
    /** Two names have some 18 letters of about ten full pixels each; the rest of their edges is smoothed. */
    private static final int LETTERS = 40;

    @TempDir
    private Path folder;

    private WindowRun run;

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    /** What a figure writes, but the numbers of its axes: a smaller figure has fewer. */
    private static final class TextPen implements Pen {
        private final TreeSet<String> said = new TreeSet<>();

        static TreeSet<String> of(ProfileFigure figure) {
            TextPen words = new TextPen();
            figure.draw(words);
            return words.said;
        }

        @Override
        public void draw(Shape shape, ShapeStyle ink) {}

        @Override
        public void write(double xPx, double yPx, String text, TextStyle lettering) {
            boolean isAxis = text.matches("[\u22120-9.]+");
            if (!isAxis) said.add(text.replace("height above sea level", "height"));
        }

        @Override
        public void place(Picture picture, Rectangle2D window) {}

        @Override
        public void clipped(Shape window, Runnable drawing) {
            drawing.run();
        }

        @Override
        public void moved(AffineTransform move, Runnable drawing) {
            drawing.run();
        }

        @Override
        public void named(String name, Runnable drawing) {
            drawing.run();
        }
    }

    private ProfileChart chart() {
        return run.robot().lookup("#path-profile").query();
    }

    private void showThePath() {
        run.onScreen(() -> {
            Scene scene = run.session().scene().get();
            run.session()
                    .pulled()
                    .set(Optional.of(new PulledPath(
                            PulledPath.End.of(
                                    scene.position("spike camp").at(), Optional.of(scene.position("spike camp"))),
                            PulledPath.End.of(
                                    scene.position("north spur").at(), Optional.of(scene.position("north spur"))),
                            true)));
        });
        run.settle();
    }

    /** The path reckoned apart from the window. */
    private PathAnswer answer() {
        Scene scene = run.onScreen(() -> run.session().scene().get());
        return PathStudy.between(
                scene,
                scene.position("spike camp").at(),
                scene.loadout("quarter-wave with wire at face"),
                scene.position("north spur").at(),
                scene.loadout("factory at face"),
                List.of(scene.model()));
    }

    @Test
    void theWindowsProfileSaysTheWordsAndNumbersOfTheReportsFigureInKilometresAndInMiles() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        showThePath();
        for (Lengths lengths : Lengths.values()) {
            String units = '"' + lengths.name().toLowerCase(Locale.ROOT) + '"';
            run.onScreen(() -> run.session().edit("units", text -> PlanText.withTopValue(text, "units", units)));
            run.settle();
            ProfileFigure reported = PathComposer.profile(answer(), "spike camp", "north spur", lengths);
            ProfileFigure shown = run.onScreen(() -> chart().figure().orElseThrow());
            assertEquals(TextPen.of(reported), TextPen.of(shown));
            assertEquals(reported.description(), run.onScreen(() -> chart().getAccessibleText()));
            assertTrue(
                    TextPen.of(shown).stream().anyMatch(words -> words.endsWith(lengths.shortUnit() + " in the way")),
                    TextPen.of(shown).toString());
        }
    }

    @Test
    void theSampleUnderTheMouseIsTheOneThatIsDrawnThere() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        showThePath();
        ProfileScale scale = run.onScreen(() -> chart().figure().orElseThrow().scale());
        Profile profile = answer().profile();
        for (int sample : new int[] {1, 17, profile.count() / 2}) {
            run.robot().moveTo(run.onScreen(() -> chart().localToScreen(scale.xPx(sample), scale.topPx() + 20)));
            run.settle();
            Position pointed =
                    run.onScreen(() -> run.session().alongPath().get().orElseThrow());
            assertEquals(
                    1000 * profile.distanceKm(sample),
                    GeodesicLine.distanceM(run.position("spike camp"), pointed),
                    HALF_A_PIXEL_M);
        }
    }

    @Test
    void wordsAreDarkByDayAndLightByNightAndTheGroundStaysBetweenThemAndThePaper() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        showThePath();
        for (Palette palette : Palette.values()) {
            run.onScreen(() -> run.session().palette().set(palette));
            run.settle();
            ProfileScale scale =
                    run.onScreen(() -> chart().figure().orElseThrow().scale());
            BufferedImage picture = picture();
            double words = Luminance.of(Palette.rgb(palette.ink(TextStyle.INK)));
            double paper = Luminance.of(Palette.rgb(palette.ink(0xFFFFFF)));
            double ground = Luminance.of(picture.getRGB((int) scale.xPx(0) + 8, (int) scale.bottomPx() - 4) & 0xFFFFFF);
            assertTrue((words < ground) == (ground < paper), palette + ": " + words + " " + ground + " " + paper);
            assertTrue(pixels(picture, palette.ink(TextStyle.INK), (int) scale.topPx()) > LETTERS, palette.toString());
        }
    }

    /** How many pixels above a line have just this colour. */
    private static int pixels(BufferedImage picture, Color colour, int aboveY) {
        int count = 0;
        for (int y = 0; y < aboveY; y++)
            for (int x = 0; x < picture.getWidth(); x++)
                if (picture.getRGB(x, y) == (0xFF000000 | Palette.rgb(colour))) count++;
        return count;
    }

    private BufferedImage picture() {
        return run.onScreen(() -> SwingFXUtils.fromFXImage(chart().snapshot(null, null), null));
    }
}
