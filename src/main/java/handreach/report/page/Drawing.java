package handreach.report.page;

import handreach.report.draw.Figure;

/** A figure with a caption. */
public record Drawing(Figure figure, String caption) implements Block {
    @Override
    public void appendTo(Html html) {
        html.open("figure").figure(figure);
        if (!caption.isBlank()) html.element("figcaption", caption);
        html.close("figure");
    }
}
