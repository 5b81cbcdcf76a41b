package handreach.cli;

import handreach.plan.BlankPlan;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** A blank plan to begin with. */
@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description = "Write a blank plan, plan.toml, to fill in: what must be put in says FILL IN, the rest may stay.",
        footer = {"", "Worked example:", "  handreach plan my-ground"})
final class PlanCommand implements Callable<Integer> {
    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "PLAN",
            description = "File that ends in .toml, or folder for plan.toml; never written over. Default: this folder.")
    private Path plan = Path.of("");

    @Mixin
    private JsonOption json;

    @Override
    public Integer call() {
        Path written = BlankPlan.write(plan);
        if (json.isWanted()) json.print(new Answer(written.toString()));
        else json.written(written);
        return 0;
    }

    private record Answer(String file) {}
}
