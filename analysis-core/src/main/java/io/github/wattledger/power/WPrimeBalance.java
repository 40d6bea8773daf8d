package io.github.wattledger.power;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Bounds;
import java.io.Serial;
import java.io.Serializable;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * W′ balance: how much of W′, the work that can be done above critical power, is left at the end of each second.
 *
 * <p>A second without power (paused, or nothing recorded) counts as no work: W′ recovers at 0 W. For a pause that is what
 * happens; where the recording has a hole the balance after it may be too high, and {@link #secondsWithoutPower()} says
 * how much of the ride that concerns.
 *
 * <p>The two models rest on different assumptions and are never mixed (Skiba and Clarke 2021, Int J Sports Physiol
 * Perform 16:1561). The balance is not cut at 0: below it, critical power or W′ is set too low for this rider.
 */
public final class WPrimeBalance implements Serializable {
    @Serial
    private static final long serialVersionUID = 1L;

    /** How W′ recovers below critical power. */
    public enum Model {
        /**
         * What is spent recovers with the time constant {@code W′ / (CP − P)}, taken anew each second: Skiba et al. 2015,
         * Eur J Appl Physiol 115:703. The step within a second is exact. The default.
         */
        DIFFERENTIAL,
        /**
         * What is spent recovers with the time constant {@code 2287.2 (CP − P)^−0.688} s of four elite riders, taken anew
         * each second: Bartram et al. 2018, Int J Sports Physiol Perform 13:724. For riders who recover fast.
         */
        DIFFERENTIAL_ELITE,
        /**
         * Each joule spent comes back with one time constant for the whole ride, {@code 546 e^(−0.01 D) + 316} s with D
         * the critical power less the mean of the powers below it: Skiba et al. 2012, Med Sci Sports Exerc 44:1526. Where
         * no second lies below critical power nothing recovers.
         */
        INTEGRAL
    }

    /** Rounding of a ride's worth of additions, as a fraction of W′. */
    private static final double ROUNDING = 1e-9;

    private final double criticalPowerW;
    private final double wPrimeJ;
    private final Model model;
    private final Series watts;
    private final Series balanceJ;

    private WPrimeBalance(double criticalPowerW, double wPrimeJ, Model model, Series watts, double[] balanceJ) {
        this.criticalPowerW = criticalPowerW;
        this.wPrimeJ = wPrimeJ;
        this.model = model;
        this.watts = watts;
        this.balanceJ = Series.of(balanceJ);
    }

    /**
     * The balance over a ride, full at its start. Power recorded while the timer stood counts as no work.
     *
     * @param criticalPowerW critical power, watts, above 0
     * @param wPrimeJ W′, joules, above 0
     * @throws IllegalArgumentException when critical power or W′ is not above 0
     */
    public static WPrimeBalance of(Ride ride, double criticalPowerW, double wPrimeJ, Model model) {
        return over(ride.timerSeries(Channel.POWER), criticalPowerW, wPrimeJ, model);
    }

    /**
     * The balance over one-second power, full at its start.
     *
     * @param watts one-second power, watts; {@code NaN} counts as no work
     * @param criticalPowerW critical power, watts, above 0
     * @param wPrimeJ W′, joules, above 0
     * @throws IllegalArgumentException when a reading is below 0 or infinite, or critical power or W′ is not above 0
     */
    public static WPrimeBalance of(Series watts, double criticalPowerW, double wPrimeJ, Model model) {
        return over(watts.requireReadings("watts"), criticalPowerW, wPrimeJ, model);
    }

    private static WPrimeBalance over(Series watts, double criticalPowerW, double wPrimeJ, Model model) {
        Bounds.requireAboveZero("criticalPowerW", criticalPowerW);
        Bounds.requireAboveZero("wPrimeJ", wPrimeJ);
        double[] balanceJ = switch (model) {
            case DIFFERENTIAL, DIFFERENTIAL_ELITE -> differential(watts, criticalPowerW, wPrimeJ, model);
            case INTEGRAL -> integral(watts, criticalPowerW, wPrimeJ);
        };
        return new WPrimeBalance(criticalPowerW, wPrimeJ, model, watts, balanceJ);
    }

    /** {@link #of(Series, double, double, Model)} for an array, which is copied. */
    public static WPrimeBalance of(double[] watts, double criticalPowerW, double wPrimeJ, Model model) {
        return of(Series.of(watts), criticalPowerW, wPrimeJ, model);
    }

    /**
     * The time constant of recovery, seconds: after it a share of 1 − 1/e of what was spent is back.
     *
     * @param model how W′ recovers; the integral model takes the mean of the powers below critical power for {@code
     *     watts}
     * @param watts the power while recovering, 0 or more; above critical power the result is infinite, and at critical
     *     power too but for the integral model, whose time constant ends there at 862 s
     * @param criticalPowerW critical power, watts, above 0
     * @param wPrimeJ W′, joules, above 0; only {@link Model#DIFFERENTIAL} depends on it
     * @throws IllegalArgumentException when critical power or W′ is not above 0
     */
    static double timeConstantSeconds(Model model, double watts, double criticalPowerW, double wPrimeJ) {
        Bounds.requireAboveZero("criticalPowerW", criticalPowerW);
        Bounds.requireAboveZero("wPrimeJ", wPrimeJ);
        Bounds.requireNotNegative("watts", watts);
        double below = criticalPowerW - watts;
        return switch (model) {
            case DIFFERENTIAL -> below > 0 ? wPrimeJ / below : Double.POSITIVE_INFINITY;
            case DIFFERENTIAL_ELITE -> below > 0 ? 2287.2 * Math.pow(below, -0.688) : Double.POSITIVE_INFINITY;
            case INTEGRAL -> below >= 0 ? 546 * Math.exp(-0.01 * below) + 316 : Double.POSITIVE_INFINITY;
        };
    }

    /** Critical power, watts. */
    public double criticalPowerW() {
        return criticalPowerW;
    }

    /** W′, joules. */
    public double wPrimeJ() {
        return wPrimeJ;
    }

    /** How W′ was taken to recover. */
    public Model model() {
        return model;
    }

    /** What is left at the end of each second, joules: at most W′, below 0 where the numbers are set too low. */
    public Series balanceJ() {
        return balanceJ;
    }

    /** The lowest balance, joules; W′ itself when there is no second. */
    public double minimumJ() {
        OptionalInt second = minimumSecond();
        return second.isPresent() ? balanceJ.get(second.getAsInt()) : wPrimeJ;
    }

    /**
     * The lowest balance at the end of a second of a stretch, joules.
     *
     * @throws IndexOutOfBoundsException when the stretch does not lie within the ride
     * @throws IllegalArgumentException when it holds no second
     */
    public double minimumJ(Interval stretch) {
        Objects.checkFromToIndex(stretch.fromSecond(), stretch.toSecond(), balanceJ.size());
        if (stretch.seconds() == 0) {
            throw new IllegalArgumentException("the stretch holds no second");
        }
        double lowest = balanceJ.get(stretch.fromSecond());
        for (int second = stretch.fromSecond(); second < stretch.toSecond(); second++) {
            lowest = Math.min(lowest, balanceJ.get(second));
        }
        return lowest;
    }

    /** The second at whose end the balance is lowest, the first of several; empty when there is no second. */
    public OptionalInt minimumSecond() {
        int lowest = -1;
        for (int second = 0; second < balanceJ.size(); second++) {
            if (lowest < 0 || balanceJ.get(second) < balanceJ.get(lowest)) {
                lowest = second;
            }
        }
        return lowest < 0 ? OptionalInt.empty() : OptionalInt.of(lowest);
    }

    /**
     * How many seconds end with less than a share of W′ left.
     *
     * @param fraction share of W′, for instance 0.25
     */
    public int secondsBelow(double fraction) {
        int count = 0;
        for (int second = 0; second < balanceJ.size(); second++) {
            if (balanceJ.get(second) < fraction * wPrimeJ) {
                count++;
            }
        }
        return count;
    }

    /**
     * The work done above critical power in a stretch, joules, recovery within it left aside.
     *
     * @throws IndexOutOfBoundsException when the stretch does not lie within the ride
     */
    public double spentJ(Interval stretch) {
        Objects.checkFromToIndex(stretch.fromSecond(), stretch.toSecond(), watts.size());
        double spent = 0;
        for (int second = stretch.fromSecond(); second < stretch.toSecond(); second++) {
            spent += Math.max(0, wattsAt(watts, second) - criticalPowerW);
        }
        return spent;
    }

    /**
     * How many seconds after the end of a second the balance was first back at a share of W′; 0 when it was there then.
     *
     * @param second a second of the ride
     * @param fraction share of W′, for instance 0.9
     * @return seconds, or empty when it never was before the ride ended
     * @throws IndexOutOfBoundsException when the second does not lie within the ride
     */
    public OptionalInt secondsToRecover(int second, double fraction) {
        Objects.checkIndex(second, balanceJ.size());
        for (int later = second; later < balanceJ.size(); later++) {
            if (balanceJ.get(later) >= fraction * wPrimeJ) {
                return OptionalInt.of(later - second);
            }
        }
        return OptionalInt.empty();
    }

    /** How many seconds carried no power and counted as no work. */
    public int secondsWithoutPower() {
        return watts.size() - watts.measuredCount();
    }

    /** One sentence when the balance fell below 0, which no rider can do; empty otherwise. */
    public Optional<String> warning() {
        if (minimumJ() >= -ROUNDING * wPrimeJ) {
            return Optional.empty();
        }
        return Optional.of(String.format(
                Locale.ROOT,
                "W' balance falls to %.1f kJ, below empty: critical power or W' is set too low.",
                minimumJ() / 1000));
    }

    /** Two balances are equal when their critical power, W′, model and power are equal. */
    @Override
    public boolean equals(Object other) {
        return other instanceof WPrimeBalance that
                && criticalPowerW == that.criticalPowerW
                && wPrimeJ == that.wPrimeJ
                && model == that.model
                && watts.equals(that.watts);
    }

    @Override
    public int hashCode() {
        return 31 * Double.hashCode(criticalPowerW) + watts.hashCode();
    }

    @Override
    public String toString() {
        return "WPrimeBalance over " + balanceJ.size() + " s, " + model;
    }

    /** Within a second power is constant, so the decay of what is spent is an exact exponential. */
    private static double[] differential(Series watts, double criticalPowerW, double wPrimeJ, Model model) {
        double[] balanceJ = new double[watts.size()];
        double spentJ = 0;
        for (int second = 0; second < balanceJ.length; second++) {
            double above = wattsAt(watts, second) - criticalPowerW;
            if (above >= 0) {
                spentJ += above;
            } else if (spentJ > 0) {
                double rate = model == Model.DIFFERENTIAL ? -above / wPrimeJ : Math.pow(-above, 0.688) / 2287.2;
                spentJ *= Math.exp(-rate);
            }
            balanceJ[second] = wPrimeJ - spentJ;
        }
        return balanceJ;
    }

    /**
     * The balance is full W′ less the sum of all earlier spending, each decayed by its age. The sum is kept by recursion:
     * that of one second is the sum of the second before, decayed by one second, plus what is spent now.
     */
    private static double[] integral(Series watts, double criticalPowerW, double wPrimeJ) {
        double sumBelow = 0;
        int below = 0;
        for (int second = 0; second < watts.size(); second++) {
            double power = wattsAt(watts, second);
            if (power < criticalPowerW) {
                sumBelow += power;
                below++;
            }
        }
        double tau = below == 0
                ? Double.POSITIVE_INFINITY
                : timeConstantSeconds(Model.INTEGRAL, sumBelow / below, criticalPowerW, wPrimeJ);
        double kept = Math.exp(-1 / tau);
        double[] balanceJ = new double[watts.size()];
        double spentJ = 0;
        for (int second = 0; second < balanceJ.length; second++) {
            spentJ = spentJ * kept + Math.max(0, wattsAt(watts, second) - criticalPowerW);
            balanceJ[second] = wPrimeJ - spentJ;
        }
        return balanceJ;
    }

    private static double wattsAt(Series watts, int second) {
        return watts.isMeasured(second) ? watts.get(second) : 0;
    }
}
