package handreach.report.figure;

import handreach.cartography.OddsRamp;
import handreach.propagation.march.FieldPicture;
import handreach.report.draw.Figure;
import handreach.report.draw.LegendEntry;
import handreach.report.draw.Pen;
import handreach.report.draw.Picture;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.units.Decibels;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** The marched field over the ground of a path: how much weaker than in free space the signal is, at every height. */
public final class FieldFigure implements Figure {
    private static final double WIDTH_PX = 980;
    private static final double LEFT_PX = 70;
    private static final double RIGHT_PX = 20;
    private static final double TOP_PX = 40;
    private static final double PLOT_PX = 360;
    private static final double FOOT_PX = 110;
    private static final int GROUND_RGB = 0xD9D2C5;
    /** Lower ends of the classes, dB over free space, strongest first. */
    private static final double[] CLASSES_DB = {-3, -10, -20, -30, -45};

    private final String title;
    private final FieldPicture field;
    private final Axis across;
    private final Axis up;
    private final Legend legend;

    private FieldFigure(String title, FieldPicture field) {
        this.title = title;
        this.field = field;
        double halfColumn = field.distanceKm(0);
        double halfRow = (field.heightM(1) - field.heightM(0)) / 2;
        this.across = new Axis(0, field.distanceKm(field.columns() - 1) + halfColumn, LEFT_PX, WIDTH_PX - RIGHT_PX);
        this.up = new Axis(
                field.heightM(0) - halfRow, field.heightM(field.rows() - 1) + halfRow, TOP_PX + PLOT_PX, TOP_PX);
        List<LegendEntry> entries = new ArrayList<>();
        for (int i = 0; i <= CLASSES_DB.length; i++)
            entries.add(LegendEntry.area(ShapeStyle.fill(rgb(i)).outlined(0x8A949A, 0.6), label(i)));
        entries.add(LegendEntry.area(ShapeStyle.fill(GROUND_RGB), "ground, or no field marched"));
        this.legend = new Legend(entries, WIDTH_PX - LEFT_PX - RIGHT_PX);
    }

    public static FieldFigure of(String title, FieldPicture field) {
        return new FieldFigure(title, field);
    }

    private static int rgb(int oddsClass) {
        return OddsRamp.rgb(CLASSES_DB.length - oddsClass);
    }

    private static String label(int i) {
        if (i == 0) return "free space, " + text(CLASSES_DB[0]) + " dB or more";
        if (i == CLASSES_DB.length) return "below " + text(CLASSES_DB[i - 1]) + " dB";
        return text(CLASSES_DB[i - 1]) + " to " + text(CLASSES_DB[i]) + " dB";
    }

    private static String text(double db) {
        return Decibels.number(db, 0);
    }

    @Override
    public String title() {
        return title;
    }

    @Override
    public String description() {
        return "Field over the ground of the path by the full-wave march, in decibels over that of free space at the same distance;"
                + " dark is strong, pale is shadow.";
    }

    @Override
    public double widthPx() {
        return WIDTH_PX;
    }

    @Override
    public double heightPx() {
        return TOP_PX + PLOT_PX + FOOT_PX + legend.heightPx() - 40;
    }

    @Override
    public boolean holdsPicture() {
        return true;
    }

    @Override
    public void draw(Pen pen) {
        pen.write(LEFT_PX, TOP_PX - 14, title, TextStyle.plain(15).bold());
        pen.place(picture(), new Rectangle2D.Double(LEFT_PX, TOP_PX, WIDTH_PX - LEFT_PX - RIGHT_PX, PLOT_PX));
        new Plot(across, up, 9, 6).drawAxes(pen, "distance, km", "height above sea level, m");
        legend.draw(pen, LEFT_PX, TOP_PX + PLOT_PX + 52);
    }

    private Picture picture() {
        int[] rgb = new int[field.columns() * field.rows()];
        for (int row = 0; row < field.rows(); row++)
            for (int column = 0; column < field.columns(); column++)
                rgb[(field.rows() - 1 - row) * field.columns() + column] =
                        field.isVoid(column, row) ? GROUND_RGB : rgb(classOf(field.levelDb(column, row)));
        return Picture.of(field.columns(), field.rows(), rgb);
    }

    private static int classOf(double db) {
        int i = 0;
        while (i < CLASSES_DB.length && db < CLASSES_DB[i]) i++;
        return i;
    }
}
