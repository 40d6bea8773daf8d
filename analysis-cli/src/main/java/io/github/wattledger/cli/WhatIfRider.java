package io.github.wattledger.cli;

import io.github.wattledger.cli.profile.RiderFile;
import io.github.wattledger.cli.profile.RiderProfile;
import io.github.wattledger.cli.profile.UnreadableProfileException;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rig.Position;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** Rider and bicycle before the change. */
final class WhatIfRider {
    @Option(
            names = "--rider",
            paramLabel = "FILE",
            description = "Your rider profile; the options below count more than what it says.")
    private @Nullable String riderFile;

    @Option(
            names = "--mass",
            paramLabel = "KG",
            converter = OptionValues.PlainNumber.class,
            description = "Your mass, kilograms; 75 where it is not known.")
    private @Nullable Double massKg;

    @Option(
            names = "--bicycle-mass",
            paramLabel = "KG",
            converter = OptionValues.PlainNumber.class,
            description = "The bicycle with all that is on it; 11 where it is not known.")
    private @Nullable Double bicycleMassKg;

    @Option(names = "--position", paramLabel = "WORD", description = "hoods (the default), drops or aero-bars.")
    private Position position = Position.HOODS;

    @Option(
            names = "--drag-area",
            paramLabel = "M2",
            converter = OptionValues.PlainNumber.class,
            description = "Your drag area in that position. Without it: the ride's own, or a typical one.")
    private @Nullable Double dragAreaM2;

    @Option(
            names = "--rolling-resistance",
            paramLabel = "NUMBER",
            converter = OptionValues.PlainNumber.class,
            description = "Coefficient of rolling resistance. Without it: the ride's own, or 0.006.")
    private @Nullable Double rollingResistance;

    /** How the rider sits before the change. */
    Position position() {
        return position;
    }

    /**
     * The rider and the bicycle before the change; a usage error when a number is out of its bounds.
     *
     * @throws UnreadableProfileException when the profile cannot be taken
     */
    Rider rider(@Nullable CommandSpec spec) throws UnreadableProfileException {
        String file = riderFile;
        RiderProfile profile = file == null ? RiderProfile.EMPTY : RiderFile.read(Usage.path(spec, "--rider", file));
        Rider rider = profile.rider();
        rider = Usage.with(spec, rider, "--mass", massKg, rider::withMassKg);
        rider = Usage.with(spec, rider, "--bicycle-mass", bicycleMassKg, rider::withBikeMassKg);
        rider = Usage.with(spec, rider, "--drag-area", dragAreaM2, rider::withDragAreaM2);
        return Usage.with(spec, rider, "--rolling-resistance", rollingResistance, rider::withRollingResistance);
    }
}
