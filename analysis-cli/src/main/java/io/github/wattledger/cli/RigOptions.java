package io.github.wattledger.cli;

import io.github.wattledger.rider.Rider;
import io.github.wattledger.rig.Position;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The bicycle and how the rider sits on it, as options. They count more than what a rider profile says. */
final class RigOptions {
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

    /** How the rider sits. */
    Position position() {
        return position;
    }

    /** The rider with the numbers that were given. */
    Rider with(Rider rider) {
        Rider changed = with(rider, bicycleMassKg, rider::withBikeMassKg);
        changed = with(changed, dragAreaM2, changed::withDragAreaM2);
        return with(changed, rollingResistance, changed::withRollingResistance);
    }

    private static Rider with(Rider rider, @Nullable Double value, DoubleFunction<Rider> change) {
        return value == null ? rider : change.apply(value);
    }
}
