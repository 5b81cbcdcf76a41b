package handreach.report.figure;

import handreach.report.draw.Figure;
import handreach.report.draw.LegendEntry;
import handreach.report.draw.Pen;
import java.util.List;
import java.util.stream.Collectors;

/** The key of a map as a figure of its own, for viewers that lay it over the screen. */
public record MapKey(String title, List<LegendEntry> entries) implements Figure {
    private static final double WIDTH_PX = 330;
    private static final double EDGE_PX = 12;

    public MapKey {
        entries = List.copyOf(entries);
    }

    private Legend legend() {
        return Legend.column(entries, WIDTH_PX - 2 * EDGE_PX);
    }

    @Override
    public String description() {
        return entries.stream().map(LegendEntry::label).collect(Collectors.joining("; ", "Key: ", "."));
    }

    @Override
    public double widthPx() {
        return WIDTH_PX;
    }

    @Override
    public double heightPx() {
        return legend().heightPx() + EDGE_PX;
    }

    @Override
    public void draw(Pen pen) {
        legend().draw(pen, EDGE_PX, 0);
    }
}
