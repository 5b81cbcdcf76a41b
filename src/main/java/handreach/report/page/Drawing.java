package handreach.report.page;

import handreach.report.draw.Figure;

/**
 * A figure with a caption.
 *
 * @param isOfTable whether it shows the numbers of the table above it once more; among the details, paper has the table alone
 */
public record Drawing(Figure figure, String caption, boolean isOfTable) implements Block {
    public Drawing(Figure figure, String caption) {
        this(figure, caption, false);
    }

    /** The same, known to show the numbers of the table above it. */
    public Drawing ofTable() {
        return new Drawing(figure, caption, true);
    }

    @Override
    public void appendTo(Html html) {
        if (figure.holdsPicture()) html.open("figure", "class", "map").figure(figure);
        else if (isOfTable) html.open("figure", "class", "of-table").figure(figure);
        else html.open("figure").figure(figure);
        if (!caption.isBlank()) html.element("figcaption", caption);
        html.close("figure");
    }
}
