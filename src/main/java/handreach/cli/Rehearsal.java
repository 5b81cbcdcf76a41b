package handreach.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/**
 * Runs what people start with over a sample, so that the virtual machine can keep the classes in the archive that {@link FreshStart} starts
 * with. The build runs it from the jar: Rehearsal SAMPLE FOLDER.
 */
final class Rehearsal {
    private Rehearsal() {}

    public static void main(String[] args) {
        String sample = args[0];
        Path folder = Path.of(args[1]);
        run(
                "reach",
                sample,
                "--model",
                "handheld",
                "--out",
                folder.resolve("reach").toString());
        run("path", "--plan", sample, "--from", "spike camp", "--to", "north spur");
        run("relay", sample);
        run("walk", sample);
        run("card", sample, "--out", folder.resolve("card.pdf").toString());
        run("report", sample, "--out", folder.resolve("report.html").toString());
    }

    private static void run(String... words) {
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        PrintStream both = new PrintStream(said, false, StandardCharsets.UTF_8);
        int code = CommandLineRunner.run(words, both, both, plan -> {});
        if (code != 0) throw new IllegalStateException(String.join(" ", words) + " said " + said);
    }
}
