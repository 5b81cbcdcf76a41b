package handreach.propagation.radial;

/** A loss model that is walked outwards along radials, carrying along what it needs of the ground behind the receiver. */
interface RadialModel {
    /** Begins the radial on which the walker has just started. */
    default void start(HorizonWalker at) {
        // most carry nothing along
    }

    /** Basic transmission loss to where the walker stands, dB; the places of one radial come in order of distance. */
    double lossDb(HorizonWalker at);
}
