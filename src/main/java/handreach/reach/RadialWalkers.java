package handreach.reach;

import handreach.propagation.Handheld;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;

/** The models by name, as they walk along radials. */
final class RadialWalkers {
    /** Not a loss model: free space with the line of sight beside it. */
    static final String LINE_OF_SIGHT = "line-of-sight";

    private RadialWalkers() {}

    /** A walker for one thread; names as in {@code --model}. */
    static RadialWalker of(String name, Terminals terminals, PathConditions conditions) {
        if (name.equals("handheld")) return new HandheldWalker(terminals, conditions);
        RadialModel model = switch (name) {
            case "free-space", LINE_OF_SIGHT -> new FreeSpaceRadial(conditions);
            case "two-ray" -> new TwoRayRadial(conditions);
            case "delta-bullington" -> new DeltaBullingtonRadial(conditions);
            default -> new PerPathRadial(named(name), terminals, conditions);
        };
        return new StandpointWalker(terminals, conditions.atmosphere().effectiveRadiusKm(), model);
    }

    /** The same model for single paths. */
    static LossModel named(String name) {
        if (name.equals("handheld")) return new Handheld();
        return LossModels.named(name.equals(LINE_OF_SIGHT) ? "free-space" : name)
                .orElseThrow(() -> new IllegalArgumentException("no area model is called " + name));
    }
}
