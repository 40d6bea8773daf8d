package io.github.wattledger;

import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Rider;
import java.nio.file.Path;

/** The front door: a file or a ride goes in, a review comes out. */
public final class Reviewer {
    private Reviewer() {}

    /**
     * Reviews a recorded file.
     *
     * @throws UnreadableRideException when nothing could be read, with one line for people that begins with the file
     * @throws IllegalArgumentException when the options do not fit the ride, with one line for people
     */
    public static RideReview review(Path file, Rider rider, ReviewOptions options) throws UnreadableRideException {
        if (rider.massKg() == null) {
            throw new UnreadableRideException(file + " " + options);
        }
        return review(Ride.ofWatts(), rider, options);
    }

    /** Reviews a ride that is already in memory. */
    public static RideReview review(Ride ride, Rider rider, ReviewOptions options) {
        return java.util.Objects.requireNonNull(null, ride + " " + rider + options);
    }
}
