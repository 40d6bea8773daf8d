package io.github.wattledger.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.testing.RideFolders;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Instant;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The law: what a damaged store gives is what a sound one gives, or one line that says what is lost. Never another number. */
class DamagedStoreTest {
    private static final int FLIPS = 300;
    private static final Rider RIDER = Rider.UNKNOWN.withThresholdPowerW(200).withMassKg(74);

    @TempDir
    Path temp;

    private Path folder;
    private Path store;

    @BeforeEach
    void writeRides() throws IOException {
        folder = Files.createDirectory(temp.resolve("rides"));
        store = temp.resolve("store.sqlite");
        for (int i = 1; i <= 4; i++) {
            int watts = 140 + 20 * i;
            RideFolders.writeRide(
                    folder.resolve(i + ".fit"),
                    Instant.parse("2026-05-0" + i + "T08:00:00Z"),
                    1250 + i,
                    second -> watts + second % 7,
                    RideFolders.Settings.NONE);
        }
    }

    private SeasonReview run(Path withStore, double thresholdW) throws SeasonStoreException {
        SeasonRequest request =
                SeasonRequest.of(List.of(folder), withStore).withRider(RIDER.withThresholdPowerW(thresholdW));
        try {
            return SeasonRun.run(request);
        } catch (UnreadableRideException e) {
            throw new AssertionError(e);
        }
    }

    private Path flipped(byte[] sound, int bit) throws IOException {
        byte[] damaged = sound.clone();
        damaged[bit / 8] ^= (byte) (1 << bit % 8);
        for (String end : List.of("-wal", "-shm")) {
            Files.deleteIfExists(temp.resolve("damaged.sqlite" + end));
        }
        return Files.write(temp.resolve("damaged.sqlite"), damaged);
    }

    /** The season of a damaged store; null where the store was refused in one line. */
    private @Nullable SeasonReview tried(Path damaged, double thresholdW) {
        try {
            return run(damaged, thresholdW);
        } catch (SeasonStoreException e) {
            assertThat(e).message().startsWith(damaged + ": ").hasLineCount(1);
            return null;
        }
    }

    @Test
    void aFlippedBitIsReadAnewOrNamed() throws IOException {
        List<SeasonReview> sound = List.of(run(store, 200), run(temp.resolve("other.sqlite"), 260));
        byte[] bytes = Files.readAllBytes(store);
        Random random = new Random(16);
        int refused = 0;
        for (int i = 0; i < FLIPS; i++) {
            int bit = random.nextInt(8 * bytes.length);
            SeasonReview season = tried(flipped(bytes, bit), i % 2 == 0 ? 200 : 260);
            if (season == null) {
                refused++;
            } else {
                assertThat(season).as("bit " + bit).isEqualTo(sound.get(i % 2));
            }
        }
        // The structure of the file itself is a small part of it.
        assertThat(refused).isLessThan(FLIPS / 5);
    }

    @Test
    void whereTheFilesAreGoneTheRideIsAsItWasOrNamed() throws IOException {
        run(store, 200);
        List<SeasonReview> sound = List.of(run(store, 200), run(temp.resolve("other.sqlite"), 260));
        byte[] bytes = Files.readAllBytes(store);
        for (int i = 1; i <= 4; i++) {
            Files.delete(folder.resolve(i + ".fit"));
        }
        Random random = new Random(17);
        for (int i = 0; i < FLIPS; i++) {
            int bit = random.nextInt(8 * bytes.length);
            SeasonReview season = tried(flipped(bytes, bit), i % 2 == 0 ? 200 : 260);
            if (season != null) {
                List<SeasonRide> expected = sound.get(i % 2).rides();
                assertThat(expected).as("bit " + bit).containsAll(season.rides());
                assertThat(season.skipped())
                        .as("bit " + bit)
                        .hasSizeGreaterThanOrEqualTo(4 - season.rides().size());
            }
        }
    }

    private void change(String sql) throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + store);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    /** Each table in turn: a value that is not the one written. */
    @Test
    void everyTableIsCovered() throws Exception {
        SeasonReview sound = run(store, 200);
        for (String change : List.of(
                "UPDATE ride SET work_kj = work_kj + 1 WHERE id = 2",
                "UPDATE ride SET start_epoch_s = start_epoch_s + 86400 WHERE id = 2",
                "UPDATE ride SET sha256 = replace(sha256, substr(sha256, 1, 1), 'x') WHERE id = 2",
                "UPDATE ride SET verdict = 'NONE' WHERE id = 2",
                "UPDATE best SET watts = watts + 1 WHERE ride_id = 2",
                "DELETE FROM best WHERE ride_id = 2 AND seconds = 60",
                "INSERT INTO note SELECT max(id), 0, 'NOTHING', 'x', NULL, NULL, NULL FROM ride",
                "INSERT INTO note SELECT max(id), 0, 'BUNCH', 'x', NULL, NULL, NULL FROM ride",
                "INSERT INTO note SELECT max(id) + 1, 0, 'NOTHING', 'x', NULL, NULL, NULL FROM ride",
                "DELETE FROM ride WHERE id = 2",
                "UPDATE file SET sha256 = 'x' WHERE name = '2.fit'",
                "UPDATE file SET ride_count = 0 WHERE name = '2.fit'",
                "UPDATE file SET problem = 'x' WHERE name = '2.fit'",
                "DELETE FROM file WHERE name = '2.fit'")) {
            change(change);
            assertThat(run(store, 200)).as(change).isEqualTo(sound);
            assertThat(run(store, 200)).as("again after " + change).isEqualTo(sound);
        }
    }

    /** What the rider's own rides say rests on those whose rows are whole. */
    @Test
    void aDamagedRideIsLeftOutOfTheHistory() throws Exception {
        run(store, 200);
        assertThat(countForHistory()).isEqualTo(4);
        change("INSERT INTO note VALUES (2, 0, 'NOTHING', 'x', NULL, NULL, NULL)");
        change("UPDATE ride SET verdict = 'NONE' WHERE id = 3");
        assertThat(countForHistory()).isEqualTo(2);
    }

    private int countForHistory() throws SeasonStoreException {
        try (RideStore open = RideStore.openWritten(store)) {
            return open.ridesForHistory(Instant.EPOCH, Instant.parse("2026-06-01T00:00:00Z"))
                    .size();
        }
    }

    @Test
    void damagedSecondsAreReadAnewWhenTheyAreNeeded() throws Exception {
        run(store, 200);
        SeasonReview sound = run(temp.resolve("other.sqlite"), 260);
        change("UPDATE series SET data = x'00' WHERE ride_id = 2 AND name = 'POWER'");
        change("DELETE FROM series WHERE ride_id = 3 AND name = 'POWER'");
        assertThat(run(store, 260)).isEqualTo(sound);
    }

    @Test
    void whatIsLostIsNamedAndForgottenWhenAskedFor() throws Exception {
        run(store, 200);
        Files.delete(folder.resolve("2.fit"));
        change("UPDATE ride SET work_kj = work_kj + 1 WHERE id IN (SELECT ride.id FROM ride JOIN file USING (sha256)"
                + " WHERE file.name = '2.fit')");
        SeasonReview season = run(store, 200);
        assertThat(season.rides()).hasSize(3);
        assertThat(season.skipped())
                .containsExactly(new SkippedFile(
                        "2.fit",
                        "what the store has of it is damaged, and the file is gone; put the file back, or let the season"
                                + " forget files that are gone"));
        SeasonRequest forgetting = SeasonRequest.of(List.of(folder), store).forgettingGone();
        assertThat(SeasonRun.run(forgetting).skipped()).isEmpty();
    }

    /** Brings a store back to version 2 of its tables, which had no check sums. */
    private void makeOlder() throws Exception {
        change("ALTER TABLE file DROP COLUMN ride_count");
        change("ALTER TABLE file DROP COLUMN check_sum");
        change("ALTER TABLE ride DROP COLUMN series_sum");
        change("ALTER TABLE ride DROP COLUMN check_sum");
        change("PRAGMA user_version = 2");
    }

    @Test
    void anOlderStoreGetsItsSums() throws Exception {
        SeasonReview sound = run(store, 200);
        makeOlder();
        Files.delete(folder.resolve("1.fit"));
        SeasonReview upgraded = run(store, 200);
        assertThat(upgraded.rides()).isEqualTo(sound.rides());
        assertThat(upgraded.goneFiles()).containsExactly("1.fit");
        Set<String> without = new HashSet<>();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + store);
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT name FROM file WHERE check_sum IS NULL UNION ALL"
                        + " SELECT id FROM ride WHERE check_sum IS NULL OR series_sum IS NULL")) {
            while (row.next()) {
                without.add(row.getString(1));
            }
        }
        assertThat(without).isEmpty();
    }

    @Test
    void whatIsNoStoreAnyMoreIsOneLine() throws IOException {
        run(store, 200);
        byte[] bytes = Files.readAllBytes(store);
        Files.write(store, Arrays.copyOf(bytes, bytes.length / 2));
        assertThatThrownBy(() -> run(store, 200))
                .isInstanceOf(SeasonStoreException.class)
                .hasMessage(store + ": is damaged; delete it, and the season is read anew from its files");
    }
}
