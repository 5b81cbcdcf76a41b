package handreach.reach;

/**
 * Walks outwards along rays and says of every place what a path from the source to it would be: loss, angles, sight. One per
 * thread, model and pair of heights.
 */
interface RadialWalker {
    /** Begins a ray; its ground under the source is known. */
    void start(Ray ray);

    /** Takes in the samples nearer than this distance, known ones only. */
    void advanceTo(double distanceKm);

    /** Stands behind the samples taken in; distances of one ray never fall. */
    void stand(double distanceKm, double groundM, int coverOrdinal);

    /** Basic transmission loss to where it stands, dB. */
    double lossDb();

    /** Elevation angle at the source, degrees; asked after the loss. */
    double departureDeg();

    /** Elevation angle where it stands, degrees; asked after the loss. */
    double arrivalDeg();

    /** Whether the antennas see each other; asked after the loss. */
    boolean isInSight();

    /** Goes straight to the last sample of a ray: the path that is cut there, and no other of that ray. */
    default void path(Ray ray) {
        int last = ray.known - 1;
        start(ray);
        advanceTo(ray.xKm[last]);
        stand(ray.xKm[last], ray.groundM[last], ray.cover[last]);
    }
}
