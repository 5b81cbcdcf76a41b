package handreach.desktop;

import handreach.report.draw.Figure;
import handreach.report.draw.Picture;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.application.Platform;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.WeakChangeListener;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.layout.StackPane;

/**
 * A figure of the report in the window, in the colours of day or night. One that holds a picture stays as it is printed, on white
 * paper, and becomes a raster away from the screen thread: a map has thousands of contour lines.
 */
final class FigurePane extends StackPane {
    /** Pixels of the picture to each px of the figure, so that it stays sharp on dense screens. */
    private static final double SHARPNESS = 2;

    private final Worker.LatestOnly drawing;
    private final Session session;
    private final ImageView view = new ImageView();
    private final Canvas canvas = new Canvas();
    /** Held weakly by the session: panes come and go with the answers. */
    private final ChangeListener<Palette> repaint = (which, before, now) -> paintLater();

    /** Drawn in the colours that were before. */
    private boolean isOld;

    private Optional<Figure> drawn = Optional.empty();

    /** A figure made, and its picture if it is shown as one. */
    private record Shown(Figure figure, Optional<Image> raster) {
        static Shown of(Figure figure) {
            return new Shown(
                    figure,
                    figure.holdsPicture() ? Optional.of(FxPen.image(Picture.of(figure, SHARPNESS))) : Optional.empty());
        }
    }

    FigurePane(Session session) {
        this.session = session;
        this.drawing = session.worker().latestOnly();
        getStyleClass().add("figure");
        view.setPreserveRatio(true);
        view.setSmooth(true);
        getChildren().addAll(view, canvas);
        session.palette().addListener(new WeakChangeListener<>(repaint));
        sceneProperty().addListener((window, before, now) -> {
            if (isOld) paintLater();
        });
        setVisible(false);
        setManaged(false);
    }

    /** Draws the figure, which is also made away from the screen thread, at most this wide. */
    void show(Supplier<? extends Figure> figure, double widestPx) {
        drawing.ask(
                progress -> Shown.of(figure.get()),
                sheet -> {
                    double widthPx = Math.min(widestPx, sheet.figure().widthPx());
                    view.setImage(sheet.raster().orElse(null));
                    view.setFitWidth(widthPx);
                    view.setManaged(sheet.raster().isPresent());
                    drawn = Optional.of(sheet.figure())
                            .filter(each -> sheet.raster().isEmpty());
                    canvas.setWidth(drawn.isEmpty() ? 0 : widthPx);
                    canvas.setHeight(drawn.map(each -> each.heightPx() * widthPx / each.widthPx())
                            .orElse(0.0));
                    paint();
                    setAccessibleText(sheet.figure().description());
                    setVisible(true);
                    setManaged(true);
                },
                session::tell);
    }

    void clear() {
        drawing.drop();
        setVisible(false);
        setManaged(false);
    }

    /** Each on its own, once it is on the screen: several at once would hold up a picture. */
    private void paintLater() {
        isOld = true;
        Platform.runLater(() -> {
            if (isOld && getScene() != null) paint();
        });
    }

    private void paint() {
        isOld = false;
        GraphicsContext gc = canvas.getGraphicsContext2D();
        gc.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
        drawn.ifPresent(figure -> {
            gc.save();
            gc.scale(canvas.getWidth() / figure.widthPx(), canvas.getWidth() / figure.widthPx());
            figure.draw(new FxPen(gc, session.palette().get()));
            gc.restore();
        });
    }
}
