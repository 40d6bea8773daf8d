package io.github.wattledger.pacing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.cancel.CancelledException;
import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Rider;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Detectors of one's own beside the library's. */
class OwnFindingTest {
    private static final int EASY = 600;
    private static final Rider RIDER = Rider.UNKNOWN.withThresholdPowerW(250);
    private static final Advice ADVICE = new Advice("Do better", null, null);

    /** Ten minutes to the start at 60 W and 4 m/s, then an hour at 240 W and 10 m/s; the first second has no distance. */
    private static Ride race() {
        int seconds = EASY + 3600;
        return Ride.builder(Instant.parse("2026-06-13T06:00:00Z"), seconds)
                .channel(Channel.POWER, Series.generate(seconds, second -> second < EASY ? 60 : 240))
                .channel(Channel.SPEED, Series.generate(seconds, second -> second < EASY ? 4 : 10))
                .channel(
                        Channel.DISTANCE,
                        Series.generate(
                                seconds,
                                second -> second == 0
                                        ? Double.NaN
                                        : second < EASY ? 4.0 * second : 4.0 * EASY + 10.0 * (second - EASY)))
                .build();
    }

    private static OwnFinding at(JudgedPart part, String kind, Severity severity, int from, int to) {
        return part.finding(
                kind, severity, new Interval(from, to), Evidence.none().with("answerW", 42), ADVICE);
    }

    private static PacingReview review(Ride ride, FindingDetector... detectors) {
        return Reviewer.review(ride, RIDER, ReviewOptions.WHOLE_RIDE.withDetectors(List.of(detectors)))
                .pacing();
    }

    @Test
    void aDetectorSeesTheJudgedPartAndWhatItIsJudgedAgainst() {
        List<JudgedPart> seen = new ArrayList<>();
        PacingReview pacing = review(race(), part -> {
            seen.add(part);
            return List.of();
        });
        JudgedPart part = seen.get(0);
        assertThat(seen).hasSize(1);
        assertThat(part.offsetSeconds()).isEqualTo(EASY);
        assertThat(part.ride()).isEqualTo(race().part(new Interval(EASY, EASY + 3600)));
        assertThat(part.thresholds().knownPowerW()).isEqualTo(250.0);
        assertThat(part.targetW()).isEqualTo(pacing.targetW());
        assertThat(part.isRace()).isTrue();
        assertThat(part.limits()).isEqualTo(JudgementLimits.USUAL);
        assertThat(pacing.ownFindings()).isEmpty();
    }

    @Test
    void aFindingIsPlacedInTheWholeRecording() {
        OwnFinding found = review(race(), part -> List.of(at(part, "one-more", Severity.MINOR, 100, 200)))
                .ownFindings()
                .get(0);
        assertThat(found.when()).isEqualTo(new Interval(EASY + 100, EASY + 200));
        assertThat(found.startM()).isEqualTo(2400.0 + 1000);
        assertThat(found.endM()).isEqualTo(2400.0 + 1990); // its last second is the 199th
        assertThat(found.evidence().get("answerW")).hasValue(42);
    }

    @Test
    void withoutDistanceThereIsNone() {
        OwnFinding found = review(
                        Ride.ofWatts(new double[3000]), part -> List.of(at(part, "still", Severity.MINOR, 0, 3000)))
                .ownFindings()
                .get(0);
        assertThat(found.startM()).isNull();
        assertThat(found.endM()).isNull();
    }

    @Test
    void theWeightiestComesFirstAndEqualOnesInTheOrderOfTheDetectors() {
        FindingDetector first =
                part -> List.of(at(part, "a", Severity.MINOR, 0, 1), at(part, "b", Severity.MODERATE, 0, 1));
        FindingDetector second =
                part -> List.of(at(part, "c", Severity.MAJOR, 0, 1), at(part, "d", Severity.MODERATE, 0, 1));
        assertThat(review(race(), first, second).ownFindings())
                .extracting(OwnFinding::kind)
                .containsExactly("c", "b", "d", "a");
    }

    @Test
    void theJudgementStaysAsItIs() {
        PacingReview without = review(race());
        PacingReview with = review(race(), part -> List.of(at(part, "terrible", Severity.MAJOR, 0, 3600)));
        assertThat(with.findings()).isEqualTo(without.findings());
        assertThat(with.verdict()).isEqualTo(without.verdict());
        assertThat(with.ledger()).isEqualTo(without.ledger());
        assertThat(with.leftOut()).isEqualTo(without.leftOut());
    }

    @Test
    void shortRidesAreShownAsWell() {
        PacingReview pacing = review(Ride.ofWatts(200, 200, 200), part -> {
            assertThat(part.isRace()).isFalse();
            return List.of(at(part, "brief", Severity.MINOR, 0, 3));
        });
        assertThat(pacing.verdict()).isEqualTo(Verdict.NOT_JUDGED);
        assertThat(pacing.ownFindings()).hasSize(1);
    }

    @Test
    void secondsOutsideThePartFailTheDetector() {
        FindingDetector late = part -> List.of(at(part, "late", Severity.MINOR, 3500, 3601));
        assertThat(review(race(), late).detectorFailures())
                .singleElement()
                .asString()
                .endsWith("a finding from second 3500 to 3601, expected at least one of the 3600 of the part.");
        FindingDetector empty = part -> List.of(at(part, "empty", Severity.MINOR, 7, 7));
        assertThat(review(race(), empty).detectorFailures()).hasSize(1);
        OwnFinding astray = new OwnFinding(
                "astray", Severity.MINOR, new Interval(EASY - 1, EASY + 9), null, null, Evidence.none(), ADVICE);
        PacingReview pacing = review(race(), part -> List.of(at(part, "there", Severity.MINOR, 0, 9), astray));
        assertThat(pacing.ownFindings()).isEmpty();
        assertThat(pacing.detectorFailures())
                .singleElement()
                .asString()
                .endsWith("the finding 'astray' lies outside the judged part, from second 600 to 4200; make it with"
                        + " JudgedPart.finding.");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "Much", "much coasting", "-much", "much-", "7up", "fade", "over-hard-start"})
    void aKindIsAWordOfItsOwn(String kind) {
        assertThatIllegalArgumentException()
                .isThrownBy(() ->
                        new OwnFinding(kind, Severity.MINOR, new Interval(0, 1), null, null, Evidence.none(), ADVICE));
    }

    /** Detectors that fail, each in its own way. */
    private record Failing(RuntimeException thrown) implements FindingDetector {
        @Override
        public List<OwnFinding> detect(JudgedPart part) {
            throw thrown;
        }
    }

    @Test
    void aDetectorThatFailsIsLeftOutWithANoteAndTheOthersAreAsked() {
        FindingDetector broken = new Failing(new IllegalStateException("broken\nin two lines"));
        FindingDetector sound = part -> List.of(at(part, "there", Severity.MINOR, 0, 9));
        ReviewOptions options = ReviewOptions.WHOLE_RIDE.withDetectors(List.of(broken, sound));
        RideReview review = Reviewer.review(race(), RIDER, options);
        assertThat(review.pacing().ownFindings()).extracting(OwnFinding::kind).containsExactly("there");
        String sentence = "The detector Failing failed and was left out: java.lang.IllegalStateException: broken.";
        assertThat(review.pacing().detectorFailures()).containsExactly(sentence);
        assertThat(review.quality().notes()).contains(new QualityNote("detector-failed", null, sentence));
    }

    /** The name of a lambda holds an address, which differs from run to run. */
    @Test
    void aDetectorWithoutANameIsNamedAfterItsPlace() {
        FindingDetector lambda = part -> {
            throw new IllegalStateException("broken");
        };
        FindingDetector anonymous = new FindingDetector() {
            @Override
            public List<OwnFinding> detect(JudgedPart part) {
                throw new IllegalStateException("broken");
            }
        };
        ReviewOptions options = ReviewOptions.WHOLE_RIDE.withDetectors(List.of(lambda, anonymous));
        String sentence = "The detector without a name in OwnFindingTest failed and was left out:"
                + " java.lang.IllegalStateException: broken.";
        assertThat(Reviewer.review(race(), RIDER, options).pacing().detectorFailures())
                .containsExactly(sentence, sentence);
    }

    @Test
    void aTimeLimitThatADetectorUsesUpEndsTheReview() {
        FindingDetector slow = part -> {
            LockSupport.parkNanos(Duration.ofSeconds(3).toNanos());
            return List.of();
        };
        ReviewOptions options =
                ReviewOptions.WHOLE_RIDE.withDetectors(List.of(slow)).withTimeLimit(Duration.ofSeconds(2));
        assertThatExceptionOfType(CancelledException.class).isThrownBy(() -> Reviewer.review(race(), RIDER, options));
    }

    @Test
    void nullInPlaceOfFindingsIsAFailure() {
        @SuppressWarnings("NullAway") // what a caller without a null checker can do
        FindingDetector broken = part -> null;
        assertThat(review(race(), broken).detectorFailures()).hasSize(1);
    }

    @Test
    void anErrorAndACancellationEndTheReview() {
        FindingDetector full = part -> {
            throw new OutOfMemoryError("none left");
        };
        assertThatThrownBy(() -> review(race(), full)).isInstanceOf(OutOfMemoryError.class);
        FindingDetector interrupted = part -> {
            Thread.currentThread().interrupt();
            Cancellation.ON_INTERRUPT.check();
            return List.of();
        };
        assertThatThrownBy(() -> review(race(), interrupted)).isInstanceOf(CancelledException.class);
        assertThat(Thread.interrupted()).isTrue();
    }

    @Test
    void optionsWithADetectorTravel() throws Exception {
        ReviewOptions options = ReviewOptions.WHOLE_RIDE.withDetectors(
                List.of(part -> List.of(at(part, "there", Severity.MINOR, 0, 9))));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(options);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            RideReview review = Reviewer.review(race(), RIDER, (ReviewOptions) in.readObject());
            assertThat(review.pacing().ownFindings())
                    .isEqualTo(Reviewer.review(race(), RIDER, options).pacing().ownFindings())
                    .hasSize(1);
        }
    }
}
