package handreach.reach;

/** A loss model that walks outwards along rays, carrying along what it needs of the ground behind the receiver. */
interface RadialModel {
    /** Begins the ray on which the standpoint has just started. */
    void start(Standpoint at);

    /** Basic transmission loss to the standpoint, dB; standpoints of one ray come in order of distance. */
    double lossDb(Standpoint at);
}
