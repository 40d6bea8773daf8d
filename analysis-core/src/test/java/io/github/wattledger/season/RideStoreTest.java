package io.github.wattledger.season;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.pacing.JudgementLimits;
import io.github.wattledger.ride.Rider;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RideStoreTest {
    private static final Path SAMPLES = Path.of("..", "sample-rides", "season");

    @TempDir
    Path temp;

    /** What two seasons at once on one store do: one puts rides in again while the other reads them all. */
    @Test
    void aReaderNeverSeesARideWithoutItsBests() throws Exception {
        Path file = temp.resolve("season.sqlite");
        Judge judge = new Judge(Rider.UNKNOWN, JudgementLimits.USUAL, ZoneOffset.UTC);
        List<RideIntake.Taken> taken = RideFinder.find(List.of(SAMPLES)).files().stream()
                .limit(2)
                .map(each -> RideIntake.take(each, Set.of(), judge))
                .toList();
        AtomicBoolean enough = new AtomicBoolean();
        ExecutorService writer = Executors.newSingleThreadExecutor();
        try (RideStore reading = RideStore.open(file)) {
            for (RideIntake.Taken each : taken) {
                put(reading, each);
            }
            Future<Integer> written = writer.submit(() -> {
                int count = 0;
                try (RideStore writing = RideStore.open(file)) {
                    for (; !enough.get(); count++) {
                        put(writing, taken.get(count % 2));
                    }
                }
                return count;
            });
            for (int reads = 0; reads < 2000; reads++) {
                List<RideStore.RideRow> rides = reading.rides();
                assertThat(rides).hasSize(2);
                assertThat(rides)
                        .allSatisfy(ride -> assertThat(ride.judged().bests()).isNotEmpty());
            }
            enough.set(true);
            assertThat(written.get()).isPositive();
        } finally {
            enough.set(true);
            writer.shutdown();
        }
    }

    private static void put(RideStore store, RideIntake.Taken taken) throws SeasonStoreException {
        store.put(RideStore.FileRow.of(taken.file(), String.valueOf(taken.sha256()), null), taken.rides());
    }
}
