package handreach.reach;

import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;

/** The models by name, as they walk along radials. */
final class RadialModels {
    private RadialModels() {}

    static RadialModel of(String name, Terminals terminals, PathConditions conditions) {
        return switch (name) {
            case "free-space", "line-of-sight" -> new FreeSpaceRadial(conditions);
            default -> throw new IllegalArgumentException("no area model " + name);
        };
    }
}
