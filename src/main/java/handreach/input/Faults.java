package handreach.input;

import java.util.ArrayList;
import java.util.List;

/** Collects the faults of one input, so that all are told at once. Not for use by several threads. */
public final class Faults {
    private final List<Fault> found = new ArrayList<>();

    public void add(String source, int line, String text) {
        found.add(new Fault(source, line, text));
    }

    public void addAll(InputFault other) {
        found.addAll(other.faults());
    }

    public boolean isEmpty() {
        return found.isEmpty();
    }

    public List<Fault> list() {
        return List.copyOf(found);
    }

    /** Speaks if anything was found. */
    public void throwIfAny() {
        if (!found.isEmpty()) throw new InputFault(found);
    }
}
