package handreach.report.figure;

import handreach.cartography.LoadoutMark;
import java.util.List;

/**
 * A line of values.
 *
 * @param mark how it is told from the others
 * @param name what it is
 * @param across values across, rising
 * @param up values up, as many
 */
public record Curve(LoadoutMark mark, String name, List<Double> across, List<Double> up) {
    public Curve {
        across = List.copyOf(across);
        up = List.copyOf(up);
        if (across.size() != up.size() || across.size() < 2)
            throw new IllegalArgumentException(name + " has " + across.size() + " and " + up.size() + " values");
        for (int i = 1; i < across.size(); i++)
            if (!(across.get(i) > across.get(i - 1))) throw new IllegalArgumentException(name + " does not rise");
    }
}
