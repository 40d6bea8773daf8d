package io.github.wattledger.cli;

import io.github.wattledger.RideReview;
import io.github.wattledger.json.JsonKeptPlan;
import io.github.wattledger.plan.KeptPlan;
import io.github.wattledger.plan.PlanReview;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.rig.Position;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** A plan that was written by {@code wattledger plan --format json}. */
final class PlanFile {
    private static final long MOST_BYTES = 10_000_000;

    private PlanFile() {}

    /** @throws UnreadableRideException when it cannot be read, with one line that begins with the file */
    static KeptPlan read(Path file) throws UnreadableRideException {
        try {
            if (Files.size(file) > MOST_BYTES) {
                throw new UnreadableRideException(Reason.TOO_LARGE, file + ": is too large for a plan");
            }
            return JsonKeptPlan.read(new String(Files.readAllBytes(file), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UnreadableRideException(
                    Files.exists(file) ? Reason.NOT_ACCESSIBLE : Reason.NO_SUCH_FILE,
                    file + ": " + (Files.exists(file) ? "cannot be read" : "there is no such file; check the path"),
                    e);
        } catch (IllegalArgumentException e) {
            throw new UnreadableRideException(Reason.NOT_SUITABLE, file + ": " + e.getMessage(), e);
        }
    }

    /**
     * A ride held against a plan.
     *
     * @param ride how the ride is called in messages
     * @throws UnreadableRideException when it cannot be held against it, with one line that begins with the ride
     */
    static PlanReview against(KeptPlan plan, RideReview review, String ride) throws UnreadableRideException {
        return PlanReview.of(
                        plan,
                        review.ride().part(review.pacing().judged()),
                        review.rider().rig(Position.HOODS))
                .orElseThrow(reason -> new UnreadableRideException(
                        Reason.NOT_SUITABLE, ride + ": cannot be held against a plan: " + reason));
    }
}
