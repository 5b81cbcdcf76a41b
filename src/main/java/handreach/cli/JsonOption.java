package handreach.cli;

import handreach.input.Unseen;
import handreach.report.file.FolderResult;
import handreach.report.file.Json;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.function.IntFunction;
import java.util.function.Supplier;
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

    private PrintWriter out() {
        return command.commandLine().getOut();
    }

    /** For progress alone; words go by the methods below. */
    PrintWriter err() {
        return command.commandLine().getErr();
    }

    /** An answer: its warnings beside it, and itself as one object or as a page for a terminal of so many columns. */
    void answer(List<String> warnings, Supplier<?> numbers, IntFunction<String> page) {
        warn(warnings);
        if (json) print(numbers.get());
        else page(page.apply(TerminalWidth.columns()));
    }

    void print(Object value) {
        out().println(Json.text(value));
    }

    /** A page or a table as text, with its own line ends; at once, so that it is there while files are still being written. */
    void page(String text) {
        out().print(text);
        out().flush();
    }

    /** One line of the answer. */
    void say(String line) {
        out().println(Unseen.oneLine(line));
    }

    /** One line beside the answer, on standard error. */
    void tell(String line) {
        err().println(TerminalWidth.note(Unseen.oneLine(line)));
    }

    /** What became of a folder. */
    void written(FolderResult folder) {
        folder.files().forEach(this::written);
        for (Path file : folder.removed()) tell("Removed, since the answer no longer has it: " + file);
    }

    /** A file that was written, where it does not stand in the answer's way. */
    void written(Path file) {
        String line = "Written: " + file;
        if (json) tell(line);
        else say(line);
    }

    /** Warnings go to standard error, so that standard output stays the answer. */
    void warn(List<String> warnings) {
        for (String warning : warnings) tell("Note: " + warning);
    }
}
