package handreach.input;

import java.util.List;
import java.util.stream.Collectors;

/** Faults the user can mend; never a defect of the program. Carries every fault of the input together. */
public final class InputFault extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final transient List<Fault> faults;

    public InputFault(List<Fault> faults) {
        super(faults.stream().map(Fault::message).collect(Collectors.joining("\n")));
        if (faults.isEmpty()) throw new IllegalArgumentException("an input fault without a fault");
        this.faults = List.copyOf(faults);
    }

    public InputFault(String source, int line, String text) {
        this(List.of(new Fault(source, line, text)));
    }

    public List<Fault> faults() {
        return faults;
    }
}
