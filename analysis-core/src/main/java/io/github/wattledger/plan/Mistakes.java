package io.github.wattledger.plan;

import io.github.wattledger.ride.Series;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleFunction;

/**
 * What the usual mistakes would cost: the mistake is made, the rest is ridden so much easier that the whole effort stays the
 * same, and the times are compared. The ends of a range are the efforts of the exponents 3 and 6.25, between which the truth
 * about long races lies as far as anybody knows.
 */
final class Mistakes {
    private static final double[] EXPONENTS = {PowerPlanner.USUAL_EXPONENT, 3, 6.25};
    private static final double[] OPENINGS = {1.1, 1.2, 1.3};
    private static final double EXTRA_STOP_SECONDS = 600;
    private static final int MOST_STEPS = 25;
    private static final double SAME_EFFORT = 1e-6;

    private final List<PowerPlanner> planners = new ArrayList<>();
    private final Series grades;
    private final Series watts;

    /**
     * Prices for a plan.
     *
     * @param grades grade of each piece
     * @param watts the plan's power for each piece
     */
    Mistakes(PlanRoad road, Conditions day, PowerLimits limits, Series grades, Series watts) {
        // A mistake is not held back by the cap of the plan.
        PowerLimits free = new PowerLimits(limits.floorW(), Double.MAX_VALUE, limits.slowestMps(), limits.fastestMps());
        for (double exponent : EXPONENTS) {
            planners.add(road.planner(day, free, exponent));
        }
        this.grades = grades;
        this.watts = watts;
    }

    List<PricedMistake> priced(double thresholdPowerW) {
        List<PricedMistake> priced = new ArrayList<>();
        boolean[] opening = opening();
        for (double factor : OPENINGS) {
            priced.add(priced(
                    PricedMistake.Kind.OVER_HARD_OPENING,
                    factor,
                    rest -> Series.generate(
                            watts.size(), piece -> watts.get(piece) * (opening[piece] ? factor : rest))));
        }
        boolean hasClimbs = false;
        for (int i = 0; i < grades.size(); i++) {
            hasClimbs |= isClimb(i);
        }
        if (hasClimbs) {
            priced.add(priced(
                    PricedMistake.Kind.CLIMBS_AT_THRESHOLD,
                    thresholdPowerW,
                    rest -> Series.generate(
                            watts.size(), piece -> isClimb(piece) ? thresholdPowerW : rest * watts.get(piece))));
        }
        double minutes = EXTRA_STOP_SECONDS / 60;
        priced.add(new PricedMistake(PricedMistake.Kind.LONGER_STOPS, EXTRA_STOP_SECONDS, minutes, minutes, minutes));
        return List.copyOf(priced);
    }

    /** What the plan gains on one constant power at the same effort, minutes: at the exponents 4, 3 and 6.25. */
    double[] gainMinutes() {
        double[] gains = new double[EXPONENTS.length];
        for (int i = 0; i < gains.length; i++) {
            PowerByPiece plan = planners.get(i).ridden(watts);
            gains[i] = (planners.get(i).constant(plan.effortW()).seconds() - plan.seconds()) / 60;
        }
        return gains;
    }

    private boolean isClimb(int piece) {
        return grades.get(piece) >= Ground.CLIMB.fromGrade();
    }

    /** The pieces of the first sixth of the time. */
    private boolean[] opening() {
        PowerByPiece plan = planners.get(0).ridden(watts);
        double until = OpeningCap.secondsOf(plan.seconds());
        boolean[] opening = new boolean[watts.size()];
        double pieceSeconds = plan.seconds() / weight(plan);
        double seconds = 0;
        for (int i = 0; i < opening.length; i++) {
            opening[i] = seconds < until;
            seconds += pieceSeconds / plan.speedMps().get(i);
        }
        return opening;
    }

    /** Pieces are equally long, so the time of one is in proportion to 1 / speed. */
    private static double weight(PowerByPiece plan) {
        double sum = 0;
        for (int i = 0; i < plan.speedMps().size(); i++) {
            sum += 1 / plan.speedMps().get(i);
        }
        return sum;
    }

    private PricedMistake priced(PricedMistake.Kind kind, double amount, DoubleFunction<Series> withRest) {
        double[] minutes = new double[EXPONENTS.length];
        for (int i = 0; i < minutes.length; i++) {
            minutes[i] = costMinutes(planners.get(i), withRest);
        }
        double[] known = Arrays.stream(minutes).filter(Double::isFinite).toArray();
        Arrays.sort(known);
        boolean isKnown = known.length == minutes.length;
        return new PricedMistake(
                kind,
                amount,
                Double.isFinite(minutes[0]) ? (Double) minutes[0] : null,
                known.length == 0 ? null : (Double) known[0],
                isKnown ? (Double) known[known.length - 1] : null);
    }

    /** What a mistake costs, minutes; {@code NaN} where the rest would have to be ridden too easily to make up for it. */
    private double costMinutes(PowerPlanner planner, DoubleFunction<Series> withRest) {
        PowerByPiece plan = planner.ridden(watts);
        double low = PricedMistake.LEAST_REST;
        double high = 1.2;
        double offLow = planner.ridden(withRest.apply(low)).effortW() - plan.effortW();
        double offHigh = planner.ridden(withRest.apply(high)).effortW() - plan.effortW();
        if (offLow > 0) {
            return Double.NaN;
        }
        double rest = low;
        for (int step = 0; offLow < 0 && offHigh > 0 && step < MOST_STEPS; step++) {
            rest = low + (high - low) * offLow / (offLow - offHigh);
            double off = planner.ridden(withRest.apply(rest)).effortW() - plan.effortW();
            if (Math.abs(off) < SAME_EFFORT * plan.effortW()) {
                break;
            }
            if (off < 0) {
                low = rest;
                offLow = off;
                offHigh /= 2;
            } else {
                high = rest;
                offHigh = off;
                offLow /= 2;
            }
        }
        return (planner.ridden(withRest.apply(rest)).seconds() - plan.seconds()) / 60;
    }
}
