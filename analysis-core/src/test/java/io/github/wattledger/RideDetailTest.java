package io.github.wattledger;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.intake.Selection;
import io.github.wattledger.load.Decoupling;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Rider;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class RideDetailTest {
    private static final Rider RIDER = Rider.UNKNOWN.withThresholdPowerW(250);

    /** Two hours at 200 W and a heart rate that rises from 120 to 125 after the first hour; paused for a minute. */
    private static Ride steady() {
        return Ride.builder(Instant.EPOCH, 7260)
                .channel(Channel.POWER, Series.generate(7260, second -> 200))
                .channel(Channel.HEART_RATE, Series.generate(7260, second -> second < 3600 ? 120 : 125))
                .state(new Interval(5000, 5060), SecondState.PAUSED)
                .build();
    }

    private static RideDetail detail(ReviewOptions options) {
        return RideDetail.of(Reviewer.review(steady(), RIDER, options));
    }

    @Test
    void powerIsMissingWhilePaused() {
        RideDetail detail = detail(ReviewOptions.WHOLE_RIDE);
        assertThat(detail.power30sW().get(4999)).isEqualTo(200);
        assertThat(detail.power30sW().get(5000)).isNaN();
        assertThat(detail.power180sW().get(5059)).isNaN();
        assertThat(detail.power180sW().get(5060)).isEqualTo(200);
    }

    @Test
    void theBlocksLieOnTheAxisOfTheWholeRecording() {
        RideDetail detail =
                detail(ReviewOptions.WHOLE_RIDE.withSelection(Selection.WHOLE_RIDE.withSeconds(1200, null)));
        List<Decoupling.Block> blocks = detail.wattsPerBeat();
        assertThat(blocks.get(0).stretch()).isEqualTo(new Interval(1200, 2400));
        // Normalized power of a steady ride is that power: 200 / 120 and 200 / 125 W per beat.
        assertThat(requireNonNull(blocks.get(0).wattsPerBeat())).isCloseTo(200.0 / 120, within(1e-9));
        assertThat(requireNonNull(blocks.get(3).wattsPerBeat())).isCloseTo(1.6, within(1e-9));
    }

    @Test
    void thereIsNoBalanceWithoutCriticalPower() {
        assertThat(detail(ReviewOptions.WHOLE_RIDE).wPrimeBalanceKJ()).isNull();
    }

    @Test
    void aStretchIsToldByTheRangeOfTheSustainablePowerAndByThreshold() {
        RideDetail detail = detail(ReviewOptions.WHOLE_RIDE);
        // Two hours: 0.895 of threshold, from a tenth below to a twentieth above: 201 to 235 W.
        assertThat(detail.band(190, 250.0)).isEqualTo(RideDetail.Band.BELOW);
        assertThat(detail.band(220, 250.0)).isEqualTo(RideDetail.Band.WITHIN);
        assertThat(detail.band(240, 250.0)).isEqualTo(RideDetail.Band.ABOVE);
        assertThat(detail.band(251, 250.0)).isEqualTo(RideDetail.Band.ABOVE_THRESHOLD);
        assertThat(detail.band(251, null)).isEqualTo(RideDetail.Band.ABOVE);
        assertThat(detail.band(Double.NaN, 250.0)).isNull();
    }
}
