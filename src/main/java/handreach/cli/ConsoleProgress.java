package handreach.cli;

import handreach.reach.Progress;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/**
 * Shows progress on a terminal, what is being done and how long it will take; where nobody looks at standard error it says nothing.
 * Ctrl-C ends the program as usual.
 */
final class ConsoleProgress implements Progress, AutoCloseable {
    /** Set where somebody looks at standard error though this process cannot see it: another passes it on. */
    static final String WATCHED = "handreach.anew.watched";

    private static final int STEPS = 100;
    private final AtomicBoolean closed = new AtomicBoolean();
    private final ProgressBar bar;
    private final PrintWriter err;
    /** Longest line shown so far: so much is wiped before the answer. */
    private final AtomicInteger shown = new AtomicInteger();

    private volatile String doing = "";

    ConsoleProgress(PrintWriter err, boolean isWatched) {
        this.err = err;
        this.bar = isWatched ? bar() : null;
    }

    static ConsoleProgress on(PrintWriter err) {
        return new ConsoleProgress(err, isWatched());
    }

    /** Whether what goes to standard error is seen as it comes. */
    static boolean isWatched() {
        return System.getProperty(WATCHED) != null || System.console() != null || isTerminal(Path.of("/dev/stderr"));
    }

    /** The console is none where the answer goes into a file; standard error may be a terminal all the same. */
    private static boolean isTerminal(Path stream) {
        try {
            return stream.toRealPath().toString().matches("/dev/(pts/\\d+|tty.*)");
        } catch (IOException none) {
            return false;
        }
    }

    private ProgressBar bar() {
        return new ProgressBarBuilder()
                .setInitialMax(STEPS)
                .setStyle(ProgressBarStyle.ASCII)
                .setTaskName("working")
                .setConsumer(new me.tongfei.progressbar.DelegatingProgressBarConsumer(this::show))
                .setUpdateIntervalMillis(250)
                .build();
    }

    private void show(String text) {
        shown.accumulateAndGet(text.length(), Math::max);
        err.print("\r" + text);
        err.flush();
    }

    /** Each work has its own share and its own time to go. */
    @Override
    public void done(String what, double share) {
        if (bar == null || closed.get()) return;
        if (!what.equals(doing)) {
            doing = what;
            bar.reset();
        }
        bar.setExtraMessage(what);
        bar.stepTo(Math.round(share * STEPS));
    }

    @Override
    public boolean isCancelled() {
        return Thread.currentThread().isInterrupted();
    }

    @Override
    public void close() {
        if (bar == null || !closed.compareAndSet(false, true)) return;
        bar.close();
        err.print("\r" + " ".repeat(shown.get()) + "\r");
        err.flush();
    }
}
