package io.github.wattledger.pacing;

import io.github.wattledger.ride.Ride;
import java.util.Arrays;

/** Hearts that follow power with a lag of 60 s, at 80 beats and 30 more for each 100 W. */
final class HeartByHand {
    private HeartByHand() {}

    /** Power that alternates between 170 and 230 W every five minutes, 200 W on average. */
    static double[] alternating(int seconds) {
        double[] watts = new double[seconds];
        Arrays.setAll(watts, second -> second / 300 % 2 == 0 ? 170 : 230);
        return watts;
    }

    /** Power as the heart feels it, by definition: a first-order lag of 60 s. */
    static double[] felt(double[] watts) {
        double[] felt = new double[watts.length];
        double now = 0;
        for (int second = 0; second < watts.length; second++) {
            now += (watts[second] - now) * (1 - Math.exp(-1 / 60.0));
            felt[second] = now;
        }
        return felt;
    }

    static double bpm(double feltW) {
        return 80 + 0.3 * feltW;
    }

    /** A heart that follows, times a factor from a second on. */
    static Ride.Builder following(double[] watts, int from, double factor) {
        double[] felt = felt(watts);
        return RaceByHand.ride(
                watts.length, second -> watts[second], second -> bpm(felt[second]) * (second < from ? 1 : factor));
    }
}
