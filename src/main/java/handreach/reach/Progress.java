package handreach.reach;

import java.util.concurrent.CancellationException;

/** Where long work tells how far it is, and asks whether it should stop. Called from any thread, cheaply. */
public interface Progress {
    /** Nobody watches and nobody stops it. */
    Progress SILENT = new Progress() {
        @Override
        public void done(String what, double share) {}

        @Override
        public boolean isCancelled() {
            return false;
        }
    };

    /** The named work is done to this share, 0 to 1. */
    void done(String what, double share);

    /** Whether the person no longer wants the result. */
    boolean isCancelled();

    /** Ends the work here where nobody wants its result any more. */
    default void goOn() {
        if (isCancelled()) throw new CancellationException("stopped");
    }
}
