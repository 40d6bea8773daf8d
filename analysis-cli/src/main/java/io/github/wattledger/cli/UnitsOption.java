package io.github.wattledger.cli;

import io.github.wattledger.cli.report.words.Units;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** {@code --units} of the commands whose reports show lengths, speeds, masses or temperatures. */
final class UnitsOption {
    @Option(
            names = "--units",
            paramLabel = "WORD",
            description =
                    "metric (the default), or imperial: miles, feet, pounds, degrees Fahrenheit in text and pages."
                            + " JSON and CSV stay metric.")
    private Units units = Units.METRIC;

    /**
     * The units of a report.
     *
     * @param isForPeople whether anything is written for people; a usage error when other units than those of JSON and CSV
     *     are asked for and nothing is
     */
    Units units(@Nullable CommandSpec spec, boolean isForPeople) {
        if (units != Units.METRIC && !isForPeople) {
            throw Usage.refused(spec, "--units", "JSON and CSV stay metric; leave it out, or write text or a page");
        }
        return units;
    }
}
