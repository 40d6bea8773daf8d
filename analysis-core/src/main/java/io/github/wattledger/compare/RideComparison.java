package io.github.wattledger.compare;

import io.github.wattledger.intake.RideSource;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.io.Serializable;
import java.util.List;

/**
 * Rides over one course, each held against the first.
 *
 * @param reference the first ride
 * @param others the other rides, at least one, in the order in which they were given
 */
public record RideComparison(Compared reference, List<Against> others) implements Serializable {
    /**
     * A ride that is compared.
     *
     * @param source where it comes from
     * @param ride the cleaned recording
     */
    public record Compared(RideSource source, Ride ride) implements Serializable {}

    /**
     * A ride against the first.
     *
     * @param compared the ride
     * @param comparison point by point
     */
    public record Against(Compared compared, CourseComparison comparison) implements Serializable {
        /** A channel of this ride along the course: mean under way over 500 m before and after each point. */
        public Series along(Channel channel) {
            return CourseComparison.along(compared.ride(), channel, comparison.otherSecond());
        }
    }

    /** Copies the list; there has to be another ride. */
    public RideComparison {
        others = List.copyOf(others);
        if (others.isEmpty()) {
            throw new IllegalArgumentException("no other ride, expected at least one");
        }
    }

    /** The course, which is the same in all comparisons. */
    public CourseComparison course() {
        return others.get(0).comparison();
    }

    /** A channel of the first ride along the course: mean under way over 500 m before and after each point. */
    public Series along(Channel channel) {
        return CourseComparison.along(reference.ride(), channel, course().referenceSecond());
    }
}
