package io.github.wattledger;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.intake.Known;
import io.github.wattledger.intake.Origin;
import io.github.wattledger.intake.RiderOnDay;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.ThresholdHistory;
import io.github.wattledger.rider.ThresholdHistory.Entry;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Which threshold a ride is judged by: given, else the profile's of the ride's own day, else the device's. */
class ReviewerThresholdTest {
    private static final Rider RIDER = Rider.UNKNOWN.withThresholds(new ThresholdHistory(List.of(
            new Entry(LocalDate.of(2026, 3, 1), 250.0, 165.0), new Entry(LocalDate.of(2026, 6, 15), 260.0, 167.0))));

    private static final RecordingDevice DEVICE = new RecordingDevice("Acme Recorder 7", 200.0, 150.0, null, 80.0);

    @Test
    void theDayIsThatOfTheRidersOwnClock() {
        // 22:30 UTC on 14 June is half past one on the 15th, three hours further east.
        assertThat(context("2026-06-14T22:30:00Z", 3 * 3600, RIDER).thresholdPowerW())
                .isEqualTo(260);
        assertThat(context("2026-06-14T22:30:00Z", null, RIDER).thresholdPowerW())
                .isEqualTo(250);
        // 02:00 UTC on the 15th is still the 14th, six hours further west.
        assertThat(context("2026-06-15T02:00:00Z", -6 * 3600, RIDER).thresholdPowerW())
                .isEqualTo(250);
    }

    @Test
    void theProfileBeatsTheDevice() {
        RiderOnDay context = context("2026-04-01T08:00:00Z", null, RIDER);
        assertThat(context.thresholdPowerW()).isEqualTo(250);
        assertThat(context.thresholdPowerOrigin()).isEqualTo(Origin.PROFILE);
        assertThat(context.thresholdHeartRateBpm()).isEqualTo(165);
        assertThat(context.massKg()).isEqualTo(80);
    }

    @Test
    void whatIsGivenBeatsTheProfile() {
        RiderOnDay context = context(
                "2026-04-01T08:00:00Z",
                null,
                RIDER.withThresholdPowerW(245).withThresholdHeartRateBpm(160).withMassKg(74));
        assertThat(context.thresholdPower()).isEqualTo(new Known(245, Origin.GIVEN));
        assertThat(context.thresholdHeartRate()).isEqualTo(new Known(160, Origin.GIVEN));
        assertThat(context.mass()).isEqualTo(new Known(74, Origin.GIVEN));
    }

    @Test
    void withoutAHistoryTheDeviceIsBelieved() {
        RiderOnDay context = context("2026-04-01T08:00:00Z", null, Rider.UNKNOWN);
        assertThat(context.thresholdPower()).isEqualTo(new Known(200, Origin.DEVICE));
        assertThat(context.thresholdHeartRate()).isEqualTo(new Known(150, Origin.DEVICE));
        assertThat(context.mass()).isEqualTo(new Known(80, Origin.DEVICE));
    }

    @Test
    void aThresholdOfALaterDayIsSaidToBeOne() {
        RideReview review = review("2026-02-28T08:00:00Z", null, RIDER);
        assertThat(review.rider().thresholdPowerW()).isEqualTo(250);
        assertThat(review.quality().notes()).extracting(QualityNote::code).contains("threshold-later-than-ride");
        assertThat(review("2026-03-01T08:00:00Z", null, RIDER).quality().notes())
                .extracting(QualityNote::code)
                .doesNotContain("threshold-later-than-ride");
    }

    private static RiderOnDay context(String start, @Nullable Integer utcOffsetSeconds, Rider rider) {
        return review(start, utcOffsetSeconds, rider).rider();
    }

    private static RideReview review(String start, @Nullable Integer utcOffsetSeconds, Rider rider) {
        Samples.Builder samples = Samples.builder();
        long first = Instant.parse(start).getEpochSecond();
        for (int second = 0; second < 60; second++) {
            samples.at(first + second).set(Channel.POWER, 180 + second % 7);
        }
        Recording recording =
                new Recording(samples.build(), List.of(), List.of(), null, DEVICE, "cycling", 0, utcOffsetSeconds);
        return Reviewer.review(recording, rider, ReviewOptions.WHOLE_RIDE);
    }
}
