package io.github.wattledger.cli;

import io.github.wattledger.rig.Air;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** A road that nobody has recorded. */
final class WhatIfRoad {
    @Option(
            names = "--distance",
            paramLabel = "KM|MI",
            converter = OptionValues.Distance.class,
            description = "Its length, for instance 160km or 200mi.")
    private @Nullable Double distanceM;

    @Option(
            names = "--power",
            paramLabel = "W",
            converter = NumberOptions.SteadyPower.class,
            description = "The steady power, watts.")
    private @Nullable Double powerW;

    @Option(
            names = "--ascent",
            paramLabel = "M",
            converter = NumberOptions.Ascent.class,
            description = "Metres climbed in all, in hills of 4 %% and down again; 0 without it.")
    private @Nullable Double ascentM;

    @Option(
            names = "--temperature",
            paramLabel = "C",
            converter = NumberOptions.Temperature.class,
            description = "Degrees Celsius; without it the standard atmosphere's, 15 at sea level.")
    private @Nullable Double temperatureC;

    @Option(
            names = "--altitude",
            paramLabel = "M",
            converter = NumberOptions.Altitude.class,
            description = "Metres above the sea, for the density of the air; 0 without it.")
    private @Nullable Double altitudeM;

    @Option(
            names = "--pressure",
            paramLabel = "HPA",
            converter = NumberOptions.Pressure.class,
            description = "Air pressure where the road is, hPa, instead of an altitude.")
    private @Nullable Double pressurePa;

    @Option(
            names = "--air-density",
            paramLabel = "KG/M3",
            converter = NumberOptions.AirDensity.class,
            description = "Density of the air, instead of temperature and altitude.")
    private @Nullable Double densityKgPerM3;

    /** The options that were given. */
    List<String> given() {
        List<String> given = new ArrayList<>();
        addIf(given, "--distance", distanceM);
        addIf(given, "--power", powerW);
        addIf(given, "--ascent", ascentM);
        addIf(given, "--temperature", temperatureC);
        addIf(given, "--altitude", altitudeM);
        addIf(given, "--pressure", pressurePa);
        addIf(given, "--air-density", densityKgPerM3);
        return given;
    }

    /** The air of the road, as far as it was given. */
    Air air() {
        return new Air(temperatureC, altitudeM, pressurePa, densityKgPerM3);
    }

    /** Whether the air is given by its density alone. */
    boolean hasAirDensity() {
        return densityKgPerM3 != null;
    }

    /** Its length in metres; null when it was not given. */
    @Nullable Double distanceM() {
        return distanceM;
    }

    /** The steady power in watts; null when it was not given. */
    @Nullable Double powerW() {
        return powerW;
    }

    /** The metres climbed in all; 0 when they were not given. */
    double ascentM() {
        return ascentM == null ? 0 : ascentM;
    }

    private static void addIf(List<String> options, String option, @Nullable Object value) {
        if (value != null) {
            options.add(option);
        }
    }
}
