package examples;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.pacing.OwnFinding;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.rider.Rider;
import java.nio.file.Path;
import java.util.List;

/** A review with a detector of one's own beside the library's. */
public final class ReviewWithOwnDetector {
    private ReviewWithOwnDetector() {}

    /** What the detector finds in a file. */
    public static List<OwnFinding> ownFindings(Path file) throws UnreadableRideException {
        // region use
        ReviewOptions options = ReviewOptions.WHOLE_RIDE.withDetectors(List.of(new MuchCoasting(0.05)));
        RideReview review = Reviewer.review(file, Rider.UNKNOWN, options);
        List<OwnFinding> found = review.pacing().ownFindings();
        // endregion
        return found;
    }
}
