package io.github.wattledger.pacing;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A ride laid out stretch by stretch. It is outdoors on a hill unless channels are taken away; power is constant within a
 * stretch and missing where the rider stands, so that normalized power follows from the definition.
 */
final class RideByHand {
    private static final Instant START = Instant.parse("2026-05-16T08:00:00Z");
    private static final double SPEED_MPS = 8;
    private static final int HILL_SECONDS = 1000;

    private final List<Double> watts = new ArrayList<>();
    private final List<Double> metres = new ArrayList<>();
    private final List<SecondState> states = new ArrayList<>();
    private final List<Interval> laps = new ArrayList<>();
    private final Set<Channel> without = EnumSet.noneOf(Channel.class);
    private double hillM = 100;
    private double heartRateBpm = Double.NaN;

    /** Rides on at a constant power. */
    RideByHand riding(int seconds, double power) {
        return stretch(seconds, power, SPEED_MPS, SecondState.RIDING);
    }

    /** Stands, or does not record, for some seconds. */
    RideByHand standing(int seconds, SecondState state) {
        return stretch(seconds, Double.NaN, 0, state);
    }

    /** Rides a lap at a constant power. */
    RideByHand lap(int seconds, double power) {
        return lap(seconds, power, SPEED_MPS * seconds);
    }

    /** Rides a lap over a distance at a constant power. */
    RideByHand lap(int seconds, double power, double lapMetres) {
        int from = watts.size();
        stretch(seconds, power, lapMetres / seconds, SecondState.RIDING);
        laps.add(new Interval(from, watts.size()));
        return this;
    }

    /** Stands for a lap with the timer stopped. */
    RideByHand lapOfRestWithTheTimerStopped(int seconds) {
        int from = watts.size();
        standing(seconds, SecondState.PAUSED);
        laps.add(new Interval(from, watts.size()));
        return this;
    }

    private RideByHand stretch(int seconds, double power, double speed, SecondState state) {
        for (int second = 0; second < seconds; second++) {
            double before = metres.isEmpty() ? 0 : metres.get(metres.size() - 1);
            watts.add(power);
            metres.add(before + speed);
            states.add(state);
        }
        return this;
    }

    RideByHand without(Channel... channels) {
        without.addAll(List.of(channels));
        return this;
    }

    /** Highest less lowest altitude. */
    RideByHand hill(double heightM) {
        hillM = heightM;
        return this;
    }

    RideByHand heartRate(double bpm) {
        heartRateBpm = bpm;
        return this;
    }

    Ride build() {
        int size = watts.size();
        Map<Channel, Series> channels = new EnumMap<>(Channel.class);
        channels.put(Channel.POWER, Series.generate(size, watts::get));
        channels.put(Channel.DISTANCE, Series.generate(size, metres::get));
        channels.put(Channel.SPEED, Series.generate(size, second -> SPEED_MPS));
        channels.put(Channel.HEART_RATE, Series.generate(size, second -> heartRateBpm));
        channels.put(Channel.LATITUDE, Series.generate(size, second -> 47 + second * 1e-5));
        channels.put(Channel.LONGITUDE, Series.generate(size, second -> 8));
        channels.put(
                Channel.ALTITUDE,
                Series.generate(size, second -> 400 + hillM * Math.min(second, HILL_SECONDS) / HILL_SECONDS));
        Ride.Builder ride = Ride.builder(START, size).laps(laps);
        channels.forEach((channel, series) -> {
            if (!without.contains(channel)) {
                ride.channel(channel, series);
            }
        });
        for (int second = 0; second < size; second++) {
            ride.state(second, states.get(second));
        }
        return ride.build();
    }
}
