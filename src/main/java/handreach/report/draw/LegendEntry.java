package handreach.report.draw;

import handreach.cartography.LoadoutMark;
import java.util.Optional;

/**
 * One line of a legend.
 *
 * @param ink how the sample is drawn
 * @param isArea whether the sample is a box rather than a line
 * @param letter letter standing on the sample, or empty
 * @param label words beside it
 * @param symbol drawn in place of the sample, where it is a symbol
 */
public record LegendEntry(ShapeStyle ink, boolean isArea, String letter, String label, Optional<Symbol> symbol) {
    /** A symbol of a map. */
    @FunctionalInterface
    public interface Symbol {
        void draw(Pen pen, double xPx, double yPx);
    }

    public LegendEntry(ShapeStyle ink, boolean isArea, String letter, String label) {
        this(ink, isArea, letter, label, Optional.empty());
    }

    public static LegendEntry line(LoadoutMark mark, String label) {
        return new LegendEntry(ShapeStyle.line(mark.rgb(), 2.2, mark.dashPx()), false, mark.letter(), label);
    }

    public static LegendEntry area(ShapeStyle ink, String label) {
        return new LegendEntry(ink, true, "", label);
    }

    public static LegendEntry line(ShapeStyle ink, String label) {
        return new LegendEntry(ink, false, "", label);
    }

    public static LegendEntry symbol(Symbol symbol, String label) {
        return new LegendEntry(ShapeStyle.line(TextStyle.INK, 1), false, "", label, Optional.of(symbol));
    }
}
