package examples;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.rider.Rider;
import java.io.InputStream;
import java.time.Duration;

/** From a stream, for instance of an upload, to a review, within a time limit. */
public final class ReviewOfAnUpload {
    private ReviewOfAnUpload() {}

    /** Reviews what a stream holds. */
    public static RideReview review(InputStream body, String name, Rider rider) throws UnreadableRideException {
        // region review
        ReviewOptions options = ReviewOptions.WHOLE_RIDE.withTimeLimit(Duration.ofSeconds(20));
        return Reviewer.review(RideInput.of(body, name), rider, options);
        // endregion
    }
}
