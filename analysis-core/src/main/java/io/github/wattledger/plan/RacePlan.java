package io.github.wattledger.plan;

import io.github.wattledger.course.Route;
import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A plan for a race: how hard to ride on which ground, how to begin, when to be where, and what can make it wrong. Caps are
 * robust: a wrong wind or drag area costs tenths of a percent through them. The clock is not: it comes as a range.
 *
 * <p>It is for riding alone; in a group the caps hold and the time does not. No trial of such plans over 5 to 15 hours is
 * known.
 *
 * @param courseName what the course is called, or null
 * @param lengthM length, metres
 * @param ascentM ascent of the smoothed course, metres; 0 where the file has no altitude
 * @param hasAltitude whether the file has altitudes; without them the course was taken as level
 * @param rider what was known of the rider
 * @param options what the rider decided
 * @param target how hard the whole is planned
 * @param moving time under way with its range
 * @param stoppedSeconds time standing, seconds
 * @param caps a cap for each kind of ground that the course has, from the steepest descent to the steepest climb
 * @param opening how to begin
 * @param climbs a cap for each climb
 * @param sections from point to point, to look at the clock
 * @param influences what can make the time wrong, the widest first
 * @param gainMinutes what the plan gains on one constant power of the same effort, minutes
 * @param lowGainMinutes the least that is plausible, minutes
 * @param highGainMinutes the most that is plausible, minutes
 * @param altitude what the height of the course leaves of the power, or null where it is not high
 * @param fuel carbohydrate that the plan uses; null for a rider who may be under 18
 * @param mistakes what the usual mistakes would cost
 */
public record RacePlan(
        @Nullable String courseName,
        double lengthM,
        double ascentM,
        boolean hasAltitude,
        PlanRider rider,
        PlanOptions options,
        PlanTarget target,
        TimeRange moving,
        double stoppedSeconds,
        List<GroundCap> caps,
        OpeningCap opening,
        List<ClimbCap> climbs,
        List<Section> sections,
        List<PlanInfluence> influences,
        double gainMinutes,
        double lowGainMinutes,
        double highGainMinutes,
        @Nullable PlanAltitude altitude,
        @Nullable PlanFuel fuel,
        List<PricedMistake> mistakes)
        implements Serializable {
    /** Copies the lists. */
    public RacePlan {
        caps = List.copyOf(caps);
        climbs = List.copyOf(climbs);
        sections = List.copyOf(sections);
        influences = List.copyOf(influences);
        mistakes = List.copyOf(mistakes);
    }

    /**
     * Plans a race.
     *
     * @param route the course
     * @param rider what is known of the rider
     * @param options what the rider decides or expects of the day
     * @throws IllegalArgumentException when a surface of its own begins after the end of the course
     */
    public static RacePlan of(Route route, PlanRider rider, PlanOptions options) {
        for (SurfaceStretch stretch : options.surfaces()) {
            if (!stretch.beginsOn(route)) {
                throw new IllegalArgumentException("a surface from " + stretch.fromM() + " m on, but the course is "
                        + route.lengthM() + " m long; give a place on it");
            }
        }
        PlanCalculation plan = new PlanCalculation(route, rider, options);
        Mistakes mistakes = plan.mistakes();
        double[] gains = mistakes.gainMinutes();
        return new RacePlan(
                route.name(),
                route.lengthM(),
                route.ascentM(),
                route.hasAltitude(),
                rider,
                options,
                plan.target(),
                plan.moving(),
                plan.stoppedSeconds(),
                plan.caps(),
                plan.opening(),
                plan.climbs(),
                plan.sections(),
                plan.influences(),
                gains[0],
                Arrays.stream(gains).min().orElseThrow(),
                Arrays.stream(gains).max().orElseThrow(),
                plan.altitude(),
                plan.fuel(),
                mistakes.priced(rider.thresholdPowerW()));
    }

    /** Time from start to finish, stops included, with its range. */
    public TimeRange total() {
        return moving.plus(stoppedSeconds);
    }
}
