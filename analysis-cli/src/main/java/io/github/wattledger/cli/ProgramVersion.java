package io.github.wattledger.cli;

import picocli.CommandLine.IVersionProvider;

/** The version of the program, from the jar's manifest. */
final class ProgramVersion implements IVersionProvider {
    @Override
    public String[] getVersion() {
        String version = ProgramVersion.class.getPackage().getImplementationVersion();
        return new String[] {"wattledger " + (version == null ? "development" : version)};
    }
}
