package io.github.wattledger.season;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.ThresholdHistory;
import io.github.wattledger.testing.RideFolders;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every ride is judged by what the rides of earlier days say: always the same, and no more often than needed. */
class DatedJudgingTest {
    private static final LocalDate FIRST = LocalDate.of(2025, 3, 1);

    /** Days from the first one on which there is a ride: hard long ones, a fading one, easy ones. */
    private static final List<Integer> DAYS = List.of(0, 10, 30, 31, 80, 200, 201, 370, 400);

    @TempDir
    Path temp;

    private Path folder;
    private Path store;

    @BeforeEach
    void prepare() throws IOException {
        folder = Files.createDirectory(temp.resolve("rides"));
        store = temp.resolve("season.sqlite");
    }

    private static Rider dated() {
        return Rider.UNKNOWN
                .withMassKg(70)
                .withThresholds(new ThresholdHistory(List.of(new ThresholdHistory.Entry(FIRST, 250.0, null))));
    }

    /** The ride of a day: three kinds, of 50 minutes to two and a half hours. */
    private void write(Path into, int day) {
        int kind = DAYS.indexOf(day) % 3;
        int seconds = kind == 2 ? 3000 : 9000 + day;
        RideFolders.writeRide(
                into.resolve("day-" + day + ".fit"),
                FIRST.plusDays(day).atTime(8, 0).toInstant(ZoneOffset.UTC),
                seconds,
                second -> switch (kind) {
                    case 0 -> 214 + second / 7 % 5;
                    case 1 -> (second < 2400 ? 250 : 200 - second / 200) + second / 7 % 5;
                    default -> 150 + second / 7 % 50;
                },
                RideFolders.Settings.NONE);
    }

    private SeasonReview run(Path rides, Path into, Rider rider, int workers) throws Exception {
        ExecutorService executor = Executors.newFixedThreadPool(workers);
        try {
            return SeasonRun.run(
                    SeasonRequest.of(List.of(rides), into).withRider(rider), executor, workers, SeasonListener.SILENT);
        } finally {
            executor.shutdown();
        }
    }

    @Test
    void theOrderInWhichRidesAreAddedAndTheWorkersDoNotMatter() throws Exception {
        for (Rider rider : List.of(dated(), Rider.UNKNOWN.withMassKg(70))) {
            Path all = Files.createTempDirectory(temp, "all");
            DAYS.forEach(day -> write(all, day));
            SeasonReview expected =
                    run(all, Files.createTempDirectory(temp, "store").resolve("s"), rider, 1);
            assertThat(expected.rides()).hasSize(DAYS.size());
            for (int seed = 0; seed < 3; seed++) {
                List<Integer> order = new ArrayList<>(DAYS);
                Collections.shuffle(order, new Random(seed));
                Path some = Files.createTempDirectory(temp, "some");
                Path kept = Files.createTempDirectory(temp, "kept").resolve("s");
                for (int from = 0; from < order.size(); from += 3) {
                    order.subList(from, from + 3).forEach(day -> write(some, day));
                    run(some, kept, rider, 1 + seed % 2);
                }
                assertThat(run(some, kept, rider, 2)).isEqualTo(expected);
            }
        }
    }

    /** Counts the pieces of work. */
    private static final class Counter implements SeasonListener {
        private int worked;

        @Override
        public void progressed(int done, int total) {
            worked++;
        }
    }

    private int worked(Rider rider) throws Exception {
        Counter counter = new Counter();
        SeasonRun.run(SeasonRequest.of(List.of(folder), store).withRider(rider), Runnable::run, 1, counter);
        return counter.worked;
    }

    @Test
    void anAddedRideJudgesAnewWhatItChangesAndNothingElse() throws Exception {
        List<Integer> without = new ArrayList<>(DAYS);
        without.remove(Integer.valueOf(30));
        without.forEach(day -> write(folder, day));
        int rides = DAYS.size();
        assertThat(worked(dated())).as("read and judged").isGreaterThanOrEqualTo(2 * (rides - 1));
        assertThat(worked(dated())).as("nothing is new").isZero();

        write(folder, DAYS.get(2));
        // An easy ride of 50 minutes teaches nothing: it is read and judged, and no other.
        assertThat(worked(dated())).isEqualTo(2);

        Path hard = folder.resolve("day-0.fit");
        Files.delete(hard);
        RideFolders.writeRide(
                folder.resolve("harder.fit"),
                FIRST.atTime(8, 0).toInstant(ZoneOffset.UTC),
                9000,
                second -> 228 + second / 7 % 5,
                RideFolders.Settings.NONE);
        // Read and judged itself; of the others those of the next 365 days at most: not the rides of days 370 and 400.
        assertThat(worked(dated())).isBetween(3, rides - 1);
    }

    @Test
    void aRideIsNotJudgedByItselfNorByLaterOnes() throws Exception {
        write(folder, DAYS.get(0));
        SeasonReview alone = run(folder, store, dated(), 1);
        Double target = alone.rides().get(0).judgement().targetW();
        write(folder, DAYS.get(1));
        write(folder, DAYS.get(3));
        SeasonReview more = run(folder, store, dated(), 1);
        assertThat(more.rides().get(0).judgement().targetW()).isEqualTo(target);
        assertThat(more.rides().get(2).judgement().targetW())
                .as("by the long rides before it")
                .isNotEqualTo(target);
    }
}
