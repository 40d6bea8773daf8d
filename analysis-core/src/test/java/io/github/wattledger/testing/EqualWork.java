package io.github.wattledger.testing;

import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.course.Course;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.Rig;
import io.github.wattledger.simulation.PacingPlan;
import io.github.wattledger.simulation.RoadSimulation;
import io.github.wattledger.simulation.Scenario;
import io.github.wattledger.simulation.SimulatedRide;
import java.util.function.DoubleFunction;

/** What a hard start cost at equal work: by full forward simulation, and by replaying the recording of the hard start. */
public final class EqualWork {
    private EqualWork() {}

    /** The ride as it was simulated, and the even power that does the same work in another simulation. */
    public record Truth(SimulatedRide hard, double evenW, double savedSeconds) {}

    /** Simulates the hard start, then even rides until one does the same work. */
    public static Truth simulate(
            Scenario road, DoubleFunction<PacingPlan> even, PacingPlan hardPlan, double firstGuessW) {
        SimulatedRide hard = RoadSimulation.ride(road.withPlan(hardPlan));
        double workJ = workJ(hard);
        double low = 0.8 * firstGuessW;
        double high = 1.3 * firstGuessW;
        SimulatedRide ridden = hard;
        while (high - low > 1e-4) {
            double middle = (low + high) / 2;
            ridden = RoadSimulation.ride(road.withPlan(even.apply(middle)));
            if (workJ(ridden) < workJ) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return new Truth(hard, high, finishSeconds(hard) - finishSeconds(ridden));
    }

    /** When the finish line was crossed, seconds, within the last second. */
    public static double finishSeconds(SimulatedRide ride) {
        return ride.seconds() - unusedShare(ride);
    }

    /** The share of the last second that lies beyond the finish line. */
    private static double unusedShare(SimulatedRide ride) {
        int last = ride.seconds() - 1;
        double overshootM = ride.truth(Channel.DISTANCE).get(last)
                - ride.scenario().course().lengthM();
        return overshootM / ride.truth(Channel.SPEED).get(last);
    }

    private static double workJ(SimulatedRide ride) {
        Series watts = ride.truth(Channel.POWER);
        double joules = 0;
        for (int second = 0; second < watts.size(); second++) {
            joules += watts.get(second);
        }
        return joules - watts.get(watts.size() - 1) * unusedShare(ride);
    }

    public static Ride recorded(Recording recording) {
        return Cleaning.clean(recording).ride();
    }

    /**
     * Seconds saved when the first stretch is ridden at a level and the work won is spent over the rest, each pedalled
     * second in proportion to its power, until the total is as it was.
     */
    public static double savedByReplay(Ride ride, Rig rig, int openingSeconds, double factor) {
        Replay replay = Replay.of(ride, Course.of(ride).orElse(null), rig).orElseThrow(AssertionError::new);
        Series watts = ride.series(Channel.POWER);
        double target = workJ(replay.withPower(watts), watts);
        double low = 0.5;
        double high = 2;
        while (high - low > 1e-9) {
            double middle = (low + high) / 2;
            Series changed = changed(replay, watts, openingSeconds, factor, middle);
            if (workJ(replay.withPower(changed), changed) < target) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return replay.withPower(changed(replay, watts, openingSeconds, factor, low))
                .savedSeconds();
    }

    private static Series changed(Replay replay, Series watts, int openingSeconds, double opening, double rest) {
        return Series.generate(
                watts.size(),
                s -> replay.isPedalled(s) ? watts.get(s) * (s < openingSeconds ? opening : rest) : watts.get(s));
    }

    private static double workJ(Replay.Result result, Series watts) {
        double joules = 0;
        for (int second = 0; second < watts.size(); second++) {
            joules += watts.isMeasured(second) ? watts.get(second) * result.secondsFor(second) : 0;
        }
        return joules;
    }
}
