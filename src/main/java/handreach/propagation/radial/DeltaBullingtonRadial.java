package handreach.propagation.radial;

import handreach.propagation.Bullington;
import handreach.propagation.DeltaBullington;
import handreach.propagation.GroundFit;
import handreach.propagation.KnifeEdge;
import handreach.propagation.PathConditions;

/**
 * {@link DeltaBullington} along a radial: horizons from the hull, the smooth surface from running sums, its lowering from the hull of
 * the ground as it is.
 */
final class DeltaBullingtonRadial implements RadialModel {
    private final PathConditions conditions;
    private final double earthKm;
    private final double wavelengthM;
    private final GroundFit fit = new GroundFit();
    private final RaisedGround raised = new RaisedGround();
    private int taken;

    DeltaBullingtonRadial(PathConditions conditions) {
        this.conditions = conditions;
        this.earthKm = conditions.atmosphere().effectiveRadiusKm();
        this.wavelengthM = conditions.frequency().wavelengthM();
    }

    @Override
    public void start(HorizonWalker at) {
        fit.start(0, at.sourceGroundM());
        raised.start(at.sourceTipM());
        taken = 0;
    }

    @Override
    public double lossDb(HorizonWalker at) {
        Radial radial = at.radial();
        while (taken < at.last()) {
            taken++;
            fit.take(radial.xKm[taken], radial.groundM[taken]);
            raised.take(radial.xKm[taken], radial.groundM[taken]);
        }
        fit.end(at.xKm(), at.groundM());
        return at.freeSpaceDb()
                + DeltaBullington.of(
                                at.isInSight() ? clearNu(at) : crossingNu(at),
                                raised.lowered(fit, at.xKm(), at.tipM()),
                                at.sourceTipM(),
                                at.tipM(),
                                radial.xKm,
                                at.last(),
                                at.xKm(),
                                earthKm,
                                conditions)
                        .lossDb();
    }

    private double crossingNu(HorizonWalker at) {
        double bulge = at.curve() * at.xKm();
        return Bullington.crossingNu(
                at.departureSlope() + bulge,
                at.arrivalSlope() - bulge,
                at.sourceTipM(),
                at.tipM(),
                at.xKm(),
                wavelengthM);
    }

    /** Largest ν of the samples below a clear ray; {@link KnifeEdge#CLEAR_NU}, which costs nothing, when none comes nearer. */
    private double clearNu(HorizonWalker at) {
        double scale = 0.002 * at.xKm() / wavelengthM;
        double clear = -(KnifeEdge.CLEAR_NU * KnifeEdge.CLEAR_NU) / scale;
        double worst =
                at.radial().flat.worstUnderRay(at.last() + 1, at.sourceTipM(), at.departureSlope(), at.xKm(), clear);
        // The root would lift a clear ray by a rounding error over the step that J(ν) takes at −0.78.
        if (worst <= clear) return KnifeEdge.CLEAR_NU;
        return worst < 0 ? -Math.sqrt(-worst * scale) : Math.sqrt(worst * scale);
    }
}
