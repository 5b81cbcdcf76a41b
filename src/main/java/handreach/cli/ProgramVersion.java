package handreach.cli;

import picocli.CommandLine.IVersionProvider;

/** The version as written into the jar. */
final class ProgramVersion implements IVersionProvider {
    @Override
    public String[] getVersion() {
        String version = getClass().getPackage().getImplementationVersion();
        return new String[] {"handreach " + (version == null ? "(not built as a jar)" : version)};
    }
}
