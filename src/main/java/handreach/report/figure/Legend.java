package handreach.report.figure;

import handreach.report.draw.LegendEntry;
import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.report.draw.Typeface;
import java.util.ArrayList;
import java.util.List;

/** Samples with words, flowing into rows of a given width. */
final class Legend {
    private static final double SIZE_PX = 13;
    private static final double SAMPLE_PX = 38;
    private static final double ROW_PX = 23;
    private static final double GAP_PX = 24;

    private final List<LegendEntry> entries;
    private final List<double[]> places = new ArrayList<>();
    private final double heightPx;
    private final double sizePx;
    private final double rowPx;

    Legend(List<LegendEntry> entries, double widthPx) {
        this(entries, widthPx, SIZE_PX, ROW_PX);
    }

    /** With words of this size in rows of this height. */
    Legend(List<LegendEntry> entries, double widthPx, double sizePx, double rowPx) {
        this.sizePx = sizePx;
        this.rowPx = rowPx;
        this.entries = List.copyOf(entries);
        double x = 0;
        double y = 0;
        for (LegendEntry entry : entries) {
            double width = SAMPLE_PX + 8 + Typeface.of(false).widthPx(entry.label(), sizePx) + GAP_PX;
            if (x > 0 && x + width - GAP_PX > widthPx) {
                x = 0;
                y += rowPx;
            }
            places.add(new double[] {x, y});
            x += width;
        }
        heightPx = entries.isEmpty() ? 0 : y + rowPx;
    }

    double heightPx() {
        return heightPx;
    }

    /** Pale samples get an edge, or they could not be seen on white. */
    private static ShapeStyle edged(ShapeStyle ink) {
        return ink.lineRgb() == ShapeStyle.NONE ? ink.outlined(0x8A949A, 0.8) : ink;
    }

    void draw(Pen pen, double xPx, double yPx) {
        for (int i = 0; i < entries.size(); i++) {
            LegendEntry entry = entries.get(i);
            double x = xPx + places.get(i)[0];
            double middle = yPx + places.get(i)[1] + rowPx / 2;
            if (entry.isArea())
                pen.draw(Outline.box(x, middle - (rowPx - 9) / 2, SAMPLE_PX, rowPx - 9), edged(entry.ink()));
            else pen.draw(Outline.line(x, middle, x + SAMPLE_PX, middle), entry.ink());
            if (!entry.letter().isEmpty()) Badge.draw(pen, x + SAMPLE_PX / 2, middle, entry.letter(), entry.ink());
            pen.write(x + SAMPLE_PX + 8, middle + 4.6, entry.label(), TextStyle.plain(sizePx));
        }
    }
}
