package io.github.wattledger;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.power.AbilityEvidence;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.Rider;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** A review without its seconds has every number of the review, and none of its seconds. */
class ReviewSummaryTest {
    private static final Path FILE = Path.of("..", "sample-rides", "over-hard-start.fit");

    private static RideReview review() throws Exception {
        Rider rider = Rider.UNKNOWN.withThresholdPowerW(240).withMassKg(70).withCriticalPower(235, 18);
        return Reviewer.review(FILE, rider, ReviewOptions.WHOLE_RIDE);
    }

    @Test
    void itHasTheNumbersOfTheReview() throws Exception {
        RideReview review = review();
        ReviewSummary summary = review.withoutSeconds();
        assertThat(summary.source()).isEqualTo(review.source());
        assertThat(summary.rider()).isEqualTo(review.rider());
        assertThat(summary.quality()).isEqualTo(review.quality());
        assertThat(summary.load()).isEqualTo(review.load());
        assertThat(summary.deviceTotals()).isEqualTo(review.deviceTotals());
        assertThat(summary.pacing()).isEqualTo(review.pacing().withoutSeconds());
        assertThat(summary.climbs()).isEqualTo(review.climbs());
        assertThat(summary.reviewed()).isEqualTo(review.reviewed());
        assertThat(summary.recordedSeconds()).isEqualTo(review.ride().seconds());
        assertThat(summary.ability().criticalPowerW())
                .isEqualTo(review.ability().criticalPowerW());
        assertThat(summary.bests())
                .extracting(MeanMaximalCurve.Window::seconds)
                .isEqualTo(review.curve().logSpacedSeconds());
        assertThat(summary.bests())
                .allSatisfy(best ->
                        assertThat(best.watts()).isEqualTo(review.curve().bestWatts(best.seconds())));
    }

    @Test
    void theSpendingOfWPrimeStaysWhenItsBalanceGoes() throws Exception {
        RideReview review = review();
        AbilityEvidence evidence = Objects.requireNonNull(review.ability().evidence());
        assertThat(evidence.balance()).isNotNull();
        ReviewSummary summary = review.withoutSeconds();
        assertThat(summary.spending()).isNotNull().isEqualTo(evidence.spending());
        assertThat(Objects.requireNonNull(summary.ability().evidence()).balance())
                .isNull();
    }

    /** The size does not grow with the seconds: a ride of over 7 h takes less than 40 kB, and its review megabytes. */
    @Test
    void itIsSmallAndTravels() throws Exception {
        RideReview review = review();
        byte[] bytes = serialized(review.withoutSeconds());
        assertThat(bytes.length).isLessThan(40_000);
        assertThat(serialized(review).length).isGreaterThan(2_000_000);
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes))) {
            assertThat(in.readObject()).isEqualTo(review.withoutSeconds());
        }
    }

    @Test
    void aRideWithoutPowerHasNoBests() {
        Ride ride = Ride.builder(Instant.EPOCH, 600).build();
        ReviewSummary summary =
                Reviewer.review(ride, Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE).withoutSeconds();
        assertThat(summary.bests()).isEmpty();
        assertThat(summary.spending()).isNull();
        assertThat(summary.recordedSeconds()).isEqualTo(600);
    }

    private static byte[] serialized(Object value) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(value);
        }
        return bytes.toByteArray();
    }
}
