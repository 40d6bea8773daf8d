package io.github.wattledger.simulation.trial;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Series;
import io.github.wattledger.simulation.SimulatedRide;
import java.util.Arrays;

/** A simulated race as numbers by the second, with the sums that the truth is made of. */
final class RiddenRace {
    private static final int WINDOW_SECONDS = 30;
    private static final double STANDING_BELOW_MPS = 0.8;

    private final SimulatedRide ride;
    private final double[] powerW;
    private final double[] speedMps;
    private final double[] distanceM;
    private final int[] movingSeconds;

    RiddenRace(SimulatedRide ride) {
        this.ride = ride;
        powerW = values(ride, Channel.POWER);
        speedMps = values(ride, Channel.SPEED);
        distanceM = values(ride, Channel.DISTANCE);
        int[] moving = new int[powerW.length];
        int count = 0;
        for (int second = 0; second < powerW.length; second++) {
            if (speedMps[second] >= STANDING_BELOW_MPS || powerW[second] > 0) {
                moving[count++] = second;
            }
        }
        movingSeconds = Arrays.copyOf(moving, count);
    }

    private static double[] values(SimulatedRide ride, Channel channel) {
        Series series = ride.truth(channel);
        double[] values = new double[series.size()];
        for (int second = 0; second < values.length; second++) {
            values[second] = series.get(second);
        }
        return values;
    }

    SimulatedRide ride() {
        return ride;
    }

    int seconds() {
        return powerW.length;
    }

    double powerW(int second) {
        return powerW[second];
    }

    double speedMps(int second) {
        return speedMps[second];
    }

    double distanceM(int second) {
        return distanceM[second];
    }

    /** How many seconds were not stood through. */
    int movingSeconds() {
        return movingSeconds.length;
    }

    /** The second of the ride that is the given one of the moving seconds; the end of the ride beyond the last. */
    int secondOfMoving(double movingSecond) {
        int index = (int) Math.round(movingSecond);
        return index >= movingSeconds.length ? powerW.length : movingSeconds[Math.max(0, index)];
    }

    /** The second of the ride at a share of its moving time. */
    int secondAtShare(double share) {
        return secondOfMoving(share * movingSeconds.length);
    }

    /** How far the rider had come by a share of the moving time. */
    double distanceAtShare(double share) {
        return distanceM[Math.min(distanceM.length - 1, secondAtShare(share))];
    }

    /** How far the rider had come by a moving second. */
    double distanceAtMoving(double movingSecond) {
        return distanceM[Math.min(distanceM.length - 1, secondOfMoving(movingSecond))];
    }

    /** The first second by whose end the rider has passed a place; the end of the ride beyond the last. */
    int secondAt(double metres) {
        int low = 0;
        int high = distanceM.length;
        while (low < high) {
            int middle = (low + high) / 2;
            if (distanceM[middle] < metres) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** From the start to the finishing line, the last second in part. */
    double finishSeconds() {
        return powerW.length - overshotShare();
    }

    private double overshotShare() {
        int last = powerW.length - 1;
        double beyondM = distanceM[last] - ride.scenario().course().lengthM();
        return speedMps[last] > 0 ? Math.max(0, Math.min(1, beyondM / speedMps[last])) : 0;
    }

    /** Work at the pedals up to the finishing line, joules. */
    double workJ() {
        double joules = 0;
        for (double watts : powerW) {
            joules += watts;
        }
        return joules - powerW[powerW.length - 1] * overshotShare();
    }

    /** Normalized power of the moving time, watts: standing neither rests nor tires the rider here. */
    double movingNormalizedPowerW() {
        double[] watts = new double[movingSeconds.length];
        for (int i = 0; i < watts.length; i++) {
            watts[i] = powerW[movingSeconds[i]];
        }
        return normalizedPowerW(watts, 0, watts.length);
    }

    /** Normalized power of the race, watts. */
    double normalizedPowerW() {
        return normalizedPowerW(0, powerW.length);
    }

    /**
     * Normalized power of a stretch, watts, by the definition of Allen and Coggan ("Training and Racing with a Power
     * Meter"): 30-second means, fourth powers, mean, fourth root.
     */
    double normalizedPowerW(int fromSecond, int toSecond) {
        return normalizedPowerW(powerW, fromSecond, toSecond);
    }

    private static double normalizedPowerW(double[] powerW, int fromSecond, int toSecond) {
        double sum = 0;
        double fourthPowers = 0;
        int windows = 0;
        for (int second = fromSecond; second < toSecond; second++) {
            sum += powerW[second];
            int in = second - fromSecond + 1;
            if (in > WINDOW_SECONDS) {
                sum -= powerW[second - WINDOW_SECONDS];
            }
            if (in >= WINDOW_SECONDS) {
                double mean = sum / WINDOW_SECONDS;
                fourthPowers += mean * mean * mean * mean;
                windows++;
            }
        }
        return windows == 0 ? Double.NaN : Math.sqrt(Math.sqrt(fourthPowers / windows));
    }
}
