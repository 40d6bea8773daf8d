package io.github.wattledger.benchmark;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import java.util.Arrays;
import java.util.Random;

/**
 * One invented ride of twelve hours, the same in every run: rolling forest roads in whole watts, with coasting, sprints,
 * a slow fade, a pause of some minutes every two hours and a few missing seconds. Made for measuring, not a model of a
 * rider.
 */
final class SeededRide {
    static final int SECONDS = 12 * 3600;
    static final double THRESHOLD_POWER_W = 250;
    static final double THRESHOLD_HEART_RATE_BPM = 165;

    private static final long SEED = 20_261_125;
    private static final int SECONDS_BETWEEN_PAUSES = 2 * 3600;

    private SeededRide() {}

    static Ride twelveHours() {
        Random random = new Random(SEED);
        Ride.Builder ride = Ride.builder(Instant.parse("2026-06-20T04:00:00Z"), SECONDS);
        double[] watts = new double[SECONDS];
        double[] beats = new double[SECONDS];
        double[] cadence = new double[SECONDS];
        double[] speed = new double[SECONDS];
        double[] distance = new double[SECONDS];
        double[] altitude = new double[SECONDS];
        double wander = 0;
        double heartRate = 95;
        double metres = 0;
        double height = 20;
        int paused = 0;
        int coasting = 0;
        int sprinting = 0;
        for (int second = 0; second < SECONDS; second++) {
            if (second > 0 && second % SECONDS_BETWEEN_PAUSES == 0) {
                paused = 120 + random.nextInt(600);
                ride.state(new Interval(second, Math.min(second + paused, SECONDS)), SecondState.PAUSED);
            }
            boolean missing = random.nextInt(4000) == 0;
            if (paused > 0 || missing) {
                if (paused == 0) {
                    ride.state(second, SecondState.MISSING);
                }
                paused = Math.max(0, paused - 1);
                for (double[] channel : Arrays.asList(watts, beats, cadence, speed, distance, altitude)) {
                    channel[second] = Double.NaN;
                }
                continue;
            }
            double grade = 0.035 * Math.sin(second / 290.0) + 0.02 * Math.sin(second / 71.0);
            wander = 0.93 * wander + 16 * random.nextGaussian();
            if (coasting == 0 && grade < -0.01 && random.nextInt(40) == 0) {
                coasting = 3 + random.nextInt(25);
            }
            if (sprinting == 0 && random.nextInt(1500) == 0) {
                sprinting = 4 + random.nextInt(12);
            }
            double power = (205 - 45.0 * second / SECONDS) * (1 + 8 * grade)
                    + wander
                    + 12 * random.nextGaussian()
                    + (sprinting > 0 ? 420 : 0);
            power = coasting > 0 ? 0 : Math.max(0, Math.rint(power));
            coasting = Math.max(0, coasting - 1);
            sprinting = Math.max(0, sprinting - 1);
            heartRate += (85 + 0.32 * power - heartRate) / 60 + 0.3 * random.nextGaussian();
            double metresPerSecond = Math.max(2, 7.5 - 70 * grade + 0.3 * random.nextGaussian());
            metres += metresPerSecond;
            height += metresPerSecond * grade;
            watts[second] = power;
            beats[second] = Math.rint(heartRate);
            cadence[second] = power == 0 ? 0 : Math.rint(82 + 4 * random.nextGaussian());
            speed[second] = metresPerSecond;
            distance[second] = metres;
            altitude[second] = Math.rint(height * 5) / 5;
        }
        return ride.channel(Channel.POWER, Series.of(watts))
                .channel(Channel.HEART_RATE, Series.of(beats))
                .channel(Channel.CADENCE, Series.of(cadence))
                .channel(Channel.SPEED, Series.of(speed))
                .channel(Channel.DISTANCE, Series.of(distance))
                .channel(Channel.ALTITUDE, Series.of(altitude))
                .build();
    }
}
