package handreach.relay;

import handreach.budget.LinkEnd;
import handreach.geodesy.Position;
import java.util.Optional;

/**
 * Somebody who must be served.
 *
 * @param name what the user calls it
 * @param group the route or sector it is a point of; empty for a single place
 * @param at where
 * @param end what is carried there
 * @param weight how much it counts, from 0
 */
public record Party(String name, Optional<String> group, Position at, LinkEnd end, double weight) {
    public Party {
        if (!(weight >= 0) || Double.isInfinite(weight))
            throw new IllegalArgumentException(name + ": weight " + weight);
        if (name == null || at == null || end == null)
            throw new IllegalArgumentException("a demand leaves nothing out");
    }

    public Party(String name, Position at, LinkEnd end) {
        this(name, Optional.empty(), at, end, 1);
    }

    /** The same person with something else to carry. */
    public Party carrying(LinkEnd other) {
        return new Party(name, group, at, other, weight);
    }

    double heightM() {
        return end.loadout().heightM();
    }
}
