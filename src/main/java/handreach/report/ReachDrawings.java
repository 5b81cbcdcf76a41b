package handreach.report;

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
