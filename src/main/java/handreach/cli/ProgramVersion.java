package handreach.cli;

import handreach.report.Program;
import picocli.CommandLine.IVersionProvider;

/** The version as written into the jar. */
final class ProgramVersion implements IVersionProvider {
    static String text() {
        return "handreach " + Program.version().orElse("(not built as a jar)");
    }

    @Override
    public String[] getVersion() {
        return new String[] {text()};
    }
}
