package io.github.wattledger.bunch;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.IntToDoubleFunction;

/**
 * A ride at a constant speed on a circle, its power by hand from the balance of forces of Martin et al. (1998): 84 kg, drag
 * area 0.32 m2 in all, rolling resistance 0.005, air of 1.2 kg/m3. By kilometre the wind against the rider, the share of the
 * drag that is left, and the grade can be chosen.
 */
final class BalancedRide {
    static final double MASS_KG = 84;
    static final double DRAG_AREA_M2 = 0.32;
    static final double ROLLING = 0.005;
    static final double DENSITY = 1.2;

    private static final double G = 9.80665;
    private static final double METRES_PER_DEGREE = 111_195;

    private final int kilometres;
    private final double speedMps;
    private final Set<Channel> without = EnumSet.noneOf(Channel.class);
    private IntToDoubleFunction windMps = kilometre -> 0;
    private IntToDoubleFunction dragShare = kilometre -> 1;
    private IntToDoubleFunction grade = kilometre -> 0;
    private IntToDoubleFunction powerShare = kilometre -> 1;
    private double turns = 1;

    BalancedRide(int kilometres, double speedMps) {
        this.kilometres = kilometres;
        this.speedMps = speedMps;
    }

    BalancedRide without(Channel... channels) {
        without.addAll(List.of(channels));
        return this;
    }

    BalancedRide windMps(IntToDoubleFunction byKilometre) {
        windMps = byKilometre;
        return this;
    }

    BalancedRide dragShare(IntToDoubleFunction byKilometre) {
        dragShare = byKilometre;
        return this;
    }

    BalancedRide grade(IntToDoubleFunction byKilometre) {
        grade = byKilometre;
        return this;
    }

    BalancedRide powerShare(IntToDoubleFunction byKilometre) {
        powerShare = byKilometre;
        return this;
    }

    /** Straight on instead of round a circle. */
    BalancedRide oneWay() {
        turns = 0;
        return this;
    }

    private double powerW(int kilometre) {
        double airMps = speedMps + windMps.applyAsDouble(kilometre);
        double slope = grade.applyAsDouble(kilometre);
        double cosine = 1 / Math.sqrt(1 + slope * slope);
        double forceN = DENSITY / 2 * DRAG_AREA_M2 * dragShare.applyAsDouble(kilometre) * airMps * Math.abs(airMps)
                + MASS_KG * G * (ROLLING + slope) * cosine
                + 0.091
                + 0.0087 * speedMps;
        return Math.max(0, powerShare.applyAsDouble(kilometre) * forceN * speedMps / 0.976);
    }

    Ride ride() {
        int seconds = (int) Math.ceil(1000 * kilometres / speedMps);
        double[] watts = new double[seconds];
        double[] metres = new double[seconds];
        double[] altitude = new double[seconds];
        double[] latitude = new double[seconds];
        double[] longitude = new double[seconds];
        double radians = 0;
        for (int second = 0; second < seconds; second++) {
            int kilometre = (int) (second * speedMps / 1000);
            int before = Math.max(0, second - 1);
            metres[second] = second * speedMps;
            watts[second] = powerW(kilometre);
            altitude[second] = (second == 0 ? 300 : altitude[before]) + grade.applyAsDouble(kilometre) * speedMps;
            radians = turns * 2 * Math.PI * second / seconds;
            latitude[second] = (second == 0 ? 45 : latitude[before]) + speedMps * Math.cos(radians) / METRES_PER_DEGREE;
            longitude[second] = (second == 0 ? 7 : longitude[before])
                    + speedMps * Math.sin(radians) / METRES_PER_DEGREE / Math.cos(Math.toRadians(45));
        }
        Ride.Builder ride = Ride.builder(Instant.parse("2026-05-16T08:00:00Z"), seconds)
                .state(new Interval(0, seconds), SecondState.RIDING);
        put(ride, Channel.POWER, watts);
        put(ride, Channel.DISTANCE, metres);
        put(ride, Channel.SPEED, Series.generate(seconds, second -> speedMps));
        put(ride, Channel.ALTITUDE, altitude);
        put(ride, Channel.LATITUDE, latitude);
        put(ride, Channel.LONGITUDE, longitude);
        return ride.build();
    }

    private void put(Ride.Builder ride, Channel channel, double[] values) {
        put(ride, channel, Series.of(values));
    }

    private void put(Ride.Builder ride, Channel channel, Series values) {
        if (!without.contains(channel)) {
            ride.channel(channel, values);
        }
    }
}
