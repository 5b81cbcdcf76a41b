package handreach.reach;

import handreach.propagation.PathConditions;
import handreach.propagation.TwoRay;

/** Direct and reflected ray over the plane that fits the ground best, which running sums give at every distance. */
final class TwoRayRadial implements RadialModel {
    private final PathConditions conditions;
    private final FreeSpaceRadial freeSpace;
    private final SmoothSums plane = new SmoothSums();

    TwoRayRadial(PathConditions conditions) {
        this.conditions = conditions;
        this.freeSpace = new FreeSpaceRadial(conditions);
    }

    @Override
    public void start(Standpoint at) {
        plane.start(at.ray());
    }

    @Override
    public double lossDb(Standpoint at) {
        plane.fit(at.last(), at.xKm(), at.groundM());
        double h1 = at.sourceTipM() - Math.min(plane.fitTxM(), at.ray().groundM[0]);
        double h2 = at.tipM() - Math.min(plane.fitRxM(), at.groundM());
        return freeSpace.lossDb(at)
                + TwoRay.excessDb(
                        1000 * at.xKm(),
                        h1,
                        h2,
                        conditions.frequency(),
                        conditions.polarization(),
                        conditions.ground());
    }
}
