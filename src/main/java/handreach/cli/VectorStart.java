package handreach.cli;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.module.ModuleFinder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.CountDownLatch;

/**
 * Starts the program anew with the vector module of its virtual machine, where a march that is asked for takes a fraction of the time by it:
 * the same arguments, streams, environment and exit code. Where the module is there already, or cannot be had, nothing happens.
 */
final class VectorStart {
    private static final String MODULE = "jdk.incubator.vector";
    private static final String MAIN = "handreach.Handreach";
    /** Stands in a program that was started anew, which never does so again. */
    private static final String MARK = "handreach.anew.done";
    /** A march that counts less goes on as it is, s: a start anew takes a second or two of what it saves. */
    private static final double PAYS_S = 5;

    private static final String WARNING = "WARNING: Using incubator modules: " + MODULE;
    /** What virtual machines take options from, as they stood at the start, and tell so. */
    private static final List<String> OPTIONS = List.of("JDK_JAVA_OPTIONS", "JAVA_TOOL_OPTIONS", "_JAVA_OPTIONS");

    /**
     * The compiler of the virtual machine has half of a cold march. The inner loops of the lanes are worth compiling at once, all else only when
     * it is used twelve times as much as usual, and with less put into one another (docs/performance.md); a virtual machine that does not know
     * these words leaves them.
     */
    private static final List<String> COMPILED = List.of(
            "-XX:+IgnoreUnrecognizedVMOptions",
            "-XX:Tier4InvocationThreshold=60000",
            "-XX:Tier4MinInvocationThreshold=8000",
            "-XX:Tier4CompileThreshold=200000",
            "-XX:Tier4BackEdgeThreshold=600000",
            "-XX:FreqInlineSize=80",
            "-XX:CompileCommand=quiet",
            "-XX:CompileCommand=CompileThresholdScaling,handreach.propagation.march.VectorLanes::*,0.02");

    private final String[] args;
    private final PrintStream out;
    private final PrintStream err;
    private final StopNotice stop;
    private volatile String lastSaid = "";

    VectorStart(String[] args, PrintStream out, PrintStream err, StopNotice stop) {
        this.args = args.clone();
        this.out = out;
        this.err = err;
        this.stop = stop;
    }

    /** The exit code of the program started anew in place of this one, where a march of so many seconds is worth it. */
    OptionalInt instead(double seconds) {
        if (!(seconds >= paysFromS()) || !isPossible()) return OptionalInt.empty();
        out.flush();
        err.flush();
        ProcessBuilder builder = new ProcessBuilder(command())
                .redirectInput(ProcessBuilder.Redirect.INHERIT)
                .redirectOutput(ProcessBuilder.Redirect.INHERIT);
        OPTIONS.forEach(builder.environment()::remove);
        Process anew;
        try {
            anew = builder.start();
        } catch (IOException notStarted) {
            return OptionalInt.empty();
        }
        return OptionalInt.of(followed(anew));
    }

    private static double paysFromS() {
        return Double.parseDouble(System.getProperty("handreach.anew", Double.toString(PAYS_S)));
    }

    /** Whether this is the program itself, without the module, on a machine that has it, and not watched by an agent of somebody's. */
    private static boolean isPossible() {
        String path = System.getProperty("java.class.path", "");
        String started = System.getProperty("sun.java.command", "");
        boolean isItself = started.startsWith(MAIN) || !path.isEmpty() && started.startsWith(path);
        return isItself
                && System.getProperty(MARK) == null
                && ModuleLayer.boot().findModule(MODULE).isEmpty()
                && ModuleFinder.ofSystem().find(MODULE).isPresent()
                && options().stream()
                        .noneMatch(option -> option.startsWith("-agent")
                                || option.startsWith("-javaagent")
                                || option.startsWith("-Xrun"));
    }

    private static List<String> options() {
        return ManagementFactory.getRuntimeMXBean().getInputArguments();
    }

    private List<String> command() {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", File.separatorChar == '\\' ? "java.exe" : "java")
                .toString());
        command.addAll(COMPILED);
        command.addAll(options());
        command.addAll(List.of(
                "--add-modules=" + MODULE, "-D" + MARK + "=true", "-cp", System.getProperty("java.class.path"), MAIN));
        command.addAll(List.of(args));
        return command;
    }

    /** Stays until it is done; a signal that ends this program ends the other first, which has the last word. */
    private int followed(Process anew) {
        CountDownLatch heard = new CountDownLatch(1);
        stop.leaveTo(() -> end(anew, heard));
        try (InputStream said = anew.getErrorStream()) {
            passOn(said);
            heard.countDown();
            return anew.waitFor();
        } catch (IOException | InterruptedException broken) {
            heard.countDown();
            anew.destroy();
            return 1;
        }
    }

    /** Whether it told itself that it was ended. */
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
