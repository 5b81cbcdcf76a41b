package handreach.report;

import java.util.Optional;

/** The program as files and its own option name it. */
public final class Program {
    private Program() {}

    /** As written into the jar; empty where it was not built as one. */
    public static Optional<String> version() {
        return Optional.ofNullable(Program.class.getPackage().getImplementationVersion());
    }

    /** Name and, where it is known, version. */
    static String name() {
        return version().map(number -> "Handreach " + number).orElse("Handreach");
    }
}
