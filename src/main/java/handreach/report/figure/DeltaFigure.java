package handreach.report.figure;

import handreach.report.draw.Figure;
import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.report.draw.Typeface;
import handreach.units.Decibels;
import java.awt.geom.Path2D;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Differences from the control with their intervals, one line each: filled where told apart, open where not. */
public final class DeltaFigure implements Figure {
    private static final double LEAST_WIDTH_PX = 520;
    private static final double ROW_PX = 30;
    private static final double GROUP_PX = 34;
    private static final double TOP_PX = 12;
    private static final int MARK_RGB = 0x0B4F7A;

    private final String title;
    private final String control;
    private final List<DeltaRow> rows;
    private final double widthPx;
    private final double leftPx;
    private final double rightPx;
    private final Axis axis;

    private DeltaFigure(String title, String control, List<DeltaRow> rows, double widthPx) {
        this.widthPx = Math.max(LEAST_WIDTH_PX, widthPx);
        this.title = title;
        this.control = control;
        this.rows = List.copyOf(rows);
        double low = -0.5;
        double high = 0.5;
        double widest = 60;
        double widestNote = 0;
        for (DeltaRow row : rows) {
            low = Math.min(low, row.interval().low());
            high = Math.max(high, row.interval().high());
            widest = Math.max(widest, Typeface.of(false).widthPx(row.label(), 14));
            widestNote = Math.max(widestNote, Typeface.of(false).widthPx(numbers(row), 13));
        }
        this.leftPx = Math.min(330, widest + 26);
        this.rightPx = this.widthPx - Math.min(280, widestNote + 20);
        this.axis = Axis.rounded(low, high, 7, leftPx, rightPx);
    }

    /** As wide as there is room, though never so narrow that words meet. */
    public static DeltaFigure of(String title, String control, List<DeltaRow> rows, double widthPx) {
        if (rows.isEmpty()) throw new IllegalArgumentException("no differences to draw");
        return new DeltaFigure(title, control, rows, widthPx);
    }

    private static String numbers(DeltaRow row) {
        return Decibels.signed(row.deltaDb(), 1) + " dB ("
                + Decibels.signed(row.interval().low(), 1) + " to "
                + Decibels.signed(row.interval().high(), 1) + ")" + (row.note().isBlank() ? "" : ", " + row.note());
    }

    @Override
    public String title() {
        return title;
    }

    @Override
    public String description() {
        return "Received level over the control " + control + ", with 95 % intervals. "
                + rows.stream()
                        .map(r -> String.format(
                                Locale.ROOT,
                                "%s, %s: %s, %s.",
                                r.group(),
                                r.label(),
                                numbers(r),
                                r.isToldApart() ? "told apart from the control" : "not told apart from the control"))
                        .collect(Collectors.joining(" "));
    }

    @Override
    public double widthPx() {
        return widthPx;
    }

    private long groupCount() {
        return rows.stream().map(DeltaRow::group).distinct().count();
    }

    private double bottomPx() {
        return TOP_PX + groupCount() * GROUP_PX + rows.size() * ROW_PX + 6;
    }

    @Override
    public double heightPx() {
        return bottomPx() + 78;
    }

    @Override
    public void draw(Pen pen) {
        for (double tick : axis.ticks(7)) {
            double x = axis.px(tick);
            pen.draw(Outline.line(x, TOP_PX, x, bottomPx()), ShapeStyle.line(0xDCE1E4, 1));
            pen.write(
                    x,
                    bottomPx() + 18,
                    Decibels.signed(tick, 0 == tick % 1 ? 0 : 1),
                    TextStyle.quiet(12).middle());
        }
        pen.draw(Outline.line(axis.px(0), TOP_PX, axis.px(0), bottomPx()), ShapeStyle.line(TextStyle.INK, 1.4));
        double y = TOP_PX;
        String group = null;
        for (DeltaRow row : rows) {
            if (!row.group().equals(group)) {
                group = row.group();
                pen.write(2, y + 23, group, TextStyle.plain(14).bold());
                y += GROUP_PX;
            }
            drawRow(pen, row, y + ROW_PX / 2);
            y += ROW_PX;
        }
        pen.write(
                (leftPx + rightPx) / 2,
                bottomPx() + 40,
                "received level over the control, dB",
                TextStyle.plain(13).middle());
        pen.draw(
                Outline.disc(leftPx + 6, bottomPx() + 62, 5),
                ShapeStyle.fill(MARK_RGB).outlined(MARK_RGB, 1.8));
        pen.write(leftPx + 18, bottomPx() + 66.5, "told apart from " + control, TextStyle.quiet(12));
        double next = leftPx + 40 + Typeface.of(false).widthPx("told apart from " + control, 12);
        pen.draw(
                Outline.disc(next + 6, bottomPx() + 62, 5),
                ShapeStyle.fill(0xFFFFFF).outlined(MARK_RGB, 1.8));
        pen.write(next + 18, bottomPx() + 66.5, "not told apart", TextStyle.quiet(12));
    }

    private void drawRow(Pen pen, DeltaRow row, double y) {
        pen.write(14, y + 5, row.label(), TextStyle.plain(14));
        double low = axis.px(row.interval().low());
        double high = axis.px(row.interval().high());
        pen.draw(Outline.line(low, y, high, y), ShapeStyle.line(MARK_RGB, 2));
        Path2D ends = Outline.line(low, y - 5, low, y + 5);
        ends.append(Outline.line(high, y - 5, high, y + 5), false);
        pen.draw(ends, ShapeStyle.line(MARK_RGB, 2));
        pen.draw(
                Outline.disc(axis.px(row.deltaDb()), y, 5.5),
                ShapeStyle.fill(row.isToldApart() ? MARK_RGB : 0xFFFFFF).outlined(MARK_RGB, 2));
        pen.write(rightPx + 14, y + 5, numbers(row), TextStyle.plain(13));
    }
}
