package io.github.wattledger.cli;

import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.replay.Adjustment;
import io.github.wattledger.replay.Shelter;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.ride.Decimals;
import io.github.wattledger.rider.Bounds;
import io.github.wattledger.rig.Air;
import io.github.wattledger.rig.Position;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** The options that say what is changed about rider, bicycle, power and air. */
final class WhatIfChange {
    @Option(names = "--with-position", paramLabel = "WORD", description = "hoods, drops or aero-bars.")
    private @Nullable Position position;

    @Option(
            names = "--with-drag-area",
            paramLabel = "CHANGE",
            converter = NumberOptions.OtherDragArea.class,
            description = "Another drag area, m2: 0.32 or -20%%.")
    private @Nullable Adjustment dragAreaM2;

    @Option(
            names = "--with-mass",
            paramLabel = "CHANGE",
            converter = NumberOptions.OtherMass.class,
            description = "Another mass of the rider, kg: 72 or -3. A difference may be the bicycle's.")
    private @Nullable Adjustment riderKg;

    @Option(
            names = "--with-rolling-resistance",
            paramLabel = "CHANGE",
            converter = NumberOptions.OtherRollingResistance.class,
            description = "Another rolling resistance: 0.005 or -10%%.")
    private @Nullable Adjustment rollingResistance;

    @Option(
            names = "--with-power",
            paramLabel = "CHANGE",
            converter = NumberOptions.OtherPower.class,
            description = "Another power, watts: 210, +10 or +5%%; of a RIDE +10 or +5%%.")
    private @Nullable Adjustment powerW;

    @Option(
            names = "--with-temperature",
            paramLabel = "C",
            converter = NumberOptions.Temperature.class,
            description = "Another temperature.")
    private @Nullable Double temperatureC;

    @Option(
            names = "--with-altitude",
            paramLabel = "M",
            converter = NumberOptions.Altitude.class,
            description = "Another altitude, for the density of the air alone.")
    private @Nullable Double altitudeM;

    @Option(
            names = "--with-pressure",
            paramLabel = "HPA",
            converter = NumberOptions.Pressure.class,
            description = "Another pressure of the air.")
    private @Nullable Double pressurePa;

    @Option(
            names = "--with-air-density",
            paramLabel = "KG/M3",
            converter = NumberOptions.AirDensity.class,
            description = "Another density of the air.")
    private @Nullable Double densityKgPerM3;

    @Option(
            names = "--share",
            paramLabel = "SHARE",
            converter = OptionValues.ShareOfDistance.class,
            description = "Over how much of the distance: 25%%, spread evenly over it, or 75%%-100%%, its last"
                    + " quarter. Without it: all of it.")
    private WhatIf.Extent extent = WhatIf.Extent.WHOLE;

    @Option(
            names = "--bunch-share",
            paramLabel = "SHARE",
            converter = OptionValues.Share.class,
            description = "In a bunch for this share of the distance, spread evenly over it, with --drag-saved; asked"
                    + " without any other change.")
    private @Nullable Double bunchShare;

    @Option(
            names = "--drag-saved",
            paramLabel = "SHARE",
            converter = OptionValues.Share.class,
            description = "The share of the drag that the bunch saves, for instance 25%%; close groups on a road: 25 to"
                    + " 50%%.")
    private @Nullable Double dragSaved;

    /** The change of power, or null. */
    @Nullable Adjustment powerW() {
        return powerW;
    }

    /** The change as a whole; a usage error when its parts do not fit together. */
    WhatIf.Change change(@Nullable CommandSpec spec) {
        if (position != null && dragAreaM2 != null) {
            throw Usage.error(
                    spec,
                    "--with-position and --with-drag-area: another position is another drag area; give one of them");
        }
        Air air = new Air(temperatureC, altitudeM, pressurePa, densityKgPerM3);
        WhatIf.Change change =
                new WhatIf.Change(position, dragAreaM2, riderKg, rollingResistance, powerW, air, null, extent);
        return bunchShare == null && dragSaved == null ? change : inBunch(spec, change);
    }

    private WhatIf.Change inBunch(@Nullable CommandSpec spec, WhatIf.Change others) {
        if (bunchShare == null || dragSaved == null) {
            throw Usage.error(spec, "--bunch-share and --drag-saved are needed together, as in 40% and 25%");
        }
        if (!others.equals(WhatIf.Change.NOTHING)) {
            throw Usage.error(spec, "--bunch-share cannot be combined with another change or with --share");
        }
        if (bunchShare == 0) {
            throw Usage.refused(spec, "--bunch-share", "expected more than 0%");
        }
        if (dragSaved == 0 || dragSaved > Shelter.MOST_SAVING) {
            throw Usage.refused(spec, "--drag-saved", "expected more than 0% and at most 90%");
        }
        return WhatIf.Change.NOTHING.withBunchSaving(dragSaved).over(WhatIf.Extent.spread(bunchShare));
    }

    /**
     * The usage error for a number that the change leads out of its bounds.
     *
     * @param e what the core says of it, by its own name
     * @param units of the reader
     */
    ParameterException refused(@Nullable CommandSpec spec, Bounds.OutOfBoundsException e, Units units) {
        return switch (e.name()) {
            case "massKg" -> leads(spec, "--with-mass", "rider and bicycle", Unit.KILOGRAM, e, units);
            case "dragAreaM2" ->
                leads(
                        spec,
                        dragSaved != null ? "--drag-saved" : position == null ? "--with-drag-area" : "--with-position",
                        "the drag area",
                        Unit.SQUARE_METRE,
                        e,
                        units);
            case "rollingResistance" ->
                leads(spec, "--with-rolling-resistance", "the rolling resistance", Unit.NONE, e, units);
            case "airDensityKgPerM3" ->
                Usage.error(
                        spec,
                        "temperature, altitude and pressure make air of " + Decimals.of(e.value(), 2) + " kg/m3, "
                                + Unit.KILOGRAM_PER_CUBIC_METRE.expected(e.bounds(), units));
            default -> Usage.error(spec, e.getMessage());
        };
    }

    private static ParameterException leads(
            @Nullable CommandSpec spec,
            String option,
            String what,
            Unit unit,
            Bounds.OutOfBoundsException e,
            Units units) {
        String reached = unit.words(e.value(), unit.equals(Unit.KILOGRAM) ? 1 : 4, units);
        return Usage.refused(
                spec, option, "brings " + what + " to " + reached + ", " + unit.expected(e.bounds(), units));
    }
}
