package io.github.wattledger;

import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.intake.RiderOnDay;
import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.KnownThreshold;
import io.github.wattledger.pacing.KnownThreshold.Doubt;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.RacedPart;
import io.github.wattledger.ride.Decimals;
import io.github.wattledger.ride.Interval;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What a review adds to the notes on the quality of a recording: which part was judged, and against what. */
final class ReviewNotes {
    /** The code of the note that a threshold power is not believed. */
    static final String THRESHOLD_DOUBTFUL = "threshold-doubtful";

    private ReviewNotes() {}

    /**
     * The notes, in the order in which a report shows them.
     *
     * @param selected the reviewed seconds of the recording
     * @param seconds length of the recording, seconds
     * @param part the raced part of the reviewed seconds
     * @param threshold the threshold power held against the ride
     * @param pacing the judgement of the part
     */
    static List<QualityNote> of(
            Interval selected,
            int seconds,
            RacedPart part,
            RiderOnDay rider,
            KnownThreshold threshold,
            PacingReview pacing) {
        List<QualityNote> notes = new ArrayList<>();
        if (selected.seconds() != seconds) {
            notes.add(new QualityNote(
                    "part-selected",
                    selected.seconds(),
                    "Only " + Interval.clock(selected.fromSecond()) + " to " + Interval.clock(selected.toSecond())
                            + " of "
                            + Interval.clock(seconds)
                            + " was reviewed, as asked for. The device's totals are of the"
                            + " whole session."));
        }
        addSetApart(notes, "lead-in-set-apart", "first", part.leadInSeconds());
        addSetApart(notes, "tail-set-apart", "last", part.tailSeconds());
        notes.addAll(rider.notes());
        String doubt = doubt(threshold);
        if (doubt != null) {
            notes.add(new QualityNote(THRESHOLD_DOUBTFUL, null, doubt));
        }
        pacing.detectorFailures().forEach(failure -> notes.add(new QualityNote("detector-failed", null, failure)));
        return notes;
    }

    private static void addSetApart(List<QualityNote> notes, String code, String where, int seconds) {
        if (seconds > 0) {
            notes.add(new QualityNote(
                    code,
                    seconds,
                    "The " + where + " " + Interval.clock(seconds)
                            + " was easy riding or waiting: set apart as not raced. Load and curve include it."));
        }
    }

    /** Why a threshold power that somebody or something named is not believed, a sentence or two; null where it is. */
    private static @Nullable String doubt(KnownThreshold threshold) {
        Doubt doubt = threshold.doubt();
        if (doubt == null || doubt == Doubt.NONE || doubt == Doubt.ESTIMATED_FROM_RIDE) {
            return null;
        }
        Evidence evidence = threshold.evidence();
        String watts = Decimals.of(evidence.get("thresholdPowerW").orElse(Double.NaN), 0) + " W";
        return switch (doubt) {
            case NONE, ESTIMATED_FROM_RIDE -> throw new AssertionError(doubt);
            case ESTIMATE_TOO_HIGH ->
                "An estimate of " + watts + " is more than a rider has. Does the meter count twice?";
            case FACTORY_SETTING ->
                "A threshold of exactly " + watts + " is what devices are delivered with: it is not taken as known.";
            case INTENSITY_ABOVE_THRESHOLD ->
                "An intensity factor of "
                        + Decimals.of(evidence.get("intensityFactor").orElse(Double.NaN), 2) + " over "
                        + Decimals.of(evidence.get("timerHours").orElse(Double.NaN), 1)
                        + " h contradicts a threshold of "
                        + watts + ": the threshold looks too low.";
            case POWER_ABOVE_GUIDE ->
                "The power of this ride is "
                        + Decimals.of(
                                evidence.get("normalizedAndMeanShareOfGuide").orElse(Double.NaN), 2)
                        + " of what a threshold of " + watts
                        + " leads one to expect over this time: the threshold looks too low.";
            case BEST_HOUR_ABOVE_THRESHOLD ->
                "The best hour of this ride was at "
                        + Decimals.of(evidence.get("bestHourW").orElse(Double.NaN), 0)
                        + " W, which contradicts a threshold of " + watts + ": the threshold looks too low.";
            case HEART_RATE_OF_AN_EASY_RIDE ->
                "By a threshold of " + watts + " this ride was hard, but its highest heart rate was "
                        + Decimals.of(evidence.get("highestHeartRateBpm").orElse(Double.NaN), 0) + " bpm of "
                        + Decimals.of(evidence.get("highestKnownHeartRateBpm").orElse(Double.NaN), 0)
                        + ": the threshold looks too low.";
        };
    }
}
