package handreach.report.draw;

import handreach.cartography.LoadoutMark;

/**
 * One line of a legend.
 *
 * @param ink how the sample is drawn
 * @param isArea whether the sample is a box rather than a line
 * @param letter letter standing on the sample, or empty
 * @param label words beside it
 */
public record LegendEntry(ShapeStyle ink, boolean isArea, String letter, String label) {
    public static LegendEntry line(LoadoutMark mark, String label) {
        return new LegendEntry(ShapeStyle.line(mark.rgb(), 2.2, mark.dashPx()), false, mark.letter(), label);
    }

    public static LegendEntry area(ShapeStyle ink, String label) {
        return new LegendEntry(ink, true, "", label);
    }

    public static LegendEntry line(ShapeStyle ink, String label) {
        return new LegendEntry(ink, false, "", label);
    }
}
