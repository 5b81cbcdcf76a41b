package handreach.report.page;

import java.util.List;

/** Points in no particular order. */
public record Bullets(List<String> points) implements Block {
    public Bullets {
        points = List.copyOf(points);
    }

    @Override
    public void appendTo(Html html) {
        if (points.isEmpty()) return;
        html.open("ul");
        for (String point : points) html.element("li", point);
        html.close("ul");
    }
}
