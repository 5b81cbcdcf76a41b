package handreach.propagation.radial;

import handreach.propagation.GroundFit;
import handreach.propagation.PathConditions;
import handreach.propagation.TwoRay;

/** Direct and reflected ray over the plane that fits the ground best, which running sums give at every distance. */
final class TwoRayRadial implements RadialModel {
    private final PathConditions conditions;
    private final GroundFit plane = new GroundFit();
    private int taken;

    TwoRayRadial(PathConditions conditions) {
        this.conditions = conditions;
    }

    @Override
    public void start(HorizonWalker at) {
        plane.start(0, at.sourceGroundM());
        taken = 0;
    }

    @Override
    public double lossDb(HorizonWalker at) {
        Radial radial = at.radial();
        while (taken < at.last()) {
            taken++;
            plane.take(radial.xKm[taken], radial.groundM[taken]);
        }
        plane.end(at.xKm(), at.groundM());
        return at.freeSpaceDb()
                + TwoRay.excessDb(
                        1000 * at.xKm(),
                        at.sourceTipM() - plane.underTxM(),
                        at.tipM() - plane.underRxM(),
                        conditions.frequency(),
                        conditions.polarization(),
                        conditions.ground());
    }
}
