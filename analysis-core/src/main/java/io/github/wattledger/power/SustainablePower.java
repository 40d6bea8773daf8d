package io.github.wattledger.power;

/** How much power a rider can be expected to hold for how long. */
public final class SustainablePower {
    /**
     * How fast sustainable power falls with duration beyond an hour: 0.89 of threshold at 2 h, 0.80 at 4 h, 0.72 at 8 h,
     * 0.67 at 12 h. Common targets of coaches, no single source.
     */
    static final double DECLINE_BEYOND_HOUR = 0.16;

    /**
     * The same below an hour, so that 20 minutes come out at threshold / 0.95. Common practice, no single source.
     */
    static final double DECLINE_WITHIN_HOUR = -Math.log(0.95) / Math.log(3);

    /** Shortest duration the guide speaks of, seconds. */
    public static final int SHORTEST_GUIDE_SECONDS = 1200;

    private static final double SECONDS_PER_HOUR = 3600;

    private SustainablePower() {}

    /**
     * A guide to the power that can be held for a duration, from threshold power alone. It knows nothing of the rider's
     * endurance and must be shown as a guide, never as a fact.
     *
     * @param thresholdPowerW threshold power, watts, above 0
     * @param seconds the duration, at least 20 minutes
     * @return watts
     * @throws IllegalArgumentException when an argument is out of range
     */
    public static double guideW(double thresholdPowerW, double seconds) {
        if (!(thresholdPowerW > 0)) {
            throw new IllegalArgumentException("thresholdPowerW " + thresholdPowerW + ", expected above 0");
        }
        if (!(seconds >= SHORTEST_GUIDE_SECONDS)) {
            throw new IllegalArgumentException("seconds " + seconds + ", expected at least " + SHORTEST_GUIDE_SECONDS);
        }
        double hours = seconds / SECONDS_PER_HOUR;
        double decline = hours >= 1 ? DECLINE_BEYOND_HOUR : DECLINE_WITHIN_HOUR;
        return thresholdPowerW * Math.pow(hours, -decline);
    }
}
