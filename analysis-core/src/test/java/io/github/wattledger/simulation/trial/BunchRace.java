package io.github.wattledger.simulation.trial;

import io.github.wattledger.simulation.Course;
import io.github.wattledger.simulation.RoadSimulation;
import io.github.wattledger.simulation.Scenario;
import io.github.wattledger.simulation.SensorNoise;
import io.github.wattledger.simulation.SimulatedRider;
import io.github.wattledger.simulation.SpeedLimits;
import io.github.wattledger.simulation.Surroundings;
import io.github.wattledger.simulation.Weather;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.jspecify.annotations.Nullable;

/**
 * A race in which a rider holds a bunch above what can be held, and the same race with the bunch let go: both ridden by the
 * simulator, whose shelter is known. Freewheeling is a matter of the place, so that both freewheel alike.
 */
final class BunchRace {
    private static final double FREEWHEEL_BELOW_GRADE = -0.03;
    private static final double SHARE_TOLERANCE = 1e-4;
    private static final double LEAST_LATER = 0.5;
    /** Longer than any race takes, seconds. */
    private static final double FAR_TOO_LONG = 100_000;

    private final Course course;
    private final Weather weather;
    private final double hardM;
    private final double shelteredM;
    private final double hardOverTarget;
    private final double fadedTo;
    private final double targetW;
    private final double gain;
    private final double[] unevenness;

    /** Draws a race of 75 to 100 km: an opening of 15 to 35 km at 1.15 to 1.5 times the target, then a fade to 0.9. */
    BunchRace(Draw draw, CourseFamily family) {
        double lengthM = draw.between(75_000, 100_000);
        double firstDegrees = draw.between(0, 360);
        int layout = (int) draw.between(0, 3);
        DoubleUnaryOperator headings = metres -> switch (layout) {
            case 0 -> (firstDegrees + 360 * metres / lengthM) % 360;
            case 1 -> firstDegrees;
            default -> (firstDegrees + (metres < lengthM / 2 ? 0 : 180)) % 360;
        };
        this.course = new Terrain(draw, family, lengthM).course(headings);
        double density = 1.225 * Math.exp(-course.altitudeAt(course.lengthM() / 2) / 8400);
        double windMps = new double[] {0, 2, 3.5}[(int) draw.between(0, 3)];
        this.weather = new Weather(density, windMps, draw.between(0, 360), 15, 15);
        this.hardM = draw.between(15_000, 35_000);
        this.shelteredM = hardM + (draw.with(0.4) ? draw.between(3_000, 15_000) : 0);
        this.hardOverTarget = draw.between(1.15, 1.5);
        this.fadedTo = draw.between(0.9, 1);
        this.targetW = draw.between(170, 230);
        this.gain = draw.between(1, 3);
        this.unevenness = new double[(int) Math.ceil(course.lengthM() / Course.CELL_M) + 1];
        double quick = draw.between(0.03, 0.08);
        double before = 0;
        for (int cell = 0; cell < unevenness.length; cell++) {
            before = 0.6 * before + 0.8 * quick * draw.gaussian();
            unevenness[cell] = Math.max(0.7, Math.min(1.3, 1 + before));
        }
    }

    double targetW() {
        return targetW;
    }

    double hardM() {
        return hardM;
    }

    double shelteredM() {
        return shelteredM;
    }

    SimulatedRider rider() {
        return SimulatedRider.tireless();
    }

    /** The mean rolling resistance of the course, by distance. */
    double meanRolling() {
        double sum = 0;
        int cells = (int) (course.lengthM() / Course.CELL_M);
        for (int cell = 0; cell < cells; cell++) {
            sum += course.rollingResistanceAt((cell + 0.5) * Course.CELL_M);
        }
        return sum / cells;
    }

    /** The race with the bunch held. */
    RiddenRace held(double saving) {
        return ride(1 - saving, hardOverTarget, 1);
    }

    /** Normalized power of the hard stretch of a ridden race, watts. */
    double hardPowerW(RiddenRace ridden) {
        return ridden.normalizedPowerW(0, ridden.secondAt(hardM));
    }

    /**
     * The race with the hard stretch eased to the target, and every pedalled place after it harder by the share that makes a
     * quantity what it was.
     *
     * @param held the race that it is held against
     * @param dragShare the share of the lone drag where the bunch was
     * @return null where that would leave less than half of the later power
     */
    @Nullable RiddenRace eased(RiddenRace held, double dragShare, ToDoubleFunction<RiddenRace> quantity) {
        double easedOverTarget = hardOverTarget * targetW / hardPowerW(held);
        double aim = quantity.applyAsDouble(held);
        UnivariateFunction over = later -> quantity.applyAsDouble(ride(dragShare, easedOverTarget, later)) / aim - 1;
        if (over.value(LEAST_LATER) > 0) {
            return null;
        }
        return ride(dragShare, easedOverTarget, new BrentSolver(SHARE_TOLERANCE).solve(40, over, LEAST_LATER, 2.5));
    }

    private RiddenRace ride(double dragShare, double openingOverTarget, double laterShare) {
        Scenario scenario = Scenario.of(course, rider(), moment -> {
                    double done = Math.max(0, (moment.distanceM() - hardM) / (course.lengthM() - hardM));
                    boolean isHard = moment.distanceM() < hardM;
                    double overTarget = isHard ? openingOverTarget : laterShare * (1 + (fadedTo - 1) * done);
                    int cell = (int) (moment.distanceM() / Course.CELL_M);
                    double ground = Math.max(0.8, Math.min(1.2, 1 + gain * moment.grade()));
                    return moment.grade() < FREEWHEEL_BELOW_GRADE
                            ? 0
                            : targetW * overTarget * ground * unevenness[Math.min(cell, unevenness.length - 1)];
                })
                .withWeather(weather)
                .withSurroundings(
                        new Surroundings(SpeedLimits.NONE, distanceM -> distanceM < shelteredM ? dragShare : 1));
        return new RiddenRace(RoadSimulation.ride(scenario));
    }

    /**
     * The saving at which holding the bunch and letting it go take equally long.
     *
     * @return {@code NaN} where letting it go is not faster without any shelter, or faster at 0.6
     */
    double tunedSaving(ToDoubleFunction<RiddenRace> quantity) {
        if (lostByHolding(0, quantity) <= 0 || lostByHolding(0.6, quantity) >= 0) {
            return Double.NaN;
        }
        return new BrentSolver(0.001).solve(30, saving -> lostByHolding(saving, quantity), 0, 0.6);
    }

    private double lostByHolding(double saving, ToDoubleFunction<RiddenRace> quantity) {
        RiddenRace held = held(saving);
        RiddenRace letGo = eased(held, 1, quantity);
        return held.finishSeconds() - (letGo == null ? FAR_TOO_LONG : letGo.finishSeconds());
    }

    /** The recording of a ridden race, by ordinary sensors with a power meter that trembles. */
    static SensorNoise sensors(long seed) {
        return SensorNoise.ordinary(seed).withPowerJitter(0.03);
    }
}
