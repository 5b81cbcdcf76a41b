package handreach.atlas.spread;

import java.io.Serializable;
import java.nio.file.Path;

/** What is carried to another machine: a few plain values from which, with the files that travel beside it, the work is opened there. */
@FunctionalInterface
public interface Errand extends Serializable {
    /** Opens the work, once for each virtual machine. */
    BlockWork open(Path shipped);
}
