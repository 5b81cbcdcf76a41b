package handreach.relay;

import handreach.budget.LinkEnd;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Somebody who must be served.
 *
 * @param name what the user calls it
 * @param group the route or sector it is a point of; empty for a single place
 * @param at where
 * @param end what is carried there
 * @param weight how much it counts, from 0
 * @param headingDeg way that people there face, clockwise from true north; empty where it may be any
 * @param isBase whether it is the base, which counts where one way of a talk is enough
 */
public record Party(
        String name,
        Optional<String> group,
        Position at,
        LinkEnd end,
        double weight,
        OptionalDouble headingDeg,
        boolean isBase) {
    public Party {
        if (!(weight >= 0) || Double.isInfinite(weight))
            throw new IllegalArgumentException(name + ": weight " + weight);
        if (name == null || at == null || end == null)
            throw new IllegalArgumentException("a demand leaves nothing out");
    }

    /** One of the crew. */
    public Party(
            String name, Optional<String> group, Position at, LinkEnd end, double weight, OptionalDouble headingDeg) {
        this(name, group, at, end, weight, headingDeg, false);
    }

    /** Facing any way. */
    public Party(String name, Optional<String> group, Position at, LinkEnd end, double weight) {
        this(name, group, at, end, weight, OptionalDouble.empty());
    }

    public Party(String name, Position at, LinkEnd end) {
        this(name, Optional.empty(), at, end, 1);
    }

    /** The same as the base. */
    public Party asBase() {
        return new Party(name, group, at, end, weight, headingDeg, true);
    }

    /** The same person with something else to carry. */
    public Party carrying(LinkEnd other) {
        return new Party(name, group, at, other, weight, headingDeg, isBase);
    }

    /** What is carried, with the path to a place from the front where it is known which way people face. */
    LinkEnd endTowards(Position other) {
        if (headingDeg.isEmpty() || GeodesicLine.distanceM(at, other) < 1) return end;
        return end.facing(GeodesicLine.between(at, other).azimuthDeg() - headingDeg.getAsDouble());
    }

    double heightM() {
        return end.loadout().heightM();
    }
}
