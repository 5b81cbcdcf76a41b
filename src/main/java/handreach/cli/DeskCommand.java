package handreach.cli;

import handreach.input.InputFault;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Hands over to the window. */
@Command(
        name = "desk",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description = "Open the window: drag a position on the map and see the reach.",
        footer = {
            "",
            "Worked example:",
            "  handreach desk elevation-samples/forest-hills",
            "",
            "Without a plan the one used last is opened, or the sample. Odds are no promise: carry a second means of",
            "calling for help."
        })
final class DeskCommand implements Callable<Integer> {
    private final Consumer<Optional<Path>> window;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "PLAN",
            description = "Plan file, or a folder with plan.toml.")
    private Path plan;

    DeskCommand(Consumer<Optional<Path>> window) {
        this.window = window;
    }

    @Override
    public Integer call() {
        if (plan != null && !Files.exists(plan))
            throw new InputFault(plan.toString(), 0, "does not exist. Name a plan file, or its folder.");
        window.accept(Optional.ofNullable(plan));
        return 0;
    }
}
