package io.github.wattledger.benchmark;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.TimerEvent;
import java.util.ArrayList;
import java.util.List;

/** The samples and timer events from which a ride would have come: what a reader hands over. */
final class SeededRecording {
    private SeededRecording() {}

    static Recording twelveHours() {
        return of(SeededRide.twelveHours());
    }

    static Recording of(Ride ride) {
        long start = ride.start().getEpochSecond();
        Samples.Builder samples = Samples.builder();
        List<TimerEvent> events = new ArrayList<>();
        events.add(new TimerEvent(start, TimerEvent.Kind.START));
        SecondState before = SecondState.RIDING;
        for (int second = 0; second < ride.seconds(); second++) {
            SecondState state = ride.state(second);
            if ((state == SecondState.PAUSED) != (before == SecondState.PAUSED)) {
                TimerEvent.Kind kind = state == SecondState.PAUSED ? TimerEvent.Kind.STOP : TimerEvent.Kind.START;
                events.add(new TimerEvent(start + second, kind));
            }
            before = state;
            if (state == SecondState.RIDING || state == SecondState.STOPPED) {
                samples.at(start + second);
                for (Channel channel : ride.channels()) {
                    samples.set(channel, ride.series(channel).get(second));
                }
            }
        }
        events.add(new TimerEvent(start + ride.seconds(), TimerEvent.Kind.STOP));
        return new Recording(samples.build(), events, List.of(), null, RecordingDevice.UNKNOWN, "cycling", 0, null);
    }
}
