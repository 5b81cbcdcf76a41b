package handreach.reach;

import handreach.profile.Profile;
import handreach.propagation.LossModel;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;

/**
 * Any model along a radial, by cutting a profile for each receiver: the work grows with the square of the length. For models that
 * carry nothing along.
 */
final class PerPathRadial implements RadialModel {
    private final LossModel model;
    private final Terminals terminals;
    private final PathConditions conditions;

    PerPathRadial(LossModel model, Terminals terminals, PathConditions conditions) {
        this.model = model;
        this.terminals = terminals;
        this.conditions = conditions;
    }

    @Override
    public void start(Standpoint at) {
        // nothing is carried along
    }

    @Override
    public double lossDb(Standpoint at) {
        Ray ray = at.ray();
        Profile profile = ray.profile(at.last() + 1, at.xKm(), at.groundM(), at.cover());
        return model.loss(profile, terminals, conditions).lossDb();
    }
}
