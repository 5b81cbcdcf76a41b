package handreach.report.file;

import handreach.input.AtomicFile;
import handreach.input.InputFault;
import handreach.input.Sources;
import handreach.input.Target;
import handreach.input.WorkMark;
import handreach.reach.Progress;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import java.util.regex.Pattern;

/**
 * Several files that are one result in one folder, each written whole or not at all, on as many threads as the machine has cores. A
 * {@link Manifest} beside them tells which belong together, and whether all are there. One run of a command writes into a folder at a
 * time.
 */
public final class FileBatch {
    private static final long GIVE_UP_S = 60;
    private static final int RUN_LETTERS = 16;

    private final Path folder;
    private final String what;
    private final Sources sources;
    private final Map<String, AnswerFile.Content> contents = new LinkedHashMap<>();
    private final List<Pattern> replaced = new ArrayList<>();
    private Optional<String> note = Optional.empty();

    /**
     * Nothing yet.
     *
     * @param what the command, which names the manifest
     * @param sources the files that the answer was made from
     */
    public FileBatch(Path folder, String what, Sources sources) {
        this.folder = folder;
        this.what = what;
        this.sources = sources;
    }

    /** A file of text, worked out when its turn comes. */
    public void add(String name, Supplier<String> text) {
        add(name, out -> out.write(text.get().getBytes(StandardCharsets.UTF_8)));
    }

    public void add(String name, AnswerFile.Content content) {
        if (contents.putIfAbsent(name, content) != null) throw new IllegalArgumentException("two files named " + name);
    }

    public void addAll(Map<String, AnswerFile.Content> more) {
        more.forEach(this::add);
    }

    /** What the manifest says of all files of this run. */
    public void note(String words) {
        note = Optional.of(words);
    }

    /** Files of an earlier run with such names go, unless they are written again or somebody has changed them. */
    public void replacesAll(Pattern names) {
        replaced.add(names);
    }

    /**
     * Writes all files; none when one of them must not be written, or when another run is writing into the folder. When one cannot be
     * written, or the work is cancelled, those not yet begun are left out and the first fault is told; what was written stays, whole, and
     * the manifest says that the result is not complete.
     */
    public FolderResult write(Progress progress) {
        if (contents.isEmpty()) return new FolderResult(List.of(), List.of());
        Set<String> names = new LinkedHashSet<>(contents.keySet());
        names.add(Manifest.name(what));
        Target.lookFolder(folder, names, sources);
        try {
            Files.createDirectories(folder);
            try (WorkMark mark = WorkMark.take(folder.resolve("." + what + ".lock"))
                    .orElseThrow(() -> new InputFault(
                            folder.toString(),
                            0,
                            "another run of " + what + " is writing into this folder. Nothing was changed."
                                    + " Wait until it is done, or name another folder."))) {
                return written(names, progress);
            }
        } catch (IOException e) {
            throw AnswerFile.notWritten(folder, e);
        }
    }

    private FolderResult written(Set<String> names, Progress progress) {
        Manifest before = Manifest.read(folder, what);
        Set<String> known = new HashSet<>(names);
        before.files().forEach(file -> known.add(file.name()));
        AtomicFile.sweep(folder.toAbsolutePath(), known::contains);
        put(before.noting(note).during(contents.keySet(), Map.of()));
        Map<String, Manifest.Entry> done = new ConcurrentHashMap<>();
        boolean isDone = false;
        try {
            writeAll(progress, done);
            isDone = true;
        } finally {
            if (!isDone && !AtomicFile.isEnding()) undone(before, done);
        }
        Set<String> removed = new LinkedHashSet<>();
        for (Manifest.Entry file : before.files()) if (isStale(file) && isRemoved(file)) removed.add(file.name());
        List<Manifest.Entry> entries = contents.keySet().stream().map(done::get).toList();
        put(before.noting(note).after(entries, name -> Files.exists(folder.resolve(name)), run(entries)));
        return new FolderResult(
                names.stream().map(folder::resolve).toList(),
                removed.stream().map(folder::resolve).toList());
    }

    private void put(Manifest manifest) {
        AnswerFile.write(folder.resolve(Manifest.name(what)), manifest.text(), sources);
    }

    /** Where no file was finished the folder is as before, and so is its manifest. */
    private void undone(Manifest before, Map<String, Manifest.Entry> done) {
        boolean wasInterrupted = Thread.interrupted();
        try {
            if (!done.isEmpty()) put(before.noting(note).during(contents.keySet(), done));
            else if (!before.files().isEmpty()) put(before);
            else Files.deleteIfExists(folder.resolve(Manifest.name(what)));
        } catch (IOException | InputFault full) {
            // the fault that is on its way tells why; the manifest on the disk says not complete, which is true
            return;
        } finally {
            if (wasInterrupted) Thread.currentThread().interrupt();
        }
    }

    private void writeAll(Progress progress, Map<String, Manifest.Entry> done) {
        int threads = Math.min(contents.size(), Math.max(1, Runtime.getRuntime().availableProcessors()));
        AtomicInteger count = new AtomicInteger();
        List<Future<?>> running = new ArrayList<>();
        ExecutorService pool = Executors.newFixedThreadPool(threads, work -> {
            Thread thread = new Thread(work, "files");
            thread.setDaemon(true);
            return thread;
        });
        try {
            contents.forEach((name, content) -> running.add(pool.submit(() -> {
                progress.goOn();
                done.put(name, written(name, content));
                progress.done("writing files", (double) count.incrementAndGet() / contents.size());
            })));
            for (Future<?> one : running) await(one);
        } finally {
            stop(pool);
        }
    }

    private Manifest.Entry written(String name, AnswerFile.Content content) {
        Tally[] tally = new Tally[1];
        AnswerFile.write(
                folder.resolve(name),
                out -> {
                    tally[0] = new Tally(out);
                    content.writeTo(tally[0]);
                    tally[0].flush();
                },
                sources);
        return new Manifest.Entry(name, tally[0].bytes, Optional.of(tally[0].digest()), Optional.empty());
    }

    private boolean isStale(Manifest.Entry file) {
        return !contents.containsKey(file.name())
                && replaced.stream()
                        .anyMatch(names -> names.matcher(file.name()).matches());
    }

    /** Takes away a file that an earlier run wrote; one that has other bytes by now is somebody's own. */
    private boolean isRemoved(Manifest.Entry file) {
        Path path = folder.resolve(file.name());
        try {
            if (!Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS) || sources.has(path) || !Files.isWritable(path))
                return false;
            if (file.sha256().isPresent() && !file.sha256().get().equals(digest(path))) return false;
            return Files.deleteIfExists(path);
        } catch (IOException e) {
            return false;
        }
    }

    private static String digest(Path file) throws IOException {
        Tally tally = new Tally(OutputStream.nullOutputStream());
        Files.copy(file, tally);
        return tally.digest();
    }

    private static String run(List<Manifest.Entry> files) {
        MessageDigest sum = sha256();
        for (Manifest.Entry file : files)
            sum.update((file.name() + " " + file.sha256().orElseThrow() + "\n").getBytes(StandardCharsets.UTF_8));
        return HexFormat.of().formatHex(sum.digest()).substring(0, RUN_LETTERS);
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Counts and digests what passes. */
    private static final class Tally extends FilterOutputStream {
        private final MessageDigest sum = sha256();
        private long bytes;

        Tally(OutputStream out) {
            super(out);
        }

        @Override
        public void write(int one) throws IOException {
            out.write(one);
            sum.update((byte) one);
            bytes++;
        }

        @Override
        public void write(byte[] block, int from, int count) throws IOException {
            out.write(block, from, count);
            sum.update(block, from, count);
            bytes += count;
        }

        String digest() {
            return HexFormat.of().formatHex(sum.digest());
        }
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
