package handreach.desktop;

import handreach.reach.Progress;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.animation.AnimationTimer;
import javafx.animation.PauseTransition;
import javafx.application.Platform;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import javafx.util.Duration;

/**
 * Does what takes time away from the screen thread and brings the answer back to it. Asked on the screen thread only.
 *
 * <p>Three ways to ask: {@link #inOrder} for short work whose every answer counts, {@link #latestOnly} for work where only the
 * answer to the last question counts, {@link #watched} for long work that a person watches and may stop.
 */
final class Worker {
    /** What pieces of work may take before one picture: their looks and their layout come on top. */
    private static final long PIECE_NS = 5_000_000;

    private static final ThreadFactory DAEMONS = work -> {
        Thread thread = new Thread(work, "handreach-work");
        thread.setDaemon(true);
        return thread;
    };

    private final ExecutorService pool = Executors.newCachedThreadPool(DAEMONS);
    private final ExecutorService line = Executors.newSingleThreadExecutor(DAEMONS);
    private final ObservableList<WatchedWork> watched = FXCollections.observableArrayList();
    private final AtomicInteger pending = new AtomicInteger();
    private final Consumer<Throwable> defects;
    private boolean isClosed;
    /** The picture that pieces of work hold up, by the time the toolkit gives it, and until when they may. */
    private long heldUp;

    private long heldUpUntil;

    /** {@code defects} is told of everything that went wrong and that nobody expected. */
    Worker(Consumer<Throwable> defects) {
        this.defects = defects;
    }

    /** Whether nothing is being worked on and no answer is on its way. */
    boolean isIdle() {
        return pending.get() == 0;
    }

    /** Long work now going on, oldest first. */
    ObservableList<WatchedWork> watched() {
        return watched;
    }

    /** Work that is done one after the other, each answered. */
    <T> void inOrder(Callable<T> work, Consumer<T> answer, Consumer<RuntimeException> fault) {
        if (isClosed) return;
        pending.incrementAndGet();
        line.execute(() -> finish(work, answer, fault, () -> true));
    }

    /** A line of questions of which only the newest is answered; the one before is told to stop. */
    LatestOnly latestOnly() {
        return new LatestOnly();
    }

    /** Long work with a name, shown while it goes on. */
    <T> WatchedWork watched(
            String what, Function<Progress, T> work, Consumer<T> answer, Consumer<RuntimeException> fault) {
        WatchedWork entry = new WatchedWork(what);
        if (isClosed) return entry;
        watched.add(entry);
        pending.incrementAndGet();
        pool.execute(() -> finish(
                () -> {
                    try {
                        return work.apply(entry);
                    } finally {
                        Platform.runLater(() -> watched.remove(entry));
                    }
                },
                answer,
                fault,
                () -> !entry.isCancelled()));
        return entry;
    }

    /** Stops all work; nothing is answered any more, and what is asked from now on is left undone. */
    void close() {
        isClosed = true;
        watched.forEach(WatchedWork::stop);
        pool.shutdownNow();
        line.shutdownNow();
    }

    private interface Wanted {
        boolean still();
    }

    private <T> void finish(Callable<T> work, Consumer<T> answer, Consumer<RuntimeException> fault, Wanted wanted) {
        T value;
        try {
            value = work.call();
        } catch (CancellationException stopped) {
            pending.decrementAndGet();
            return;
        } catch (RuntimeException wrong) {
            backOnScreen(() -> {
                if (wanted.still()) fault.accept(wrong);
            });
            return;
        } catch (Exception | Error wrong) {
            backOnScreen(() -> defects.accept(wrong));
            return;
        }
        backOnScreen(() -> {
            if (wanted.still()) answer.accept(value);
        });
    }

    private void backOnScreen(Runnable step) {
        Platform.runLater(() -> {
            try {
                step.run();
            } finally {
                pending.decrementAndGet();
            }
        });
    }

    /** A step that is done once nothing more has come for a while. Counts as work from the first call on. */
    Debounce debounce(Duration quiet, Runnable step) {
        return new Debounce(quiet, step);
    }

    /** Waits for a hand to come to rest. */
    final class Debounce {
        private final PauseTransition pause;
        private boolean isWaiting;

        private Debounce(Duration quiet, Runnable step) {
            pause = new PauseTransition(quiet);
            pause.setOnFinished(over -> {
                isWaiting = false;
                try {
                    if (!isClosed) step.run();
                } finally {
                    pending.decrementAndGet();
                }
            });
        }

        /** Begins to wait, or to wait anew. */
        void begin() {
            if (isClosed) return;
            if (!isWaiting) pending.incrementAndGet();
            isWaiting = true;
            pause.playFromStart();
        }
    }

    /** Steps of which only the newest between two pictures is done. Counts as work while one waits. */
    OncePerFrame oncePerFrame() {
        return new OncePerFrame();
    }

    /** Lets a hand say more than a screen can show: what it says is heard once a picture, and then the newest of it. */
    final class OncePerFrame {
        private Optional<Runnable> waiting = Optional.empty();
        private final AnimationTimer beat = new AnimationTimer() {
            @Override
            public void handle(long now) {
                doNow();
            }
        };

        /** Takes the place of a step that still waits. */
        void ask(Runnable step) {
            if (isClosed) return;
            if (waiting.isEmpty()) {
                pending.incrementAndGet();
                beat.start();
            }
            waiting = Optional.of(step);
        }

        /** Does what waits, if anything does: before a step that builds on it. */
        void doNow() {
            beat.stop();
            Optional<Runnable> step = waiting;
            waiting = Optional.empty();
            try {
                step.ifPresent(Runnable::run);
            } finally {
                if (step.isPresent()) pending.decrementAndGet();
            }
        }
    }

    /** A line of steps on the screen thread that would hold up a picture if they were done at once. Counts as work until the last. */
    InPieces inPieces() {
        return new InPieces();
    }

    /** No further piece is done before this picture. */
    void leaveThisPicture() {
        heldUpUntil = System.nanoTime();
    }

    /** Does before each picture what fits, together with all other such lines, and leaves the rest to the pictures to come. */
    final class InPieces {
        private final Deque<Runnable> left = new ArrayDeque<>();
        private boolean isUnderway;
        private final AnimationTimer beat = new AnimationTimer() {
            @Override
            public void handle(long picture) {
                doSome(picture);
            }
        };

        /** Begins with the next picture; what is left of other steps is no longer wanted. */
        void begin(List<Runnable> steps) {
            left.clear();
            add(steps);
            if (left.isEmpty()) end();
        }

        /** Does these after what is left. */
        void add(List<Runnable> steps) {
            if (isClosed) return;
            left.addAll(steps);
            if (left.isEmpty() || isUnderway) return;
            isUnderway = true;
            pending.incrementAndGet();
            beat.start();
        }

        /** What is left is no longer wanted. */
        void drop() {
            begin(List.of());
        }

        private void doSome(long picture) {
            if (isClosed) {
                drop();
                return;
            }
            if (picture != heldUp) {
                heldUp = picture;
                heldUpUntil = System.nanoTime() + PIECE_NS;
            } else if (System.nanoTime() >= heldUpUntil) return;
            try {
                do {
                    if (!left.isEmpty()) left.pop().run();
                } while (!left.isEmpty() && System.nanoTime() < heldUpUntil);
            } finally {
                if (left.isEmpty()) end();
            }
        }

        private void end() {
            beat.stop();
            if (isUnderway) pending.decrementAndGet();
            isUnderway = false;
        }
    }

    /** Only the newest question counts. */
    final class LatestOnly {
        private final AtomicLong asked = new AtomicLong();

        /** Asks; what was asked before is no longer wanted. */
        <T> void ask(Function<Progress, T> work, Consumer<T> answer, Consumer<RuntimeException> fault) {
            if (isClosed) return;
            long mine = asked.incrementAndGet();
            Progress progress = new Progress() {
                @Override
                public void done(String what, double share) {}

                @Override
                public boolean isCancelled() {
                    return asked.get() != mine;
                }
            };
            pending.incrementAndGet();
            pool.execute(() -> finish(
                    () -> {
                        if (progress.isCancelled()) throw new CancellationException();
                        return work.apply(progress);
                    },
                    answer,
                    fault,
                    () -> asked.get() == mine));
        }

        /** Gives a part of the answer while the work goes on; called by the work itself. */
        <T> void partial(Progress progress, T part, Consumer<T> answer) {
            pending.incrementAndGet();
            backOnScreen(() -> {
                if (!progress.isCancelled()) answer.accept(part);
            });
        }

        /** Nothing is wanted any more. */
        void drop() {
            asked.incrementAndGet();
        }
    }
}
