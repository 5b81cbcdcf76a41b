package handreach.profile;

/** Radio-climatic zone of a stretch of path, Rec. ITU-R P.1812 section 3.2. */
public enum Zone {
    INLAND,
    COASTAL,
    SEA
}
