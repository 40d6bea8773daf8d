package io.github.wattledger.pacing;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.cancel.CancelledException;
import io.github.wattledger.ride.ForeignCode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What the user's own detectors found.
 *
 * @param found the findings of those that did not fail, the weightiest first
 * @param failures which of them failed and why, a sentence each
 */
record OwnSearch(List<OwnFinding> found, List<String> failures) {
    /**
     * Asks each detector. One that throws an exception, or returns something that is no finding of the part, is left out
     * with all that it found; an {@link Error} and a cancellation pass on.
     */
    @SuppressWarnings("CatchGeneric") // a user's code may throw anything
    static OwnSearch of(JudgedPart part, List<FindingDetector> detectors, Cancellation cancellation) {
        List<OwnFinding> found = new ArrayList<>();
        List<String> failures = new ArrayList<>();
        for (FindingDetector detector : detectors) {
            cancellation.check();
            try {
                found.addAll(findings(part, detector));
            } catch (CancelledException e) {
                throw e;
            } catch (RuntimeException e) {
                failures.add("The detector " + ForeignCode.name(detector) + " failed and was left out: "
                        + ForeignCode.reason(e) + ".");
            }
        }
        // The last one may have taken long, or have taken an interrupt for its own.
        cancellation.check();
        found.sort(Comparator.comparing(OwnFinding::severity).reversed());
        return new OwnSearch(found, failures);
    }

    private static List<OwnFinding> findings(JudgedPart part, FindingDetector detector) {
        List<OwnFinding> findings = detector.detect(part);
        if (findings == null) {
            throw new IllegalStateException("it returned null, expected an empty list for nothing");
        }
        int from = part.offsetSeconds();
        int to = from + part.ride().seconds();
        for (OwnFinding each : findings) {
            if (each.when().fromSecond() < from || each.when().toSecond() > to) {
                throw new IllegalArgumentException("the finding '" + each.kind() + "' lies outside the judged part,"
                        + " from second " + from + " to " + to + "; make it with JudgedPart.finding");
            }
        }
        return findings;
    }
}
