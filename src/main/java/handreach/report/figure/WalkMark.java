package handreach.report.figure;

import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.walk.CopyTable;
import handreach.walk.WalkPair;
import java.awt.geom.Path2D;
import org.locationtech.jts.geom.Envelope;

/** How a report stands against its prediction, as a mark that is told by shape and by light and dark, not by colour alone. */
public enum WalkMark {
    AS_TOLD_COPY("as predicted, copy"),
    AS_TOLD_NONE("as predicted, no copy"),
    BETTER("better: copy not promised but found, or 6 to 12 dB stronger"),
    FAR_BETTER("far better: odds below 20 % but copy, or over 12 dB stronger"),
    WORSE("worse: copy promised but not found, or 6 to 12 dB weaker"),
    FAR_WORSE("far worse: odds over 80 % but no copy, or over 12 dB weaker");

    /** Errors of a level that count: about one and two standard deviations of a good model (our suggestion), dB. */
    private static final double FELT_DB = 6;

    private static final double LARGE_DB = 12;
    private static final double SURE = 0.8;
    private static final int WORSE_RGB = 0xA33B00;
    private static final int BETTER_RGB = 0x0072B2;

    private final String label;

    WalkMark(String label) {
        this.label = label;
    }

    public String label() {
        return label;
    }

    /** The mark of a report. */
    public static WalkMark of(WalkPair pair) {
        if (pair.isLevel()) return ofError(pair.errorDb(), pair.copied());
        boolean promised = pair.odds() >= CopyTable.PROMISED_FROM;
        if (promised == pair.copied()) return pair.copied() ? AS_TOLD_COPY : AS_TOLD_NONE;
        if (promised) return pair.odds() > SURE ? FAR_WORSE : WORSE;
        return pair.odds() < 1 - SURE ? FAR_BETTER : BETTER;
    }

    private static WalkMark ofError(double errorDb, boolean copied) {
        if (errorDb > LARGE_DB) return FAR_WORSE;
        if (errorDb >= FELT_DB) return WORSE;
        if (errorDb < -LARGE_DB) return FAR_BETTER;
        if (errorDb <= -FELT_DB) return BETTER;
        return copied ? AS_TOLD_COPY : AS_TOLD_NONE;
    }

    public void draw(Pen pen, double x, double y) {
        switch (this) {
            case AS_TOLD_COPY ->
                pen.draw(Outline.disc(x, y, 4), ShapeStyle.fill(0xFFFFFF).outlined(TextStyle.INK, 1.3));
            case AS_TOLD_NONE ->
                pen.draw(Outline.disc(x, y, 3.6), ShapeStyle.fill(TextStyle.INK).outlined(0xFFFFFF, 1));
            case BETTER ->
                pen.draw(triangle(x, y, -6), ShapeStyle.fill(0xFFFFFF).outlined(BETTER_RGB, 1.8));
            case FAR_BETTER ->
                pen.draw(triangle(x, y, -9), ShapeStyle.fill(0xFFFFFF).outlined(BETTER_RGB, 2.8));
            case WORSE -> pen.draw(triangle(x, y, 6), ShapeStyle.fill(WORSE_RGB).outlined(0xFFFFFF, 1.2));
            case FAR_WORSE ->
                pen.draw(triangle(x, y, 9), ShapeStyle.fill(WORSE_RGB).outlined(0xFFFFFF, 1.5));
        }
    }

    /** The room that a mark takes. */
    Envelope room(double x, double y) {
        double half = this == FAR_BETTER || this == FAR_WORSE ? 9 : this == BETTER || this == WORSE ? 6 : 4;
        return Outline.room(Outline.disc(x, y, half));
    }

    /** A triangle that points down for a size above zero, and up below it. */
    private static Path2D triangle(double x, double y, double size) {
        double half = Math.abs(size);
        Path2D path = Outline.line(x, y + size, x + half, y - 0.75 * size, x - half, y - 0.75 * size);
        path.closePath();
        return path;
    }
}
