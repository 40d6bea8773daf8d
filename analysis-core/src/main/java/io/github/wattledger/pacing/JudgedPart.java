package io.github.wattledger.pacing;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.io.Serializable;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The judged part of a ride as a {@link FindingDetector} sees it.
 *
 * @param ride the seconds that are judged, counted from 0; the warm-up and the way home are not among them
 * @param offsetSeconds what to add to them to get seconds of the whole recording
 * @param thresholds the rider's thresholds on that day
 * @param targetW the power that could be held for the part's moving time, watts, or null when it is not known
 * @param isRace whether the part is judged as a race
 * @param limits the limits from which on the library reports something
 */
public record JudgedPart(
        Ride ride,
        int offsetSeconds,
        Thresholds thresholds,
        @Nullable Double targetW,
        boolean isRace,
        JudgementLimits limits)
        implements Serializable {

    /**
     * A finding of a user's own detector, with its place in the whole recording.
     *
     * @param kind a word of its own, see {@link OwnFinding}
     * @param severity how much it weighs
     * @param when the seconds of {@link #ride()} it concerns, at least one
     * @param evidence the numbers it rests on
     * @param advice what to do next time
     * @throws NullPointerException when one of them is null
     * @throws IllegalArgumentException when {@code when} is empty or reaches over the end, or the kind is not such a word
     */
    public OwnFinding finding(String kind, Severity severity, Interval when, Evidence evidence, Advice advice) {
        Objects.requireNonNull(severity, "severity");
        Objects.requireNonNull(evidence, "evidence; Evidence.none() where there is none");
        Objects.requireNonNull(advice, "advice");
        if (when.seconds() == 0 || when.toSecond() > ride.seconds()) {
            throw new IllegalArgumentException("a finding from second " + when.fromSecond() + " to " + when.toSecond()
                    + ", expected at least one of the " + ride.seconds() + " of the part");
        }
        return new OwnFinding(
                kind, severity, when.shifted(offsetSeconds), startM(ride, when), endM(ride, when), evidence, advice);
    }

    /** The distance at the start of a stretch; where none was measured in it, as in a pause, that at its end. */
    static @Nullable Double startM(Ride ride, Interval when) {
        Series distance = ride.series(Channel.DISTANCE);
        for (int second = when.fromSecond(); second < when.toSecond(); second++) {
            if (distance.isMeasured(second)) {
                return distance.get(second);
            }
        }
        return endM(ride, when);
    }

    /** The last distance up to the end of a stretch, or the first one after it; null without distance. */
    static @Nullable Double endM(Ride ride, Interval when) {
        Series distance = ride.series(Channel.DISTANCE);
        for (int second = when.toSecond() - 1; second >= 0; second--) {
            if (distance.isMeasured(second)) {
                return distance.get(second);
            }
        }
        for (int second = when.toSecond(); second < distance.size(); second++) {
            if (distance.isMeasured(second)) {
                return distance.get(second);
            }
        }
        return null;
    }
}
