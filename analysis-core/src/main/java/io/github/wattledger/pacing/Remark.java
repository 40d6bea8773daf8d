package io.github.wattledger.pacing;

import io.github.wattledger.ride.Interval;
import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * Something that stands out when parts of a ride are compared, in a ride that is not judged as a race. It is no mistake, so it
 * has no severity, no price and no advice.
 *
 * @param kind what it is
 * @param when the seconds it concerns, counted from the first second of the whole recording
 * @param startM the distance at its start, metres from the start of the recording, or null without distance
 * @param endM the distance at its end, or null without distance
 * @param evidence the numbers it rests on
 */
public record Remark(
        FindingKind kind,
        Interval when,
        @Nullable Double startM,
        @Nullable Double endM,
        Evidence evidence) implements Serializable {
    static Remark of(Race race, Detection detection) {
        Interval when = detection.found().when();
        return new Remark(
                detection.kind(),
                when.shifted(race.offsetSeconds()),
                JudgedPart.startM(race.ride(), when),
                JudgedPart.endM(race.ride(), when),
                detection.found().evidence());
    }
}
