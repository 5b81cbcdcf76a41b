package handreach.report.figure;

import handreach.cartography.Hatch;
import handreach.report.draw.Figure;
import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.report.draw.Typeface;
import handreach.units.Decibels;
import java.util.List;

/** Which antennas could be told from which: a square for each pair, dark where told apart, hatched where not. */
public final class PairFigure implements Figure {
    private static final double CELL_PX = 58;
    private static final double TOP_PX = 34;
    private static final int APART_RGB = 0x0B4F7A;

    private final String title;
    private final List<String> names;
    private final List<PairCell> cells;
    private final double leftPx;

    private PairFigure(String title, List<String> names, List<PairCell> cells) {
        this.title = title;
        this.names = List.copyOf(names);
        this.cells = List.copyOf(cells);
        double widest = 40;
        for (int i = 0; i < names.size(); i++)
            widest = Math.max(widest, Typeface.of(false).widthPx(label(i), 13));
        this.leftPx = widest + 14;
    }

    /** Cells of each unordered pair, the row having the greater index; pairs left out stay empty. */
    public static PairFigure of(String title, List<String> names, List<PairCell> cells) {
        for (PairCell cell : cells)
            if (!(cell.second() >= 0 && cell.second() < cell.first() && cell.first() < names.size()))
                throw new IllegalArgumentException("pair " + cell.first() + ", " + cell.second());
        return new PairFigure(title, names, cells);
    }

    private static String number(int index) {
        return String.valueOf(index + 1);
    }

    private String label(int index) {
        return number(index) + "  " + names.get(index);
    }

    @Override
    public String title() {
        return title;
    }

    @Override
    public String description() {
        StringBuilder words = new StringBuilder("Differences between antennas, row minus column.");
        for (PairCell cell : cells)
            words.append(' ')
                    .append(names.get(cell.first()))
                    .append(" and ")
                    .append(names.get(cell.second()))
                    .append(": ")
                    .append(Decibels.signed(cell.differenceDb(), 1))
                    .append(" dB, ")
                    .append(cell.isToldApart() ? "told apart." : "not told apart.");
        return words.toString();
    }

    @Override
    public double widthPx() {
        return Math.max(430, leftPx + names.size() * CELL_PX + 12);
    }

    @Override
    public double heightPx() {
        return TOP_PX + names.size() * CELL_PX + 44;
    }

    @Override
    public void draw(Pen pen) {
        for (int i = 0; i < names.size(); i++) {
            pen.write(
                    leftPx + (i + 0.5) * CELL_PX,
                    TOP_PX - 10,
                    number(i),
                    TextStyle.quiet(13).middle());
            pen.write(2, TOP_PX + (i + 0.5) * CELL_PX + 5, label(i), TextStyle.plain(13));
            pen.draw(box(i, i), ShapeStyle.fill(0xEEF1F2));
        }
        for (PairCell cell : cells) {
            if (cell.isToldApart()) pen.draw(box(cell.first(), cell.second()), ShapeStyle.fill(APART_RGB));
            else drawNotApart(pen, cell);
            TextStyle lettering = TextStyle.plain(14).bold().middle();
            pen.write(
                    leftPx + (cell.second() + 0.5) * CELL_PX,
                    TOP_PX + (cell.first() + 0.5) * CELL_PX + 5,
                    Decibels.signed(cell.differenceDb(), 1),
                    cell.isToldApart() ? lettering.colour(0xFFFFFF) : lettering);
        }
        double y = TOP_PX + names.size() * CELL_PX + 14;
        pen.draw(Outline.box(leftPx, y, 26, 16), ShapeStyle.fill(APART_RGB));
        pen.write(leftPx + 34, y + 13, "told apart, dB", TextStyle.quiet(12));
        pen.draw(
                Outline.box(leftPx + 140, y, 26, 16),
                ShapeStyle.hatch(0x9AA4AA, Hatch.RISING).outlined(0x9AA4AA, 1));
        pen.write(leftPx + 174, y + 13, "not told apart", TextStyle.quiet(12));
    }

    private void drawNotApart(Pen pen, PairCell cell) {
        pen.draw(
                box(cell.first(), cell.second()),
                ShapeStyle.hatch(0x9AA4AA, Hatch.RISING).outlined(0x9AA4AA, 1));
        double x = leftPx + (cell.second() + 0.5) * CELL_PX;
        double y = TOP_PX + (cell.first() + 0.5) * CELL_PX;
        pen.draw(Outline.box(x - 20, y - 10, 40, 20), ShapeStyle.fill(0xFFFFFF));
    }

    private java.awt.Shape box(int row, int column) {
        return Outline.box(leftPx + column * CELL_PX + 1.5, TOP_PX + row * CELL_PX + 1.5, CELL_PX - 3, CELL_PX - 3);
    }
}
