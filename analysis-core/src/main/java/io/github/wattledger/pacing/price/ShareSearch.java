package io.github.wattledger.pacing.price;

import java.util.function.ToDoubleFunction;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * The search for the share at which a quantity of a repaired race is zero. Every value of the quantity takes a replay of
 * the race, so the search begins where the race would be equal if every second lasted as long as it did.
 */
final class ShareSearch {
    private static final int MOST_EVALUATIONS = 200;
    private static final int SOLVER_ORDER = 5;

    /** How close the quantity has to come to zero, a fraction of its aim: this is a tenth of a second in a day. */
    private static final double TOLERANCE = 1e-6;

    /** The next try goes this many times as far as the first guess seems to be off. */
    private static final double BEYOND = 3;

    /** The slope of a quantity is measured over this fraction of a share. */
    private static final double SHARE_STEP = 0.01;

    private final RepairedRace race;
    private final ToDoubleFunction<RepairedRace.State> rising;

    /** @param rising a quantity that rises with the share, as a fraction of what it should be */
    ShareSearch(RepairedRace race, ToDoubleFunction<RepairedRace.State> rising) {
        this.race = race;
        this.rising = rising;
    }

    /** The share at which the quantity is zero, within what a rider can do; {@code NaN} where there is none. */
    double share() {
        double byTries = race.shareByInterpolation(rising);
        double near = Double.isNaN(byTries) ? unreplayedShare() : byTries;
        near = Math.max(PriceSteps.LEAST_SHARE, Math.min(PriceSteps.MOST_SHARE, near));
        double over = rising.applyAsDouble(race.at(near));
        return Math.abs(over) <= TOLERANCE ? near : shareBeyond(near, over);
    }

    /**
     * Steps away from a share, further each time, until the quantity has changed its sign.
     *
     * @param near the share to start from
     * @param over the quantity there
     */
    private double shareBeyond(double near, double over) {
        double low = near;
        double high = near;
        // Infinite where nothing reacts to the share: then the bound is tried next.
        double step = BEYOND * Math.abs(over) / unreplayedRise(near);
        while (over > 0 && low > PriceSteps.LEAST_SHARE) {
            high = low;
            low = Math.max(PriceSteps.LEAST_SHARE, low / (1 + step));
            step *= BEYOND;
            if (rising.applyAsDouble(race.at(low)) <= 0) {
                return shareBetween(low, high);
            }
        }
        while (over <= 0 && high < PriceSteps.MOST_SHARE) {
            low = high;
            high = Math.min(PriceSteps.MOST_SHARE, high * (1 + step));
            step *= BEYOND;
            if (rising.applyAsDouble(race.at(high)) >= 0) {
                return shareBetween(low, high);
            }
        }
        return Double.NaN;
    }

    private double shareBetween(double low, double high) {
        double start = Math.max(low, Math.min(high, race.shareByInterpolation(rising)));
        // The solver would not stop here, but go on until its bracket is as narrow as the tolerance.
        return Math.abs(rising.applyAsDouble(race.at(start))) <= TOLERANCE
                ? start
                : solver().solve(MOST_EVALUATIONS, share -> rising.applyAsDouble(race.at(share)), low, high, start);
    }

    /** The share if every second lasted as long as it did, or the bound beyond which it lies. */
    private double unreplayedShare() {
        UnivariateFunction unreplayed = share -> rising.applyAsDouble(race.unreplayed(share));
        if (!(unreplayed.value(PriceSteps.LEAST_SHARE) < 0)) {
            return PriceSteps.LEAST_SHARE;
        }
        if (!(unreplayed.value(PriceSteps.MOST_SHARE) > 0)) {
            return PriceSteps.MOST_SHARE;
        }
        return solver().solve(MOST_EVALUATIONS, unreplayed, PriceSteps.LEAST_SHARE, PriceSteps.MOST_SHARE, 1);
    }

    /** How much the quantity rises when the share grows by a fraction, for each unit of that fraction. */
    private double unreplayedRise(double share) {
        double more = rising.applyAsDouble(race.unreplayed(share * (1 + SHARE_STEP)))
                - rising.applyAsDouble(race.unreplayed(share));
        return more / SHARE_STEP;
    }

    private static BracketingNthOrderBrentSolver solver() {
        return new BracketingNthOrderBrentSolver(TOLERANCE, TOLERANCE, TOLERANCE, SOLVER_ORDER);
    }
}
