package io.github.wattledger.simulation;

/**
 * How a heart answers power: a straight line, followed with a first-order lag, raised by time and heat. These are the
 * numbers a drift detector should find again.
 *
 * @param atZeroPowerBpm rate at which it settles without power
 * @param bpmPerW how much a watt adds
 * @param lagSeconds time constant of the answer
 * @param maximumBpm the highest rate
 * @param driftPerHour rise per hour of racing, as a fraction
 * @param driftPerDebtKJHour further rise per hour for each kJ of {@link Fatigue} debt, as a fraction
 * @param heatPerDegree rise per degree above 18 degrees Celsius, as a fraction
 * @param crashAfterSeconds racing seconds after which the rate falls at equal power, as when fuel runs out
 * @param crashFraction how far it falls, as a fraction, within ten minutes
 */
public record HeartResponse(
        double atZeroPowerBpm,
        double bpmPerW,
        double lagSeconds,
        double maximumBpm,
        double driftPerHour,
        double driftPerDebtKJHour,
        double heatPerDegree,
        double crashAfterSeconds,
        double crashFraction) {
    private static final double TEMPERATE_C = 18;
    private static final double CRASH_SECONDS = 600;

    /** A heart that does not drift, for a threshold heart rate at a threshold power. */
    public static HeartResponse steady(double thresholdBpm, double thresholdPowerW, double maximumBpm) {
        double atZero = 90;
        double perWatt = (thresholdBpm - atZero) / thresholdPowerW;
        return new HeartResponse(atZero, perWatt, 60, maximumBpm, 0, 0, 0, Double.POSITIVE_INFINITY, 0);
    }

    /** The same heart with other drifts. */
    public HeartResponse withDrift(double perHour, double perDebtKJHour, double perDegree) {
        return new HeartResponse(
                atZeroPowerBpm,
                bpmPerW,
                lagSeconds,
                maximumBpm,
                perHour,
                perDebtKJHour,
                perDegree,
                crashAfterSeconds,
                crashFraction);
    }

    /** The same heart with a fall at equal power. */
    public HeartResponse withCrash(double afterSeconds, double fraction) {
        return new HeartResponse(
                atZeroPowerBpm,
                bpmPerW,
                lagSeconds,
                maximumBpm,
                driftPerHour,
                driftPerDebtKJHour,
                heatPerDegree,
                afterSeconds,
                fraction);
    }

    /** The rate towards which the heart goes, bpm. */
    double settledBpm(double powerW, double racingSeconds, double debtKJ, double temperatureC) {
        double hours = racingSeconds / 3600;
        double rise = hours * (driftPerHour + driftPerDebtKJHour * debtKJ)
                + heatPerDegree * StrictMath.max(0, temperatureC - TEMPERATE_C);
        double crashed = StrictMath.max(0, StrictMath.min(1, (racingSeconds - crashAfterSeconds) / CRASH_SECONDS));
        double factor = (1 + rise) * (1 - crashFraction * crashed);
        return StrictMath.min(maximumBpm, (atZeroPowerBpm + bpmPerW * powerW) * factor);
    }
}
