package examples;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.rider.Rider;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;

/** Many files on an executor of one's own. */
public final class ManyFiles {
    private ManyFiles() {}

    /** A line on each file: what was ridden and what it cost, or why it could not be read. */
    public static Map<Path, String> lines(List<Path> files, Rider rider, ExecutorService pool)
            throws InterruptedException {
        // region many
        Map<Path, Future<RideReview>> running = new LinkedHashMap<>();
        for (Path file : files) {
            running.put(file, pool.submit(() -> Reviewer.review(file, rider, ReviewOptions.WHOLE_RIDE)));
        }
        Map<Path, String> lines = new LinkedHashMap<>();
        for (Map.Entry<Path, Future<RideReview>> each : running.entrySet()) {
            try {
                RideReview review = each.getValue().get();
                String watts = review.load().normalizedPowerW() + " W"; // "null W" without a power meter
                String cost = review.pacing()
                        .ledger()
                        .allAtOnce()
                        .map(all -> all.minutesLow() + " to " + all.minutesHigh() + " min")
                        .orElse("nothing priced");
                lines.put(each.getKey(), watts + ", " + cost);
            } catch (ExecutionException e) {
                lines.put(each.getKey(), String.valueOf(e.getCause().getMessage())); // one line for people
            }
        }
        // endregion
        return lines;
    }
}
