package io.github.wattledger.intake;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Ride;
import java.io.Serializable;

/**
 * What a file says about where a ride was ridden, and what else the file holds.
 *
 * @param isIndoorSport whether the file names a kind of cycling that is ridden indoors
 * @param hasPositions whether the whole recording has positions, also where the ride at hand no longer carries them
 * @param sports how many different sports the sessions of the file name, 1 for a file with nothing but this ride; the way
 *     between two sports (FIT sport "transition") is no sport
 */
public record RideSetting(boolean isIndoorSport, boolean hasPositions, int sports) implements Serializable {
    /** @throws IllegalArgumentException when there is no sport */
    public RideSetting {
        if (sports < 1) {
            throw new IllegalArgumentException("sports " + sports + ", expected 1 or more");
        }
    }

    /** What a ride itself shows, where nothing else is known. */
    static RideSetting of(Ride ride) {
        return new RideSetting(false, ride.has(Channel.LATITUDE) && ride.has(Channel.LONGITUDE), 1);
    }

    /** What a recording says of its ride. */
    static RideSetting of(Recording recording, Ride ride) {
        return new RideSetting(recording.isIndoorSport(), of(ride).hasPositions, 1);
    }

    /** The same setting in a file with so many sports. */
    RideSetting withSports(int count) {
        return new RideSetting(isIndoorSport, hasPositions, Math.max(1, count));
    }
}
