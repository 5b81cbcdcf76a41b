package handreach.report.draw;

import handreach.cartography.Hatch;
import java.util.List;

/**
 * How a shape is filled and outlined.
 *
 * @param fillRgb colour of the area, 0xRRGGBB, or {@link #NONE}; with a hatch, colour of its lines
 * @param opacity of area and line, 0 to 1
 * @param hatch pattern of the area, {@code NONE} for a full one
 * @param lineRgb colour of the outline or {@link #NONE}
 * @param widthPx width of the outline, px
 * @param dashPx lengths of dash and gap in turn, px; empty is a full line
 */
public record ShapeStyle(int fillRgb, double opacity, Hatch hatch, int lineRgb, double widthPx, List<Double> dashPx) {
    public static final int NONE = -1;

    public ShapeStyle {
        if (!(opacity >= 0 && opacity <= 1) || !(widthPx >= 0))
            throw new IllegalArgumentException("opacity " + opacity + ", line width " + widthPx);
        dashPx = List.copyOf(dashPx);
    }

    public static ShapeStyle line(int rgb, double widthPx) {
        return new ShapeStyle(NONE, 1, Hatch.NONE, rgb, widthPx, List.of());
    }

    public static ShapeStyle line(int rgb, double widthPx, List<Double> dashPx) {
        return new ShapeStyle(NONE, 1, Hatch.NONE, rgb, widthPx, dashPx);
    }

    public static ShapeStyle fill(int rgb) {
        return new ShapeStyle(rgb, 1, Hatch.NONE, NONE, 0, List.of());
    }

    public static ShapeStyle hatch(int rgb, Hatch hatch) {
        return new ShapeStyle(rgb, 1, hatch, NONE, 0, List.of());
    }

    public ShapeStyle opacity(double share) {
        return new ShapeStyle(fillRgb, share, hatch, lineRgb, widthPx, dashPx);
    }

    public ShapeStyle outlined(int rgb, double width) {
        return new ShapeStyle(fillRgb, opacity, hatch, rgb, width, dashPx);
    }
}
