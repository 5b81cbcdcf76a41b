package handreach;

import handreach.cli.CommandLineRunner;
import handreach.cli.FreshStart;
import handreach.desktop.Desk;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.OptionalInt;

/** The doorway: hands {@code desk} to the window and everything else to the command line. */
public final class Handreach {
    private Handreach() {}

    public static void main(String[] args) {
        PrintStream out = new PrintStream(new FileOutputStream(FileDescriptor.out), false, StandardCharsets.UTF_8);
        PrintStream err = new PrintStream(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
        OptionalInt code = FreshStart.instead(args, out, err);
        System.exit(code.isPresent() ? code.getAsInt() : run(args, out, err));
    }

    private static int run(String[] args, PrintStream out, PrintStream err) {
        // Libraries that log would mix their words with ours; most runs never log and need not set logging up.
        System.setProperty("java.util.logging.config.class", "handreach.LogSetup");
        // No option is a date or the like, and looking for their readers takes a cold start some 40 ms.
        System.setProperty("picocli.converters.excludes", "java.(net|sql|time|util).*");
        // No face opens an AWT window; pictures are painted in memory.
        System.setProperty("java.awt.headless", "true");
        // A method reference to the window would load it for every command.
        int code = CommandLineRunner.run(args, out, err, plan -> Desk.open(plan));
        out.flush();
        return code;
    }
}
