package io.github.wattledger.simulation;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Series;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A recorder's ordinary sensors: they add noise and round to the resolution of a FIT record. No second is written while
 * the timer stands.
 *
 * @param scale 1 for ordinary noise, 0 for none and no rounding either
 * @param workCounter whether the power meter's counter of work is written
 * @param powerJitterFraction standard deviation of the power meter's one-second readings, as a fraction of the power
 * @param heartWanderBpm standard deviation of what makes a heart beat faster or slower for minutes at equal power: a
 *     sip, a fright, the air; beats a minute
 * @param powerDropouts seconds in which the power meter is not heard
 * @param seed seed of the noise
 */
public record SensorNoise(
        double scale,
        boolean workCounter,
        double powerJitterFraction,
        double heartWanderBpm,
        List<Interval> powerDropouts,
        long seed) {
    /** Perfect sensors. */
    public static final SensorNoise NONE = new SensorNoise(0, false, 0, 0, List.of(), 0);

    private static final double SEMICIRCLE_DEGREES = 180 / StrictMath.pow(2, 31);
    private static final double DEGREES_PER_METRE = 1 / 111_195.0;

    /** Copies the dropouts. */
    public SensorNoise {
        powerDropouts = List.copyOf(powerDropouts);
    }

    /** Ordinary sensors without a dropout. */
    public static SensorNoise ordinary(long seed) {
        return new SensorNoise(1, false, 0, 0, List.of(), seed);
    }

    /** The same sensors with the power meter's counter of work written. */
    public SensorNoise withWorkCounter() {
        return new SensorNoise(scale, true, powerJitterFraction, heartWanderBpm, powerDropouts, seed);
    }

    /** The same sensors, the power meter not heard in some seconds. */
    public SensorNoise withPowerDropouts(Interval... dropouts) {
        return new SensorNoise(scale, workCounter, powerJitterFraction, heartWanderBpm, List.of(dropouts), seed);
    }

    /** The same sensors with a power meter whose readings tremble from second to second. */
    public SensorNoise withPowerJitter(double fraction) {
        return new SensorNoise(scale, workCounter, fraction, heartWanderBpm, powerDropouts, seed);
    }

    /** The same sensors on a rider whose heart has slow ups and downs of its own. */
    public SensorNoise withHeartWander(double bpm) {
        return new SensorNoise(scale, workCounter, powerJitterFraction, bpm, powerDropouts, seed);
    }

    /** Writes a ride down. */
    public RideTape record(SimulatedRide ride) {
        Sensors sensors = new Sensors(ride);
        List<RecordedSample> samples = new ArrayList<>(ride.seconds());
        for (int second = 0; second < ride.seconds(); second++) {
            RecordedSample sample = sensors.read(second);
            if (!ride.isPaused(second)) {
                samples.add(sample);
            }
        }
        return RideTape.of(ride, samples);
    }

    private boolean isMeterSilent(int second) {
        return powerDropouts.stream().anyMatch(dropout -> dropout.contains(second));
    }

    private double rounded(double value, double step) {
        return scale == 0 ? value : StrictMath.round(value / step) * step;
    }

    /** The sensors at work: noise has memory. */
    private final class Sensors {
        private final SimulatedRide ride;
        private final long startEpochSecond;
        private final Wander weatherM = new Wander(4.0, 5400, 1);
        private final Wander barometerM = new Wander(0.25, 4, 2);
        private final Wander northM = new Wander(1.5, 60, 3);
        private final Wander eastM = new Wander(1.5, 60, 4);
        private final Wander heartBpm = new Wander(0.7, 3, 5);
        private final Wander cadence = new Wander(1.5, 2, 6);
        private final Wander speed = new Wander(0.04, 2, 7);
        private final Wander heartMoodBpm = new Wander(heartWanderBpm, 400, 9);
        private final Wander meter = new Wander(powerJitterFraction, 0.5, 8);
        private double workJ;

        Sensors(SimulatedRide ride) {
            this.ride = ride;
            startEpochSecond = ride.scenario().start().getEpochSecond();
        }

        RecordedSample read(int second) {
            boolean silent = isMeterSilent(second);
            double watts = StrictMath.max(0, value(Channel.POWER, second) * (1 + meter.next()));
            double rpm = value(Channel.CADENCE, second);
            double mps = value(Channel.SPEED, second);
            double rpmNoise = cadence.next();
            double speedNoise = speed.next();
            workJ += watts;
            return new RecordedSample(
                    startEpochSecond + second,
                    silent ? Double.NaN : rounded(watts, 1),
                    rounded(value(Channel.HEART_RATE, second) + heartBpm.next() + heartMoodBpm.next(), 1),
                    silent ? Double.NaN : rounded(rpm == 0 ? 0 : rpm + rpmNoise, 1),
                    mps == 0 ? 0 : StrictMath.max(0, rounded(mps + speedNoise, 0.001)),
                    rounded(value(Channel.DISTANCE, second), 0.01),
                    rounded(value(Channel.ALTITUDE, second) + weatherM.next() + barometerM.next(), 0.2),
                    rounded(value(Channel.LATITUDE, second) + north(), SEMICIRCLE_DEGREES),
                    rounded(value(Channel.LONGITUDE, second) + east(second), SEMICIRCLE_DEGREES),
                    rounded(value(Channel.TEMPERATURE, second), 1),
                    workCounter && !silent ? rounded(workJ, 1) : Double.NaN);
        }

        private double value(Channel channel, int second) {
            Series series = ride.truth(channel);
            return series.get(second);
        }

        private double north() {
            return northM.next() * DEGREES_PER_METRE;
        }

        private double east(int second) {
            double latitude = StrictMath.toRadians(value(Channel.LATITUDE, second));
            return eastM.next() * DEGREES_PER_METRE / StrictMath.cos(latitude);
        }
    }

    /** Noise with memory (first-order autoregressive), each kind with a stream of chance of its own. */
    private final class Wander {
        private final double memory;
        private final double kick;
        private final Random chance;
        private double value;

        Wander(double standardDeviation, double memorySeconds, int stream) {
            memory = StrictMath.exp(-1 / memorySeconds);
            kick = scale * standardDeviation * StrictMath.sqrt(1 - memory * memory);
            chance = new Random(seed * 31 + stream);
        }

        double next() {
            if (kick != 0) {
                value = memory * value + kick * chance.nextGaussian();
            }
            return value;
        }
    }
}
