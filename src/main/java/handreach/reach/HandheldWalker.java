package handreach.reach;

import handreach.propagation.HandheldWalk;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import handreach.terrain.Cover;

/** The {@code handheld} model along rays: one string walked outwards, and the unbroken woodland from either end. */
final class HandheldWalker implements RadialWalker {
    private static final int WOOD = Cover.WOODLAND.ordinal();
    private static final Cover[] COVERS = Cover.values();

    private final PathConditions conditions;
    private final Terminals terminals;
    private final double freeSpaceAtKmDb;
    private HandheldWalk walk;
    private Ray ray;
    private int taken;
    private boolean endsAtReceiver;
    private int firstOpen;
    private int lastOpen;
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
        firstOpen = ray.cover[0] == WOOD ? -1 : 0;
        lastOpen = firstOpen;
    }

    @Override
    public void path(Ray onto) {
        int last = onto.known - 1;
        begin(onto);
        walk.lay(1000 * onto.xKm[last] / last, onto.groundM, last, COVERS[ray.cover[0]], ray.standingM[ray.cover[0]]);
        if (ray.isWoodless) lastOpen = last - 1;
        else for (taken = 1; taken < last; taken++) passCover();
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
            if (!ray.isWoodless) passCover();
        }
    }

    private void passCover() {
        if (ray.cover[taken] == WOOD) return;
        lastOpen = taken;
        if (firstOpen < 0) firstOpen = taken;
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
        walk.nearWoodRun(nearWoodM());
        double riseKm = (groundM + terminals.rxHeightM() - ray.groundM[0] - terminals.txHeightM()) / 1000;
        return freeSpaceAtKmDb
                + 10 * Math.log10(distanceKm * distanceKm + riseKm * riseKm)
                + walk.excessDb(COVERS[cover], ray.standingM[cover], farWoodM());
    }

    /** Edges of a wood lie half-way between the last sample in it and the first outside. */
    private double nearWoodM() {
        if (ray.cover[0] != WOOD) return 0;
        if (firstOpen >= 0) return 500 * (ray.xKm[firstOpen - 1] + ray.xKm[firstOpen]);
        return cover == WOOD ? 1000 * distanceKm : 500 * (ray.xKm[taken] + distanceKm);
    }

    private double farWoodM() {
        if (cover != WOOD) return 0;
        if (lastOpen < 0) return 1000 * distanceKm;
        double insideKm = lastOpen == taken ? distanceKm : ray.xKm[lastOpen + 1];
        return 1000 * distanceKm - 500 * (ray.xKm[lastOpen] + insideKm);
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
