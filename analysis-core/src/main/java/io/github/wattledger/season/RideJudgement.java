package io.github.wattledger.season;

import io.github.wattledger.intake.Origin;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.Severity;
import io.github.wattledger.pacing.Verdict;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The numbers and findings of a ride that depend on the threshold of its day.
 *
 * @param thresholdPowerW the threshold of its day, watts, or null when none is known
 * @param thresholdSource where the threshold comes from, or null
 * @param intensityFactor normalized power over threshold, or null
 * @param trainingStress training stress, or null
 * @param verdict how the ride was paced
 * @param verdictReason why there is no verdict, or null
 * @param targetW what could be expected, watts, or null
 * @param costMinutesLow what the mistakes cost when all are repaired at once, lower end, minutes; null when nothing was
 *     priced
 * @param costMinutesHigh the upper end of that cost, minutes
 * @param findings what stood out, the weightiest first
 */
public record RideJudgement(
        @Nullable Double thresholdPowerW,
        @Nullable Origin thresholdSource,
        @Nullable Double intensityFactor,
        @Nullable Double trainingStress,
        Verdict verdict,
        @Nullable String verdictReason,
        @Nullable Double targetW,
        @Nullable Double costMinutesLow,
        @Nullable Double costMinutesHigh,
        List<Found> findings)
        implements Serializable {
    /** Whether the pacing was judged, all was looked at, and no mistake was found. */
    public boolean isWithoutMistake() {
        return verdict != Verdict.NOT_JUDGED
                && targetW != null
                && findings.stream().noneMatch(found -> found.kind().isMistake());
    }

    /**
     * One thing that stood out.
     *
     * @param kind the kind of finding
     * @param severity how much it weighs
     */
    public record Found(FindingKind kind, Severity severity) implements Serializable {}

    /** Copies the list. */
    public RideJudgement {
        findings = List.copyOf(findings);
    }

    /** This judgement with the load computed against an estimate of the threshold. */
    RideJudgement withEstimate(double powerW, @Nullable Double newIntensityFactor, @Nullable Double newTrainingStress) {
        return new RideJudgement(
                powerW,
                Origin.ESTIMATED,
                newIntensityFactor,
                newTrainingStress,
                verdict,
                verdictReason,
                targetW,
                costMinutesLow,
                costMinutesHigh,
                findings);
    }
}
