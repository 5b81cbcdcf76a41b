package handreach.budget;

import handreach.loadout.Loadout;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One end of a link.
 *
 * @param loadout what the person carries
 * @param noise noise at this end
 * @param posture how the person stands
 * @param extras further lines of this end, such as feed loss; they count on transmit and on receive
 * @param desense what a transmitter beside it takes from its receiver; it counts on receive alone
 */
public record LinkEnd(
        Loadout loadout, SiteNoise noise, Posture posture, List<ExtraLine> extras, Optional<ExtraLine> desense) {
    public LinkEnd {
        extras = List.copyOf(extras);
    }

    public LinkEnd(Loadout loadout, SiteNoise noise, Posture posture, List<ExtraLine> extras) {
        this(loadout, noise, posture, extras, Optional.empty());
    }

    /** The same end with a transmitter beside its receiver. */
    public LinkEnd desensed(ExtraLine line) {
        return new LinkEnd(loadout, noise, posture, extras, Optional.of(line));
    }

    /** The same end with the path at this bearing from the wearer's front. */
    public LinkEnd facing(double pathFromFrontDeg) {
        Posture turned =
                new Posture(OptionalDouble.of(pathFromFrontDeg), posture.sideTiltDeg(), posture.towardsPathDeg());
        return new LinkEnd(loadout, noise, turned, extras, desense);
    }
}
