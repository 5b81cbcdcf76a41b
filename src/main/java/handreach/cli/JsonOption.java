package handreach.cli;

import handreach.report.file.Json;
import java.io.PrintWriter;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Spec.Target;

/** The choice between text for people and one JSON object, shared by all commands. */
final class JsonOption {
    @Spec(Target.MIXEE)
    private CommandSpec command;

    @Option(names = "--json", description = "Print one JSON object on standard output.")
    private boolean json;

    boolean isWanted() {
        return json;
    }

    PrintWriter out() {
        return command.commandLine().getOut();
    }

    PrintWriter err() {
        return command.commandLine().getErr();
    }

    void print(Object value) {
        out().println(Json.text(value));
    }

    /** Warnings go to standard error, so that standard output stays the answer. */
    void warn(List<String> warnings) {
        for (String warning : warnings) err().println("Note: " + warning);
    }
}
