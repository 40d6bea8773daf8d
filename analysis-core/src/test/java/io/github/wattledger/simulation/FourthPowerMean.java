package io.github.wattledger.simulation;

import java.util.List;

/**
 * Normalized power as Allen and Coggan define it ("Training and Racing with a Power Meter"): 30-second means, fourth
 * powers, mean, fourth root. Written plainly and independently of the library.
 */
final class FourthPowerMean {
    private static final int WINDOW_SECONDS = 30;

    private FourthPowerMean() {}

    /**
     * Normalized power of samples, watts. Samples without power are left out and the window runs on across them; the
     * first 29 give no window; {@code NaN} under 30.
     */
    static double normalizedPowerW(List<RecordedSample> samples) {
        double[] watts = samples.stream()
                .filter(RecordedSample::hasPower)
                .mapToDouble(RecordedSample::powerW)
                .toArray();
        double sum = 0;
        int windows = 0;
        for (int end = WINDOW_SECONDS; end <= watts.length; end++) {
            double mean = 0;
            for (int i = end - WINDOW_SECONDS; i < end; i++) {
                mean += watts[i] / WINDOW_SECONDS;
            }
            sum += mean * mean * mean * mean;
            windows++;
        }
        return windows == 0 ? Double.NaN : StrictMath.sqrt(StrictMath.sqrt(sum / windows));
    }
}
