package handreach.report.file;

import handreach.input.Sources;
import handreach.input.Target;
import handreach.reach.Progress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;

/** Several files for one folder, each written whole or not at all, on as many threads as the machine has cores. */
public final class FileBatch {
    private static final long GIVE_UP_S = 60;

    private final Path folder;
    private final Sources sources;
    private final Map<String, WholeFile.Content> contents = new LinkedHashMap<>();

    /**
     * Nothing yet.
     *
     * @param sources the files that the answer was made from
     */
    public FileBatch(Path folder, Sources sources) {
        this.folder = folder;
        this.sources = sources;
    }

    /** A file of text, worked out when its turn comes. */
    public void add(String name, Supplier<String> text) {
        add(name, out -> out.write(text.get().getBytes(StandardCharsets.UTF_8)));
    }

    public void add(String name, WholeFile.Content content) {
        if (contents.putIfAbsent(name, content) != null) throw new IllegalArgumentException("two files named " + name);
    }

    public void addAll(Map<String, WholeFile.Content> more) {
        more.forEach(this::add);
    }

    /**
     * Writes all files and returns them in the order they were added; none when one of them must not be written. When one cannot be written, or the work is cancelled,
     * those not yet begun are left out and the first fault is told; what was written stays, whole.
     */
    public List<Path> write(Progress progress) {
        if (contents.isEmpty()) return List.of();
        Target.lookFolder(folder, contents.keySet(), sources);
        int threads = Math.min(contents.size(), Math.max(1, Runtime.getRuntime().availableProcessors()));
        AtomicInteger done = new AtomicInteger();
        List<Path> files = new ArrayList<>();
        List<Future<?>> running = new ArrayList<>();
        ExecutorService pool = Executors.newFixedThreadPool(threads, work -> {
            Thread thread = new Thread(work, "files");
            thread.setDaemon(true);
            return thread;
        });
        try {
            contents.forEach((name, content) -> {
                Path file = folder.resolve(name);
                files.add(file);
                running.add(pool.submit(() -> {
                    progress.goOn();
                    WholeFile.write(file, content, sources);
                    progress.done("writing files", (double) done.incrementAndGet() / contents.size());
                }));
            });
            for (Future<?> one : running) await(one);
        } finally {
            stop(pool);
        }
        return List.copyOf(files);
    }

    private static void await(Future<?> one) {
        try {
            one.get();
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new CancellationException("interrupted");
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof Error error) throw error;
            throw (RuntimeException) failed.getCause();
        }
    }

    /** Nothing is left running behind: what is being written ends or takes its part file away first. */
    private static void stop(ExecutorService pool) {
        pool.shutdownNow();
        boolean wasInterrupted = Thread.interrupted();
        try {
            if (!pool.awaitTermination(GIVE_UP_S, TimeUnit.SECONDS))
                throw new IllegalStateException("files are still being written after " + GIVE_UP_S + " s");
        } catch (InterruptedException again) {
            wasInterrupted = true;
        }
        if (wasInterrupted) Thread.currentThread().interrupt();
    }
}
