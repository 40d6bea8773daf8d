package io.github.wattledger;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.course.ClimbReview;
import io.github.wattledger.intake.Selection;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.Rider;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The laws of a split: the parts add up to the whole, to the second, the metre, the joule and the minute lost. */
class RideSplitsTest {
    private static final Path SAMPLES = Path.of("..", "sample-rides");
    private static final Rider RIDER = Rider.UNKNOWN.withThresholdPowerW(250);

    static List<Path> recordings() throws IOException {
        String folder = System.getenv("WATTLEDGER_REAL_RIDES");
        try (Stream<Path> samples = Files.list(SAMPLES);
                Stream<Path> real = folder == null ? Stream.empty() : Files.list(Path.of(folder))) {
            return Stream.concat(samples, real)
                    .filter(file -> file.toString().endsWith(".fit"))
                    .sorted()
                    .toList();
        }
    }

    @ParameterizedTest
    @MethodSource("recordings")
    void thePartsAddUp(Path recording) throws UnreadableRideException {
        addUp(Reviewer.review(recording, RIDER, ReviewOptions.WHOLE_RIDE));
    }

    @Test
    void soDoThoseOfAPart() throws UnreadableRideException {
        RideReview review =
                overHardStart(ReviewOptions.WHOLE_RIDE.withSelection(Selection.WHOLE_RIDE.withSeconds(5000, 20_000)));
        RideSplits splits = RideSplits.of(review);
        assertThat(splits.hours().get(0).load().when()).isEqualTo(new Interval(5000, 8600));
        addUp(review);
    }

    private static void addUp(RideReview review) {
        RideSplits splits = RideSplits.of(review);
        addUp(review, splits.hours());
        if (!splits.sections().isEmpty()) {
            addUp(
                    review,
                    splits.sections().stream().map(RideSplits.Section::split).toList());
        }
    }

    private static void addUp(RideReview review, List<RideSplits.Split> parts) {
        int at = review.reviewed().fromSecond();
        for (RideSplits.Split part : parts) {
            assertThat(part.load().when().fromSecond()).isEqualTo(at);
            at = part.load().when().toSecond();
        }
        assertThat(at).isEqualTo(review.reviewed().toSecond());
        assertThat(parts.stream().mapToInt(part -> part.load().movingSeconds()).sum())
                .isEqualTo(review.load().movingSeconds());
        if (review.load().workKJ() != null) {
            assertThat(sum(parts, part -> orZero(part.load().workKJ())))
                    .isCloseTo(review.load().workKJ(), within(1e-6));
        }
        if (review.load().distanceM() != null) {
            assertThat(sum(parts, part -> orZero(part.load().distanceM())))
                    .isCloseTo(review.load().distanceM(), within(1e-6));
        }
        TimeLedger.Entry all = review.pacing().ledger().allAtOnce().orElse(null);
        assertThat(review.pacing().lost() == null).isEqualTo(all == null);
        if (all != null) {
            assertThat(sum(parts, part -> requireNonNull(part.lostLowMinutes())))
                    .isCloseTo(all.minutesLow(), within(1e-6));
            assertThat(sum(parts, part -> requireNonNull(part.lostHighMinutes())))
                    .isCloseTo(all.minutesHigh(), within(1e-6));
        }
    }

    /** What the sample is made of: too hard on the first 36 km, then ever slower; the time is lost at the end. */
    @Test
    void theTimeOfAnOverHardStartIsLostAfterIt() throws UnreadableRideException {
        RideReview review = overHardStart(ReviewOptions.WHOLE_RIDE);
        assertThat(review.pacing().verdict()).isEqualTo(Verdict.OVER_HARD_START);
        List<RideSplits.Split> hours = RideSplits.of(review).hours();
        assertThat(hours.get(0).lostHighMinutes()).isNegative();
        assertThat(hours.get(5).lostHighMinutes()).isGreaterThan(5);
    }

    /** Two stops are planned for the sample race; a stop is lost where it was made. */
    @Test
    void aStopIsLostWhereItWasMade() throws UnreadableRideException {
        RideReview review = Reviewer.review(SAMPLES.resolve("even-paced.fit"), RIDER, ReviewOptions.WHOLE_RIDE);
        TimeLedger.Entry all = review.pacing().ledger().allAtOnce().orElseThrow();
        for (RideSplits.Section section : RideSplits.of(review).sections()) {
            boolean hasStop = section.startM() <= 66_700 && section.endM() >= 66_700;
            assertThat(section.split().lostHighMinutes()).isCloseTo(hasStop ? all.minutesHigh() : 0, within(1e-9));
        }
    }

    @Test
    void aRideOfPowerAloneHasHoursAndNothingElse() {
        RideReview review = Reviewer.review(Ride.ofWatts(new double[4000]), Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE);
        RideSplits splits = RideSplits.of(review);
        assertThat(splits.hours()).hasSize(2).allMatch(hour -> hour.lostLowMinutes() == null);
        assertThat(splits.laps()).isEmpty();
        assertThat(splits.climbs()).isEmpty();
        assertThat(splits.sections()).isEmpty();
    }

    @Test
    void aLapAndAClimbAreThoseOfTheReview() throws UnreadableRideException {
        RideReview review = overHardStart(ReviewOptions.WHOLE_RIDE);
        RideSplits splits = RideSplits.of(review);
        assertThat(splits.laps().stream().map(lap -> lap.load().when()).toList())
                .isEqualTo(review.ride().laps());
        assertThat(splits.climbs().stream().map(climb -> climb.load().when()).toList())
                .isEqualTo(requireNonNull(review.climbs()).stream()
                        .map(ClimbReview::when)
                        .toList());
        for (int i = 0; i < splits.climbs().size(); i++) {
            assertThat(splits.climbs().get(i).load().movingSeconds())
                    .isEqualTo(review.climbs().get(i).climb().movingSeconds());
        }
    }

    private static RideReview overHardStart(ReviewOptions options) throws UnreadableRideException {
        return Reviewer.review(SAMPLES.resolve("over-hard-start.fit"), RIDER, options);
    }

    private static double sum(List<RideSplits.Split> parts, ToDoubleFunction<RideSplits.Split> number) {
        return parts.stream().mapToDouble(number).sum();
    }

    private static double orZero(@Nullable Double value) {
        return value == null ? 0 : value;
    }
}
