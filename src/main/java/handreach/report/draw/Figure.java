package handreach.report.draw;

/** A drawing of fixed size with words for those who cannot see it. */
public interface Figure {
    /** A few words, as under a picture. */
    String title();

    /** What the figure shows, with its main numbers, in full sentences: the alternative text. */
    String description();

    double widthPx();

    double heightPx();

    void draw(Pen pen);
}
