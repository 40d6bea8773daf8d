package io.github.wattledger.pacing;

import java.io.Serializable;
import java.util.List;

/**
 * Looks for something of one's own in the judged part of a ride; given with {@code ReviewOptions.withDetectors}. What it
 * tells stands beside the library's findings ({@link PacingReview#ownFindings}) and changes neither the verdict nor a price.
 *
 * <p>A detector has no state, since one may be asked by many threads, and is serializable, as a lambda or a record is, so
 * that options can travel to other machines.
 */
@FunctionalInterface
public interface FindingDetector extends Serializable {
    /**
     * What it finds, or an empty list. It is asked about every ride: of short or easy ones, and of ones without power or
     * threshold, too, and tells nothing where it has nothing to go by. What it throws goes to the caller of the review.
     *
     * @param part what is judged, and against what
     * @return findings, each made with {@link JudgedPart#finding}
     */
    List<OwnFinding> detect(JudgedPart part);
}
