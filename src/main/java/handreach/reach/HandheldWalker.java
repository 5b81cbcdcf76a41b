package handreach.reach;

import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import handreach.propagation.handheld.HandheldWalk;
import handreach.terrain.Cover;

/** The {@code handheld} model along rays: one string walked outwards, and the unbroken woodland from either end. */
final class HandheldWalker implements RadialWalker {
    private static final Cover[] COVERS = Cover.values();

    private final PathConditions conditions;
    private final Terminals terminals;
    private final double freeSpaceAtKmDb;
    private HandheldWalk walk;
    private Ray ray;
    private int taken;
    private boolean endsAtReceiver;
    private final WoodRuns woods = new WoodRuns();
    private double distanceKm;
    private double groundM;
    private int cover;

    HandheldWalker(Terminals terminals, PathConditions conditions) {
        this.conditions = conditions;
        this.terminals = terminals;
        this.freeSpaceAtKmDb =
                20 * Math.log10(4 * Math.PI * 1000 / conditions.frequency().wavelengthM());
        this.walk = new HandheldWalk(conditions, terminals, 2048);
    }

    @Override
    public void start(Ray onto) {
        begin(onto);
        walk.start(ray.groundM[0], COVERS[ray.cover[0]], ray.standingM[ray.cover[0]], 0);
        endsAtReceiver = false;
    }

    private void begin(Ray onto) {
        ray = onto;
        if (walk.capacity() < ray.count + 2)
            walk = new HandheldWalk(conditions, terminals, ray.count + ray.count / 4 + 2);
        taken = 0;
        woods.start(ray);
    }

    @Override
    public void path(Ray onto) {
        int last = onto.known - 1;
        begin(onto);
        walk.lay(1000 * onto.xKm[last] / last, onto.groundM, last, COVERS[ray.cover[0]], ray.standingM[ray.cover[0]]);
        if (ray.isWoodless) woods.passOpen(last - 1);
        else for (int i = 1; i < last; i++) woods.pass(i);
        taken = last - 1;
        distanceKm = onto.xKm[last];
        groundM = onto.groundM[last];
        cover = onto.cover[last];
    }

    @Override
    public void advanceTo(double limitKm) {
        while (taken + 1 < ray.known && ray.xKm[taken + 1] < limitKm) {
            taken++;
            end(1000 * ray.xKm[taken], ray.groundM[taken]);
            endsAtReceiver = false;
            if (!ray.isWoodless) woods.pass(taken);
        }
    }

    @Override
    public void stand(double atKm, double onGroundM, int coverOrdinal) {
        distanceKm = atKm;
        groundM = onGroundM;
        cover = coverOrdinal;
        end(1000 * atKm, onGroundM);
        endsAtReceiver = true;
    }

    /** Lets the path end here: in place of a receiver that stood behind the samples, or beyond the last sample. */
    private void end(double distanceM, double onGroundM) {
        if (endsAtReceiver) walk.moveEnd(distanceM, onGroundM);
        else walk.add(distanceM, onGroundM);
    }

    @Override
    public double lossDb() {
        walk.nearWoodRun(woods.nearM(taken, distanceKm, cover));
        double riseKm = (groundM + terminals.rxHeightM() - ray.groundM[0] - terminals.txHeightM()) / 1000;
        return freeSpaceAtKmDb
                + 10 * Math.log10(distanceKm * distanceKm + riseKm * riseKm)
                + walk.excessDb(COVERS[cover], ray.standingM[cover], woods.farM(taken, distanceKm, cover));
    }

    @Override
    public double departureDeg() {
        return walk.departureDeg();
    }

    @Override
    public double arrivalDeg() {
        return walk.arrivalDeg();
    }

    @Override
    public boolean isInSight() {
        return walk.inSight();
    }
}
