package io.github.wattledger.simulation;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Lap;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.TimerEvent;
import java.util.ArrayList;
import java.util.List;

/**
 * What a recorder wrote of a simulated ride: what a reader of its file gets to see.
 *
 * @param scenario what was ridden
 * @param samples the records in the order of the file
 * @param timerEvents starts and stops of the timer
 * @param lapStarts first epoch seconds of the laps
 * @param raceStartEpochSecond first second of the race
 */
public record RideTape(
        Scenario scenario,
        List<RecordedSample> samples,
        List<TimerEvent> timerEvents,
        List<Long> lapStarts,
        long raceStartEpochSecond) {
    /** The invented recorder's name. */
    static final String DEVICE_NAME = "Tidemark One";

    /** Copies the lists. */
    public RideTape {
        samples = List.copyOf(samples);
        timerEvents = List.copyOf(timerEvents);
        lapStarts = List.copyOf(lapStarts);
    }

    /** The tape of a ride whose samples somebody else has written. */
    static RideTape of(SimulatedRide ride, List<RecordedSample> samples) {
        long start = ride.scenario().start().getEpochSecond();
        List<TimerEvent> events = new ArrayList<>();
        events.add(new TimerEvent(start, TimerEvent.Kind.START));
        for (Interval pause : ride.pauses()) {
            events.add(new TimerEvent(start + pause.fromSecond(), TimerEvent.Kind.STOP));
            events.add(new TimerEvent(start + pause.toSecond(), TimerEvent.Kind.START));
        }
        events.add(new TimerEvent(start + ride.seconds() - 1, TimerEvent.Kind.STOP));
        List<Long> laps =
                ride.lapSeconds().stream().map(second -> start + second).toList();
        return new RideTape(ride.scenario(), samples, events, laps, start + ride.raceStartSecond());
    }

    /** The truth itself, unrounded. */
    static RideTape exact(SimulatedRide ride) {
        return SensorNoise.NONE.record(ride);
    }

    /** The same tape with other samples. */
    RideTape withSamples(List<RecordedSample> others) {
        return new RideTape(scenario, others, timerEvents, lapStarts, raceStartEpochSecond);
    }

    /** First timestamp. */
    long startEpochSecond() {
        return samples.get(0).epochSecond();
    }

    /** Last timestamp. */
    long endEpochSecond() {
        return samples.get(samples.size() - 1).epochSecond();
    }

    /** The recorder's totals over the whole recording. */
    RecorderTotals totals() {
        return RecorderTotals.of(this, startEpochSecond(), endEpochSecond() + 1);
    }

    /** The laps: where each starts and ends. */
    List<Lap> laps() {
        List<Lap> laps = new ArrayList<>();
        for (int i = 0; i < lapStarts.size(); i++) {
            boolean last = i + 1 == lapStarts.size();
            long end = last ? endEpochSecond() + 1 : lapStarts.get(i + 1);
            RecorderTotals totals = RecorderTotals.of(this, lapStarts.get(i), end);
            laps.add(new Lap(lapStarts.get(i), last ? endEpochSecond() : end, (double)
                    StrictMath.round(totals.normalizedPowerW())));
        }
        return laps;
    }

    /** What a reader should make of the file, without going over a file. */
    public Recording toRecording() {
        Samples.Builder builder = Samples.builder();
        for (RecordedSample sample : samples) {
            builder.at(sample.epochSecond())
                    .set(Channel.POWER, sample.powerW())
                    .set(Channel.HEART_RATE, sample.heartRateBpm())
                    .set(Channel.CADENCE, sample.cadenceRpm())
                    .set(Channel.SPEED, sample.speedMps())
                    .set(Channel.DISTANCE, sample.distanceM())
                    .set(Channel.ALTITUDE, sample.altitudeM())
                    .set(Channel.LATITUDE, sample.latitudeDegrees())
                    .set(Channel.LONGITUDE, sample.longitudeDegrees())
                    .set(Channel.TEMPERATURE, sample.temperatureC())
                    .set(Channel.ACCUMULATED_WORK, sample.accumulatedWorkJ());
        }
        SimulatedRider rider = scenario.rider();
        RecordingDevice device = new RecordingDevice(
                DEVICE_NAME,
                rider.thresholdPowerW(),
                rider.thresholdHeartRateBpm(),
                rider.heart().maximumBpm(),
                rider.massKg());
        return new Recording(
                builder.build(),
                timerEvents,
                laps(),
                totals().toDeviceTotals(),
                device,
                "cycling",
                0,
                scenario.utcOffsetSeconds());
    }
}
