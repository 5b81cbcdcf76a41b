package handreach.desktop;

import handreach.reach.Progress;
import javafx.application.Platform;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/** Long work that a person watches and may stop. The work calls {@link #done}; the properties change on the screen thread. */
final class WatchedWork implements Progress {
    private static final long REFRESH_NS = 50_000_000;

    private final String what;
    private final ReadOnlyDoubleWrapper share = new ReadOnlyDoubleWrapper(-1);
    private final ReadOnlyStringWrapper step = new ReadOnlyStringWrapper("");
    private volatile boolean isStopped;
    private long lastShownNs;

    WatchedWork(String what) {
        this.what = what;
    }

    String what() {
        return what;
    }

    /** 0 to 1, or −1 while nothing is known. */
    ReadOnlyDoubleProperty share() {
        return share.getReadOnlyProperty();
    }

    ReadOnlyStringProperty step() {
        return step.getReadOnlyProperty();
    }

    void stop() {
        isStopped = true;
    }

    @Override
    public void done(String stepName, double stepShare) {
        synchronized (this) {
            long now = System.nanoTime();
            if (stepShare < 1 && now - lastShownNs < REFRESH_NS) return;
            lastShownNs = now;
        }
        Platform.runLater(() -> {
            step.set(stepName);
            share.set(stepShare);
        });
    }

    @Override
    public boolean isCancelled() {
        return isStopped;
    }
}
