package handreach.study;

import handreach.atlas.PositionFigures;
import java.util.List;

/**
 * A few positions, reckoned to see what the others will cost.
 *
 * @param rows what came out
 * @param secondsEach processor time of one position, s: the least of the tried ones, since the first waits for code to be compiled
 */
public record AtlasTrial(List<PositionFigures> rows, double secondsEach) {
    public AtlasTrial {
        rows = List.copyOf(rows);
    }
}
