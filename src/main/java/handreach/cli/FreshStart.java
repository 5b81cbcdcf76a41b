package handreach.cli;

import handreach.reach.MapEngine;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.lang.management.ManagementFactory;
import java.lang.module.ModuleFinder;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.CountDownLatch;

/**
 * Starts the program anew, before anything of it is loaded, on a virtual machine set up for it: the archive of loaded classes that the build
 * puts beside the jar, a compiler that does not hurry, and where a map may be marched the vector module, by which that takes a fraction of the
 * time. The same arguments, streams, environment, signals and exit code. It costs a tenth of a second, and spares more (docs/performance.md).
 * Where the module is there already, or the start cannot be had, the program goes on as it is.
 */
public final class FreshStart {
    private static final String MODULE = "jdk.incubator.vector";
    private static final String MAIN = "handreach.Handreach";
    /** Stands in a program that was started anew, with the process it stands in for, and never does so again. */
    private static final String MARK = "handreach.anew.done";

    private static final List<String> HELP = List.of("--help", "-h");
    /** The jar's name with this in place of its own ending. */
    private static final String ARCHIVE = ".jsa";

    private static final String WARNING = "WARNING: Using incubator modules: " + MODULE;
    /** What virtual machines take options from, as they stood at the start, and tell so. */
    private static final List<String> OPTIONS = List.of("JDK_JAVA_OPTIONS", "JAVA_TOOL_OPTIONS", "_JAVA_OPTIONS");
    /** The words this process was started with, where the system shows them. */
    private static final Path WORDS = Path.of("/proc/self/cmdline");

    /** A virtual machine that does not know the words below leaves them. */
    private static final String LENIENT = "-XX:+IgnoreUnrecognizedVMOptions";

    /** The compiler of the virtual machine has two fifths of a short run: what is used for a moment is not worth its best. */
    private static final List<String> SHORT = List.of(
            "-XX:Tier4InvocationThreshold=60000",
            "-XX:Tier4MinInvocationThreshold=8000",
            "-XX:Tier4CompileThreshold=200000",
            "-XX:Tier4BackEdgeThreshold=600000");

    /**
     * It had a third of a cold march: the inner loops of the lanes are worth its best at once, other loops not before the methods they stand
     * in, and less is put into one another.
     */
    private static final List<String> MARCHED = List.of(
            "-XX:Tier4InvocationThreshold=20000",
            "-XX:Tier4MinInvocationThreshold=2500",
            "-XX:Tier4CompileThreshold=60000",
            "-XX:Tier4BackEdgeThreshold=6000000",
            "-XX:FreqInlineSize=80",
            "-XX:CompileCommand=quiet",
            "-XX:CompileCommand=CompileThresholdScaling,handreach.propagation.march.VectorLanes::*,0.02");

    /** On few cores a march with the usual collector has a sixth of its time, and two thirds of its memory, for that (docs/performance.md). */
    private static final String ONE_COLLECTOR = "-XX:+UseSerialGC";

    private static final int FEW_CORES = 4;

    private final PrintStream out;
    private final PrintStream err;
    private volatile String lastSaid = "";

    private FreshStart(PrintStream out, PrintStream err) {
        this.out = out;
        this.err = err;
    }

    /** The exit code of the program started anew in place of this one; nothing where this one shall answer itself. */
    public static OptionalInt instead(String[] args, PrintStream out, PrintStream err) {
        if (System.getProperty(MARK) != null) {
            endWithFirst(System.getProperty(MARK));
            return OptionalInt.empty();
        }
        return isWorthIt(args) && isPossible() ? new FreshStart(out, err).anew(args) : OptionalInt.empty();
    }

    /** Help is told before a start would pay. */
    private static boolean isWorthIt(String[] args) {
        if (args.length == 0 || args[0].startsWith("-") || args[0].equals("help")) return false;
        for (String word : args) if (HELP.contains(word)) return false;
        return true;
    }

    /** Whether a map may be marched; a start with the module takes 60 ms longer. */
    private static boolean drawsMap(String[] args) {
        if (!args[0].equals("reach")) return args[0].equals("report") || args[0].equals("desk");
        boolean isWritten = false;
        boolean isOtherEngine = false;
        for (int i = 1; i < args.length; i++) {
            isWritten |= args[i].startsWith("--out");
            isOtherEngine |= args[i - 1].equals("--engine") && !args[i].equals(MapEngine.MARCH.word());
        }
        return isWritten && !isOtherEngine;
    }

    /** Whether this is the program itself, without the module, and not watched by an agent of somebody's. */
    private static boolean isPossible() {
        String path = System.getProperty("java.class.path", "");
        String started = System.getProperty("sun.java.command", "");
        return (started.startsWith(MAIN) || !path.isEmpty() && started.startsWith(path))
                && ModuleLayer.boot().findModule(MODULE).isEmpty();
    }

    private OptionalInt anew(String[] args) {
        List<String> rest = rest(args);
        if (!canBeHanded(rest)) return OptionalInt.empty();
        boolean withVectors =
                drawsMap(args) && ModuleFinder.ofSystem().find(MODULE).isPresent();
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", File.separatorChar == '\\' ? "java.exe" : "java")
                .toString());
        command.add(LENIENT);
        command.addAll(withVectors ? MARCHED : SHORT);
        if (withVectors && wantsOneCollector(args, rest)) command.add(ONE_COLLECTOR);
        Path archive = archive();
        if (Files.isRegularFile(archive)) command.add("-XX:SharedArchiveFile=" + archive);
        if (withVectors) command.add("--add-modules=" + MODULE);
        command.add("-D" + MARK + "=" + ProcessHandle.current().pid());
        if (withVectors && ConsoleProgress.isWatched()) command.add("-D" + ConsoleProgress.WATCHED + "=true");
        command.addAll(rest);
        ProcessBuilder builder = new ProcessBuilder(command).inheritIO();
        // The virtual machine has a line to say about the module, which is nobody's business.
        if (withVectors) builder.redirectError(ProcessBuilder.Redirect.PIPE);
        for (String name : OPTIONS) builder.environment().remove(name);
        try (StopNotice stop = StopNotice.on(new PrintWriter(err, true, StandardCharsets.UTF_8))) {
            out.flush();
            return OptionalInt.of(followed(builder.start(), withVectors, stop));
        } catch (IOException notStarted) {
            return OptionalInt.empty();
        }
    }

    /** A window, where a hand would feel its longest halts, keeps the usual one, and everybody the one asked for. */
    private static boolean wantsOneCollector(String[] args, List<String> words) {
        return !args[0].equals("desk")
                && Runtime.getRuntime().availableProcessors() <= FEW_CORES
                && words.stream().noneMatch(word -> word.matches("-XX:[+-]Use\\w*GC|-XX:(Flags|VMOptionsFile)=.*|@.*"));
    }

    /** Beside the jar, which is all of the class path. */
    private static Path archive() {
        return Path.of(System.getProperty("java.class.path").replaceFirst("\\.jar$", "") + ARCHIVE);
    }

    /** Options, the program and its words, as they were given: read off the system, else asked of the virtual machine, which takes 30 ms. */
    private static List<String> rest(String[] args) {
        try {
            if (Collections.disjoint(System.getenv().keySet(), OPTIONS)) {
                List<String> words = List.of(Files.readString(WORDS).split("\0", -1));
                if (words.size() > args.length + 2) return words.subList(1, words.size() - 1);
            }
        } catch (IOException notShown) {
            // asked below
        }
        List<String> asked =
                new ArrayList<>(ManagementFactory.getRuntimeMXBean().getInputArguments());
        asked.addAll(List.of("-cp", System.getProperty("java.class.path"), MAIN));
        asked.addAll(List.of(args));
        return asked;
    }

    /** Whether no agent of somebody's watches this process, and the system's letters hold every word. */
    private static boolean canBeHanded(List<String> words) {
        CharsetEncoder letters =
                Charset.forName(System.getProperty("sun.jnu.encoding", "UTF-8")).newEncoder();
        for (String word : words)
            if (word.startsWith("-agent")
                    || word.startsWith("-javaagent")
                    || word.startsWith("-Xrun")
                    || !letters.canEncode(word)) return false;
        return true;
    }

    /** What stands in for a process does not outlive it, though the end of that came without a word. */
    private static void endWithFirst(String first) {
        ProcessHandle.current()
                .parent()
                .filter(parent -> Long.toString(parent.pid()).equals(first))
                .ifPresent(parent -> parent.onExit().thenRun(() -> System.exit(1)));
    }

    /** Stays until it is done; a signal that ends this program ends the other first, which has the last word. */
    private int followed(Process anew, boolean withVectors, StopNotice stop) {
        CountDownLatch heard = new CountDownLatch(1);
        stop.leaveTo(() -> end(anew, heard) || !withVectors);
        try (InputStream said = anew.getErrorStream()) {
            if (withVectors) passOn(said);
            heard.countDown();
            return anew.waitFor();
        } catch (IOException | InterruptedException broken) {
            heard.countDown();
            anew.destroy();
            return 1;
        }
    }

    /** Whether it told that it was ended, as far as that was heard. */
    private boolean end(Process anew, CountDownLatch heard) {
        anew.destroy();
        try {
            anew.waitFor();
            heard.await();
        } catch (InterruptedException now) {
            Thread.currentThread().interrupt();
        }
        return lastSaid.contains(StopNotice.WORDS);
    }

    /** All that is said, but for the one line of the virtual machine about its module, which comes first. */
    private void passOn(InputStream said) throws IOException {
        byte[] warning = (WARNING + System.lineSeparator()).getBytes(StandardCharsets.US_ASCII);
        byte[] first = said.readNBytes(1);
        int same = 0;
        while (first.length > 0 && same < warning.length && first[0] == warning[same]) {
            same++;
            first = same < warning.length ? said.readNBytes(1) : new byte[0];
        }
        if (same < warning.length) err.write(warning, 0, same);
        err.write(first, 0, first.length);
        err.flush();
        byte[] bytes = new byte[4096];
        for (int n = said.read(bytes); n >= 0; n = said.read(bytes)) {
            err.write(bytes, 0, n);
            err.flush();
            String both = lastSaid + new String(bytes, 0, n, StandardCharsets.UTF_8);
            lastSaid = both.substring(Math.max(0, both.length() - 2 * StopNotice.WORDS.length()));
        }
    }
}
