package io.github.wattledger.pacing;

import static io.github.wattledger.pacing.RaceByHand.HOUR;
import static io.github.wattledger.pacing.RaceByHand.THRESHOLD_W;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import org.junit.jupiter.api.Test;

/** What is set apart as not raced. */
class RacedPartTest {
    private RacedPart part(int easySeconds, double easyW) {
        return RacedPart.find(
                Ride.ofWatts(Series.generate(HOUR, second -> second < easySeconds ? easyW : 200)
                        .toArray()),
                THRESHOLD_W);
    }

    @Test
    void fiveMinutesAreJustEnough() {
        assertThat(part(300, 0).interval()).isEqualTo(new Interval(300, HOUR));
        assertThat(part(299, 0).interval()).isEqualTo(new Interval(0, HOUR));
    }

    /** 0.4 x threshold is 100 W: what reaches it is not easy. */
    @Test
    void aLeadInNeverReachesTheLevel() {
        assertThat(part(600, 99.9).leadInSeconds()).isEqualTo(600);
        assertThat(part(600, 100).leadInSeconds()).isZero();
    }
}
