package handreach.report.figure;

import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.report.draw.Typeface;
import java.awt.Shape;

/** A letter in a small disc: tells loadouts apart where colour and pattern are lost. */
public final class Badge {
    private static final double SIZE_PX = 12;
    private static final double RADIUS_PX = 8.5;

    private Badge() {}

    public static void draw(Pen pen, double xPx, double yPx, String letter, ShapeStyle ink) {
        int rgb = ink.lineRgb() == ShapeStyle.NONE ? TextStyle.INK : ink.lineRgb();
        pen.draw(disc(xPx, yPx, letter), ShapeStyle.fill(0xFFFFFF).outlined(rgb, 1.4));
        pen.write(
                xPx, yPx + 4.4, letter, TextStyle.plain(SIZE_PX).bold().middle().colour(rgb));
    }

    /** The disc under a letter. */
    static Shape disc(double xPx, double yPx, String letter) {
        double radius = Math.max(RADIUS_PX, Typeface.of(true).widthPx(letter, SIZE_PX) / 2 + 3);
        return Outline.disc(xPx, yPx, radius);
    }
}
