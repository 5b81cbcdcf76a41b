package handreach.reach;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.function.Supplier;

/**
 * A bounded pool for work that falls into numbered pieces. Each thread has a workspace of its own and takes the next piece when
 * it is free; pieces write to places that no other piece touches, so the result does not depend on who did what.
 */
public final class Workers {
    /** One piece of the work. */
    public interface Piece<W> {
        void work(W workspace, int number);
    }

    private final int threads;

    /** With this many threads, the caller's among them. */
    public Workers(int threads) {
        if (threads < 1 || threads > 256) throw new IllegalArgumentException(threads + " threads");
        this.threads = threads;
    }

    int threads() {
        return threads;
    }

    /** Does pieces 0 to count − 1, which need no workspace. */
    public void run(int count, IntConsumer piece, SubProgress stretch) {
        run(count, () -> piece, IntConsumer::accept, stretch);
    }

    /** Does pieces 0 to count − 1; progress runs over the given stretch of the whole. */
    public <W> void run(int count, Supplier<W> workspace, Piece<W> piece, SubProgress stretch) {
        AtomicInteger next = new AtomicInteger();
        AtomicInteger done = new AtomicInteger();
        int reportEvery = Math.max(1, count / 200);
        Runnable task = () -> {
            W own = workspace.get();
            for (int i = next.getAndIncrement(); i < count; i = next.getAndIncrement()) {
                stretch.goOn();
                piece.work(own, i);
                int finished = done.incrementAndGet();
                if (finished % reportEvery == 0 || finished == count) stretch.done((double) finished / count);
            }
        };
        int helpers = Math.min(threads, count) - 1;
        if (helpers < 1) {
            task.run();
            return;
        }
        ExecutorService pool = Executors.newFixedThreadPool(helpers, work -> {
            Thread thread = new Thread(work, "reach");
            thread.setDaemon(true);
            return thread;
        });
        try {
            List<Future<?>> running = new ArrayList<>();
            for (int i = 0; i < helpers; i++) running.add(pool.submit(task));
            RuntimeException failure = attempt(task, next, count);
            for (Future<?> other : running) failure = await(other, failure);
            if (failure != null) throw failure;
        } finally {
            pool.shutdownNow();
        }
    }

    private static RuntimeException attempt(Runnable task, AtomicInteger next, int count) {
        try {
            task.run();
            return null;
        } catch (RuntimeException failure) {
            next.set(count);
            return failure;
        }
    }

    private static RuntimeException await(Future<?> task, RuntimeException before) {
        try {
            task.get();
            return before;
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            return before != null ? before : new CancellationException("interrupted");
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof Error error) throw error;
            return before != null ? before : (RuntimeException) failed.getCause();
        }
    }
}
