package io.github.wattledger.pacing;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.cancel.CancelledException;
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
    private static final int LONGEST_REASON = 200;

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
                failures.add("The detector " + name(detector) + " failed and was left out: " + reason(e) + ".");
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

    /** The name of its class; of a class without a name, the one that it stands in. */
    private static String name(FindingDetector detector) {
        Class<?> own = detector.getClass();
        if (own.isHidden() || own.isAnonymousClass()) {
            return "without a name in " + own.getName().replaceAll("[$/].*", "").replaceAll(".*\\.", "");
        }
        return own.getSimpleName();
    }

    /** The exception in one line. */
    private static String reason(RuntimeException e) {
        String line = e.toString().lines().findFirst().orElse("").strip();
        return line.length() > LONGEST_REASON ? line.substring(0, LONGEST_REASON) + "..." : line;
    }
}
