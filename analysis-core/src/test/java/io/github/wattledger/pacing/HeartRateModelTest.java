package io.github.wattledger.pacing;

import static io.github.wattledger.pacing.HeartByHand.alternating;
import static io.github.wattledger.pacing.HeartByHand.bpm;
import static io.github.wattledger.pacing.HeartByHand.felt;
import static io.github.wattledger.pacing.HeartByHand.following;
import static io.github.wattledger.pacing.RaceByHand.HOUR;
import static io.github.wattledger.pacing.RaceByHand.race;
import static io.github.wattledger.pacing.RaceByHand.ride;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Interval;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** The line of heart rate on power, and what is compared with it. */
class HeartRateModelTest {
    private Race without(int seconds, int missing) {
        double[] watts = alternating(seconds);
        double[] felt = felt(watts);
        return race(ride(
                        seconds,
                        second -> watts[second],
                        second -> second >= 1200 && second < 1200 + missing ? Double.NaN : 80 + 0.3 * felt[second])
                .build());
    }

    /** The line is drawn from minute 20 to half-way. */
    @Test
    void needsTwentyMinutesOfWhichItCoversFourFifths() {
        // Eighty minutes hold just twenty.
        assertThat(without(4800, 0).heartRateModel().isUsable()).isTrue();
        assertThat(without(4800, 1).heartRateModel().isUsable()).isFalse();
        // Two hours hold forty, four fifths of them are 1,920 s.
        assertThat(without(7200, 480).heartRateModel().isUsable()).isTrue();
        assertThat(without(7200, 481).heartRateModel().isUsable()).isFalse();
    }

    @Test
    void mustRiseWithPower() {
        double[] watts = alternating(7200);
        double[] felt = felt(watts);
        Race falling = race(ride(7200, second -> watts[second], second -> 200 - 0.3 * felt[second])
                .build());
        assertThat(falling.heartRateModel().isUsable()).isFalse();
        Race level = race(ride(7200, second -> watts[second], second -> 140).build());
        assertThat(level.heartRateModel().isUsable()).isFalse();
    }

    /**
     * Twenty minutes at 200 W and twenty at 300 W in turn. Above threshold, 250 W, the heart nears its ceiling: here it stops
     * at 155 beats. The line is fitted below and keeps 30 beats for 100 W.
     */
    @Test
    void isFittedAtOrBelowThreshold() {
        double[] watts = new double[4 * HOUR];
        Arrays.setAll(watts, second -> second / 1200 % 2 == 0 ? 200 : 300);
        double[] felt = felt(watts);
        Race race = race(ride(watts.length, second -> watts[second], second -> Math.min(155, bpm(felt[second])))
                .build());
        assertThat(race.heartRateModel().bpmPer100W()).isCloseTo(30, within(1e-6));
        assertThat(race.heartRateModel().predictedBpm(290)).isCloseTo(167, within(1e-6));
    }

    /**
     * Power rises by 1 W in 100 s, so that the powers fitted from minute 20 to half-way, 6,000 of them, lie evenly. The
     * outermost three in a hundred at each end are 180 s.
     */
    @Test
    void knowsTheRangeItWasFittedOn() {
        double[] watts = new double[4 * HOUR];
        Arrays.setAll(watts, second -> 150 + second / 100.0);
        HeartRateModel model = race(following(watts, 4 * HOUR, 1).build()).heartRateModel();
        double[] felt = felt(watts);
        assertThat(model.isFittedAt(felt[1200 + 170])).isFalse();
        assertThat(model.isFittedAt(felt[1200 + 190])).isTrue();
        assertThat(model.isFittedAt(felt[7200 - 190])).isTrue();
        assertThat(model.isFittedAt(felt[7200 - 170])).isFalse();
    }

    @Test
    void atEqualPowerIsComparedOverTenMinutesOfWork() {
        Race race = race(following(alternating(7200), 7200, 1).build());
        assertThat(HeartRateAtEqualPower.of(race, new Interval(4000, 4600))).hasValueSatisfying(heart -> {
            assertThat(heart.percentOver()).isCloseTo(0, within(1e-9));
            // Felt power is a mixture of 170 and 230 W.
            assertThat(heart.actualBpm()).isBetween(80 + 0.3 * 170, 80 + 0.3 * 230);
        });
        assertThat(HeartRateAtEqualPower.of(race, new Interval(4000, 4599))).isEmpty();
    }

    @Test
    void atEqualPowerIsComparedWhereAFifthIsMissingAtMost() {
        double[] watts = alternating(7200);
        double[] felt = felt(watts);
        for (int missing : new int[] {200, 201}) {
            Race race = race(ride(
                            7200,
                            second -> watts[second],
                            second -> second >= 5000 && second < 5000 + missing ? Double.NaN : 80 + 0.3 * felt[second])
                    .build());
            assertThat(HeartRateAtEqualPower.of(race, new Interval(4500, 5500)).isPresent())
                    .as("%d of 1,000 s missing", missing)
                    .isEqualTo(missing == 200);
        }
    }

    @Test
    void atEqualPowerLeavesOutWhatIsNoWork() {
        // From 4,000 s on 60 W, under 0.4 x threshold; the heart still feels more for a minute or two.
        double[] watts = alternating(7200);
        Arrays.fill(watts, 4000, 7200, 60);
        Race race = race(following(watts, 7200, 1).build());
        assertThat(HeartRateAtEqualPower.of(race, new Interval(4600, 7200))).isEmpty();
    }
}
