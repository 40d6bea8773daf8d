package io.github.wattledger.ride;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** What a ride tells of its seconds, counted by hand. */
class RideTest {
    private static final double NONE = Double.NaN;

    /** Ten seconds: 0 to 3 ridden, 4 and 5 paused with power in 5, 6 stopped, 7 missing, 8 and 9 ridden. */
    private static Ride.Builder builder() {
        return Ride.builder(Instant.EPOCH, 10)
                .channel(Channel.POWER, Series.of(100, 110, NONE, 130, NONE, 150, 0, NONE, 180, 190))
                .channel(Channel.ALTITUDE, Series.of(1, 2, 3, 4, NONE, NONE, 7, NONE, 9, 10))
                .state(new Interval(4, 6), SecondState.PAUSED)
                .state(6, SecondState.STOPPED)
                .state(7, SecondState.MISSING);
    }

    private static Ride ride() {
        return builder().build();
    }

    @Test
    void statesAreCountedOverAllAndOverAStretch() {
        Ride ride = ride();
        assertThat(ride.countSeconds(SecondState.RIDING)).isEqualTo(6);
        assertThat(ride.countSeconds(SecondState.PAUSED)).isEqualTo(2);
        assertThat(ride.countSeconds(SecondState.STOPPED)).isEqualTo(1);
        assertThat(ride.countSeconds(SecondState.MISSING)).isEqualTo(1);
        assertThat(ride.countSeconds(SecondState.RIDING, new Interval(3, 9))).isEqualTo(2);
        assertThat(ride.countSeconds(SecondState.PAUSED, new Interval(5, 6))).isEqualTo(1);
        assertThat(ride.countSeconds(SecondState.RIDING, new Interval(10, 10))).isZero();
        assertThat(Ride.ofWatts().countSeconds(SecondState.RIDING)).isZero();
        assertThatThrownBy(() -> ride.countSeconds(SecondState.RIDING, new Interval(9, 11)))
                .isInstanceOf(IndexOutOfBoundsException.class);
    }

    @Test
    void aPartCountsItsOwnStates() {
        Ride part = ride().part(new Interval(3, 7));
        assertThat(part.countSeconds(SecondState.RIDING)).isEqualTo(1);
        assertThat(part.countSeconds(SecondState.PAUSED)).isEqualTo(2);
        assertThat(part.countSeconds(SecondState.MISSING)).isZero();
        assertThat(part.timerSeries(Channel.POWER)).isEqualTo(Series.of(130, NONE, NONE, 0));
    }

    @Test
    void aRideDoesNotChangeWithItsBuilder() {
        Ride.Builder builder = builder();
        Ride ride = builder.build();
        builder.state(0, SecondState.PAUSED);
        assertThat(ride.countSeconds(SecondState.PAUSED)).isEqualTo(2);
        assertThat(ride.timerSeries(Channel.POWER).get(0)).isEqualTo(100);
        assertThat(builder.build().countSeconds(SecondState.PAUSED)).isEqualTo(3);
    }

    @Test
    void whatWasRecordedInAPauseIsNotInTheTimersSeries() {
        Ride ride = ride();
        assertThat(ride.series(Channel.POWER).get(5)).isEqualTo(150);
        assertThat(ride.timerSeries(Channel.POWER))
                .isEqualTo(Series.of(100, 110, NONE, 130, NONE, NONE, 0, NONE, 180, 190));
        assertThat(ride.timerSeries(Channel.ALTITUDE)).isSameAs(ride.series(Channel.ALTITUDE));
        assertThat(ride.timerSeries(Channel.CADENCE)).isEqualTo(Series.missing(10));
    }

    @Test
    void meansWhileRidingLeaveOutStopsPausesAndWhatWasNotMeasured() {
        Ride ride = ride();
        // 100, 110, 130, 180 and 190 W.
        assertThat(ride.meanWhileRiding(Channel.POWER, new Interval(0, 10))).hasValue(142);
        assertThat(ride.meanWhileRiding(Channel.POWER, new Interval(1, 9))).hasValue(140);
        assertThat(ride.meanWhileRiding(Channel.POWER, new Interval(2, 3))).isEmpty();
        assertThat(ride.meanWhileRiding(Channel.POWER, new Interval(4, 8))).isEmpty();
        assertThat(ride.meanWhileRiding(Channel.CADENCE, new Interval(0, 10))).isEmpty();
        assertThatThrownBy(() -> ride.meanWhileRiding(Channel.POWER, new Interval(0, 11)))
                .isInstanceOf(IndexOutOfBoundsException.class);
    }

    @Test
    void survivesSerialization() throws IOException, ClassNotFoundException {
        Ride ride = ride();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(ride);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            Ride copy = (Ride) in.readObject();
            assertThat(copy).isEqualTo(ride);
            assertThat(copy.series(Channel.CADENCE)).isEqualTo(Series.missing(10));
            assertThat(copy.countSeconds(SecondState.RIDING)).isEqualTo(6);
            assertThat(copy.timerSeries(Channel.POWER)).isEqualTo(ride.timerSeries(Channel.POWER));
        }
    }
}
