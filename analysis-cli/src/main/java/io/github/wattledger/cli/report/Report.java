package io.github.wattledger.cli.report;

import io.github.wattledger.RideReview;
import java.io.IOException;

/** One form in which a review is shown. */
public interface Report {
    /**
     * Writes a review.
     *
     * @param review what to show
     * @param out where the characters go; lines end with a line feed on every system
     * @throws IOException when {@code out} fails
     */
    void write(RideReview review, Appendable out) throws IOException;
}
