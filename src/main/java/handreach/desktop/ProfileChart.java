package handreach.desktop;

import handreach.geodesy.Position;
import handreach.profile.Profile;
import handreach.propagation.PathGeometry;
import handreach.report.figure.ProfileFigure;
import handreach.report.figure.ProfileScale;
import handreach.units.Decibels;
import handreach.units.Lengths;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Region;

/** The cut of a path; pointing at it, by mouse or by arrow keys, says what is there and shows the place on the map. */
final class ProfileChart extends Region {
    private final Canvas ground = new Canvas();
    private final Canvas pointer = new Canvas();
    private final ReadOnlyObjectProperty<Palette> palette;
    private final Consumer<Optional<Position>> place;
    private final Consumer<String> words;
    private Optional<PathView> view = Optional.empty();
    private Optional<ProfileFigure> drawn = Optional.empty();
    private int pointed = -1;

    /** {@code place} is told where on the ground is pointed at, {@code words} what is there. */
    ProfileChart(ReadOnlyObjectProperty<Palette> palette, Consumer<Optional<Position>> place, Consumer<String> words) {
        this.palette = palette;
        this.place = place;
        this.words = words;
        setId("path-profile");
        getStyleClass().add("profile");
        setFocusTraversable(true);
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        setMinSize(320, 200);
        pointer.setMouseTransparent(true);
        getChildren().addAll(ground, pointer);
        setOnMouseMoved(event -> drawn.ifPresent(figure -> point(figure.scale().sampleAt(event.getX()))));
        setOnMouseExited(out -> point(-1));
        setOnMousePressed(press -> requestFocus());
        palette.addListener((which, before, now) -> redraw());
        addEventHandler(KeyEvent.KEY_PRESSED, this::key);
    }

    void show(Optional<PathView> shown) {
        view = shown;
        pointed = -1;
        place.accept(Optional.empty());
        view.ifPresent(path -> setAccessibleText(path.figure().description()));
        redraw();
    }

    /** What is drawn, if there is a path and room for it. */
    Optional<ProfileFigure> figure() {
        return drawn;
    }

    void redraw() {
        double width = getWidth();
        double height = getHeight();
        GraphicsContext gc = ground.getGraphicsContext2D();
        gc.clearRect(0, 0, width, height);
        drawn = view.filter(path -> width > 200 && height > 120)
                .map(path -> path.figure().sized(width, height));
        drawn.ifPresent(figure -> figure.draw(new FxPen(gc, palette.get())));
        drawPointer();
    }

    @Override
    protected void layoutChildren() {
        if (ground.getWidth() == getWidth() && ground.getHeight() == getHeight()) return;
        ground.setWidth(getWidth());
        ground.setHeight(getHeight());
        pointer.setWidth(getWidth());
        pointer.setHeight(getHeight());
        redraw();
    }

    private void key(KeyEvent event) {
        if (view.isEmpty()) return;
        int last = view.get().answer().profile().count() - 1;
        int step = Math.max(1, last / (event.isShiftDown() ? 10 : 60));
        if (event.getCode() == KeyCode.RIGHT) point(Math.min(last, Math.max(0, pointed) + step));
        else if (event.getCode() == KeyCode.LEFT) point(pointed < 0 ? last : Math.max(0, pointed - step));
        else if (event.getCode() == KeyCode.HOME) point(0);
        else if (event.getCode() == KeyCode.END) point(last);
        else return;
        event.consume();
    }

    private void point(int sample) {
        if (sample == pointed || view.isEmpty()) return;
        pointed = sample;
        drawPointer();
        if (sample < 0) {
            place.accept(Optional.empty());
            words.accept("");
            return;
        }
        Profile profile = view.get().answer().profile();
        place.accept(view.get()
                .answer()
                .link()
                .line()
                .map(line -> line.at(line.lengthM() * profile.distanceKm(sample) / profile.lengthKm())));
        words.accept(wordsAt(view.get(), sample));
    }

    private void drawPointer() {
        GraphicsContext gc = pointer.getGraphicsContext2D();
        gc.clearRect(0, 0, pointer.getWidth(), pointer.getHeight());
        if (drawn.isEmpty() || pointed < 0) return;
        ProfileScale scale = drawn.get().scale();
        double x = scale.xPx(pointed);
        gc.setStroke(palette.get().accent());
        gc.setLineWidth(1.5);
        gc.strokeLine(x, scale.topPx(), x, scale.bottomPx());
        double y = scale.yPx(scale.groundM(pointed));
        gc.setFill(palette.get().accent());
        gc.fillOval(x - 4, y - 4, 8, 8);
    }

    /** How far, how high, and how clear the ray is there, in Fresnel radii. */
    static String wordsAt(PathView view, int sample) {
        Profile profile = view.answer().profile();
        PathGeometry bare = view.answer().geometry();
        Lengths style = view.ends().scene().plan().header().lengths();
        StringBuilder words = new StringBuilder(String.format(
                Locale.ROOT,
                "%.2f %s from %s: ground %s",
                1000 * profile.distanceKm(sample) / style.longUnitM(),
                style.longUnit(),
                view.ends().from().words(),
                style.heightText(profile.heightM(sample))));
        double standing = profile.clutterM(sample);
        if (standing > 0)
            words.append(", ")
                    .append(profile.cover(sample).word())
                    .append(' ')
                    .append(style.heightText(standing))
                    .append(" high");
        if (sample == 0 || sample == profile.count() - 1)
            return words.append("; an antenna stands here.").toString();
        words.append("; ray ").append(clearance(style, bare, sample, "the ground"));
        if (standing > 0) words.append("; ").append(clearance(style, view.overTops(), sample, "what stands on it"));
        return words.append('.').toString();
    }

    private static String clearance(Lengths style, PathGeometry geometry, int sample, String what) {
        double clearanceM = geometry.clearanceM(sample);
        return style.heightText(Math.abs(clearanceM)) + (clearanceM < 0 ? " below " : " above ") + what + ", "
                + Decibels.number(clearanceM / geometry.fresnelRadiusM(sample), 2) + " Fresnel radii";
    }
}
