package io.github.wattledger.cli;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.pacing.Effort;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Rider;
import java.time.Instant;
import java.util.Random;

/** An invented race of 15 h at one reading a second, begun too hard, with the noise of real sensors; always the same. */
final class LongRide {
    static final int SECONDS = 15 * 3600;

    private LongRide() {}

    static RideReview review() {
        Rider rider = Rider.UNKNOWN
                .withThresholdPowerW(260)
                .withThresholdHeartRateBpm(168)
                .withMassKg(72);
        return Reviewer.review(ride(), rider, ReviewOptions.WHOLE_RIDE.withEffort(Effort.RACE));
    }

    private static Ride ride() {
        Random random = new Random(15);
        double[] watts = new double[SECONDS];
        double[] beats = new double[SECONDS];
        double[] metres = new double[SECONDS];
        double[] altitude = new double[SECONDS];
        double[] speed = new double[SECONDS];
        double[] north = new double[SECONDS];
        double[] east = new double[SECONDS];
        double effort = 0;
        double heart = 120;
        double distance = 0;
        double gust = 0;
        for (int second = 0; second < SECONDS; second++) {
            double hours = second / 3600.0;
            double hill = Math.sin(hours * 5) + 0.6 * Math.sin(hours * 13 + 1);
            effort = 0.98 * effort + 4 * random.nextGaussian();
            double level = (hours < 1.5 ? 235 : 180 - 4 * hours) + 25 * hill;
            boolean isPaused = pauses(second);
            watts[second] = hill < -1.1 ? 0 : Math.max(0, Math.rint(level + effort + 18 * random.nextGaussian()));
            heart += ((isPaused ? 80 : 80 + 0.35 * watts[second]) - heart) / 60 + 0.3 * random.nextGaussian();
            beats[second] = Math.rint(heart);
            gust = 0.95 * gust + 0.1 * random.nextGaussian();
            speed[second] = isPaused ? 0 : Math.max(1.5, 7 - 2.5 * hill + gust);
            distance += speed[second];
            metres[second] = Math.rint(distance * 100) / 100;
            altitude[second] = Math.rint((300 + 140 * Math.sin(hours * 5 - 1.5) + 0.3 * random.nextGaussian()) * 5) / 5;
            double turn = distance / 45_000;
            north[second] = 46.3 + 0.3 * Math.sin(turn) + 0.02 * Math.sin(turn * 17) + 4e-6 * random.nextGaussian();
            east[second] = -124 + 0.3 * Math.cos(turn) + 0.02 * Math.cos(turn * 23) + 4e-6 * random.nextGaussian();
        }
        Ride.Builder ride = Ride.builder(Instant.parse("2026-07-04T13:00:00Z"), SECONDS)
                .channel(Channel.POWER, Series.of(watts))
                .channel(Channel.HEART_RATE, Series.of(beats))
                .channel(Channel.DISTANCE, Series.of(metres))
                .channel(Channel.ALTITUDE, Series.of(altitude))
                .channel(Channel.SPEED, Series.of(speed))
                .channel(Channel.LATITUDE, Series.of(north))
                .channel(Channel.LONGITUDE, Series.of(east));
        for (int pause = 1; pause <= 4; pause++) {
            ride.state(new Interval(pause * 10_000, pause * 10_000 + 400), SecondState.PAUSED);
        }
        return ride.build();
    }

    private static boolean pauses(int second) {
        return second >= 10_000 && second < 50_000 && second % 10_000 < 400;
    }
}
