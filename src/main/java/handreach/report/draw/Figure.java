package handreach.report.draw;

/** A drawing of fixed size with words for those who cannot see it. */
public interface Figure {
    /** A few words, as under a picture. */
    String title();

    /** What the figure shows, with its main numbers, in full sentences: the alternative text. */
    String description();

    double widthPx();

    double heightPx();

    /** Whether a picture of ground or field lies in it, which keeps its own colours by day and by night. */
    default boolean holdsPicture() {
        return false;
    }

    void draw(Pen pen);
}
