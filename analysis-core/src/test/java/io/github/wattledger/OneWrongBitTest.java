package io.github.wattledger;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.load.RideLoad;
import io.github.wattledger.pacing.Effort;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.testing.RealRides;
import io.github.wattledger.testing.WrongBit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** One bit wrong in one sample changes no total by more than 1 percent, and no finding comes or goes. */
class OneWrongBitTest {
    /** A ride of minutes has totals of which one second is a larger part. */
    private static final int SHORTEST_SAMPLES = 1000;

    private static final Rider RIDER = Rider.UNKNOWN
            .withThresholdPowerW(240)
            .withThresholdHeartRateBpm(165)
            .withMassKg(74);

    /** Judged whatever it was taken for, so that there are findings that could change. */
    private static final ReviewOptions JUDGED = ReviewOptions.WHOLE_RIDE.withEffort(Effort.RACE);

    private final List<String> changed = new ArrayList<>();
    private int checked;

    @Test
    void ofASampleRideChangesNothing() throws IOException, UnreadableRideException {
        check(fitFiles(Path.of("..", "sample-rides")), 2);
        assertThat(checked).isGreaterThan(3 * 2 * 6);
        assertThat(changed).isEmpty();
    }

    @Test
    void ofARealRideChangesNothing() throws IOException, UnreadableRideException {
        check(fitFiles(RealRides.folder()), 1);
        assertThat(changed).isEmpty();
    }

    private static List<Path> fitFiles(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(".fit"))
                    .sorted()
                    .toList();
        }
    }

    private void check(List<Path> files, int rounds) throws UnreadableRideException {
        Random random = new Random(20_261_127);
        for (Path file : files) {
            for (Recording recording : RideFiles.read(file).recordings()) {
                if (recording.samples().size() >= SHORTEST_SAMPLES) {
                    check(String.valueOf(file.getFileName()), recording, rounds, random);
                }
            }
        }
    }

    private void check(String name, Recording recording, int rounds, Random random) {
        // Without the device, as the changed recordings are.
        Recording unchanged = WrongBit.changed(recording, Channel.POWER, -1, Double.NaN);
        RideReview sound = Reviewer.review(unchanged, RIDER, JUDGED);
        for (Channel channel : WrongBit.CHANNELS) {
            for (int round = 0; round < rounds; round++) {
                int at = random.nextInt(recording.samples().size());
                WrongBit wrong = new WrongBit(channel, random.nextInt(WrongBit.bits(channel)));
                if (!Double.isNaN(recording.samples().get(channel, at))) {
                    RideReview review = Reviewer.review(wrong.in(recording, at), RIDER, JUDGED);
                    compare(
                            name + ": " + wrong + " of sample " + at,
                            review,
                            sound,
                            leastAscentM(wrong, recording, at));
                    checked++;
                }
            }
        }
    }

    /**
     * Ascent counts in steps of 3 m: one of them more or less is the noise of the method. An altitude that can be reached
     * in the time between samples (8 m in a second, docs/methods.md) cannot be told from a climb; it may count once.
     */
    private static double leastAscentM(WrongBit wrong, Recording recording, int at) {
        double rounding = 1e-6;
        double metres = Math.pow(2, wrong.bit()) / 5 + rounding;
        Samples samples = recording.samples();
        long before = at == 0 ? 0 : samples.epochSecond(at) - samples.epochSecond(at - 1);
        long after = at == samples.size() - 1 ? 0 : samples.epochSecond(at + 1) - samples.epochSecond(at);
        boolean isPossible = metres <= 8 * (Math.max(before, after) + 1);
        return wrong.channel() == Channel.ALTITUDE && isPossible ? Math.max(3, metres) : 3;
    }

    private void compare(String what, RideReview review, RideReview sound, double leastAscentM) {
        RideLoad load = review.load();
        RideLoad expected = sound.load();
        compare(load.distanceM(), expected.distanceM(), 1, what + ", distance");
        compare(load.ascentM(), expected.ascentM(), leastAscentM, what + ", ascent");
        compare(load.workKJ(), expected.workKJ(), 0, what + ", work");
        compare(load.normalizedPowerW(), expected.normalizedPowerW(), 0, what + ", normalized power");
        compare(load.averageHeartRateBpm(), expected.averageHeartRateBpm(), 0, what + ", heart rate");
        if (!kinds(review).equals(kinds(sound))) {
            changed.add(what + ", findings: " + kinds(review) + " instead of " + kinds(sound));
        }
    }

    private static Set<FindingKind> kinds(RideReview review) {
        Set<FindingKind> kinds = new TreeSet<>();
        for (Finding finding : review.pacing().findings()) {
            kinds.add(finding.kind());
        }
        return kinds;
    }

    private void compare(@Nullable Double actual, @Nullable Double expected, double least, String what) {
        double before = expected == null ? Double.NaN : expected;
        double after = actual == null ? Double.NaN : actual;
        boolean same =
                Double.isNaN(before) ? Double.isNaN(after) : Math.abs(after - before) <= Math.max(least, 0.01 * before);
        if (!same) {
            changed.add(what + ": " + after + " instead of " + before);
        }
    }
}
