package io.github.wattledger.plan;

import io.github.wattledger.rider.Bounds;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the rider decides or expects of the day.
 *
 * @param targetW the normalized power to plan for, watts, or null for what the rider can hold
 * @param goalSeconds the time to plan for, stops included, seconds, or null
 * @param stoppedSeconds how long the rider will stand, or null for the usual time, or none where that is not known
 * @param windMps expected wind at the height of the rider, m/s, or null where none is known
 * @param windFromDegrees where it comes from, degrees clockwise from north; null with no wind
 * @param temperatureC expected temperature, degrees Celsius, or null
 * @param organiserAscentM the ascent by the organiser, metres, or null
 * @param fastestDescentMps the highest speed that is ridden, m/s
 * @param surfaces stretches with another rolling resistance than the rider's
 */
public record PlanOptions(
        @Nullable Double targetW,
        @Nullable Integer goalSeconds,
        @Nullable Integer stoppedSeconds,
        @Nullable Double windMps,
        @Nullable Double windFromDegrees,
        @Nullable Double temperatureC,
        @Nullable Double organiserAscentM,
        double fastestDescentMps,
        List<SurfaceStretch> surfaces)
        implements Serializable {
    /** Watts that can be planned for. */
    public static final Bounds TARGET_W = new Bounds(30, 600);

    /** Seconds that can be planned for. */
    public static final Bounds GOAL_SECONDS = new Bounds(1200, 400_000);

    /** Seconds that a rider can plan to stand. */
    public static final Bounds STOPPED_SECONDS = new Bounds(0, 200_000);

    /** Metres a second of wind that can be planned for. */
    public static final Bounds WIND_MPS = new Bounds(0, 20);

    /** Degrees that a wind can come from. */
    public static final Bounds WIND_FROM_DEGREES = new Bounds(0, 360);

    /** Metres of ascent that an organiser can name. */
    public static final Bounds ORGANISER_ASCENT_M = new Bounds(0, 30_000);

    /** Metres a second that can be the highest speed. */
    public static final Bounds FASTEST_MPS = new Bounds(5, 30);

    /** 54 km/h, what riders of this project's samples reach on open descents. Own choice. */
    public static final double USUAL_FASTEST_MPS = 15;

    /** What the rider can hold, in still air, without stops. */
    public static final PlanOptions DEFAULT =
            new PlanOptions(null, null, null, null, null, null, null, USUAL_FASTEST_MPS, List.of());

    /** @throws IllegalArgumentException when a number is out of range, or target and goal are both given */
    public PlanOptions {
        if (targetW != null && goalSeconds != null) {
            throw new IllegalArgumentException("a target and a goal time are given; a plan keeps one of them");
        }
        require("targetW", targetW, TARGET_W);
        require("goalSeconds", goalSeconds, GOAL_SECONDS);
        require("stoppedSeconds", stoppedSeconds, STOPPED_SECONDS);
        require("windMps", windMps, WIND_MPS);
        require("windFromDegrees", windFromDegrees, WIND_FROM_DEGREES);
        require("temperatureC", temperatureC, Bounds.TEMPERATURE_C);
        require("organiserAscentM", organiserAscentM, ORGANISER_ASCENT_M);
        require("fastestDescentMps", fastestDescentMps, FASTEST_MPS);
        if ((windMps == null) != (windFromDegrees == null)) {
            throw new IllegalArgumentException("a wind needs both its speed and where it comes from");
        }
        surfaces = List.copyOf(surfaces);
    }

    private static void require(String name, @Nullable Number value, Bounds bounds) {
        if (value != null) {
            bounds.require(name, value.doubleValue());
        }
    }

    /** These options with a target, watts, or null. */
    public PlanOptions withTargetW(@Nullable Double watts) {
        return new PlanOptions(
                watts,
                goalSeconds,
                stoppedSeconds,
                windMps,
                windFromDegrees,
                temperatureC,
                organiserAscentM,
                fastestDescentMps,
                surfaces);
    }

    /** These options with a goal time, stops included, or null. */
    public PlanOptions withGoalSeconds(@Nullable Integer seconds) {
        return new PlanOptions(
                targetW,
                seconds,
                stoppedSeconds,
                windMps,
                windFromDegrees,
                temperatureC,
                organiserAscentM,
                fastestDescentMps,
                surfaces);
    }

    /** These options with a time to stand, or null. */
    public PlanOptions withStoppedSeconds(@Nullable Integer seconds) {
        return new PlanOptions(
                targetW,
                goalSeconds,
                seconds,
                windMps,
                windFromDegrees,
                temperatureC,
                organiserAscentM,
                fastestDescentMps,
                surfaces);
    }

    /** These options with a wind: m/s, and degrees where it comes from. */
    public PlanOptions withWind(@Nullable Double mps, @Nullable Double fromDegrees) {
        return new PlanOptions(
                targetW,
                goalSeconds,
                stoppedSeconds,
                mps,
                fromDegrees,
                temperatureC,
                organiserAscentM,
                fastestDescentMps,
                surfaces);
    }

    /** These options with a temperature, degrees Celsius, or null. */
    public PlanOptions withTemperatureC(@Nullable Double celsius) {
        return new PlanOptions(
                targetW,
                goalSeconds,
                stoppedSeconds,
                windMps,
                windFromDegrees,
                celsius,
                organiserAscentM,
                fastestDescentMps,
                surfaces);
    }

    /** These options with the organiser's ascent, metres, or null. */
    public PlanOptions withOrganiserAscentM(@Nullable Double metres) {
        return new PlanOptions(
                targetW,
                goalSeconds,
                stoppedSeconds,
                windMps,
                windFromDegrees,
                temperatureC,
                metres,
                fastestDescentMps,
                surfaces);
    }

    /** These options with another highest speed, m/s. */
    public PlanOptions withFastestDescentMps(double mps) {
        return new PlanOptions(
                targetW,
                goalSeconds,
                stoppedSeconds,
                windMps,
                windFromDegrees,
                temperatureC,
                organiserAscentM,
                mps,
                surfaces);
    }

    /** These options with other surfaces. */
    public PlanOptions withSurfaces(List<SurfaceStretch> stretches) {
        return new PlanOptions(
                targetW,
                goalSeconds,
                stoppedSeconds,
                windMps,
                windFromDegrees,
                temperatureC,
                organiserAscentM,
                fastestDescentMps,
                stretches);
    }
}
