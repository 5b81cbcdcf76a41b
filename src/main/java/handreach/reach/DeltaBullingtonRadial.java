package handreach.reach;

import handreach.propagation.PathConditions;
import handreach.propagation.RadialDiffraction;
import handreach.propagation.SphericalEarth;

/**
 * Delta-Bullington along a radial: horizons from the stretched string, the smooth surface from running sums, its lowering from
 * the hull of the ground as it is.
 *
 * <p>Source: Rec. ITU-R P.526-15, section 4.5.
 */
final class DeltaBullingtonRadial implements RadialModel {
    private final PathConditions conditions;
    private final double earthKm;
    private final double wavelengthM;
    private final FreeSpaceRadial freeSpace;
    private final SmoothSums sums = new SmoothSums();
    private final RaisedGround raised = new RaisedGround();

    DeltaBullingtonRadial(PathConditions conditions) {
        this.conditions = conditions;
        this.earthKm = conditions.atmosphere().effectiveRadiusKm();
        this.wavelengthM = conditions.frequency().wavelengthM();
        this.freeSpace = new FreeSpaceRadial(conditions);
    }

    @Override
    public void start(Standpoint at) {
        sums.start(at.ray());
        raised.start(at.ray(), at.sourceTipM());
    }

    @Override
    public double lossDb(Standpoint at) {
        double d = at.xKm();
        sums.fit(at.last(), d, at.groundM());
        raised.lower(at);
        double surfaceTxM = Math.min(sums.fitTxM() - raised.loweredTxM(), at.ray().groundM[0]);
        double surfaceRxM = Math.min(sums.fitRxM() - raised.loweredRxM(), at.groundM());
        double h1 = at.sourceTipM() - surfaceTxM;
        double h2 = at.tipM() - surfaceRxM;
        double smoothDb = RadialDiffraction.levelDb(at.ray().xKm, at.last(), d, h1, h2, earthKm, wavelengthM);
        double sphereDb = SphericalEarth.lossDb(
                d, h1, h2, conditions.frequency(), earthKm, conditions.ground(), conditions.polarization());
        return freeSpace.lossDb(at) + profileDb(at) + Math.max(sphereDb - smoothDb, 0);
    }

    private double profileDb(Standpoint at) {
        double d = at.xKm();
        if (at.isInSight())
            return RadialDiffraction.inSightDb(
                    at.ray().worstClearNu(1, at.last() + 1, 0, at.sourceTipM(), d, at.flatTipM(), wavelengthM), d);
        double bulge = at.curve() * d;
        return RadialDiffraction.obstructedDb(
                at.departureSlope() + bulge, at.arrivalSlope() - bulge, at.sourceTipM(), at.tipM(), d, wavelengthM);
    }
}
