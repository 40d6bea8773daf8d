package io.github.wattledger.simulation;

import java.util.ArrayList;
import java.util.List;

/** Spoils a tape the way real sensors and recorders do. Indices count samples from 0. */
final class SensorFaults {
    private final List<RecordedSample> samples;

    /** Begins with the samples of a tape, which stays as it is. */
    SensorFaults(RideTape tape) {
        samples = new ArrayList<>(tape.samples());
    }

    /** The spoilt samples. */
    List<RecordedSample> samples() {
        return List.copyOf(samples);
    }

    /** A single sample with a power that nobody has. */
    SensorFaults powerSpike(int index, double watts) {
        samples.set(
                index, samples.get(index).withMeter(watts, samples.get(index).cadenceRpm()));
        return this;
    }

    /** The power meter is not heard. */
    SensorFaults powerDropout(int fromIndex, int count) {
        for (int i = fromIndex; i < fromIndex + count; i++) {
            samples.set(i, samples.get(i).withMeter(Double.NaN, Double.NaN));
        }
        return this;
    }

    /** The heart-rate strap repeats its last value. */
    SensorFaults heartRateStuck(int fromIndex, int count) {
        return heartRate(fromIndex, count, samples.get(fromIndex).heartRateBpm());
    }

    /** The heart rate reads one value; {@code NaN} is no reading. */
    SensorFaults heartRate(int fromIndex, int count, double bpm) {
        for (int i = fromIndex; i < fromIndex + count; i++) {
            samples.set(i, samples.get(i).withHeartRate(bpm));
        }
        return this;
    }

    /** A sample carries the timestamp of the one before it, and its own second is missing. */
    SensorFaults repeatedTimestamp(int index) {
        samples.set(index, samples.get(index).at(samples.get(index - 1).epochSecond()));
        return this;
    }

    /** The clock is set back at a sample and stays so. */
    SensorFaults clockSetBack(int fromIndex, int seconds) {
        for (int i = fromIndex; i < samples.size(); i++) {
            samples.set(i, samples.get(i).at(samples.get(i).epochSecond() - seconds));
        }
        return this;
    }
}
