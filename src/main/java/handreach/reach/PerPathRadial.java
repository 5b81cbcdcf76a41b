package handreach.reach;

import handreach.profile.Profile;
import handreach.profile.Zone;
import handreach.propagation.LossModel;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import handreach.terrain.Cover;
import java.util.Arrays;

/**
 * Any model along a radial, by cutting a profile for each receiver: the work grows with the square of the length. For models that
 * carry nothing along.
 */
final class PerPathRadial implements RadialModel {
    private static final Cover[] COVERS = Cover.values();

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
        int n = at.last() + 2;
        double[] distanceKm = Arrays.copyOf(ray.xKm, n);
        double[] heightM = Arrays.copyOf(ray.groundM, n);
        double[] clutterM = Arrays.copyOf(ray.clutterM, n);
        Cover[] cover = new Cover[n];
        for (int i = 0; i < n - 1; i++) cover[i] = COVERS[ray.cover[i]];
        distanceKm[n - 1] = at.xKm();
        heightM[n - 1] = at.groundM();
        cover[n - 1] = COVERS[at.cover()];
        clutterM[n - 1] = ray.standingM[at.cover()];
        Zone[] zone = new Zone[n];
        Arrays.fill(zone, Zone.INLAND);
        return model.loss(Profile.of(distanceKm, heightM, clutterM, cover, zone), terminals, conditions)
                .lossDb();
    }
}
