package io.github.wattledger.simulation.trial;

import io.github.wattledger.simulation.HeartResponse;
import io.github.wattledger.simulation.RideTape;
import io.github.wattledger.simulation.RoadSimulation;
import io.github.wattledger.simulation.Scenario;
import io.github.wattledger.simulation.SensorNoise;
import io.github.wattledger.simulation.SimulatedRider;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;

/**
 * A race of a sensible rider with mistakes put in.
 *
 * @param seed what it was drawn from
 * @param rider the rider, whose heart drifts as hearts do on good days
 * @param course the course
 * @param sensible the power of the race without a mistake
 * @param feedStops short halts that are nobody's mistake
 * @param mistakes what was put in, none for a clean race
 * @param thresholdGiven whether the rider's threshold is known to the review
 * @param cleanNormalizedPowerW normalized power of the race ridden without a mistake, watts
 * @param ridden the race as ridden
 * @param tape the race as recorded
 */
record TrialRace(
        long seed,
        SimulatedRider rider,
        TrialCourse course,
        SensiblePower sensible,
        List<Scenario.Stop> feedStops,
        List<Mistake> mistakes,
        boolean thresholdGiven,
        double cleanNormalizedPowerW,
        RiddenRace ridden,
        RideTape tape) {
    /** Copies the lists. */
    TrialRace {
        feedStops = List.copyOf(feedStops);
        mistakes = List.copyOf(mistakes);
    }

    /** Draws the race of a seed and rides it: the same race for the same seed. */
    static TrialRace of(long seed) {
        return new RaceDraw(seed).race();
    }

    /** Rides and records a race. */
    static TrialRace ridden(
            long seed,
            SimulatedRider rider,
            TrialCourse course,
            SensiblePower sensible,
            List<Scenario.Stop> feedStops,
            List<Mistake> mistakes,
            boolean thresholdGiven,
            double cleanNormalizedPowerW,
            SensorNoise sensors) {
        SensiblePower plan = sensible.with(mistakes);
        List<Scenario.Stop> stops = stops(feedStops, mistakes);
        RiddenRace ridden = ride(course, drifting(rider, mistakes), plan, stops);
        for (Mistake mistake : mistakes) {
            if (mistake instanceof Mistake.Crash crash) {
                // Only now is it known when the rider gets there; a heart changes nothing about the road.
                double after = racingSecondsAt(ridden, crash.fromM());
                HeartResponse heart = drifting(rider, mistakes).heart().withCrash(after, crash.heartFraction());
                ridden = ride(course, rider.withHeart(heart), plan, stops);
            }
        }
        RideTape tape = sensors.record(ridden.ride());
        return new TrialRace(
                seed,
                rider,
                course,
                sensible,
                feedStops,
                mistakes,
                thresholdGiven,
                cleanNormalizedPowerW,
                ridden,
                tape);
    }

    /** Rides a course. */
    static RiddenRace ride(TrialCourse course, SimulatedRider rider, SensiblePower plan, List<Scenario.Stop> stops) {
        return new RiddenRace(RoadSimulation.ride(scenario(course, rider, plan, stops)));
    }

    private static Scenario scenario(
            TrialCourse course, SimulatedRider rider, SensiblePower plan, List<Scenario.Stop> stops) {
        return Scenario.of(course.course(), rider, plan)
                .withWeather(course.weather())
                .withSurroundings(course.surroundings())
                .withHalts(Scenario.LeadIn.NONE, stops.toArray(new Scenario.Stop[0]));
    }

    private static SimulatedRider drifting(SimulatedRider rider, List<Mistake> mistakes) {
        SimulatedRider drifting = rider;
        for (Mistake mistake : mistakes) {
            if (mistake instanceof Mistake.HeartDrift drift) {
                drifting = drifting.withHeart(drifting.heart().withDrift(drift.perHour(), 0, 0));
            }
        }
        return drifting;
    }

    private static List<Scenario.Stop> stops(List<Scenario.Stop> feedStops, List<Mistake> mistakes) {
        List<Scenario.Stop> stops = new ArrayList<>(feedStops);
        for (Mistake mistake : mistakes) {
            if (mistake instanceof Mistake.Standing standing) {
                stops.addAll(standing.stops());
            }
        }
        stops.sort(Comparator.comparingDouble(Scenario.Stop::distanceM));
        return stops;
    }

    private static double racingSecondsAt(RiddenRace race, double distanceM) {
        int racing = 0;
        for (int second = race.secondAt(distanceM); second > 0; second--) {
            racing += race.speedMps(second - 1) > 0 ? 1 : 0;
        }
        return racing;
    }

    /** The same race ridden by a rider with only some of its mistakes and every power multiplied. */
    RiddenRace riddenWith(SimulatedRider by, Predicate<Mistake> kept, double share) {
        List<Mistake> left = mistakes.stream().filter(kept).toList();
        return ride(course, by, sensible.with(left).times(share), stops(feedStops, left));
    }

    /** All halts of the race as ridden. */
    List<Scenario.Stop> stops() {
        return stops(feedStops, mistakes);
    }

    /** The power of the race as ridden. */
    SensiblePower plan() {
        return sensible.with(mistakes);
    }

    /** The power that is expected of the rider for the moving time: threshold times hours to the power of -0.16, watts. */
    double targetW() {
        return targetW(rider.thresholdPowerW(), ridden.movingSeconds());
    }

    static double targetW(double thresholdW, double movingSeconds) {
        return thresholdW * Math.pow(movingSeconds / 3600, -0.16);
    }
}
