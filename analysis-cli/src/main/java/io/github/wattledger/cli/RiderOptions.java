package io.github.wattledger.cli;

import io.github.wattledger.cli.profile.RiderFile;
import io.github.wattledger.cli.profile.RiderProfile;
import io.github.wattledger.cli.profile.UnreadableProfileException;
import io.github.wattledger.rider.Rider;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** The rider as options. The numbers count more than what a rider profile says. */
final class RiderOptions {
    /** The profile that counts where none is named: it stands in the folder of the rides. */
    static final String PROFILE = "rider.toml";

    static final String PROFILE_DESCRIPTION =
            "The rider profile, a TOML file: see 'wattledger rider --example'. Without it: rider.toml in the folder of"
                    + " the ride, where there is one. Options count more than what it says.";

    @Option(names = "--rider", paramLabel = "FILE", description = PROFILE_DESCRIPTION)
    private @Nullable String riderFile;

    @Option(
            names = "--threshold-power",
            paramLabel = "W",
            converter = NumberOptions.ThresholdPower.class,
            description = "The power you can hold for about an hour, watts. Without it: the rider profile's of the"
                    + " day, the device's setting, or an estimate.")
    private @Nullable Double thresholdPowerW;

    @Option(
            names = "--threshold-heart-rate",
            paramLabel = "BPM",
            converter = NumberOptions.ThresholdHeartRate.class,
            description = "The heart rate that goes with it, beats per minute.")
    private @Nullable Double thresholdHeartRateBpm;

    @Option(
            names = "--mass",
            paramLabel = "KG",
            converter = NumberOptions.RiderMass.class,
            description = "Your mass, kilograms; or pounds, as in 162lb.")
    private @Nullable Double massKg;

    /** Whether any of them was given. */
    boolean isGiven() {
        return riderFile != null || thresholdPowerW != null || thresholdHeartRateBpm != null || massKg != null;
    }

    /**
     * The profile with the numbers that were given in their place.
     *
     * @param folder where to look for a profile when none was named, or null for nowhere
     * @throws UnreadableProfileException when the profile cannot be taken
     */
    RiderProfile profile(@Nullable CommandSpec spec, @Nullable Path folder) throws UnreadableProfileException {
        RiderProfile profile = profile(spec, riderFile, folder);
        Rider rider = profile.rider();
        rider = thresholdPowerW == null ? rider : rider.withThresholdPowerW(thresholdPowerW);
        rider = thresholdHeartRateBpm == null ? rider : rider.withThresholdHeartRateBpm(thresholdHeartRateBpm);
        rider = massKg == null ? rider : rider.withMassKg(massKg);
        return new RiderProfile(rider, profile.limits());
    }

    /**
     * The profile that was named, otherwise that of the folder, otherwise one that says nothing.
     *
     * @throws UnreadableProfileException when the profile cannot be taken
     */
    static RiderProfile profile(@Nullable CommandSpec spec, @Nullable String named, @Nullable Path folder)
            throws UnreadableProfileException {
        if (named != null) {
            return RiderFile.read(Usage.path(spec, "--rider", named));
        }
        return folder != null && isProfileIn(folder) ? RiderFile.read(folder.resolve(PROFILE)) : RiderProfile.EMPTY;
    }

    /** Whether a profile is named, or stands in the folder. */
    boolean hasProfile(@Nullable Path folder) {
        return riderFile != null || isProfileIn(folder);
    }

    /** Whether a profile stands in a folder. */
    static boolean isProfileIn(@Nullable Path folder) {
        return folder != null && Files.isRegularFile(folder.resolve(PROFILE));
    }
}
