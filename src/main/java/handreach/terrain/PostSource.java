package handreach.terrain;

import java.util.Optional;

/** Where the posts of a tile are read from when they are first needed. */
interface PostSource {
    int rows();

    int columns();

    /** Reads all posts; an {@link handreach.input.InputFault} says what is wrong with the file. */
    Posts read();

    /** What of the posts that were read last could not be had, and what to do about it; nothing where all are there. */
    default Optional<String> missing() {
        return Optional.empty();
    }

    /** What these posts tell against the file's being ground, and what to do about it; nothing where it may be. */
    default Optional<String> against(Posts read) {
        return Optional.empty();
    }
}
