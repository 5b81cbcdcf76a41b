package handreach.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program itself: shows what there is. */
@Command(
        name = "handreach",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        versionProvider = ProgramVersion.class,
        description = "How far a handheld radio reaches with each antenna, on the ground you are going to.",
        footer = {
            "",
            "Worked example:",
            "  handreach reach elevation-samples/forest-hills --out reach-forest",
            "",
            "A prediction is odds, not a promise. Carry a second means of calling for help."
        })
final class HandreachCommand implements Runnable {
    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "no command given. Name one of those that --help lists.");
    }
}
