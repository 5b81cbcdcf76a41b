package handreach.budget;

import handreach.loadout.Loadout;
import java.util.List;

/**
 * One end of a link.
 *
 * @param loadout what the person carries
 * @param noise noise at this end
 * @param posture how the person stands
 * @param extras further lines of this end, such as feed loss; they count on transmit and on receive
 */
public record LinkEnd(Loadout loadout, SiteNoise noise, Posture posture, List<ExtraLine> extras) {
    public LinkEnd {
        extras = List.copyOf(extras);
    }

    public static LinkEnd of(Loadout loadout, SiteNoise noise) {
        return new LinkEnd(loadout, noise, Posture.UPRIGHT, List.of());
    }
}
