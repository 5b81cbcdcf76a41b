package handreach.propagation.radial;

import handreach.propagation.FreeSpace;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import handreach.propagation.handheld.Handheld;
import handreach.propagation.handheld.HandheldWalk;
import handreach.terrain.Cover;
import java.util.List;
import java.util.Optional;

/** The {@code handheld} model along radials: one string walked outwards, and the unbroken woodland from either end. */
final class HandheldWalker implements RadialWalker {
    private static final Cover[] COVERS = Cover.values();

    private final PathConditions conditions;
    private final Terminals terminals;
    private final double atOneKmDb;
    private HandheldWalk walk;
    private Radial radial;
    private int taken;
    /** The nearest sample on which something stands, as far as it has been asked for. */
    private int firstStanding;

    private boolean endsAtReceiver;
    private final WoodRuns woods = new WoodRuns();
    private double distanceKm;
    private double groundM;
    private int cover;

    HandheldWalker(Terminals terminals, PathConditions conditions) {
        this.conditions = conditions;
        this.terminals = terminals;
        this.atOneKmDb = FreeSpace.atOneKmDb(conditions.frequency());
        this.walk = new HandheldWalk(conditions, terminals, 2048);
    }

    @Override
    public void start(Radial onto) {
        begin(onto);
        walk.start(radial.groundM[0], COVERS[radial.cover[0]], radial.standingM[radial.cover[0]], 0);
        endsAtReceiver = false;
    }

    private void begin(Radial onto) {
        radial = onto;
        if (walk.capacity() < radial.count + 2)
            walk = new HandheldWalk(conditions, terminals, radial.count + radial.count / 4 + 2);
        taken = 0;
        firstStanding = 1;
        woods.start(radial);
    }

    @Override
    public void path(Radial onto) {
        int last = onto.known - 1;
        begin(onto);
        walk.lay(
                1000 * onto.xKm[last] / last,
                onto.groundM,
                last,
                COVERS[radial.cover[0]],
                radial.standingM[radial.cover[0]]);
        if (radial.isWoodless) woods.passOpen(last - 1);
        else for (int i = 1; i < last; i++) woods.pass(i);
        taken = last - 1;
        distanceKm = onto.xKm[last];
        groundM = onto.groundM[last];
        cover = onto.cover[last];
    }

    @Override
    public void advanceTo(double limitKm) {
        while (taken + 1 < radial.known && radial.xKm[taken + 1] < limitKm) {
            taken++;
            end(1000 * radial.xKm[taken], radial.groundM[taken]);
            endsAtReceiver = false;
            if (!radial.isWoodless) woods.pass(taken);
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
        double riseM = groundM + terminals.rxHeightM() - radial.groundM[0] - terminals.txHeightM();
        return FreeSpace.slantDb(atOneKmDb, distanceKm, riseM)
                + walk.excessDb(COVERS[cover], radial.standingM[cover], woods.farM(taken, distanceKm, cover));
    }

    @Override
    public Optional<List<String>> warnings() {
        while (firstStanding < taken && !stands(firstStanding)) firstStanding++;
        return Optional.of(Handheld.warnings(
                walk,
                radial.outline(Math.min(firstStanding, taken), distanceKm, groundM, cover),
                terminals,
                conditions));
    }

    /** Whether something stands on a sample of which the model would say that it is left out. */
    private boolean stands(int sample) {
        return radial.clutterM[sample] > 0 && COVERS[radial.cover[sample]] != Cover.WATER;
    }

    /** What height gains less in cover; asked after the loss. */
    double heightInCoverDb() {
        return walk.heightInCoverDb();
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
