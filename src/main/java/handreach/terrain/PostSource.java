package handreach.terrain;

/** Where the posts of a tile are read from when they are first needed. */
interface PostSource {
    int rows();

    int columns();

    /** Reads all posts; an {@link handreach.input.InputFault} says what is wrong with the file. */
    Posts read();
}
