package handreach.propagation.radial;

import handreach.profile.Profile;
import handreach.propagation.FreeSpace;
import handreach.propagation.Hull;
import handreach.propagation.PathConditions;
import handreach.propagation.PathGeometry;
import handreach.propagation.Terminals;

/**
 * A receiver behind the samples of a radial, moved outwards along it, and one loss model on top. What all models share is found here
 * once: the string over the ground to the source, sight, the angles at both ends.
 */
final class HorizonWalker implements RadialWalker {
    private final double earthKm;
    private final double curve;
    private final double atOneKmDb;
    private final Terminals terminals;
    private final RadialModel model;
    private final Hull hull = new Hull(64);

    private Radial radial;
    private int last;
    private double sourceTipM;

    private double xKm;
    private double groundM;
    private double flatTipM;
    private int cover;
    private int tangent;

    HorizonWalker(Terminals terminals, PathConditions conditions, RadialModel model) {
        this.earthKm = conditions.atmosphere().effectiveRadiusKm();
        this.atOneKmDb = FreeSpace.atOneKmDb(conditions.frequency());
        this.curve = 500 / earthKm;
        this.terminals = terminals;
        this.model = model;
    }

    @Override
    public void start(Radial onto) {
        radial = onto;
        radial.flatten(earthKm);
        last = 0;
        sourceTipM = onto.groundM[0] + terminals.txHeightM();
        hull.start(0, sourceTipM, 0);
        model.start(this);
    }

    @Override
    public void advanceTo(double distanceKm) {
        while (last + 1 < radial.known && radial.xKm[last + 1] < distanceKm) {
            last++;
            hull.push(radial.xKm[last], radial.flatM[last], last);
        }
    }

    @Override
    public void stand(double distanceKm, double onGroundM, int coverOrdinal) {
        xKm = distanceKm;
        groundM = onGroundM;
        cover = coverOrdinal;
        flatTipM = onGroundM + terminals.rxHeightM() - curve * distanceKm * distanceKm;
        tangent = hull.tangent(distanceKm, flatTipM);
    }

    @Override
    public double lossDb() {
        return model.lossDb(this);
    }

    Radial radial() {
        return radial;
    }

    /** The path to where it stands. */
    Profile profile() {
        return radial.profile(last + 1, xKm, groundM, cover);
    }

    /** Index of the last sample between the source and the receiver; 0 when there is none. */
    int last() {
        return last;
    }

    double xKm() {
        return xKm;
    }

    double freeSpaceDb() {
        return FreeSpace.slantDb(atOneKmDb, xKm, tipM() - sourceTipM);
    }

    double groundM() {
        return groundM;
    }

    double sourceGroundM() {
        return radial.groundM[0];
    }

    /** Source antenna above sea level, m. */
    double sourceTipM() {
        return sourceTipM;
    }

    /** Receiving antenna above sea level, m. */
    double tipM() {
        return groundM + terminals.rxHeightM();
    }

    double curve() {
        return curve;
    }

    @Override
    public boolean isInSight() {
        return tangent == 0;
    }

    /** Slope from the source antenna to its horizon or to the receiver, flattened, m/km. */
    double departureSlope() {
        return tangent == 0 ? (flatTipM - sourceTipM) / xKm : hull.slope(1);
    }

    /** Slope from the receiver back to its horizon or to the source, flattened, m/km. */
    double arrivalSlope() {
        return (hull.z(tangent) - flatTipM) / (xKm - hull.x(tangent));
    }

    @Override
    public double departureDeg() {
        return PathGeometry.elevationDeg(departureSlope() / 1000);
    }

    /** Its vertical leans by the curve of the way back. */
    @Override
    public double arrivalDeg() {
        return PathGeometry.elevationDeg((arrivalSlope() - 2 * curve * xKm) / 1000);
    }
}
