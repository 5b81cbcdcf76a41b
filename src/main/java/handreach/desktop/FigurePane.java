package handreach.desktop;

import handreach.report.draw.Figure;
import handreach.report.draw.Picture;
import java.nio.IntBuffer;
import java.util.function.Supplier;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.StackPane;

/** A figure of the report on a sheet of paper in the window. Drawn away from the screen thread. */
final class FigurePane extends StackPane {
    /** Pixels of the picture to each px of the figure, so that it stays sharp on dense screens. */
    private static final double SHARPNESS = 2;

    private final Worker.Newest drawing;
    private final Session session;
    private final ImageView view = new ImageView();

    /** A drawing ready to be shown. */
    private record Sheet(int width, int height, int[] argb, double widthPx, String description) {
        Image image() {
            return new WritableImage(
                    new PixelBuffer<>(width, height, IntBuffer.wrap(argb), PixelFormat.getIntArgbPreInstance()));
        }
    }

    FigurePane(Session session) {
        this.session = session;
        this.drawing = session.worker().newest();
        getStyleClass().add("figure");
        view.setPreserveRatio(true);
        view.setSmooth(true);
        getChildren().add(view);
        setVisible(false);
        setManaged(false);
    }

    /** Draws the figure, which is also made away from the screen thread, at most this wide. */
    void show(Supplier<? extends Figure> figure, double widestPx) {
        drawing.ask(
                progress -> drawn(figure.get()),
                sheet -> {
                    view.setImage(sheet.image());
                    view.setFitWidth(Math.min(widestPx, sheet.widthPx()));
                    setAccessibleText(sheet.description());
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

    private static Sheet drawn(Figure figure) {
        Picture picture = Picture.of(figure, SHARPNESS);
        int width = picture.widthPx();
        int[] argb = new int[width * picture.heightPx()];
        for (int y = 0; y < picture.heightPx(); y++)
            for (int x = 0; x < width; x++) argb[y * width + x] = 0xFF000000 | picture.rgb(x, y);
        return new Sheet(width, picture.heightPx(), argb, figure.widthPx(), figure.description());
    }
}
