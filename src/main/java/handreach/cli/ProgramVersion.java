package handreach.cli;

import picocli.CommandLine.IVersionProvider;

/** The version as written into the jar. */
final class ProgramVersion implements IVersionProvider {
    static String text() {
        String version = ProgramVersion.class.getPackage().getImplementationVersion();
        return "handreach " + (version == null ? "(not built as a jar)" : version);
    }

    @Override
    public String[] getVersion() {
        return new String[] {text()};
    }
}
