package io.github.wattledger.pacing;

import java.io.Serializable;
import java.util.List;

/**
 * A user's own search for something in the judged part of a ride, given with {@code ReviewOptions.withDetectors}. What it
 * finds stands beside the library's findings ({@link PacingReview#ownFindings}) and changes neither the verdict nor a price.
 *
 * <p>A detector has no state, since many threads may ask it at once. It is serializable, as a lambda or a record is, so
 * that options can travel to other machines.
 */
@FunctionalInterface
public interface FindingDetector extends Serializable {
    /**
     * What it finds, or an empty list. It is asked about every ride, also about short or easy ones and about rides without
     * power or threshold, and returns an empty list where it has nothing to go by. One that throws an
     * exception is left out of the review, with a note.
     *
     * @param part what is judged, and against what
     * @return findings, each made with {@link JudgedPart#finding}
     */
    List<OwnFinding> detect(JudgedPart part);
}
