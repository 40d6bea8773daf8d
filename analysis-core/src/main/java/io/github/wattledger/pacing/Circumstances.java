package io.github.wattledger.pacing;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Everything that decides what a ride was, see {@link OccasionRules#decide}.
 *
 * @param ride the reviewed ride with the laps as they were marked: a work lap is recognised by the laps around it, which may lie
 *     outside the judged part
 * @param judged the part of it to be judged, as {@link RacedPart#interval} gives it; all but the laps is measured there
 * @param isIndoorBySport whether the file names a sport that is ridden indoors: in the FIT profile one of the sub-sports
 *     indoor cycling, spinning and virtual activity
 * @param hasPositions whether the recording has positions, also where the ride at hand no longer carries them
 * @param sports how many different sports the sessions of the file name, 1 for a file with nothing but this ride; the way
 *     between two sports (FIT sport "transition") is no sport
 * @param thresholdIsKnown whether the rider's threshold power is known, see {@link KnownThreshold}
 * @param guideW the power that could be held for the riding time of the judged part, watts, above 0, or null when nothing
 *     gives it
 * @param effort what was asked for
 * @param isRaceDay whether the rider named the day of this ride as one of a race
 */
public record Circumstances(
        Ride ride,
        Interval judged,
        boolean isIndoorBySport,
        boolean hasPositions,
        int sports,
        boolean thresholdIsKnown,
        @Nullable Double guideW,
        Effort effort,
        boolean isRaceDay) {
    /**
     * @throws IndexOutOfBoundsException when the judged part does not lie within the ride
     * @throws IllegalArgumentException when there is no sport, or the guide is not above 0
     */
    public Circumstances {
        Objects.checkFromToIndex(judged.fromSecond(), judged.toSecond(), ride.seconds());
        Objects.requireNonNull(effort, "effort");
        if (sports < 1) {
            throw new IllegalArgumentException("sports " + sports + ", expected 1 or more");
        }
        if (guideW != null && !(guideW > 0)) {
            throw new IllegalArgumentException("guideW " + guideW + ", expected above 0");
        }
    }
}
