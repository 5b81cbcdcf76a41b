package handreach.propagation.radial;

import handreach.propagation.EndCover;
import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.Standing;
import handreach.propagation.Terminals;
import handreach.propagation.march.CoveredMarch;
import handreach.terrain.Cover;
import java.util.List;
import java.util.Optional;

/**
 * A march read along its radial: its loss at any distance, and what woods and towns around both ends add. A march gives no
 * angles; those and the sight come from the string over the bare ground, as in every model.
 */
public final class MarchedWalker implements RadialWalker {
    private static final Cover[] COVERS = Cover.values();

    private final RadialWalker string;
    /** Says what height gains less in cover; none where no antenna is higher than a hand, or the march goes through the cover. */
    private final HandheldWalker height;

    private final WoodRuns woods = new WoodRuns();
    private CoveredMarch march;
    private Radial radial;
    private int taken;
    private double distanceKm;
    private int cover;
    private double woodDb;

    public MarchedWalker(Terminals terminals, PathConditions conditions) {
        this.string = RadialWalker.of(LossModels.FREE_SPACE, terminals, conditions);
        boolean isCut = conditions.standing() == Standing.AT_ENDS && EndCover.mayCutGain(terminals);
        this.height = isCut ? new HandheldWalker(terminals, conditions) : null;
    }

    /** The march that is read from the next radial on: along it, for these heights. */
    public MarchedWalker over(CoveredMarch next) {
        march = next;
        return this;
    }

    @Override
    public void start(Radial onto) {
        radial = onto;
        taken = 0;
        string.start(onto);
        if (height != null) height.start(onto);
        woods.start(onto);
    }

    @Override
    public void advanceTo(double limitKm) {
        string.advanceTo(limitKm);
        if (height != null) height.advanceTo(limitKm);
        while (taken + 1 < radial.known && radial.xKm[taken + 1] < limitKm) woods.pass(++taken);
    }

    @Override
    public void stand(double atKm, double groundM, int coverOrdinal) {
        string.stand(atKm, groundM, coverOrdinal);
        if (height != null) height.stand(atKm, groundM, coverOrdinal);
        distanceKm = atKm;
        cover = coverOrdinal;
    }

    /** Whether the samples on both sides of a distance are known. */
    public boolean isKnown(double atKm) {
        return Math.min(inner(atKm) + 1, radial.count - 1) < radial.known;
    }

    /** The sample before a distance; half a millimetre less, since the farthest place stands on the last sample. */
    private int inner(double atKm) {
        return Math.max(1, (int) (atKm / radial.xKm[1] - 1e-6));
    }

    @Override
    public double lossDb() {
        int inner = inner(distanceKm);
        int outer = outer();
        double share = Math.max(0, Math.min(1, distanceKm / radial.xKm[1] - inner));
        double standingM = radial.standingM[cover];
        woodDb = march.woodDb(
                woods.nearM(taken, distanceKm, cover),
                woods.farM(taken, distanceKm, cover),
                standingM,
                string.departureDeg(),
                string.arrivalDeg());
        double cut = heightInCoverDb();
        double fieldDb = march.marched(COVERS[cover], standingM).meanLossDb(inner, share);
        double before = coverDb(inner, standingM, cut);
        return fieldDb + before + share * (coverDb(outer, standingM, cut) - before) + woodDb;
    }

    private int outer() {
        return Math.min(inner(distanceKm) + 1, radial.known - 1);
    }

    private double heightInCoverDb() {
        if (height == null) return 0;
        height.lossDb();
        return height.heightInCoverDb();
    }

    private double coverDb(int sample, double standingM, double cutDb) {
        return Math.max(cutDb, march.townDb(sample, COVERS[cover], standingM));
    }

    /** What is doubtful about the path to where it stands; asked after the loss. */
    @Override
    public Optional<List<String>> warnings() {
        return Optional.of(march.warnings(outer(), COVERS[cover], radial.standingM[cover], woodDb));
    }

    /** What is doubtful about the march as a whole. */
    public List<String> warningsOfMarch() {
        return march.warningsOfMarch();
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
