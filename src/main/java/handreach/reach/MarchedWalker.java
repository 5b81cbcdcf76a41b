package handreach.reach;

import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import handreach.propagation.march.CoveredMarch;
import handreach.terrain.Cover;
import java.util.List;

/**
 * A march read along its ray: the loss over bare ground at any distance, and the woods and towns around both ends. A march gives no
 * angles; those and the sight come from the string over the bare ground, as in every model.
 */
final class MarchedWalker implements RadialWalker {
    private static final Cover[] COVERS = Cover.values();

    private final RadialWalker string;
    private final WoodRuns woods = new WoodRuns();
    private CoveredMarch march;
    private Ray ray;
    private int taken;
    private double distanceKm;
    private int cover;
    private double woodDb;

    MarchedWalker(Terminals terminals, PathConditions conditions) {
        this.string = RadialWalkers.of(LossModels.FREE_SPACE, terminals, conditions);
    }

    /** The march that is read from the next ray on: along that ray, for these heights. */
    MarchedWalker over(CoveredMarch next) {
        march = next;
        return this;
    }

    @Override
    public void start(Ray onto) {
        ray = onto;
        taken = 0;
        string.start(onto);
        woods.start(onto);
    }

    @Override
    public void advanceTo(double limitKm) {
        string.advanceTo(limitKm);
        while (taken + 1 < ray.known && ray.xKm[taken + 1] < limitKm) woods.pass(++taken);
    }

    @Override
    public void stand(double atKm, double groundM, int coverOrdinal) {
        string.stand(atKm, groundM, coverOrdinal);
        distanceKm = atKm;
        cover = coverOrdinal;
    }

    /** Whether the samples on both sides of a distance are known. */
    boolean isKnown(double atKm) {
        return Math.min(inner(atKm) + 1, ray.count - 1) < ray.known;
    }

    /** The sample before a distance; half a millimetre less, since the farthest place stands on the last sample. */
    private int inner(double atKm) {
        return Math.max(1, (int) (atKm / ray.xKm[1] - 1e-6));
    }

    @Override
    public double lossDb() {
        int inner = inner(distanceKm);
        int outer = outer();
        double share = Math.max(0, Math.min(1, distanceKm / ray.xKm[1] - inner));
        double standingM = ray.standingM[cover];
        woodDb = march.woodDb(
                woods.nearM(taken, distanceKm, cover),
                woods.farM(taken, distanceKm, cover),
                standingM,
                string.departureDeg(),
                string.arrivalDeg());
        double before = overTownDb(inner, standingM);
        return before + share * (overTownDb(outer, standingM) - before) + woodDb;
    }

    private int outer() {
        return Math.min(inner(distanceKm) + 1, ray.known - 1);
    }

    private double overTownDb(int sample, double standingM) {
        return march.bare().meanLossDb(sample) + march.townDb(sample, COVERS[cover], standingM);
    }

    /** What is doubtful about the path to where it stands; asked after the loss. */
    List<String> warnings() {
        return march.warnings(outer(), COVERS[cover], woodDb);
    }

    /** What is doubtful about the march as a whole. */
    List<String> warningsOfMarch() {
        return march.bare().warnings();
    }

    @Override
    public double departureDeg() {
        return string.departureDeg();
    }

    @Override
    public double arrivalDeg() {
        return string.arrivalDeg();
    }

    @Override
    public boolean isInSight() {
        return string.isInSight();
    }
}
