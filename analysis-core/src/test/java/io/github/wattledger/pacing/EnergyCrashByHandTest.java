package io.github.wattledger.pacing;

import static io.github.wattledger.pacing.HeartByHand.alternating;
import static io.github.wattledger.pacing.HeartByHand.bpm;
import static io.github.wattledger.pacing.HeartByHand.felt;
import static io.github.wattledger.pacing.HeartByHand.following;
import static io.github.wattledger.pacing.RaceByHand.HOUR;
import static io.github.wattledger.pacing.RaceByHand.evidence;
import static io.github.wattledger.pacing.RaceByHand.found;
import static io.github.wattledger.pacing.RaceByHand.race;
import static io.github.wattledger.pacing.RaceByHand.ride;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Series;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Power and heart rate fell together, on both sides of each limit of {@code docs/methods.md}. */
class EnergyCrashByHandTest {
    /** Three hours; from half-way on power and heart rate fall to a share of what they were. */
    private Race crash(double power, double heart) {
        double[] watts = alternating(3 * HOUR);
        for (int second = 5400; second < watts.length; second++) {
            watts[second] *= power;
        }
        return race(following(watts, 5400, heart)
                .channel(Channel.TEMPERATURE, Series.generate(3 * HOUR, second -> second < 5400 ? 12 : 18))
                .build());
    }

    @Test
    void saysWhatCameBefore() {
        Found crash = found(new EnergyCrash(), crash(0.8, 0.93));
        assertThat(crash.when()).isEqualTo(new Interval(5400, 3 * HOUR));
        assertThat(crash.severity()).isEqualTo(Severity.MAJOR);
        // Minute 20 to half-way is seven times ten minutes, 200 W on average.
        assertThat(evidence(crash, "earlyPowerW")).isCloseTo(200, within(1e-9));
        assertThat(evidence(crash, "lossPercent")).isCloseTo(20, within(1e-9));
        assertThat(evidence(crash, "heartRateOverPredictedPercent")).isCloseTo(-7, within(1e-6));
        assertThat(evidence(crash, "actualHeartRateBpm"))
                .isCloseTo(0.93 * evidence(crash, "predictedHeartRateBpm"), within(1e-6));
        assertThat(evidence(crash, "hoursBefore")).isCloseTo(1.5, within(1e-12));
        assertThat(evidence(crash, "workBeforeKJ")).isCloseTo(5400 * 200 / 1000.0, within(1e-9));
        assertThat(evidence(crash, "temperatureC")).isCloseTo(18, within(1e-9));
    }

    /** Ten minutes at 0.75 after ten at full power are 0.875 over twenty. */
    @Test
    void takesTwentyMinutes() {
        double[] watts = alternating(3 * HOUR);
        for (int second = 3 * HOUR - 600; second < watts.length; second++) {
            watts[second] *= 0.75;
        }
        assertThat(new EnergyCrash().detect(race(following(watts, 7200, 0.93).build())))
                .isEmpty();
    }

    @Test
    void needsBothToHaveFallen() {
        assertThat(new EnergyCrash().detect(crash(0.86, 0.93))).isEmpty();
        assertThat(new EnergyCrash().detect(crash(0.84, 0.93))).isPresent();
        assertThat(new EnergyCrash().detect(crash(0.8, 0.954))).isPresent();
        assertThat(new EnergyCrash().detect(crash(0.8, 0.956))).isEmpty();
    }

    /**
     * Half an hour at 0.7 with a heart 10 % too slow, then both recover. The stretch is taken by itself: over the last third
     * of three hours, of which it is a fifth of an hour, the heart would be only 3 % down.
     */
    @Test
    void isMeasuredWithinItsOwnStretch() {
        double[] watts = alternating(3 * HOUR);
        for (int second = 6600; second < 8400; second++) {
            watts[second] *= 0.7;
        }
        double[] felt = felt(watts);
        Race race = race(ride(
                        watts.length,
                        second -> watts[second],
                        second -> bpm(felt[second]) * (second >= 6600 && second < 8400 ? 0.9 : 1))
                .build());
        Found crash = found(new EnergyCrash(), race);
        // Windows of twenty minutes that are down as a whole reach over both ends.
        assertThat((double) crash.when().fromSecond()).isCloseTo(6600, within(720.0));
        assertThat((double) crash.when().toSecond()).isCloseTo(8400, within(720.0));
        assertThat(evidence(crash, "heartRateOverPredictedPercent")).isBetween(-10.0, -4.5);
    }

    /**
     * Early on 200 W and 300 W in turn with a heart that stops at 155 beats; late 150 W with a heart that follows as it always
     * did. Fitted on all powers the line would be too flat, and would expect more at 150 W: a fade would read as a crash.
     */
    @Test
    void isNotReadOffALineBentByTheCeiling() {
        double[] watts = new double[3 * HOUR];
        Arrays.setAll(watts, second -> second >= 5400 ? 150 : second / 300 % 2 == 0 ? 200 : 300);
        double[] felt = felt(watts);
        Race race = race(ride(watts.length, second -> watts[second], second -> Math.min(155, bpm(felt[second])))
                .build());
        assertThat(new EnergyCrash().detect(race)).isEmpty();
        assertThat(new Fade().detect(race)).isPresent();
    }

    @Test
    void isMajorWhateverItCost() {
        assertThat(new EnergyCrash().leastSeverity()).isEqualTo(Severity.MAJOR);
    }
}
