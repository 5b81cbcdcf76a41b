package handreach.cli;

import handreach.reach.Progress;
import java.io.PrintWriter;
import java.util.concurrent.atomic.AtomicBoolean;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/** Shows progress on a terminal; where output is not a terminal it says nothing. Ctrl-C ends the program as usual. */
final class ConsoleProgress implements Progress, AutoCloseable {
    private static final int STEPS = 100;
    private final AtomicBoolean closed = new AtomicBoolean();
    private final ProgressBar bar;

    private ConsoleProgress(ProgressBar bar) {
        this.bar = bar;
    }

    static ConsoleProgress on(PrintWriter err) {
        if (System.console() == null) return new ConsoleProgress(null);
        ProgressBar bar = new ProgressBarBuilder()
                .setInitialMax(STEPS)
                .setStyle(ProgressBarStyle.ASCII)
                .setTaskName("working")
                .setConsumer(new me.tongfei.progressbar.DelegatingProgressBarConsumer(text -> {
                    err.print("\r" + text);
                    err.flush();
                }))
                .setUpdateIntervalMillis(250)
                .build();
        return new ConsoleProgress(bar);
    }

    @Override
    public void done(String what, double share) {
        if (bar == null || closed.get()) return;
        bar.setExtraMessage(what);
        bar.stepTo(Math.round(share * STEPS));
    }

    @Override
    public boolean isCancelled() {
        return Thread.currentThread().isInterrupted();
    }

    @Override
    public void close() {
        if (bar != null && closed.compareAndSet(false, true)) bar.close();
    }
}
