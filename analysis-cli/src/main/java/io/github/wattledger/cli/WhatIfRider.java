package io.github.wattledger.cli;

import io.github.wattledger.cli.profile.UnreadableProfileException;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rig.Position;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** Rider and bicycle before the change. */
final class WhatIfRider {
    @Option(names = "--rider", paramLabel = "FILE", description = RiderOptions.PROFILE_DESCRIPTION)
    private @Nullable String riderFile;

    @Option(
            names = "--mass",
            paramLabel = "KG",
            converter = NumberOptions.RiderMass.class,
            description = "Your mass, kilograms; 75 where it is not known.")
    private @Nullable Double massKg;

    @ArgGroup(exclusive = false)
    private RigOptions rig = new RigOptions();

    /** How the rider sits before the change. */
    Position position() {
        return rig.position();
    }

    /**
     * The rider and the bicycle before the change.
     *
     * @param folder where to look for a profile when none was named, or null for nowhere
     * @throws UnreadableProfileException when the profile cannot be taken
     */
    Rider rider(@Nullable CommandSpec spec, @Nullable Path folder) throws UnreadableProfileException {
        Rider rider = RiderOptions.profile(spec, riderFile, folder).rider();
        return rig.with(massKg == null ? rider : rider.withMassKg(massKg));
    }
}
