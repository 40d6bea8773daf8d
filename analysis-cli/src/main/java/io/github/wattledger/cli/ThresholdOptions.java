package io.github.wattledger.cli;

import io.github.wattledger.rider.Rider;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** The rider's thresholds as options. They come before what a rider profile says. */
final class ThresholdOptions {
    @Option(
            names = "--threshold-power",
            paramLabel = "W",
            converter = OptionValues.PlainNumber.class,
            description = "The power you can hold for about an hour, watts. Without it: the rider profile's of the"
                    + " day, the device's setting, or an estimate.")
    private @Nullable Double thresholdPowerW;

    @Option(
            names = "--threshold-heart-rate",
            paramLabel = "BPM",
            converter = OptionValues.PlainNumber.class,
            description = "The heart rate that goes with it, beats per minute.")
    private @Nullable Double thresholdHeartRateBpm;

    /** The rider with the thresholds that were given; a usage error when one of them is out of its bounds. */
    Rider with(@Nullable CommandSpec spec, Rider profile) {
        Rider rider = Usage.with(spec, profile, "--threshold-power", thresholdPowerW, profile::withThresholdPowerW);
        return Usage.with(
                spec, rider, "--threshold-heart-rate", thresholdHeartRateBpm, rider::withThresholdHeartRateBpm);
    }
}
