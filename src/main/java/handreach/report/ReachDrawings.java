package handreach.report;

import handreach.report.figure.RoseFigure;
import handreach.report.page.Drawing;
import java.util.List;
import java.util.Optional;

/**
 * Figures of a reach report.
 *
 * @param maps the main one first
 * @param rose reach by bearing
 * @param profiles cuts worth looking at
 */
public record ReachDrawings(List<Drawing> maps, Optional<RoseFigure> rose, List<Drawing> profiles) {
    public ReachDrawings {
        maps = List.copyOf(maps);
        profiles = List.copyOf(profiles);
    }
}
