package io.github.wattledger.simulation;

import java.time.Instant;
import java.util.List;

/**
 * Everything that decides a simulated ride.
 *
 * @param course the road
 * @param rider who rides
 * @param weather the air
 * @param plan the power meant
 * @param style how far pedalling strays from it
 * @param leadIn what comes before the race
 * @param stops halts on the way, by rising distance
 * @param surroundings what slows or shelters the rider beside road and wind
 * @param start when the recorder is started
 * @param utcOffsetSeconds local time minus UTC
 * @param seed seed of all chance in the ride
 */
public record Scenario(
        Course course,
        SimulatedRider rider,
        Weather weather,
        PacingPlan plan,
        RidingStyle style,
        LeadIn leadIn,
        List<Stop> stops,
        Surroundings surroundings,
        Instant start,
        int utcOffsetSeconds,
        long seed) {
    private static final Instant DEFAULT_START = Instant.parse("2026-06-13T13:48:00Z");
    private static final int SEVEN_HOURS_WEST = -7 * 3600;

    /** Copies the stops. */
    public Scenario {
        stops = List.copyOf(stops);
    }

    /**
     * The way to the line and the wait there, recorded with the timer running.
     *
     * @param powerW power on the way
     * @param gunSecond second of the recording at which the race is started; 0 when there is no lead-in
     */
    public record LeadIn(double powerW, int gunSecond) {
        /** The recording starts with the race. */
        public static final LeadIn NONE = new LeadIn(0, 0);
    }

    /**
     * A halt.
     *
     * @param distanceM where, from the start line
     * @param seconds how long the rider stands
     * @param autoPause whether the recorder stops its timer meanwhile
     */
    public record Stop(double distanceM, int seconds, boolean autoPause) {}

    /** A calm, plain ride without stops or chance. */
    public static Scenario of(Course course, SimulatedRider rider, PacingPlan plan) {
        return new Scenario(
                course,
                rider,
                Weather.CALM,
                plan,
                RidingStyle.METRONOME,
                LeadIn.NONE,
                List.of(),
                Surroundings.NONE,
                DEFAULT_START,
                SEVEN_HOURS_WEST,
                1);
    }

    /** The same in other weather. */
    public Scenario withWeather(Weather other) {
        return new Scenario(
                course, rider, other, plan, style, leadIn, stops, surroundings, start, utcOffsetSeconds, seed);
    }

    /** The same ridden to another plan. */
    public Scenario withPlan(PacingPlan other) {
        return new Scenario(
                course, rider, weather, other, style, leadIn, stops, surroundings, start, utcOffsetSeconds, seed);
    }

    /** The same with the chance of real riding. */
    public Scenario withStyle(RidingStyle other, long otherSeed) {
        return new Scenario(
                course, rider, weather, plan, other, leadIn, stops, surroundings, start, utcOffsetSeconds, otherSeed);
    }

    /** The same with a lead-in and halts. */
    public Scenario withHalts(LeadIn otherLeadIn, Stop... otherStops) {
        return new Scenario(
                course,
                rider,
                weather,
                plan,
                style,
                otherLeadIn,
                List.of(otherStops),
                surroundings,
                start,
                utcOffsetSeconds,
                seed);
    }

    /** The same on another day. */
    public Scenario startingAt(Instant otherStart) {
        return new Scenario(
                course, rider, weather, plan, style, leadIn, stops, surroundings, otherStart, utcOffsetSeconds, seed);
    }

    /** The same ridden by another rider. */
    public Scenario withRider(SimulatedRider other) {
        return new Scenario(
                course, other, weather, plan, style, leadIn, stops, surroundings, start, utcOffsetSeconds, seed);
    }

    /** The same among other surroundings. */
    public Scenario withSurroundings(Surroundings other) {
        return new Scenario(course, rider, weather, plan, style, leadIn, stops, other, start, utcOffsetSeconds, seed);
    }
}
