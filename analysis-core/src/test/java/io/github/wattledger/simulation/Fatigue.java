package io.github.wattledger.simulation;

/**
 * How work above a tolerable power is paid for later: the excess gathers as a debt, and the power a rider gives falls
 * with debt and time. A rule of thumb of this simulator, not a model of physiology.
 *
 * @param tolerableW power that leaves no debt, on a mean of about half a minute, watts
 * @param lossPerDebtKJHour share of power lost per kJ of debt and hour of racing
 */
public record Fatigue(double tolerableW, double lossPerDebtKJHour) {
    /** No effort leaves a trace. */
    public static final Fatigue NONE = new Fatigue(Double.POSITIVE_INFINITY, 0);

    private static final double MOST_LOST = 0.5;

    /** The share of the intended power that the rider still gives. */
    double remainingShare(double debtKJ, double racingSeconds) {
        return 1 - StrictMath.min(MOST_LOST, lossPerDebtKJHour * debtKJ * racingSeconds / 3600);
    }
}
