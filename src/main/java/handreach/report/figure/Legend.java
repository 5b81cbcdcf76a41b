package handreach.report.figure;

import handreach.report.draw.Fitted;
import handreach.report.draw.LegendEntry;
import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.report.draw.Typeface;
import java.util.ArrayList;
import java.util.List;

/** Samples with words, flowing into rows of a given width or one below the other; words that are too long for it are cut. */
final class Legend {
    private static final double SIZE_PX = 13;
    private static final double SAMPLE_PX = 38;
    private static final double SYMBOL_PX = 20;
    private static final double ROW_PX = 23;
    private static final double GAP_PX = 24;

    /** A sample, its words as they fit, and where it stands. */
    private record Placed(LegendEntry entry, String label, double x, double y) {}

    private final List<Placed> places = new ArrayList<>();
    private final double heightPx;
    private final double sizePx;
    private final double rowPx;

    Legend(List<LegendEntry> entries, double widthPx) {
        this(entries, widthPx, SIZE_PX, ROW_PX);
    }

    /** With words of this size in rows of this height. */
    Legend(List<LegendEntry> entries, double widthPx, double sizePx, double rowPx) {
        this(entries, widthPx, sizePx, rowPx, false);
    }

    /** One entry below the other. */
    static Legend column(List<LegendEntry> entries, double widthPx) {
        return new Legend(entries, widthPx, SIZE_PX, ROW_PX, true);
    }

    private Legend(List<LegendEntry> entries, double widthPx, double sizePx, double rowPx, boolean isColumn) {
        this.sizePx = sizePx;
        this.rowPx = rowPx;
        double x = 0;
        double y = 0;
        for (LegendEntry entry : entries) {
            double room = widthPx - samplePx(entry) - 8;
            String label = Fitted.words(entry.label(), TextStyle.plain(sizePx), room);
            double width = samplePx(entry) + 8 + Typeface.of(false).widthPx(label, sizePx) + GAP_PX;
            if (x > 0 && (isColumn || x + width - GAP_PX > widthPx)) {
                x = 0;
                y += rowPx;
            }
            places.add(new Placed(entry, label, x, y));
            x += width;
        }
        heightPx = entries.isEmpty() ? 0 : y + rowPx;
    }

    private static double samplePx(LegendEntry entry) {
        return entry.symbol().isPresent() ? SYMBOL_PX : SAMPLE_PX;
    }

    double heightPx() {
        return heightPx;
    }

    /** Pale samples get an edge, or they could not be seen on white. */
    private static ShapeStyle edged(ShapeStyle ink) {
        return ink.lineRgb() == ShapeStyle.NONE ? ink.outlined(0x8A949A, 0.8) : ink;
    }

    void draw(Pen pen, double xPx, double yPx) {
        for (Placed one : places) {
            double x = xPx + one.x();
            double middle = yPx + one.y() + rowPx / 2;
            sample(pen, one.entry(), x, middle);
            pen.write(x + samplePx(one.entry()) + 8, middle + 4.6, one.label(), TextStyle.plain(sizePx));
        }
    }

    private void sample(Pen pen, LegendEntry entry, double x, double middle) {
        if (entry.symbol().isPresent()) {
            entry.symbol().get().draw(pen, x + SYMBOL_PX / 2, middle);
            return;
        }
        if (entry.isArea())
            pen.draw(Outline.box(x, middle - (rowPx - 9) / 2, SAMPLE_PX, rowPx - 9), edged(entry.ink()));
        else pen.draw(Outline.line(x, middle, x + SAMPLE_PX, middle), entry.ink());
        if (!entry.letter().isEmpty()) Badge.draw(pen, x + SAMPLE_PX / 2, middle, entry.letter(), entry.ink());
    }
}
