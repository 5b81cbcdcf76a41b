package handreach.desktop;

import handreach.profile.Profile;
import handreach.propagation.PathGeometry;
import handreach.report.figure.Axis;
import handreach.terrain.Cover;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.geometry.Rectangle2D;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** Draws the cut of one path: ground on the curved earth, what stands on it, ray, Fresnel zone, edges. */
final class ProfilePen {
    private static final double LEFT_PX = 64;
    private static final double RIGHT_PX = 18;
    private static final double TOP_PX = 24;
    private static final double BAND_PX = 16;
    /** Numbers and words under the cut. */
    private static final double AXIS_PX = 38;

    private final GraphicsContext gc;
    private final PathView view;
    private final Look look;
    private final Lengths style;
    private final Profile profile;
    private final PathGeometry geometry;
    private final double widthPx;
    private final double bottomPx;
    private final Axis across;
    private final Axis up;
    private final ChartInk ink;
    private final ChartInk.Colours colours;
    private final ProfileLegend legend;

    ProfilePen(GraphicsContext gc, PathView view, Look look, double widthPx, double heightPx) {
        this.gc = gc;
        this.view = view;
        this.look = look;
        this.style = view.ends().scene().plan().heading().lengths();
        this.profile = view.answer().profile();
        this.geometry = view.answer().geometry();
        this.widthPx = widthPx;
        this.ink = new ChartInk(gc, look);
        this.colours = ink.colours();
        this.legend = new ProfileLegend(view, ink, widthPx);
        this.bottomPx = heightPx - BAND_PX - AXIS_PX - legend.heightPx();
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < profile.count(); i++) {
            low = Math.min(low, groundM(i));
            high = Math.max(high, groundM(i) + profile.clutterM(i));
            high = Math.max(high, geometry.rayHeightM(i) + geometry.fresnelRadiusM(i));
        }
        double room = Math.max(10, 0.1 * (high - low));
        this.across = new Axis(0, 1000 * profile.lengthKm() / style.longUnitM(), LEFT_PX, widthPx - RIGHT_PX);
        this.up = new Axis((low - room) / style.shortUnitM(), (high + room) / style.shortUnitM(), bottomPx, TOP_PX);
    }

    double x(int sample) {
        return across.px(1000 * profile.distanceKm(sample) / style.longUnitM());
    }

    double y(double heightM) {
        return up.px(heightM / style.shortUnitM());
    }

    double groundM(int sample) {
        return profile.heightM(sample) + geometry.bulgeM(sample);
    }

    double topPx() {
        return TOP_PX;
    }

    double bottomPx() {
        return bottomPx;
    }

    /** The sample nearest to a pixel across. */
    int sampleAt(double xPx) {
        double share = (xPx - across.startPx()) / (across.endPx() - across.startPx());
        double km = profile.lengthKm() * Math.max(0, Math.min(1, share));
        int best = 0;
        for (int i = 1; i < profile.count(); i++)
            if (Math.abs(profile.distanceKm(i) - km) < Math.abs(profile.distanceKm(best) - km)) best = i;
        return best;
    }

    void draw() {
        gc.setTextBaseline(VPos.CENTER);
        drawGrid();
        gc.save();
        gc.beginPath();
        gc.rect(LEFT_PX, TOP_PX, widthPx - LEFT_PX - RIGHT_PX, bottomPx - TOP_PX);
        gc.clip();
        drawClutter();
        drawZone();
        drawGround();
        drawRay();
        gc.restore();
        drawEdges();
        drawEnds();
        drawBand();
        legend.draw(bottomPx + BAND_PX + AXIS_PX);
    }

    private void drawGrid() {
        gc.setLineWidth(1);
        for (double tick : up.ticks(5)) {
            double y = Math.round(up.px(tick)) + 0.5;
            ink.line(look.ink(), 0.14, 1, LEFT_PX, y, widthPx - RIGHT_PX, y);
            ink.words(up.text(tick, 5), LEFT_PX - 7, y, TextAlignment.RIGHT, look.ink(), false);
        }
        double labelY = bottomPx + BAND_PX + 13;
        int wanted = widthPx > 560 ? 8 : 5;
        for (double tick : across.ticks(wanted)) {
            double x = Math.round(across.px(tick)) + 0.5;
            ink.line(look.ink(), 0.14, 1, x, TOP_PX, x, bottomPx);
            ink.words(across.text(tick, wanted), x, labelY, TextAlignment.CENTER, look.ink(), false);
        }
        ink.words(style.shortUnit() + " up", LEFT_PX - 7, TOP_PX - 12, TextAlignment.RIGHT, look.ink(), false);
        ink.words(
                style.longUnit() + " from " + view.ends().from().words(),
                (LEFT_PX + widthPx - RIGHT_PX) / 2,
                labelY + 16,
                TextAlignment.CENTER,
                look.ink(),
                false);
    }

    private void drawGround() {
        int n = profile.count();
        gc.beginPath();
        gc.moveTo(x(0), bottomPx);
        for (int i = 0; i < n; i++) gc.lineTo(x(i), y(groundM(i)));
        gc.lineTo(x(n - 1), bottomPx);
        gc.closePath();
        gc.setFill(colours.ground());
        gc.fill();
        gc.beginPath();
        for (int i = 0; i < n; i++) {
            if (i == 0) gc.moveTo(x(i), y(groundM(i)));
            else gc.lineTo(x(i), y(groundM(i)));
        }
        gc.setStroke(colours.edge());
        gc.setLineWidth(1.5);
        gc.stroke();
        gc.setLineDashes(7, 4);
        gc.setGlobalAlpha(0.7);
        gc.beginPath();
        for (int i = 0; i < n; i++) {
            if (i == 0) gc.moveTo(x(i), y(geometry.bulgeM(i)));
            else gc.lineTo(x(i), y(geometry.bulgeM(i)));
        }
        gc.stroke();
        gc.setLineDashes();
        gc.setGlobalAlpha(1);
    }

    private void drawClutter() {
        for (int i = 0; i < profile.count() - 1; i++) {
            double here = profile.clutterM(i);
            double next = profile.clutterM(i + 1);
            if (here <= 0 && next <= 0) continue;
            gc.setFill(profile.cover(i).isTown() || profile.cover(i + 1).isTown() ? colours.town() : colours.trees());
            gc.fillPolygon(
                    new double[] {x(i), x(i + 1) + 0.5, x(i + 1) + 0.5, x(i)},
                    new double[] {y(groundM(i) + here), y(groundM(i + 1) + next), y(groundM(i + 1)), y(groundM(i))},
                    4);
        }
    }

    private void drawZone() {
        zone(1);
        gc.setGlobalAlpha(0.14);
        gc.setFill(colours.ray());
        gc.fill();
        gc.setGlobalAlpha(0.9);
        gc.setStroke(colours.ray());
        gc.setLineWidth(1);
        gc.stroke();
        zone(PathGeometry.FREE_SHARE);
        gc.setLineDashes(5, 4);
        gc.stroke();
        gc.setLineDashes();
        gc.setGlobalAlpha(1);
    }

    private void zone(double share) {
        int n = profile.count();
        gc.beginPath();
        for (int i = 0; i < n; i++) {
            double y = y(geometry.rayHeightM(i) + share * geometry.fresnelRadiusM(i));
            if (i == 0) gc.moveTo(x(i), y);
            else gc.lineTo(x(i), y);
        }
        for (int i = n - 1; i >= 0; i--)
            gc.lineTo(x(i), y(geometry.rayHeightM(i) - share * geometry.fresnelRadiusM(i)));
        gc.closePath();
    }

    private void drawRay() {
        int last = profile.count() - 1;
        ink.line(colours.ray(), 1, 2, x(0), y(geometry.rayHeightM(0)), x(last), y(geometry.rayHeightM(last)));
    }

    private void drawEnds() {
        int last = profile.count() - 1;
        end(0);
        end(last);
        ink.words(view.ends().from().words(), LEFT_PX + 2, TOP_PX - 12, TextAlignment.LEFT, look.ink(), true);
        ink.words(view.ends().to().words(), widthPx - RIGHT_PX, TOP_PX - 12, TextAlignment.RIGHT, look.ink(), true);
    }

    private void end(int sample) {
        double tip = y(geometry.rayHeightM(sample));
        ink.line(look.ink(), 1, 3, x(sample), y(groundM(sample)), x(sample), tip);
        gc.setFill(look.ink());
        gc.fillOval(x(sample) - 4, tip - 4, 8, 8);
    }

    /** Edges that matter: discs on the string stretched from antenna to antenna, each with its place and how far it stands up. */
    private void drawEdges() {
        List<PathGeometry.Obstacle> edges = view.answer().geometry().obstacles();
        if (edges.isEmpty()) return;
        gc.setLineDashes(2, 3);
        double lastX = x(0);
        double lastY = y(geometry.rayHeightM(0));
        for (PathGeometry.Obstacle edge : edges) {
            double y = y(groundM(edge.sample()));
            ink.line(look.ink(), 1, 1.4, lastX, lastY, x(edge.sample()), y);
            lastX = x(edge.sample());
            lastY = y;
        }
        int last = profile.count() - 1;
        ink.line(look.ink(), 1, 1.4, lastX, lastY, x(last), y(geometry.rayHeightM(last)));
        gc.setLineDashes();
        List<Rectangle2D> taken = new ArrayList<>();
        for (PathGeometry.Obstacle edge : edges) edge(edge, taken);
    }

    private void edge(PathGeometry.Obstacle edge, List<Rectangle2D> taken) {
        double x = x(edge.sample());
        double y = y(groundM(edge.sample()));
        gc.setFill(look.halo());
        gc.setStroke(look.ink());
        gc.setLineWidth(1.8);
        gc.fillOval(x - 4, y - 4, 8, 8);
        gc.strokeOval(x - 4, y - 4, 8, 8);
        String label = style.text(1000 * edge.distanceKm())
                + String.format(Locale.ROOT, ", %s in the way", style.heightText(edge.aboveLineM()));
        double width = ChartInk.widthOf(label, false) + 6;
        double left = Math.max(LEFT_PX + 3, Math.min(widthPx - RIGHT_PX - width - 3, x - width / 2));
        for (int k = 0; k < 12; k++) {
            double top = y - 25 - 17 * k;
            if (top < TOP_PX + 1) top = y + 8 + 17 * (k / 2);
            if (top + 17 > bottomPx) continue;
            Rectangle2D box = new Rectangle2D(left, top, width, 17);
            if (taken.stream().anyMatch(box::intersects)) continue;
            taken.add(box);
            ink.words(label, left + width / 2, top + 8.5, TextAlignment.CENTER, look.ink(), true);
            return;
        }
    }

    /** A band under the cut that says in words what stands on the ground. */
    private void drawBand() {
        int n = profile.count();
        int first = 0;
        while (first < n) {
            int last = first;
            while (last + 1 < n && profile.cover(last + 1) == profile.cover(first)) last++;
            band(profile.cover(first), x(first), x(last));
            first = last + 1;
        }
        gc.setStroke(look.ink());
        gc.setGlobalAlpha(0.4);
        gc.setLineWidth(1);
        gc.strokeRect(LEFT_PX, bottomPx, widthPx - LEFT_PX - RIGHT_PX, BAND_PX);
        gc.setGlobalAlpha(1);
    }

    private void band(Cover cover, double fromPx, double toPx) {
        Color fill = cover.isTown() ? colours.town() : cover == Cover.WOODLAND ? colours.trees() : null;
        if (fill != null) {
            gc.setFill(fill);
            gc.setGlobalAlpha(0.5);
            gc.fillRect(fromPx, bottomPx, Math.max(1, toPx - fromPx), BAND_PX);
            gc.setGlobalAlpha(1);
        }
        if (ChartInk.widthOf(cover.word(), false) + 8 < toPx - fromPx)
            ink.words(
                    cover.word(), (fromPx + toPx) / 2, bottomPx + BAND_PX / 2, TextAlignment.CENTER, look.ink(), false);
    }
}
