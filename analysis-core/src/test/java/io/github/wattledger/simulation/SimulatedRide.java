package io.github.wattledger.simulation;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Series;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;

/**
 * What truly happened in a simulated ride, one value a second from the start of the recording. The value of a second is
 * what a recorder would write at its end: the power given during the second, the place and speed reached by it.
 */
public final class SimulatedRide {
    private final Scenario scenario;
    private final Map<Channel, Series> truth;
    private final List<Interval> pauses;
    private final List<Integer> lapSeconds;
    private final int raceStartSecond;
    private final EnergyAudit energy;

    private SimulatedRide(Log log, EnergyAudit energy) {
        this.scenario = log.scenario;
        this.energy = energy;
        truth = new EnumMap<>(Channel.class);
        log.columns.forEach(
                (channel, values) -> truth.put(channel, Series.of(values.build().toArray())));
        pauses = List.copyOf(log.pauses);
        lapSeconds = List.copyOf(log.lapSeconds);
        raceStartSecond = log.raceStartSecond;
    }

    /** What was ridden. */
    public Scenario scenario() {
        return scenario;
    }

    /** The number of seconds, pauses included. */
    public int seconds() {
        return truth(Channel.POWER).size();
    }

    /**
     * The true values of a channel, never missing; also within pauses, when nothing is written. Available are power,
     * heart rate, cadence, speed, distance (from the start of the recording), altitude, latitude, longitude and
     * temperature.
     *
     * @throws IllegalArgumentException for a channel that the simulation does not know
     */
    public Series truth(Channel channel) {
        Series series = truth.get(channel);
        if (series == null) {
            throw new IllegalArgumentException("not simulated: " + channel);
        }
        return series;
    }

    /** When the timer stood, by rising time. */
    public List<Interval> pauses() {
        return pauses;
    }

    /** Whether the timer stood in a second. */
    public boolean isPaused(int second) {
        return pauses.stream().anyMatch(pause -> pause.contains(second));
    }

    /** The first seconds of the laps, the first of them 0. */
    public List<Integer> lapSeconds() {
        return lapSeconds;
    }

    /** The first second of the race: the first with power after the gun. */
    public int raceStartSecond() {
        return raceStartSecond;
    }

    /** Where the energy went. */
    public EnergyAudit energy() {
        return energy;
    }

    /** The ride as a recorder with perfect sensors of unlimited resolution would have it, without going over a file. */
    public Recording toRecording() {
        return RideTape.exact(this).toRecording();
    }

    /** Work at the pedals from the race's start on, kJ. */
    public double raceWorkKJ() {
        Series watts = truth(Channel.POWER);
        double joules = 0;
        for (int second = raceStartSecond; second < watts.size(); second++) {
            joules += watts.get(second);
        }
        return joules / 1000;
    }

    /** What the device's own totals would be, from perfect sensors. */
    public DeviceTotals totals() {
        RideTape tape = RideTape.exact(this);
        return tape.totals().toDeviceTotals();
    }

    /** Collects a ride while it is simulated. */
    static final class Log {
        private final Scenario scenario;
        private final Map<Channel, DoubleStream.Builder> columns = new EnumMap<>(Channel.class);
        private final List<Interval> pauses = new ArrayList<>();
        private final List<Integer> lapSeconds = new ArrayList<>(List.of(0));
        private int raceStartSecond;
        private int seconds;

        Log(Scenario scenario) {
            this.scenario = scenario;
        }

        int seconds() {
            return seconds;
        }

        Log put(Channel channel, double value) {
            columns.computeIfAbsent(channel, absent -> DoubleStream.builder()).add(value);
            return this;
        }

        void endSecond() {
            seconds++;
        }

        void pause(int fromSecond, int toSecond) {
            pauses.add(new Interval(fromSecond, toSecond));
        }

        void raceStartsNow() {
            raceStartSecond = seconds;
            lap();
        }

        void lap() {
            if (seconds > 1) {
                lapSeconds.add(seconds);
            }
        }

        SimulatedRide finish(EnergyAudit energy) {
            return new SimulatedRide(this, energy);
        }
    }
}
