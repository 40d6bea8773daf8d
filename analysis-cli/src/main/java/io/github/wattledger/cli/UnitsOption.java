package io.github.wattledger.cli;

import io.github.wattledger.cli.report.words.Units;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParseResult;

/** {@code --units} of the commands whose reports show lengths, speeds, masses or temperatures. */
final class UnitsOption {
    /** A number, or two with a line between them, without a unit; then what may follow the unit. */
    private static final Pattern BARE = Pattern.compile("([+-]?[\\d.]+(?:-[\\d.]+)?)(=.*)?");

    private static final Pattern ASKS_FOR_IMPERIAL = Pattern.compile("(?i)--units[= ]imperial");

    /** What may be typed in either system, and how it is written in the imperial one. */
    private static final Map<Class<?>, String> IMPERIAL = Map.of(
            NumberOptions.RiderMass.class, "lb",
            NumberOptions.BicycleMass.class, "lb",
            NumberOptions.OtherMass.class, "lb",
            NumberOptions.Ascent.class, "ft",
            NumberOptions.Altitude.class, "ft",
            NumberOptions.Temperature.class, "F",
            NumberOptions.WindSpeed.class, "mph",
            NumberOptions.FastestSpeed.class, "mph",
            OptionValues.Surface.class, "mi");

    @Option(
            names = "--units",
            paramLabel = "WORD",
            description =
                    "metric (the default), or imperial: miles, feet, pounds, degrees Fahrenheit in text and pages."
                            + " JSON and CSV stay metric.")
    private Units units = Units.METRIC;

    /**
     * The units of a report. With imperial units a number without its unit is a usage error, wherever it may have one.
     *
     * @param isForPeople whether anything is written for people; a usage error when other units than those of JSON and CSV
     *     are asked for and nothing is
     */
    Units units(@Nullable CommandSpec spec, boolean isForPeople) {
        if (units != Units.METRIC && !isForPeople) {
            throw Usage.refused(spec, "--units", "JSON and CSV stay metric; leave it out, or write text or a page");
        }
        if (units == Units.IMPERIAL && spec != null) {
            spec.commandLine().getParseResult().matchedOptions().forEach(given -> requireUnit(spec, given));
        }
        return units;
    }

    /** The units that a command line asks for which could not be taken, so that no option of it has its value. */
    static Units typed(CommandLine command) {
        ParseResult parsed = command.getParseResult();
        return parsed != null
                        && ASKS_FOR_IMPERIAL
                                .matcher(String.join(" ", parsed.originalArgs()))
                                .find()
                ? Units.IMPERIAL
                : Units.METRIC;
    }

    /** A bare number is metric; somebody who asks for miles may mean pounds by it. */
    private static void requireUnit(CommandSpec spec, OptionSpec given) {
        for (ITypeConverter<?> converter : given.converters()) {
            String symbol = IMPERIAL.get(converter.getClass());
            List<String> values = symbol == null ? List.of() : given.originalStringValues();
            for (int i = 0; i < values.size(); i++) {
                Matcher bare = BARE.matcher(values.get(i).strip());
                if (bare.matches()) {
                    throw Usage.refused(
                            spec,
                            given.longestName(),
                            i,
                            "with --units imperial say the unit, for instance " + bare.group(1) + symbol
                                    + Objects.requireNonNullElse(bare.group(2), ""));
                }
            }
        }
    }
}
