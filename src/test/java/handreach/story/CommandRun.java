package handreach.story;

import handreach.cli.CommandLineRunner;
import handreach.input.InputFault;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** One run of the real command line in this process: exit code, standard output, standard error. */
public record CommandRun(int code, String out, String err) {
    public static CommandRun of(String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = CommandLineRunner.run(
                args,
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                plan -> {
                    throw new InputFault("desk", 0, "opens a window only when the program is started by itself.");
                });
        return new CommandRun(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }
}
