package io.github.wattledger;

import io.github.wattledger.pacing.Effort;
import io.github.wattledger.pacing.FindingDetector;
import io.github.wattledger.pacing.JudgementLimits;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What to review and how.
 *
 * @param fromSecond first elapsed second of the part to review, or null for the start
 * @param toSecond elapsed second at which the part ends (not included), or null for the end
 * @param firstLap first lap of the part to review, counted from 1, or null; not together with seconds
 * @param lastLap last lap of the part, included, or null for {@code firstLap}
 * @param effort whether to judge the ride as a race
 * @param limits from where on something is told
 * @param sessionIndex which session of the file to review, counted from 0 as in {@link
 *     io.github.wattledger.ride.Recording#sessionIndex()}, whatever its sport; null for the first cycling session
 * @param detectors detectors of one's own, beside the library's
 */
public record ReviewOptions(
        @Nullable Integer fromSecond,
        @Nullable Integer toSecond,
        @Nullable Integer firstLap,
        @Nullable Integer lastLap,
        Effort effort,
        JudgementLimits limits,
        @Nullable Integer sessionIndex,
        List<FindingDetector> detectors)
        implements Serializable {
    /** The whole ride, judged as a race when it looks like one. */
    public static final ReviewOptions WHOLE_RIDE = new ReviewOptions(null, null, null, null, Effort.AUTO);

    /** The same options for another session of the file, counted from 0; null for the first cycling session. */
    public ReviewOptions withSessionIndex(@Nullable Integer index) {
        return new ReviewOptions(fromSecond, toSecond, firstLap, lastLap, effort, limits, index, detectors);
    }

    /** @throws IllegalArgumentException when seconds and laps are both given, or bounds are out of order */
    public ReviewOptions {
        detectors = List.copyOf(detectors);
        boolean bySeconds = fromSecond != null || toSecond != null;
        if (bySeconds && firstLap != null) {
            throw new IllegalArgumentException("a part is given either in seconds or in laps, not both");
        }
        if (firstLap == null && lastLap != null) {
            throw new IllegalArgumentException("lastLap without firstLap");
        }
        if (firstLap != null && (firstLap < 1 || (lastLap != null && lastLap < firstLap))) {
            throw new IllegalArgumentException("laps " + firstLap + " to " + lastLap + ", expected 1 <= first <= last");
        }
        if (fromSecond != null && fromSecond < 0) {
            throw new IllegalArgumentException("fromSecond " + fromSecond + ", expected 0 or more");
        }
        if (toSecond != null && toSecond <= (fromSecond == null ? 0 : fromSecond)) {
            throw new IllegalArgumentException("the part ends at or before its start");
        }
        if (sessionIndex != null && sessionIndex < 0) {
            throw new IllegalArgumentException("sessionIndex " + sessionIndex + ", expected 0 or more");
        }
    }

    /** With the usual limits, for the first cycling session. */
    public ReviewOptions(
            @Nullable Integer fromSecond,
            @Nullable Integer toSecond,
            @Nullable Integer firstLap,
            @Nullable Integer lastLap,
            Effort effort) {
        this(fromSecond, toSecond, firstLap, lastLap, effort, JudgementLimits.USUAL, null, List.of());
    }

    /** The same options with these detectors of one's own in place of any before. */
    public ReviewOptions withDetectors(List<FindingDetector> own) {
        return new ReviewOptions(fromSecond, toSecond, firstLap, lastLap, effort, limits, sessionIndex, own);
    }

    /** The same options with other limits. */
    public ReviewOptions withLimits(JudgementLimits newLimits) {
        return new ReviewOptions(fromSecond, toSecond, firstLap, lastLap, effort, newLimits, sessionIndex, detectors);
    }

    /** Whether a part was asked for, be it the whole: then all of it is judged, a lead-in too. */
    public boolean choosesPart() {
        return fromSecond != null || toSecond != null || firstLap != null;
    }
}
