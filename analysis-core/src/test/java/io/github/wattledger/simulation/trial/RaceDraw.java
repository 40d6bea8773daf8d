package io.github.wattledger.simulation.trial;

import io.github.wattledger.simulation.Fatigue;
import io.github.wattledger.simulation.HeartResponse;
import io.github.wattledger.simulation.Scenario;
import io.github.wattledger.simulation.SensorNoise;
import io.github.wattledger.simulation.SimulatedRider;
import java.util.ArrayList;
import java.util.List;

/** Draws a rider, a course and a sensible race from a seed. */
final class RaceDraw {
    private static final double THRESHOLD_KNOWN = 0.92;
    /** From this share of threshold on a race is long enough for riding near threshold early to be a mistake. */
    private static final double LONG_RACE_TARGET = 0.87;

    private static final int MOST_TRIES = 5;

    private final long seed;
    private final Draw draw;

    RaceDraw(long seed) {
        this.seed = seed;
        draw = Draw.of(seed);
    }

    TrialRace race() {
        CourseFamily family = draw.oneOf(List.of(CourseFamily.values()));
        double hours = draw.betweenByRatio(1.5, family == CourseFamily.GROUP ? 6 : 12);
        SimulatedRider body = rider();
        double level = draw.between(0.97, 1.03) * Math.pow(hours, draw.between(-0.02, 0.02));
        double wantedW = level * TrialRace.targetW(body.thresholdPowerW(), hours * 3600);
        double lengthM = levelSpeedMps(body, wantedW) * family.speedShare() * hours * 3600;
        TrialCourse course = TrialCourse.draw(draw, family, lengthM);
        SensiblePower.Riding riding = riding(body, hours);
        List<Scenario.Stop> feedStops = feedStops(hours, course.course().lengthM());
        SensiblePower sensible = SensiblePower.of(riding, wantedW, course.unevenness());
        RiddenRace clean = TrialRace.ride(course, body, sensible, feedStops);
        for (int tries = 1; tries < MOST_TRIES; tries++) {
            double wantedForItsTimeW = level * TrialRace.targetW(body.thresholdPowerW(), clean.movingSeconds());
            double ratio = wantedForItsTimeW / clean.normalizedPowerW();
            if (Math.abs(ratio - 1) < 0.005) {
                break;
            }
            sensible = sensible.withBaseW(sensible.baseW() * Math.min(1.3, Math.max(0.7, ratio)));
            clean = TrialRace.ride(course, body, sensible, feedStops);
        }
        SimulatedRider rider = body.withHeart(body.heart()
                .withDrift(
                        draw.between(0, 0.4) * TrialTruth.DRIFT / TrialTruth.driftHours(clean.movingSeconds()), 0, 0));
        List<Mistake> mistakes = new MistakeDraw(draw, rider, clean, riding.mostW()).mistakes();
        return TrialRace.ridden(
                seed,
                rider,
                course,
                sensible,
                feedStops,
                mistakes,
                draw.with(THRESHOLD_KNOWN),
                clean.normalizedPowerW(),
                sensors());
    }

    private SensorNoise sensors() {
        return SensorNoise.ordinary(seed)
                .withPowerJitter(draw.between(0.02, 0.06))
                .withHeartWander(draw.between(0.3, 1.2));
    }

    private SimulatedRider rider() {
        double massKg = draw.between(54, 92);
        double thresholdW = massKg * draw.between(2.6, 4.6);
        double thresholdBpm = draw.between(156, 178);
        HeartResponse heart = HeartResponse.steady(thresholdBpm, thresholdW, thresholdBpm + draw.between(10, 22));
        return new SimulatedRider(
                massKg,
                draw.between(8, 13),
                draw.between(0.27, 0.42),
                Math.round(thresholdW),
                Math.round(thresholdBpm),
                heart,
                Fatigue.NONE);
    }

    /** In a long race a sensible rider stays below the threshold on climbs; in a short one rides somewhat above it. */
    private SensiblePower.Riding riding(SimulatedRider rider, double hours) {
        double thresholdW = rider.thresholdPowerW();
        boolean isLong = TrialRace.targetW(1, hours * 3600) < LONG_RACE_TARGET;
        return new SensiblePower.Riding(
                draw.between(1, 3.5),
                draw.between(2, 6),
                (isLong ? 0.94 : draw.between(1.04, 1.15)) * thresholdW,
                draw.between(11, 14));
    }

    private List<Scenario.Stop> feedStops(double hours, double lengthM) {
        List<Scenario.Stop> stops = new ArrayList<>();
        int count = (int) draw.between(0, hours / 2);
        for (int i = 0; i < count; i++) {
            double atM = lengthM * (i + draw.between(0.6, 1.2)) / (count + 1);
            stops.add(new Scenario.Stop(atM, (int) draw.between(8, 28), false));
        }
        return stops;
    }

    /** The speed of a power on a level road without wind: air and rolling resistance alone. */
    private static double levelSpeedMps(SimulatedRider rider, double watts) {
        double slow = 1;
        double fast = 25;
        while (fast - slow > 0.01) {
            double mps = (slow + fast) / 2;
            double needed = mps * (0.6 * rider.dragAreaM2() * mps * mps + 0.0055 * rider.totalMassKg() * 9.81);
            if (needed < watts) {
                slow = mps;
            } else {
                fast = mps;
            }
        }
        return slow;
    }
}
