package handreach.report.figure;

import handreach.geodesy.Compass;
import handreach.report.draw.Figure;
import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.units.Lengths;
import handreach.walk.Comparison;
import java.util.List;
import java.util.OptionalDouble;

/** Range promised and range found, a row for each eighth of the compass. */
public final class WalkRangeFigure implements Figure {
    private static final double WIDTH_PX = 820;
    private static final double LEFT_PX = 108;
    private static final double RIGHT_PX = 118;
    private static final double TOP_PX = 12;
    private static final double ROW_PX = 34;
    private static final int PROMISE_RGB = 0xB9C9D4;
    private static final int FAIL_RGB = 0xA33B00;

    private final List<Comparison.Sector> sectors;
    private final Lengths lengths;
    private final Axis across;

    private WalkRangeFigure(List<Comparison.Sector> sectors, Lengths lengths) {
        this.sectors = List.copyOf(sectors);
        this.lengths = lengths;
        double farthest = 0;
        for (Comparison.Sector sector : sectors)
            for (OptionalDouble metres :
                    List.of(sector.farthestCopyM(), sector.nearestFailureM(), sector.farthestPromiseM()))
                farthest = Math.max(farthest, metres.orElse(0));
        this.across = new Axis(0, 1.05 * Math.max(0.05, shown(farthest)), LEFT_PX, WIDTH_PX - RIGHT_PX);
    }

    public static WalkRangeFigure of(List<Comparison.Sector> sectors, Lengths lengths) {
        return new WalkRangeFigure(sectors, lengths);
    }

    private double shown(double metres) {
        return metres / lengths.longUnitM();
    }

    @Override
    public String title() {
        return "Range by bearing, promised and found";
    }

    @Override
    public String description() {
        StringBuilder words = new StringBuilder("Rows by bearing from the base.");
        for (Comparison.Sector sector : sectors)
            words.append(' ')
                    .append(Compass.word(sector.bearingDeg()))
                    .append(": farthest copy ")
                    .append(length(sector.farthestCopyM()))
                    .append(", nearest failure ")
                    .append(length(sector.nearestFailureM()))
                    .append(", farthest promise ")
                    .append(length(sector.farthestPromiseM()))
                    .append('.');
        return words.toString();
    }

    private String length(OptionalDouble metres) {
        return metres.isPresent() ? lengths.text(metres.getAsDouble()) : "none";
    }

    @Override
    public double widthPx() {
        return WIDTH_PX;
    }

    private double bottomPx() {
        return TOP_PX + ROW_PX * sectors.size();
    }

    @Override
    public double heightPx() {
        return bottomPx() + 76;
    }

    @Override
    public void draw(Pen pen) {
        for (double tick : across.ticks(8)) {
            double x = across.px(tick);
            pen.draw(Outline.line(x, TOP_PX, x, bottomPx()), ShapeStyle.line(0xDCE1E4, 1));
            pen.write(
                    x,
                    bottomPx() + 18,
                    across.text(tick, 8),
                    TextStyle.quiet(12).middle());
        }
        for (int i = 0; i < sectors.size(); i++) drawSector(pen, sectors.get(i), TOP_PX + ROW_PX * (i + 0.5));
        pen.draw(
                Outline.box(across.startPx(), TOP_PX, across.endPx() - across.startPx(), bottomPx() - TOP_PX),
                ShapeStyle.line(0x8A949A, 1));
        pen.write(
                (across.startPx() + across.endPx()) / 2,
                bottomPx() + 40,
                "distance from the base, " + lengths.longUnit(),
                TextStyle.plain(13).middle());
        drawLegend(pen, across.startPx(), bottomPx() + 62);
    }

    private static void drawLegend(Pen pen, double x, double y) {
        pen.draw(Outline.box(x, y - 7, 38, 14), ShapeStyle.fill(PROMISE_RGB));
        pen.write(x + 46, y + 4.6, "farthest report with odds of one half or better", TextStyle.plain(13));
        disc(pen, x + 370, y);
        pen.write(x + 384, y + 4.6, "farthest copy", TextStyle.plain(13));
        cross(pen, x + 500, y);
        pen.write(x + 514, y + 4.6, "nearest failure", TextStyle.plain(13));
    }

    private static void disc(Pen pen, double x, double y) {
        pen.draw(Outline.disc(x, y, 6), ShapeStyle.fill(TextStyle.INK).outlined(0xFFFFFF, 1.4));
    }

    private static void cross(Pen pen, double x, double y) {
        pen.draw(Outline.line(x - 6, y - 6, x + 6, y + 6), ShapeStyle.line(FAIL_RGB, 2.4));
        pen.draw(Outline.line(x - 6, y + 6, x + 6, y - 6), ShapeStyle.line(FAIL_RGB, 2.4));
    }

    private void drawSector(Pen pen, Comparison.Sector sector, double y) {
        pen.write(
                LEFT_PX - 10,
                y + 4.6,
                Compass.word(sector.bearingDeg()),
                TextStyle.plain(13).end());
        sector.farthestPromiseM()
                .ifPresent(m -> pen.draw(
                        Outline.box(across.startPx(), y - 9, across.px(shown(m)) - across.startPx(), 18),
                        ShapeStyle.fill(PROMISE_RGB)));
        sector.nearestFailureM().ifPresent(m -> cross(pen, across.px(shown(m)), y));
        sector.farthestCopyM().ifPresent(m -> disc(pen, across.px(shown(m)), y));
        String words = sector.farthestCopyM().isPresent()
                ? lengths.text(sector.farthestCopyM().getAsDouble())
                : "no copy";
        pen.write(WIDTH_PX - RIGHT_PX + 10, y + 4.6, words + ", n = " + sector.reports(), TextStyle.plain(13));
    }
}
