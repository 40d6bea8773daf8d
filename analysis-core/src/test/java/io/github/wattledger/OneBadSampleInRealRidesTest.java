package io.github.wattledger;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.rider.ZoneScheme;
import io.github.wattledger.testing.RealRides;
import io.github.wattledger.testing.WrongBit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** One sample made absurd in a real ride changes no total by more than 1 percent. */
class OneBadSampleInRealRidesTest {
    /** A ride of minutes has totals of which one second is a larger part. */
    private static final int SHORTEST_SAMPLES = 1000;

    private static final Channel[] CHANNELS = {
        Channel.DISTANCE, Channel.ALTITUDE, Channel.POWER, Channel.HEART_RATE, Channel.ACCUMULATED_WORK, Channel.SPEED
    };
    private static final double[] ABSURD = {0, -1, -99_999, 250, 3000, 65_534, 1 << 24, 1e15, 1e308};
    private static final int ROUNDS = 20;

    @Test
    void changesNoTotalByMoreThanOnePercent() throws IOException, UnreadableRideException {
        Random random = new Random(20_261_127);
        List<String> changed = new ArrayList<>();
        for (Path file : rides()) {
            for (Recording recording : RideFiles.read(file).recordings()) {
                if (recording.samples().size() < SHORTEST_SAMPLES) {
                    continue;
                }
                RideLoad expected = load(recording);
                for (int round = 0; round < ROUNDS; round++) {
                    Channel channel = CHANNELS[random.nextInt(CHANNELS.length)];
                    int at = round == 0 ? 0 : random.nextInt(recording.samples().size());
                    if (Double.isNaN(recording.samples().get(channel, at))) {
                        continue;
                    }
                    double bad = ABSURD[random.nextInt(ABSURD.length)];
                    RideLoad load = load(WrongBit.changed(recording, channel, at, bad));
                    String what = file.getFileName() + ": " + channel + " of sample " + at + " = " + bad;
                    compare(load.distanceM(), expected.distanceM(), 1, what + ", distance", changed);
                    // Ascent counts in steps of 3 m: one of them more or less is the noise of the method.
                    compare(load.ascentM(), expected.ascentM(), 3, what + ", ascent", changed);
                    compare(load.workKJ(), expected.workKJ(), 0, what + ", work", changed);
                    compare(
                            load.normalizedPowerW(),
                            expected.normalizedPowerW(),
                            0,
                            what + ", normalized power",
                            changed);
                    compare(
                            load.averageHeartRateBpm(),
                            expected.averageHeartRateBpm(),
                            0,
                            what + ", heart rate",
                            changed);
                }
            }
        }
        assertThat(changed).isEmpty();
    }

    private static List<Path> rides() throws IOException {
        try (Stream<Path> files = Files.list(RealRides.folder())) {
            return files.filter(file -> file.toString().endsWith(".fit"))
                    .sorted()
                    .toList();
        }
    }

    private static RideLoad load(Recording recording) {
        return RideLoad.of(
                Cleaning.clean(recording).ride(),
                null,
                null,
                ZoneScheme.POWER_SEVEN_LEVELS,
                ZoneScheme.HEART_RATE_FIVE_LEVELS);
    }

    private static void compare(
            @Nullable Double actual, @Nullable Double expected, double least, String what, List<String> changed) {
        double before = expected == null ? Double.NaN : expected;
        double after = actual == null ? Double.NaN : actual;
        boolean same =
                Double.isNaN(before) ? Double.isNaN(after) : Math.abs(after - before) <= Math.max(least, 0.01 * before);
        if (!same) {
            changed.add(what + ": " + after + " instead of " + before);
        }
    }
}
