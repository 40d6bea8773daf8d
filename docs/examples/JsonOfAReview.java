package examples;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.json.JsonDocument;
import io.github.wattledger.json.JsonSchema;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.rider.Rider;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** From a recorded file to a JSON document and the schema that it fits. */
public final class JsonOfAReview {
    private JsonOfAReview() {}

    /** Writes the review of a ride into one file, and the schema that it fits into another. */
    public static void write(Path ride, Path json, Path schema) throws UnreadableRideException, IOException {
        // region json
        RideReview review = Reviewer.review(ride, Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE);
        try (OutputStream out = Files.newOutputStream(json)) {
            JsonDocument.of(review).writeTo(out);
        }
        Files.writeString(schema, JsonSchema.REVIEW.text());
        // endregion
    }
}
