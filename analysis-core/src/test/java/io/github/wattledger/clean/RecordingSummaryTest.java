package io.github.wattledger.clean;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.clean.RecordingSummary.ChannelSummary;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Lap;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.TimerEvent;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Counted by hand from the recordings that the tests lay out. */
class RecordingSummaryTest {
    private static final long START = 1_781_413_200L; // 2026-06-14T05:00:00Z

    /**
     * Seconds 0 to 99 with power 100 to 199 W; no sample in 100 to 119 with the timer running; 120 to 139; the timer
     * stands from 140 to 199; 200 to 219. Heart rate in the first 70 seconds alone.
     */
    private static Recording recording() {
        Samples.Builder samples = Samples.builder();
        for (int second = 0; second < 220; second++) {
            if ((second >= 100 && second < 120) || (second >= 140 && second < 200)) {
                continue;
            }
            samples.at(START + second).set(Channel.POWER, 100 + second % 100).set(Channel.ALTITUDE, 0);
            if (second < 70) {
                samples.set(Channel.HEART_RATE, 120 + second % 3);
            }
        }
        return new Recording(
                samples.build(),
                List.of(
                        new TimerEvent(START, TimerEvent.Kind.START),
                        new TimerEvent(START + 140, TimerEvent.Kind.STOP),
                        new TimerEvent(START + 200, TimerEvent.Kind.START)),
                List.of(new Lap(START, START + 219, null)),
                null,
                RecordingDevice.UNKNOWN,
                "cycling",
                0,
                null);
    }

    private static RecordingSummary summary(Recording recording) {
        return RecordingSummary.of(recording, Cleaning.clean(recording).ride());
    }

    @Test
    void gapsAndPausesAreApart() {
        RecordingSummary summary = summary(recording());
        assertThat(summary.gaps()).containsExactly(new Interval(100, 120));
        assertThat(summary.pauses()).containsExactly(new Interval(140, 200));
        assertThat(RecordingSummary.totalSeconds(summary.gaps())).isEqualTo(20);
        assertThat(summary.lapCount()).isEqualTo(1);
    }

    @Test
    void theUsualIntervalIsTheMedian() {
        RecordingSummary summary = summary(recording());
        assertThat(summary.sampleCount()).isEqualTo(140);
        assertThat(summary.usualIntervalSeconds()).isEqualTo(1);
        assertThat(summary.longestIntervalSeconds()).isEqualTo(61); // from second 139 to second 200
    }

    @Test
    void coverageIsOfTheSecondsInWhichTheTimerRan() {
        // The timer ran for 160 s: 140 of them have power, 70 heart rate; an altitude of 0 throughout is no altimeter.
        assertThat(summary(recording()).channels())
                .containsExactly(
                        new ChannelSummary(Channel.POWER, 140, 87.5, 100.0, 199.0),
                        new ChannelSummary(Channel.HEART_RATE, 70, 43.75, 120.0, 122.0),
                        new ChannelSummary(Channel.ALTITUDE, 140, 0.0, null, null));
    }

    @Test
    void anEmptyRecordingHasNoNumbers() {
        RecordingSummary summary = summary(Recording.of(Samples.builder().build()));
        assertThat(summary).isEqualTo(new RecordingSummary(0, null, null, List.of(), List.of(), List.of(), 0));
    }

    @Test
    void aSingleSampleHasNoInterval() {
        RecordingSummary summary = summary(
                Recording.of(Samples.builder().at(START).set(Channel.POWER, 200).build()));
        assertThat(summary.usualIntervalSeconds()).isNull();
        assertThat(summary.channels()).containsExactly(new ChannelSummary(Channel.POWER, 1, 100.0, 200.0, 200.0));
    }
}
