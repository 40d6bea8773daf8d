package io.github.wattledger.power;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Critical power and W′ as fitted to best efforts, with standard errors that rest on the scatter of the efforts about
 * the curve. Bests taken from one mean-maximal curve overlap, so their scatter is smaller than that of separate trials
 * and the errors are then too small.
 *
 * @param form the form of the model that was fitted
 * @param criticalPowerW critical power, watts, above 0
 * @param criticalPowerErrorW its standard error, watts
 * @param wPrimeJ W′, the work that can be done above critical power, joules, above 0
 * @param wPrimeErrorJ its standard error, joules
 * @param maximalPowerW the power that can be held for no time at all, watts; null but for the three-parameter form
 * @param maximalPowerErrorW its standard error, watts; null but for the three-parameter form
 * @param efforts the efforts used, shortest first
 * @param residualsW for each effort its power less the fitted power for that duration, watts
 * @param rSquared the share of variance explained, in the terms of the form that was fitted
 */
public record CriticalPowerFit(
        CriticalPower.Form form,
        double criticalPowerW,
        double criticalPowerErrorW,
        double wPrimeJ,
        double wPrimeErrorJ,
        @Nullable Double maximalPowerW,
        @Nullable Double maximalPowerErrorW,
        List<BestEffort> efforts,
        List<Double> residualsW,
        double rSquared)
        implements CriticalPowerResult {
    private static final double JOULES_PER_KILOJOULE = 1000;

    /** Copies the lists. */
    public CriticalPowerFit {
        efforts = List.copyOf(efforts);
        residualsW = List.copyOf(residualsW);
    }

    /** W′, kilojoules. */
    public double wPrimeKJ() {
        return wPrimeJ / JOULES_PER_KILOJOULE;
    }

    /** Efforts less parameters, at least 1. */
    public int degreesOfFreedom() {
        return efforts.size() - form.parameters();
    }

    /** Half the width of the 95 % confidence interval of critical power (Student's t), watts. */
    public double criticalPowerHalfWidthW() {
        return LeastSquares.errorsWithin95Percent(degreesOfFreedom()) * criticalPowerErrorW;
    }

    /** Half the width of the 95 % confidence interval of W′ (Student's t), joules. */
    public double wPrimeHalfWidthJ() {
        return LeastSquares.errorsWithin95Percent(degreesOfFreedom()) * wPrimeErrorJ;
    }

    /**
     * The fitted power for a duration, watts. Beyond half an hour the model promises more than riders hold (Drake et al.
     * 2024, Eur J Appl Physiol 124:507): use {@link SustainablePower} there.
     *
     * @param seconds the duration, above 0
     */
    public double powerW(double seconds) {
        return maximalPowerW == null
                ? CriticalPower.powerW(seconds, criticalPowerW, wPrimeJ)
                : CriticalPower.powerW(seconds, criticalPowerW, wPrimeJ, maximalPowerW);
    }

    /**
     * How long a power can be held according to the fit, seconds; infinite at critical power and below.
     *
     * @param watts the power
     */
    public double secondsAt(double watts) {
        return maximalPowerW == null
                ? CriticalPower.secondsAt(watts, criticalPowerW, wPrimeJ)
                : CriticalPower.secondsAt(watts, criticalPowerW, wPrimeJ, maximalPowerW);
    }
}
