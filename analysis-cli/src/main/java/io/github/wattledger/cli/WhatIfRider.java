package io.github.wattledger.cli;

import io.github.wattledger.cli.profile.UnreadableProfileException;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rig.Position;
import java.nio.file.Path;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;
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

    @Option(
            names = "--bicycle-mass",
            paramLabel = "KG",
            converter = NumberOptions.BicycleMass.class,
            description = "The bicycle with all that is on it; 11 where it is not known.")
    private @Nullable Double bicycleMassKg;

    @Option(names = "--position", paramLabel = "WORD", description = "hoods (the default), drops or aero-bars.")
    private Position position = Position.HOODS;

    @Option(
            names = "--drag-area",
            paramLabel = "M2",
            converter = NumberOptions.DragArea.class,
            description = "Your drag area in that position. Without it: the ride's own, or a typical one.")
    private @Nullable Double dragAreaM2;

    @Option(
            names = "--rolling-resistance",
            paramLabel = "NUMBER",
            converter = NumberOptions.RollingResistance.class,
            description = "Coefficient of rolling resistance. Without it: the ride's own, or 0.006.")
    private @Nullable Double rollingResistance;

    /** How the rider sits before the change. */
    Position position() {
        return position;
    }

    /**
     * The rider and the bicycle before the change.
     *
     * @param folder where to look for a profile when none was named, or null for nowhere
     * @throws UnreadableProfileException when the profile cannot be taken
     */
    Rider rider(@Nullable CommandSpec spec, @Nullable Path folder) throws UnreadableProfileException {
        Rider rider = RiderOptions.profile(spec, riderFile, folder).rider();
        rider = with(rider, massKg, rider::withMassKg);
        rider = with(rider, bicycleMassKg, rider::withBikeMassKg);
        rider = with(rider, dragAreaM2, rider::withDragAreaM2);
        return with(rider, rollingResistance, rider::withRollingResistance);
    }

    private static Rider with(Rider rider, @Nullable Double value, DoubleFunction<Rider> change) {
        return value == null ? rider : change.apply(value);
    }
}
