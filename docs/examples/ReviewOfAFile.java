package examples;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.rider.Rider;
import java.nio.file.Path;

/** From a recorded file to everything a report shows. */
public final class ReviewOfAFile {
    private ReviewOfAFile() {}

    /** Reviews a file and prints what stands out. */
    public static RideReview review(Path file) throws UnreadableRideException {
        // region review
        // a file to a whole review
        Rider rider = Rider.UNKNOWN.withThresholdPowerW(250).withMassKg(72);
        RideReview review = Reviewer.review(file, rider, ReviewOptions.WHOLE_RIDE);
        review.pacing().findings().forEach(finding -> System.out.println(finding.kind() + " " + finding.when()));
        // endregion
        return review;
    }
}
