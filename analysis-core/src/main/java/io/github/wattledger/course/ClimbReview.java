package io.github.wattledger.course;

import io.github.wattledger.load.StretchNormalizedPower;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * A climb of a ride as a report shows it.
 *
 * @param when its seconds, counted from the first second of the whole recording
 * @param climb the climb; its own seconds are counted from the first second of the reviewed part
 * @param normalizedPowerW normalized power on it, watts, or null without power or under 30 s of it
 * @param wattsPerKg mean power over the rider's mass, or null where one of them is not known
 * @param sameAs position in the list, from 0, of the first time the same climb was ridden; null for the first time
 * @param secondsOverFirst moving seconds more than the first time, negative when it was faster; null for the first time
 */
public record ClimbReview(
        Interval when,
        Climb climb,
        @Nullable Double normalizedPowerW,
        @Nullable Double wattsPerKg,
        @Nullable Integer sameAs,
        @Nullable Integer secondsOverFirst)
        implements Serializable {
    /**
     * The climbs of a reviewed part, in the order in which they were ridden; null without altitude or distance.
     *
     * @param course the course of the part, or null where it leads nowhere
     * @param offsetSeconds first second of the part within the whole recording
     * @param massKg mass of the rider, or null
     */
    public static @Nullable List<ClimbReview> of(
            Ride part, @Nullable Course course, int offsetSeconds, @Nullable Double massKg) {
        if (!part.has(Channel.ALTITUDE) || !part.has(Channel.DISTANCE)) {
            return null;
        }
        List<Climb> climbs = Climb.of(part, course);
        if (climbs.isEmpty()) {
            return List.of();
        }
        StretchNormalizedPower normalizedPower = StretchNormalizedPower.of(part);
        List<ClimbReview> reviews = new ArrayList<>();
        for (int number = 0; number < climbs.size(); number++) {
            Climb climb = climbs.get(number);
            Integer first = firstTime(climbs, number);
            OptionalDouble normalized = normalizedPower.of(climb.when());
            Double watts = climb.averagePowerW();
            reviews.add(new ClimbReview(
                    climb.when().shifted(offsetSeconds),
                    climb,
                    normalized.isPresent() ? normalized.getAsDouble() : null,
                    watts == null || massKg == null ? null : watts / massKg,
                    first,
                    first == null
                            ? null
                            : climb.movingSeconds() - climbs.get(first).movingSeconds()));
        }
        return List.copyOf(reviews);
    }

    private static @Nullable Integer firstTime(List<Climb> climbs, int number) {
        for (int earlier = 0; earlier < number; earlier++) {
            if (climbs.get(number).isSameRoadAs(climbs.get(earlier))) {
                return earlier;
            }
        }
        return null;
    }
}
