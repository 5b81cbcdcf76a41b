package handreach.atlas;

import handreach.propagation.LossModel;
import handreach.propagation.PathConditions;
import handreach.reach.DrawnArea;
import handreach.reach.ReachLink;
import java.util.List;
import java.util.Optional;

/**
 * What holds for whoever stands at a position.
 *
 * @param conditions frequency, ground, air and climate there
 * @param model loss model
 * @param links one a loadout, the first end at the position
 * @param drawn ground that counts in shares; empty where all does
 */
public record Standpoint(PathConditions conditions, LossModel model, List<ReachLink> links, Optional<DrawnArea> drawn) {
    public Standpoint {
        links = List.copyOf(links);
    }
}
