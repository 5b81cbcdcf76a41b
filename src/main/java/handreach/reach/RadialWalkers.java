package handreach.reach;

import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;

/** The loss models, as they walk along radials. */
final class RadialWalkers {
    private RadialWalkers() {}

    /** A walker for one thread. */
    static RadialWalker of(LossModel model, Terminals terminals, PathConditions conditions) {
        if (model.equals(LossModels.HANDHELD)) return new HandheldWalker(terminals, conditions);
        double radiusKm = conditions.atmosphere().effectiveRadiusKm();
        return new StandpointWalker(terminals, radiusKm, radial(model, terminals, conditions));
    }

    private static RadialModel radial(LossModel model, Terminals terminals, PathConditions conditions) {
        if (model.equals(LossModels.FREE_SPACE)) return new FreeSpaceRadial(conditions);
        if (model.equals(LossModels.TWO_RAY)) return new TwoRayRadial(conditions);
        if (model.equals(LossModels.DELTA_BULLINGTON)) return new DeltaBullingtonRadial(conditions);
        return new PerPathRadial(model, terminals, conditions);
    }
}
