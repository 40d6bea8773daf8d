package io.github.wattledger.plan;

/**
 * The effort that a plan is made for. What a rider can hold falls with the time, and the time falls with the effort: the two
 * meet in one point. Sustainable power has an elasticity of about -0.16 in time, time one of about -0.55 in power, so their
 * product is far below 1: the point is the only one, and a few passes find it.
 */
final class TargetSearch {
    private static final int MOST_PASSES = 30;
    private static final double SAME_FRACTION = 1e-6;
    private static final double LEAST_OF_THRESHOLD = 0.3;
    private static final double MOST_OF_THRESHOLD = 1.05;
    private static final int GOAL_STEPS = 24;

    private final PowerPlanner planner;
    private final PlanRider rider;

    TargetSearch(PowerPlanner planner, PlanRider rider) {
        this.planner = planner;
        this.rider = rider;
    }

    PlanTarget sustainable() {
        double watts = 0.75 * rider.thresholdPowerW();
        PowerByPiece ridden = planner.best(watts);
        for (int pass = 0; pass < MOST_PASSES; pass++) {
            double next = Math.min(
                    MOST_OF_THRESHOLD * rider.thresholdPowerW(),
                    rider.sustainable(ridden.seconds()).watts());
            boolean isSame = Math.abs(next - watts) <= SAME_FRACTION * watts;
            watts = next;
            if (isSame) {
                break;
            }
            ridden = planner.best(watts);
        }
        return target(watts, ridden, PlanTarget.Origin.SUSTAINABLE);
    }

    PlanTarget given(double watts) {
        return target(watts, planner.best(watts), PlanTarget.Origin.GIVEN);
    }

    /** The effort that gives a time under way; the nearest that is searched where none does. */
    PlanTarget forMovingSeconds(double seconds) {
        double low = LEAST_OF_THRESHOLD * rider.thresholdPowerW();
        double high = 1.5 * rider.thresholdPowerW();
        for (int step = 0; step < GOAL_STEPS; step++) {
            double middle = (low + high) / 2;
            if (planner.best(middle).seconds() > seconds) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double watts = (low + high) / 2;
        return target(watts, planner.best(watts), PlanTarget.Origin.GOAL_TIME);
    }

    private PlanTarget target(double watts, PowerByPiece ridden, PlanTarget.Origin origin) {
        boolean isLimited = ridden.effortW() < 0.995 * watts;
        return new PlanTarget(
                isLimited ? ridden.effortW() : watts, origin, rider.sustainable(ridden.seconds()), isLimited);
    }
}
