package handreach.reach;

import handreach.propagation.Terminals;

/**
 * A receiver behind the samples of a ray, moved outwards along it: what the ground between makes of the line to the source.
 * Everything that all models share is found here once: the stretched string, sight, the angles at both ends.
 */
final class Standpoint {
    private final double earthKm;
    private final double curve;
    private final double txHeightM;
    private final double rxHeightM;
    private final Skyline skyline = new Skyline();

    private Ray ray;
    private int last;
    private double sourceTipM;

    private double xKm;
    private double groundM;
    private double flatTipM;
    private int cover;
    private int tangent;

    Standpoint(Terminals terminals, double earthKm) {
        this.earthKm = earthKm;
        this.curve = 500 / earthKm;
        this.txHeightM = terminals.txHeightM();
        this.rxHeightM = terminals.rxHeightM();
    }

    /** Begins a ray; its ground under the source is known. */
    void start(Ray onto) {
        ray = onto;
        ray.flatten(earthKm);
        last = 0;
        sourceTipM = onto.groundM[0] + txHeightM;
        skyline.start(0, sourceTipM, 0);
    }

    /** Takes in the samples nearer than this distance, known ones only. */
    void advanceTo(double distanceKm) {
        while (last + 1 < ray.known && ray.xKm[last + 1] < distanceKm) {
            last++;
            skyline.push(ray.xKm[last], ray.flatM[last], last);
        }
    }

    /** Stands on this ground behind the samples taken in. */
    void stand(double distanceKm, double onGroundM, int coverOrdinal) {
        xKm = distanceKm;
        groundM = onGroundM;
        cover = coverOrdinal;
        flatTipM = onGroundM + rxHeightM - curve * distanceKm * distanceKm;
        tangent = skyline.tangent(distanceKm, flatTipM);
    }

    Ray ray() {
        return ray;
    }

    Skyline skyline() {
        return skyline;
    }

    /** Index of the last sample between the source and the receiver; 0 when there is none. */
    int last() {
        return last;
    }

    double xKm() {
        return xKm;
    }

    double groundM() {
        return groundM;
    }

    int cover() {
        return cover;
    }

    /** Source antenna above sea level, m. */
    double sourceTipM() {
        return sourceTipM;
    }

    /** Receiving antenna above sea level, m. */
    double tipM() {
        return groundM + rxHeightM;
    }

    /** Receiving antenna in flattened coordinates, m. */
    double flatTipM() {
        return flatTipM;
    }

    double curve() {
        return curve;
    }

    double txHeightM() {
        return txHeightM;
    }

    double rxHeightM() {
        return rxHeightM;
    }

    /** Vertex of the skyline that is the receiver's horizon; 0 when it sees the source. */
    int tangent() {
        return tangent;
    }

    boolean isInSight() {
        return tangent == 0;
    }

    /** Slope from the source antenna to its horizon or to the receiver, flattened, m/km. */
    double departureSlope() {
        return tangent == 0 ? (flatTipM - sourceTipM) / xKm : skyline.slope(1);
    }

    /** Slope from the receiver back to its horizon or to the source, flattened, m/km. */
    double arrivalSlope() {
        return (skyline.heightM(tangent) - flatTipM) / (xKm - skyline.xKm(tangent));
    }

    /** Elevation angle at the source, degrees. */
    double departureDeg() {
        return Math.toDegrees(Math.atan(departureSlope() / 1000));
    }

    /** Elevation angle at the receiver, degrees: its vertical leans by the curve of the way back. */
    double arrivalDeg() {
        return Math.toDegrees(Math.atan((arrivalSlope() - 2 * curve * xKm) / 1000));
    }
}
