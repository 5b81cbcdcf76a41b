package handreach.atlas.spread;

/** Reckons blocks out of files that were laid out on this machine; called by several threads. */
@FunctionalInterface
public interface BlockWork {
    /** The rows of a block as they are kept; an {@code InputFault} where they cannot be had. */
    byte[] rows(int block);
}
