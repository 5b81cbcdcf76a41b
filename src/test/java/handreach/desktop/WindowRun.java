package handreach.desktop;

import handreach.cartography.MapFrame;
import handreach.geodesy.Position;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import javafx.application.Platform;
import javafx.embed.swing.SwingFXUtils;
import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ScrollPane;
import javafx.scene.image.WritableImage;
import javafx.stage.Stage;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import org.testfx.api.FxRobot;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/**
 * The real window on a virtual display, with a copy of a sample in a folder of its own. Waits for answers, never for a time.
 */
final class WindowRun implements AutoCloseable {
    private static final Path SCREENS = Path.of("target", "screens");
    private static final long PATIENCE_S = 90;

    private final FxRobot robot = new FxRobot();
    private final Path folder;
    private boolean preparesAtRest = true;
    private Stage stage;
    private DeskWindow window;

    private WindowRun(Path folder) {
        this.folder = folder;
        System.setProperty("handreach.settings", folder.resolve("settings").toString());
    }

    /** Opens the window on a copy of a sample plan and waits until the full picture is there. */
    static WindowRun on(Path folder, String sample) {
        WindowRun run = new WindowRun(folder);
        run.copySamples(sample);
        run.begin();
        return run;
    }

    /** The same, as soon as the first full picture is there. */
    static WindowRun justBegun(Path folder, String sample) {
        WindowRun run = new WindowRun(folder);
        run.copySamples(sample);
        run.beginOnly();
        return run;
    }

    private void begin() {
        beginOnly();
        settle();
    }

    private void beginOnly() {
        RecentPlans.wayShown();
        start(Optional.of(plan()));
        await(() -> live() != null && !live().isCoarse());
    }

    /**
     * The same on little ground in large cells, for what does not look at the reach: every edit is answered in a moment. What is
     * folded is laid out when it is opened, so that nothing is waited for but answers.
     */
    static WindowRun onLittleGround(Path folder, String sample) {
        return onLittleGround(folder, sample, false);
    }

    /** The same with the window as a person has it, which lays out at rest what is folded. */
    static WindowRun preparedOnLittleGround(Path folder, String sample) {
        return onLittleGround(folder, sample, true);
    }

    private static WindowRun onLittleGround(Path folder, String sample, boolean preparesAtRest) {
        WindowRun run = new WindowRun(folder);
        run.preparesAtRest = preparesAtRest;
        run.copySamples(sample);
        run.edit(text -> text.replace("radius_km = 5\n", "radius_km = 1\n")
                .replace("cell_m = 30", "cell_m = 100")
                .replace("bearing_step_deg = 5", "bearing_step_deg = 30"));
        run.begin();
        return run;
    }

    /** On all the ground of the sample in large cells, for what counts no cells: a tenth of each answer's work; else as on little ground. */
    static WindowRun inLargeCells(Path folder, String sample) {
        WindowRun run = new WindowRun(folder);
        run.preparesAtRest = false;
        run.copySamples(sample);
        run.edit(WindowRun::inLargeCells);
        run.begin();
        return run;
    }

    /** The text of a sample's plan with large cells and few bearings. */
    static String inLargeCells(String plan) {
        return plan.replace("cell_m = 30", "cell_m = 100").replace("bearing_step_deg = 5", "bearing_step_deg = 15");
    }

    private void edit(UnaryOperator<String> edit) {
        try {
            Files.writeString(plan(), edit.apply(Files.readString(plan())));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Opens the window on whatever is given, without waiting for a plan. */
    static WindowRun bare(Path folder, Optional<Path> plan) {
        WindowRun run = new WindowRun(folder);
        run.start(plan);
        return run;
    }

    /** Opens the window as one that has neither a plan nor the samples. */
    static WindowRun empty(Path folder) {
        WindowRun run = new WindowRun(folder);
        run.start(() -> Optional.empty());
        return run;
    }

    private void copySamples(String sample) {
        copy(Path.of("elevation-samples", sample), folder.resolve("plan"));
        copy(Path.of("elevation-samples", "invented-bench"), folder.resolve("invented-bench"));
    }

    static void copy(Path from, Path to) {
        try (Stream<Path> files = Files.walk(from)) {
            for (Path file : files.toList()) {
                Path target = to.resolve(from.relativize(file).toString());
                if (Files.isDirectory(file)) Files.createDirectories(target);
                else Files.copy(file, target);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void start(Optional<Path> plan) {
        start(() -> FirstPlan.of(plan));
    }

    private void start(Supplier<Optional<FirstPlan>> first) {
        try {
            FxToolkit.toolkitContext().setSetupTimeoutInMillis(1000 * PATIENCE_S);
            FxToolkit.registerPrimaryStage();
            Platform.setImplicitExit(false);
            stage = FxToolkit.registerStage(Stage::new);
            FxToolkit.setupFixture(() -> {
                window = new DeskWindow(stage, preparesAtRest);
                window.begin(first.get());
                stage.show();
            });
        } catch (TimeoutException e) {
            throw new IllegalStateException(e);
        }
    }

    Path folder() {
        return folder;
    }

    Path plan() {
        return folder.resolve("plan").resolve("plan.toml");
    }

    DeskWindow window() {
        return window;
    }

    Session session() {
        return window.session();
    }

    LiveReach.Losses live() {
        return window.live().losses().get();
    }

    FxRobot robot() {
        return robot;
    }

    Stage stage() {
        return stage;
    }

    /** Runs a step on the screen thread and waits for it. */
    void onScreen(Runnable step) {
        WaitForAsyncUtils.waitForAsyncFx(1000 * PATIENCE_S, () -> {
            step.run();
            return null;
        });
    }

    <T> T onScreen(Supplier<T> question) {
        return WaitForAsyncUtils.waitForAsyncFx(1000 * PATIENCE_S, question::get);
    }

    /** What stands on the screen under this id or style class; asked on the screen thread. */
    @SuppressWarnings("unchecked")
    <N extends Node> N node(String query) {
        return (N) stage.getScene().lookup(query);
    }

    /** Presses a button by its id, wherever it is scrolled to, and waits for what follows. */
    void press(String id) {
        onScreen(() -> ((Button) stage.getScene().lookup(id)).fire());
        settle();
    }

    /** Scrolls to what has this id, as a hand would before it clicks there. */
    void show(String id) {
        onScreen(() -> {
            Node node = stage.getScene().lookup(id);
            for (Node up = node.getParent(); up != null; up = up.getParent())
                if (up instanceof ScrollPane pane) {
                    Bounds all = pane.getContent().getLayoutBounds();
                    Bounds own = pane.getContent().sceneToLocal(node.localToScene(node.getBoundsInLocal()));
                    double room = all.getHeight() - pane.getViewportBounds().getHeight();
                    double top = own.getCenterY() - pane.getViewportBounds().getHeight() / 2;
                    if (room > 0) pane.setVvalue(Math.max(0, Math.min(1, top / room)));
                }
        });
        settle();
    }

    void await(Callable<Boolean> condition) {
        try {
            WaitForAsyncUtils.waitFor(
                    PATIENCE_S, TimeUnit.SECONDS, () -> WaitForAsyncUtils.waitForAsyncFx(1000 * PATIENCE_S, condition));
        } catch (TimeoutException e) {
            throw new AssertionError("nothing came within " + PATIENCE_S + " s", e);
        }
    }

    /** Waits until nothing is worked on, and the screen has caught up. */
    void settle() {
        await(() -> session().worker().isIdle());
        WaitForAsyncUtils.waitForFxEvents();
        await(() -> session().worker().isIdle());
    }

    /** Where a place is on the screen. */
    Point2D pixel(Position at) {
        return onScreen(() -> {
            MapFrame frame = window.map().frame().get();
            return window.map().localToScreen(frame.xPx(at.longitudeDeg()), frame.yPx(at.latitudeDeg()));
        });
    }

    Position position(String name) {
        return onScreen(() -> session().scene().get().position(name).at());
    }

    List<String> noticeTexts() {
        return onScreen(() -> session().notices().stream().map(Notice::text).toList());
    }

    /** Keeps a picture of the window under {@code target/screens}. */
    BufferedImage snapshot(String name) {
        WritableImage image = onScreen(() -> stage.getScene().snapshot(null));
        BufferedImage picture = SwingFXUtils.fromFXImage(image, null);
        keep(picture, name);
        return picture;
    }

    /** Writes a picture as its opaque colours, quickly rather than small: a third of the time that the usual way takes. */
    static void keep(BufferedImage picture, String name) {
        BufferedImage opaque = new BufferedImage(picture.getWidth(), picture.getHeight(), BufferedImage.TYPE_INT_RGB);
        opaque.createGraphics().drawImage(picture, 0, 0, null);
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        ImageWriteParam quickly = writer.getDefaultWriteParam();
        quickly.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        quickly.setCompressionQuality(0.9f);
        try {
            Files.createDirectories(SCREENS);
            Path file = SCREENS.resolve(name + ".png");
            Files.deleteIfExists(file);
            try (ImageOutputStream out = ImageIO.createImageOutputStream(file.toFile())) {
                writer.setOutput(out);
                writer.write(null, new IIOImage(opaque, null, null), quickly);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            writer.dispose();
        }
    }

    @Override
    public void close() {
        onScreen(() -> {
            session().worker().close();
            stage.setOnCloseRequest(null);
            stage.close();
        });
    }
}
