package io.github.wattledger.examples;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.load.NormalizedPower;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Rider;
import java.nio.file.Path;
import java.util.OptionalDouble;

/** The lines that README.md shows: a test compares them with it, and runs them. */
final class EmbeddingExample {
    private EmbeddingExample() {}

    static OptionalDouble oneMetricFromAnArray(double[] watts) {
        return NormalizedPower.of(watts);
    }

    static RideReview wholeReviewOfAFile(Path file) throws UnreadableRideException {
        Rider rider = Rider.UNKNOWN.withThresholdPowerW(250).withMassKg(72);
        RideReview review = Reviewer.review(file, rider, ReviewOptions.WHOLE_RIDE);
        review.pacing().findings().forEach(finding -> System.out.println(finding.kind() + " " + finding.when()));
        return review;
    }
}
