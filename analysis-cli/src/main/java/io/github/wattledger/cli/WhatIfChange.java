package io.github.wattledger.cli;

import io.github.wattledger.replay.Adjustment;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.rig.Air;
import io.github.wattledger.rig.Position;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** The options that say what is changed about rider, bicycle, power and air. */
final class WhatIfChange {
    private static final double PA_PER_HPA = 100;

    @Option(names = "--with-position", paramLabel = "WORD", description = "hoods, drops or aero-bars.")
    private @Nullable Position position;

    @Option(
            names = "--with-drag-area",
            paramLabel = "CHANGE",
            converter = OptionValues.Change.class,
            description = "Another drag area, m2: 0.32 or -20%%.")
    private @Nullable Adjustment dragAreaM2;

    @Option(
            names = "--with-mass",
            paramLabel = "CHANGE",
            converter = OptionValues.Change.class,
            description = "Another mass of the rider, kg: 72 or -3. A difference may be the bicycle's.")
    private @Nullable Adjustment riderKg;

    @Option(
            names = "--with-rolling-resistance",
            paramLabel = "CHANGE",
            converter = OptionValues.Change.class,
            description = "Another rolling resistance: 0.005 or -10%%.")
    private @Nullable Adjustment rollingResistance;

    @Option(
            names = "--with-power",
            paramLabel = "CHANGE",
            converter = OptionValues.Change.class,
            description = "Another power, watts: 210, +10 or +5%%; of a RIDE +10 or +5%%.")
    private @Nullable Adjustment powerW;

    @Option(
            names = "--with-temperature",
            paramLabel = "C",
            converter = OptionValues.PlainNumber.class,
            description = "Another temperature.")
    private @Nullable Double temperatureC;

    @Option(
            names = "--with-altitude",
            paramLabel = "M",
            converter = OptionValues.PlainNumber.class,
            description = "Another altitude, for the density of the air alone.")
    private @Nullable Double altitudeM;

    @Option(
            names = "--with-pressure",
            paramLabel = "HPA",
            converter = OptionValues.PlainNumber.class,
            description = "Another pressure of the air.")
    private @Nullable Double pressureHpa;

    @Option(
            names = "--with-air-density",
            paramLabel = "KG/M3",
            converter = OptionValues.PlainNumber.class,
            description = "Another density of the air.")
    private @Nullable Double densityKgPerM3;

    @Option(
            names = "--share",
            paramLabel = "SHARE",
            converter = OptionValues.ShareOfDistance.class,
            description = "Over how much of the distance: 25%%, spread evenly over it, or 75%%-100%%, its last"
                    + " quarter. Without it: all of it.")
    private WhatIf.Extent extent = WhatIf.Extent.WHOLE;

    /** The change of power, or null. */
    @Nullable Adjustment powerW() {
        return powerW;
    }

    /** The change as a whole; a usage error when its parts do not fit together. */
    WhatIf.Change change(@Nullable CommandSpec spec) {
        try {
            return new WhatIf.Change(
                    position,
                    dragAreaM2,
                    riderKg,
                    rollingResistance,
                    powerW,
                    air(temperatureC, altitudeM, pressureHpa, densityKgPerM3),
                    extent);
        } catch (IllegalArgumentException e) {
            throw Usage.error(spec, e.getMessage());
        }
    }

    /** Air from numbers of which each can be missing; the pressure is in hectopascals. */
    static Air air(
            @Nullable Double temperatureC,
            @Nullable Double altitudeM,
            @Nullable Double pressureHpa,
            @Nullable Double densityKgPerM3) {
        return new Air(temperatureC, altitudeM, pressureHpa == null ? null : pressureHpa * PA_PER_HPA, densityKgPerM3);
    }
}
