package io.github.wattledger.clean;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.clean.Cleaning.Cleaned;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.TimerEvent;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Timer events that are doubled, lost or wild. The timer runs from a start event to the next stop event (FIT profile,
 * event timer); a recorder that was off ran no timer.
 */
class PausesTest {
    private static final long T0 = 1_781_413_200L;

    private final Samples.Builder samples = Samples.builder();

    private PausesTest ridden(int from, int to) {
        for (int second = from; second < to; second++) {
            samples.at(T0 + second).set(Channel.POWER, 200).set(Channel.DISTANCE, 8.0 * second);
        }
        return this;
    }

    private Cleaned clean(TimerEvent... events) {
        return Cleaning.clean(new Recording(
                samples.build(), List.of(events), List.of(), null, RecordingDevice.UNKNOWN, null, 0, null));
    }

    private static TimerEvent start(long second) {
        return new TimerEvent(T0 + second, TimerEvent.Kind.START);
    }

    private static TimerEvent stop(long second) {
        return new TimerEvent(T0 + second, TimerEvent.Kind.STOP);
    }

    /** The recorder died at 300 s and was started again at 900 s: nobody could write the stop. */
    @Test
    void aSecondStartAfterAGapEndsAPause() {
        Cleaned cleaned = ridden(0, 300).ridden(900, 1200).clean(start(0), start(900), stop(1200));
        assertThat(cleaned.ride().countSeconds(SecondState.PAUSED)).isEqualTo(600);
        assertThat(cleaned.ride().countSeconds(SecondState.MISSING)).isZero();
        assertThat(cleaned.ride().state(900)).isEqualTo(SecondState.RIDING);
        assertThat(cleaned.quality().notes()).extracting(QualityNote::code).contains("timer-stop-missing");
    }

    @Test
    void aSecondStartAfterAGapEndsAPauseInAFileWithoutStopsToo() {
        Ride ride = ridden(0, 300).ridden(900, 1200).clean(start(0), start(900)).ride();
        assertThat(ride.countSeconds(SecondState.PAUSED)).isEqualTo(600);
    }

    @Test
    void aSecondStartWhileTheTimerRunsIsNoPause() {
        Cleaned cleaned = ridden(0, 1200).clean(start(0), start(600), stop(1200));
        assertThat(cleaned.ride().countSeconds(SecondState.RIDING)).isEqualTo(1200);
        assertThat(cleaned.quality().notes()).extracting(QualityNote::code).doesNotContain("timer-stop-missing");
    }

    @Test
    void aSecondStartDoesNotHideAPause() {
        Ride ride = ridden(0, 300)
                .ridden(400, 1200)
                .clean(start(0), start(200), stop(300), start(400), start(500), stop(1200))
                .ride();
        assertThat(ride.countSeconds(SecondState.PAUSED)).isEqualTo(100);
    }

    /** The start after the stop at 300 s was lost; the ride went on from 400 s to the stop at 800 s. */
    @Test
    void aSecondStopAfterRidingDoesNotMakeThatRidingAPause() {
        Cleaned cleaned = ridden(0, 300)
                .ridden(400, 800)
                .ridden(900, 1200)
                .clean(start(0), stop(300), stop(800), start(900), stop(1200));
        assertThat(cleaned.ride().countSeconds(SecondState.PAUSED)).isEqualTo(200);
        assertThat(cleaned.ride().state(600)).isEqualTo(SecondState.RIDING);
        assertThat(cleaned.quality().notes()).extracting(QualityNote::code).contains("timer-start-missing");
    }

    /** The places at which a cast from 64 to 32 bits wraps, and a clock that was never set. */
    @ParameterizedTest
    @ValueSource(longs = {Integer.MAX_VALUE, 1L << 31, (1L << 32) + 100, -(1L << 31), -(1L << 32) + 100, -T0, 1L << 60})
    void anEventFarFromTheRideChangesNothing(long second) {
        for (TimerEvent wild : List.of(start(second), stop(second))) {
            Ride ride = ridden(0, 300)
                    .ridden(400, 1200)
                    .clean(start(0), stop(300), start(400), stop(1200), wild)
                    .ride();
            assertThat(ride.countSeconds(SecondState.PAUSED)).isEqualTo(100);
        }
    }

    @Test
    void wildEventsNeverFail() {
        Random random = new Random(20_261_127);
        ridden(0, 50).ridden(100, 150);
        for (int round = 0; round < 500; round++) {
            TimerEvent[] events = new TimerEvent[random.nextInt(6)];
            for (int i = 0; i < events.length; i++) {
                long second = random.nextLong() >> random.nextInt(60);
                events[i] = random.nextBoolean() ? start(second) : stop(second);
            }
            assertThat(clean(events).ride().seconds()).isEqualTo(150);
        }
    }
}
