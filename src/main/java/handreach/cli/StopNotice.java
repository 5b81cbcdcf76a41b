package handreach.cli;

import java.io.PrintWriter;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;

/** The one line that says that a command was stopped, told once: by whoever stops it from outside, or by the command that notices. */
final class StopNotice implements AutoCloseable {
    static final String WORDS =
            "Stopped before it was done. What was written until then is whole; the rest was not written.";

    private final PrintWriter err;
    private final AtomicBoolean isTold = new AtomicBoolean();
    private final Thread hook = new Thread(this::end, "stop notice");
    private volatile boolean isEnding;
    private volatile BooleanSupplier isToldByOther = () -> false;

    private StopNotice(PrintWriter err) {
        this.err = err;
    }

    /** Listens for the signals that end the program, which keeps the exit code that is theirs, until the command is done. */
    static StopNotice on(PrintWriter err) {
        StopNotice notice = new StopNotice(err);
        try {
            Runtime.getRuntime().addShutdownHook(notice.hook);
        } catch (IllegalStateException already) {
            notice.isEnding = true;
        }
        return notice;
    }

    /** Whether the program is being ended; then whatever fails fails for that reason. */
    boolean isEnding() {
        return isEnding;
    }

    void tell() {
        if (!isTold.compareAndSet(false, true)) return;
        err.println(WORDS);
        err.flush();
    }

    /** Another program works in place of this one; a signal ends it first, and whether it told so is then asked. */
    void leaveTo(BooleanSupplier endOfOther) {
        isToldByOther = endOfOther;
    }

    private void end() {
        isEnding = true;
        if (!isToldByOther.getAsBoolean()) tell();
    }

    @Override
    public void close() {
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException ending) {
            // it has been told, and the signal ends the program
            isEnding = true;
        }
    }
}
