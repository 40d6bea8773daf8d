package io.github.wattledger;

import io.github.wattledger.history.OwnRides;
import io.github.wattledger.intake.Selection;
import io.github.wattledger.pacing.Effort;
import io.github.wattledger.pacing.FindingDetector;
import io.github.wattledger.pacing.JudgementLimits;
import java.io.Serializable;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What to review and how.
 *
 * @param selection which session of the file is reviewed, and which part of it; of a recording or a ride that is in memory
 *     only the part counts
 * @param effort whether to judge the ride as a race
 * @param limits the limits from which on something is reported
 * @param zone the rider's time zone, which settles the day of a ride that does not know its local time
 * @param detectors detectors of one's own, beside the library's
 * @param ownRides the rider's own rides, of which those of earlier days say what the rider can do; null where the ride is
 *     to be judged without them
 */
public record ReviewOptions(
        Selection selection,
        Effort effort,
        JudgementLimits limits,
        ZoneId zone,
        List<FindingDetector> detectors,
        @Nullable OwnRides ownRides)
        implements Serializable {
    /** The whole ride, judged as a race when it looks like one, by the usual limits, in UTC. */
    public static final ReviewOptions WHOLE_RIDE = new ReviewOptions(
            Selection.WHOLE_RIDE, Effort.AUTO, JudgementLimits.USUAL, ZoneOffset.UTC, List.of(), null);

    /** Copies the list. */
    public ReviewOptions {
        detectors = List.copyOf(detectors);
    }

    /** The same options for another session, or another part of it. */
    public ReviewOptions withSelection(Selection other) {
        return new ReviewOptions(other, effort, limits, zone, detectors, ownRides);
    }

    /** The same options with another answer to whether the ride is judged as a race. */
    public ReviewOptions withEffort(Effort other) {
        return new ReviewOptions(selection, other, limits, zone, detectors, ownRides);
    }

    /** The same options with other limits. */
    public ReviewOptions withLimits(JudgementLimits other) {
        return new ReviewOptions(selection, effort, other, zone, detectors, ownRides);
    }

    /** The same options with another time zone. */
    public ReviewOptions withZone(ZoneId other) {
        return new ReviewOptions(selection, effort, limits, other, detectors, ownRides);
    }

    /** The same options with these detectors of one's own in place of any before. */
    public ReviewOptions withDetectors(List<FindingDetector> own) {
        return new ReviewOptions(selection, effort, limits, zone, own, ownRides);
    }

    /** The same options with the rider's own rides, or without any where it is null. */
    public ReviewOptions withOwnRides(@Nullable OwnRides other) {
        return new ReviewOptions(selection, effort, limits, zone, detectors, other);
    }
}
