package handreach.study;

import handreach.uncertainty.Interval;
import java.util.List;

/**
 * Who of a plan is reached with one loadout beside another, both ways.
 *
 * @param control places that are reached when everybody carries the control; a route or sector counts by the share of its points
 * @param reached the same with the loadout
 * @param gain95 95 % interval of the second less the first, from the doubt of their difference alone
 * @param of all places
 * @param changes places of which the one reaches more points than the other
 */
public record PlacesGain(double control, double reached, Interval gain95, double of, List<Change> changes) {
    /**
     * A place of which more or less is reached.
     *
     * @param place its name
     * @param before points reached with the control
     * @param now points reached with the loadout
     * @param of all its points
     */
    public record Change(String place, int before, int now, int of) {}

    public PlacesGain {
        changes = List.copyOf(changes);
    }

    public double gain() {
        return reached - control;
    }
}
