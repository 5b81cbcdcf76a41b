package handreach.reach;

/** Where an engine puts what it finds of a cell. */
interface CellSink {
    /** A known cell: loss dB, angles in degrees, sight, and what stands there. */
    void put(int cell, double lossDb, double departureDeg, double arrivalDeg, boolean inSight, int coverOrdinal);

    /** A cell whose path meets ground that no tile knows. */
    void putUnknown(int cell);
}
