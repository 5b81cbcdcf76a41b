package handreach.report.draw;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;

/**
 * Where a figure is drawn. Units are px of 1/96 inch, the origin is the upper left corner, y grows downwards.
 *
 * <p>One figure goes through three pens: SVG, PDF, PNG.
 */
public interface Pen {
    /** What a part of a sheet is to those who have it read to them. */
    enum Part {
        TITLE,
        HEADING,
        PARAGRAPH,
        FIGURE
    }

    void draw(Shape shape, ShapeStyle ink);

    /** Writes one line of text with its base line at y; control characters are left out. */
    void write(double xPx, double yPx, String text, TextStyle lettering);

    void place(Picture picture, Rectangle2D window);

    /** What is drawn inside shows only within the window. */
    void clipped(Shape window, Runnable drawing);

    /** What is drawn inside is moved, turned and scaled. Scaling below 1 would shrink words under the smallest size: do not. */
    void moved(AffineTransform move, Runnable drawing);

    /** What is drawn inside belongs together and has a name for those who cannot see it. */
    void named(String name, Runnable drawing);

    /**
     * What is drawn inside is a part of the sheet; parts are read in the order in which they are drawn, and one inside another
     * belongs to the outer. Pens whose files have no place for it just draw.
     *
     * @param words the part as text, a figure's in full sentences
     */
    default void part(Part part, String words, Runnable drawing) {
        drawing.run();
    }
}
