package io.github.wattledger.pacing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Gears;
import io.github.wattledger.rider.Rider;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class GearsFindingTest {
    private static final Gears GEARS = new Gears(List.of(34, 46), List.of(11, 15, 20, 28), 2.1);

    /** Fifteen minutes of an hour in 46 x 11 at 106 rpm, five in 34 x 28 at 50 rpm up 8 %, the rest in 46 x 15 at 85. */
    private static RideReview review(Rider rider) {
        double[] speed = new double[3600];
        double[] altitude = new double[3600];
        double[] distance = new double[3600];
        double[] cadence = new double[3600];
        for (int second = 0; second < 3600; second++) {
            int part = second < 900 ? 0 : second < 1200 ? 1 : 2;
            cadence[second] = new double[] {106, 50, 85}[part];
            double ratio = new double[] {46 / 11.0, 34 / 28.0, 46 / 15.0}[part];
            speed[second] = cadence[second] / 60 * ratio * 2.1;
            distance[second] = (second == 0 ? 0 : distance[second - 1]) + speed[second];
            altitude[second] = (second == 0 ? 50 : altitude[second - 1]) + (part == 1 ? 0.08 * speed[second] : 0);
        }
        Ride ride = Ride.builder(Instant.EPOCH, 3600)
                .channel(Channel.POWER, Series.generate(3600, second -> 200))
                .channel(Channel.SPEED, Series.of(speed))
                .channel(Channel.CADENCE, Series.of(cadence))
                .channel(Channel.DISTANCE, Series.of(distance))
                .channel(Channel.ALTITUDE, Series.of(altitude))
                .build();
        return Reviewer.review(ride, rider, ReviewOptions.WHOLE_RIDE.withEffort(Effort.RACE));
    }

    @Test
    void saysWhereTheGearsDidNotReach() {
        PacingReview pacing = review(Rider.UNKNOWN.withGears(GEARS)).pacing();

        Finding spun = pacing.finding(FindingKind.SPUN_OUT).orElseThrow();
        // Gears cost no time that is known.
        assertThat(spun.severity()).isEqualTo(Severity.OBSERVATION);
        assertThat(spun.evidence().get("totalSeconds").orElseThrow()).isCloseTo(900, within(5.0));
        // 106 rpm in 46 x 11 are 97.5 rpm in 50 x 11.
        assertThat(spun.evidence().get("otherChainringTeeth")).hasValue(50);
        assertThat(spun.evidence().get("secondsWithOtherChainring")).hasValue(0);
        assertThat(spun.evidence().get("chainringTeeth")).hasValue(46);
        assertThat(spun.evidence().get("cogTeeth")).hasValue(11);
        assertThat((double) spun.when().fromSecond()).isCloseTo(0, within(5.0));
        assertThat(spun.advice().text()).contains("top gear spins out");
        Finding grinding = pacing.finding(FindingKind.OVER_GEARED).orElseThrow();
        assertThat(grinding.severity()).isEqualTo(Severity.OBSERVATION);
        // The grade's foot and top are rounded over 50 m, at 2.1 m/s.
        assertThat(grinding.evidence().get("totalSeconds").orElseThrow()).isCloseTo(300, within(30.0));
        assertThat((double) grinding.when().fromSecond()).isCloseTo(900, within(30.0));
        assertThat(grinding.evidence().get("chainringTeeth")).hasValue(34);
        assertThat(grinding.evidence().get("cogTeeth")).hasValue(28);
        // 50 rpm on 34 teeth would be 57 on 30, still under 60.
        assertThat(grinding.evidence().get("otherChainringTeeth")).hasValue(30);
        assertThat(grinding.evidence().get("secondsWithOtherChainring"))
                .isEqualTo(grinding.evidence().get("totalSeconds"));
        // (900 x 106 + 300 x 50 + 2,400 x 85) / 3,600 = 87.3.
        assertThat(grinding.advice().text()).contains("usual 87 rpm");
    }

    @Test
    void saysNothingWhileTheGearsAreNotKnown() {
        assertThat(review(Rider.UNKNOWN).pacing().findings())
                .extracting(Finding::kind)
                .doesNotContain(FindingKind.SPUN_OUT, FindingKind.OVER_GEARED);
    }
}
