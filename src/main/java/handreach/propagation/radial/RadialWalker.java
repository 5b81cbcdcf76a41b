package handreach.propagation.radial;

import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import java.util.List;
import java.util.Optional;

/**
 * Walks outwards along radials and says of every place what a path from the source to it would be: loss, angles, sight. One per
 * thread, model and pair of heights.
 */
public interface RadialWalker {
    /**
     * A walker for one thread. Models that carry nothing along are asked for a path to every place anew: their work grows with the
     * square of the length.
     */
    static RadialWalker of(LossModel model, Terminals terminals, PathConditions conditions) {
        if (model.equals(LossModels.HANDHELD)) return new HandheldWalker(terminals, conditions);
        return new HorizonWalker(terminals, conditions, radial(model, terminals, conditions));
    }

    private static RadialModel radial(LossModel model, Terminals terminals, PathConditions conditions) {
        if (model.equals(LossModels.FREE_SPACE)) return HorizonWalker::freeSpaceDb;
        if (model.equals(LossModels.TWO_RAY)) return new TwoRayRadial(conditions);
        if (model.equals(LossModels.DELTA_BULLINGTON)) return new DeltaBullingtonRadial(conditions);
        return at -> model.loss(at.profile(), terminals, conditions).lossDb();
    }

    /** Begins a radial; its ground under the source is known. */
    void start(Radial radial);

    /** Takes in the samples nearer than this distance, known ones only. */
    void advanceTo(double distanceKm);

    /** Stands behind the samples taken in; distances of one radial never fall. */
    void stand(double distanceKm, double groundM, int coverOrdinal);

    /** Basic transmission loss to where it stands, dB. */
    double lossDb();

    /** Elevation angle at the source, degrees; asked after the loss. */
    double departureDeg();

    /** Elevation angle where it stands, degrees; asked after the loss. */
    double arrivalDeg();

    /** Whether the antennas see each other; asked after the loss. */
    boolean isInSight();

    /** What is doubtful about the path to where it stands, asked after the loss; nothing where only the single path can tell. */
    default Optional<List<String>> warnings() {
        return Optional.empty();
    }

    /** Goes straight to the last known sample: the path that is cut there, and no other of that radial. */
    default void path(Radial radial) {
        int last = radial.known - 1;
        start(radial);
        advanceTo(radial.xKm[last]);
        stand(radial.xKm[last], radial.groundM[last], radial.cover[last]);
    }
}
