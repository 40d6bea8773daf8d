package io.github.wattledger.testing;

import java.util.Arrays;

/** One-second power of a ride made of trials to exhaustion, as critical power and W′ allow them, with rest between. */
public final class TrialRide {
    private static final int[] TRIAL_SECONDS = {180, 300, 480, 720, 1200, 1800};
    private static final int REST_SECONDS = 1800;
    private static final double REST_W = 100;

    private TrialRide() {}

    /**
     * The ride.
     *
     * @param share what part of the power of each trial is ridden; 1 is all-out
     */
    public static double[] watts(double criticalPowerW, double wPrimeJ, double share) {
        double[] watts = new double[Arrays.stream(TRIAL_SECONDS).sum() + TRIAL_SECONDS.length * REST_SECONDS];
        Arrays.fill(watts, REST_W);
        int second = 0;
        for (int trial : TRIAL_SECONDS) {
            second += REST_SECONDS;
            Arrays.fill(watts, second, second + trial, share * (criticalPowerW + wPrimeJ / trial));
            second += trial;
        }
        return watts;
    }
}
