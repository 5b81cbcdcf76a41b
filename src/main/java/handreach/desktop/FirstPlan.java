package handreach.desktop;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** The plan the window begins with, opened while the screen toolkit starts: the one hardly needs what the other is busy with. */
final class FirstPlan {
    private static final Path SAMPLE = Path.of("elevation-samples", "forest-hills");

    private final FutureTask<Opening> opening;

    private FirstPlan(Path plan) {
        this.opening = new FutureTask<>(() -> Opening.read(plan));
        Thread thread = new Thread(opening, "handreach-first-plan");
        thread.setDaemon(true);
        thread.start();
    }

    /** Begins to open what was asked for: a given plan, else the one used last, else the sample; empty if there is none. */
    static Optional<FirstPlan> of(Optional<Path> given) {
        return given.or(() -> RecentPlans.list().stream().findFirst())
                .or(() -> Files.isDirectory(SAMPLE) ? Optional.of(SAMPLE) : Optional.empty())
                .map(FirstPlan::new);
    }

    /** The plan, opened; waits for it. What was wrong with it is thrown as the reader said it. */
    Opening opening() throws InterruptedException {
        try {
            return opening.get();
        } catch (ExecutionException failed) {
            throw asItWas(failed);
        }
    }

    /** The plan if it is open within a time. */
    Optional<Opening> opening(long millis) throws InterruptedException {
        try {
            return Optional.of(opening.get(millis, TimeUnit.MILLISECONDS));
        } catch (TimeoutException notYet) {
            return Optional.empty();
        } catch (ExecutionException failed) {
            throw asItWas(failed);
        }
    }

    private static RuntimeException asItWas(ExecutionException failed) {
        if (failed.getCause() instanceof Error error) throw error;
        return failed.getCause() instanceof RuntimeException wrong
                ? wrong
                : new IllegalStateException(failed.getCause());
    }
}
