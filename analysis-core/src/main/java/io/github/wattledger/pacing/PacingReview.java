package io.github.wattledger.pacing;

import io.github.wattledger.ride.Interval;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How well a ride was paced.
 *
 * @param verdict the pacing in one word or two
 * @param verdictReason why there is no judgement, one clause; null when there is one
 * @param judged the seconds that were judged, counted from the first second of the whole recording
 * @param targetW the power the rider could be expected to hold for the judged moving time, watts, or null
 * @param findings what was found, the weightiest first
 * @param ledger where the time went
 * @param leftOut what was not looked at, and why, a sentence each
 */
public record PacingReview(
        Verdict verdict,
        @Nullable String verdictReason,
        Interval judged,
        @Nullable Double targetW,
        List<Finding> findings,
        TimeLedger ledger,
        List<String> leftOut)
        implements Serializable {
    /** Copies the lists. */
    public PacingReview {
        findings = List.copyOf(findings);
        leftOut = List.copyOf(leftOut);
    }
}
