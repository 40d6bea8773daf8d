package io.github.wattledger.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rig.OffTogether;
import io.github.wattledger.rig.RigEstimate;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
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
        Judge judge = judge(Rider.UNKNOWN);
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
                List<RideRow> rides = reading.rides();
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

    /** All that is read once is read again when it has changed, whoever changed it. */
    @Test
    void aChangeIsSeenWhoeverMadeIt() throws Exception {
        Path file = temp.resolve("season.sqlite");
        RideIntake.Taken race = sample("2026-05-02-second-race.fit.gz");
        RideIntake.Taken other = sample("2026-05-17-third-race.fit.gz");
        try (RideStore one = RideStore.open(file);
                RideStore another = RideStore.open(file)) {
            put(one, race);
            assertThat(one.rides()).hasSize(1).isSameAs(one.rides());
            assertThat(another.rides()).hasSize(1);
            put(another, other);
            assertThat(one.rides()).hasSize(2);
            assertThat(one.files()).hasSize(2);
            RideRow gone = one.rides().get(0);
            one.forget(one.files().values().stream()
                    .filter(row -> row.sha256().equals(gone.key().sha256()))
                    .toList());
            assertThat(one.rides()).hasSize(1);
            assertThat(another.rides()).isEqualTo(one.rides());
            assertThat(another.files()).hasSize(1);
        }
    }

    /** Two seasons at once read the same new files, and the later one puts their rides in again. */
    @Test
    void aRideThatAnotherSeasonHasPutInAgainIsStillThere() throws Exception {
        Path file = temp.resolve("season.sqlite");
        RideIntake.Taken race = sample("2026-05-02-second-race.fit.gz");
        try (RideStore one = RideStore.open(file);
                RideStore another = RideStore.open(file)) {
            put(one, race);
            put(one, sample("2026-05-17-third-race.fit.gz"));
            String content = race.rides().get(0).ride().key().sha256();
            RideRow before = ride(one, content);
            put(another, race);
            RideRow now = ride(another, content);
            assertThat(now.id()).as("its place in the table").isNotEqualTo(before.id());
            assertThat(one.stored(before)).isPresent();
            RideRow.Written written = one.putJudgement(before, before.judged());
            assertThat(written.id()).isEqualTo(now.id());
            assertThat(written.checkSum()).isNotNull();
            assertThat(one.rides()).hasSize(2);
        }
    }

    private static RideRow ride(RideStore store, String sha256) throws SeasonStoreException {
        return store.rides().stream()
                .filter(row -> row.key().sha256().equals(sha256))
                .findFirst()
                .orElseThrow();
    }

    private Judge judge(Rider rider) {
        return new Judge(SeasonRequest.of(List.of(SAMPLES), temp.resolve("season.sqlite"))
                .withRider(rider));
    }

    private RideIntake.Taken sample(String name) throws UnreadableRideException {
        Judge judge = judge(Rider.UNKNOWN.withMassKg(74));
        FoundFile file = RideFinder.find(List.of(SAMPLES)).files().stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
        return RideIntake.take(file, Set.of(), judge);
    }

    /** The law: what was kept comes out bit for bit, refusals and their missing numbers too. */
    @Test
    void anEstimateComesBackAsItWas() throws Exception {
        List<Outcome<RigEstimate>> estimates = List.of(
                Outcome.of(new RigEstimate(1 / 3.0, 0.1 + 0.2, 0.0061, 1e-17, 143, OffTogether.NOTHING)),
                Outcome.refused("too few stretches"));
        RideIntake.Taken taken = sample("2026-05-02-second-race.fit.gz");
        StoredRide ride = taken.rides().get(0).ride();
        try (RideStore store = RideStore.open(temp.resolve("season.sqlite"))) {
            for (Outcome<RigEstimate> estimate : estimates) {
                KeptEstimate kept = new KeptEstimate(85.1, estimate);
                StoredRide with = new StoredRide(
                        ride.key(),
                        ride.device(),
                        ride.setting(),
                        ride.start(),
                        ride.utcOffsetSeconds(),
                        ride.format(),
                        ride.channelCount(),
                        ride.lapCount(),
                        ride.columns(),
                        ride.states(),
                        ride.laps(),
                        ride.seconds(),
                        kept);
                store.put(
                        FileRow.of(taken.file(), ride.key().sha256(), null, 1),
                        List.of(new RideIntake.NewRide(
                                with, taken.rides().get(0).judged())));
                assertThat(store.stored(only(store)).orElseThrow().estimate()).isEqualTo(kept);
            }
        }
    }

    /** A store of before the estimates were kept has no table for them. */
    @Test
    void anOlderStoreGetsTheNewTable() throws Exception {
        Path file = temp.resolve("season.sqlite");
        RideIntake.Taken taken = sample("2026-05-02-second-race.fit.gz");
        RideStore.open(file).close();
        try (Connection older = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = older.createStatement()) {
            statement.execute("DROP TABLE rig");
            statement.execute("PRAGMA user_version = 1");
        }
        try (RideStore store = RideStore.open(file)) {
            put(store, taken);
            StoredRide ride = taken.rides().get(0).ride();
            assertThat(ride.estimate()).isNotNull();
            assertThat(store.stored(only(store)).orElseThrow().estimate()).isEqualTo(ride.estimate());
        }
    }

    /** It holds heart rates by the second; other users of the machine need not see them. */
    @Test
    void aNewStoreIsForItsOwnerAlone() throws Exception {
        assumeTrue(temp.getFileSystem().supportedFileAttributeViews().contains("posix"));
        Path file = temp.resolve("season.sqlite");
        try (RideStore store = RideStore.open(file)) {
            put(store, sample("2026-05-02-second-race.fit.gz"));
            for (String end : List.of("", "-wal", "-shm")) {
                assertThat(Files.getPosixFilePermissions(Path.of(file + end)))
                        .as(end)
                        .isEqualTo(PosixFilePermissions.fromString("rw-------"));
            }
        }
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r-----"));
        RideStore.open(file).close();
        assertThat(Files.getPosixFilePermissions(file)).isEqualTo(PosixFilePermissions.fromString("rw-r-----"));
    }

    /** A number that the season keeps since the store was written: its column is added, the rides are still there. */
    @Test
    void anOlderStoreGetsTheColumnsThatItHasNot() throws Exception {
        Path file = temp.resolve("season.sqlite");
        RideIntake.Taken taken = sample("2026-05-02-second-race.fit.gz");
        try (RideStore store = RideStore.open(file)) {
            put(store, taken);
        }
        try (Connection older = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = older.createStatement()) {
            statement.execute("ALTER TABLE ride DROP COLUMN decoupling_percent");
            statement.execute("PRAGMA user_version = 1");
        }
        try (RideStore store = RideStore.open(file)) {
            RideNumbers before = store.rides().get(0).judged().numbers();
            assertThat(before.workKJ())
                    .isEqualTo(taken.rides().get(0).judged().numbers().workKJ());
            assertThat(before.decouplingPercent()).isNull();
            put(store, taken);
            assertThat(store.rides().get(0).judged())
                    .isEqualTo(taken.rides().get(0).judged());
        }
    }

    /** The names by which docs/season-store.md and other programs know the columns. */
    @Test
    void theTableOfRidesHasTheColumnsThatAreDocumented() throws Exception {
        Path file = temp.resolve("season.sqlite");
        RideStore.open(file).close();
        List<String> columns = new ArrayList<>();
        try (Connection store = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = store.createStatement();
                ResultSet column =
                        statement.executeQuery("SELECT name || ' ' || type || iif(\"notnull\", ' NOT NULL', '')"
                                + " FROM pragma_table_info('ride') ORDER BY cid")) {
            while (column.next()) {
                columns.add(column.getString(1));
            }
        }
        assertThat(columns)
                .containsExactly(
                        "id INTEGER",
                        "sha256 TEXT NOT NULL",
                        "session_index INTEGER NOT NULL",
                        "analysis_version INTEGER NOT NULL",
                        "format TEXT NOT NULL",
                        "device TEXT",
                        "device_threshold_power_w REAL",
                        "device_threshold_heart_rate_bpm REAL",
                        "device_rider_mass_kg REAL",
                        "start_epoch_s INTEGER NOT NULL",
                        "utc_offset_s INTEGER",
                        "channel_count INTEGER NOT NULL",
                        "elapsed_s INTEGER NOT NULL",
                        "timer_s INTEGER NOT NULL",
                        "moving_s INTEGER NOT NULL",
                        "power_s INTEGER NOT NULL",
                        "distance_m REAL",
                        "ascent_m REAL",
                        "work_kj REAL",
                        "average_power_w REAL",
                        "normalized_power_w REAL",
                        "average_heart_rate_bpm REAL",
                        "maximum_heart_rate_bpm REAL",
                        "efficiency_w_per_beat REAL",
                        "decoupling_percent REAL",
                        "judgement_key TEXT NOT NULL",
                        "threshold_power_w REAL",
                        "threshold_source TEXT",
                        "intensity_factor REAL",
                        "training_stress REAL",
                        "verdict TEXT NOT NULL",
                        "verdict_reason TEXT",
                        "target_w REAL",
                        "cost_low_min REAL",
                        "cost_high_min REAL",
                        "lap_count INTEGER NOT NULL",
                        "device_maximum_heart_rate_bpm REAL",
                        "is_indoor_sport INTEGER",
                        "has_positions INTEGER",
                        "sports INTEGER",
                        "series_sum INTEGER",
                        "check_sum INTEGER",
                        "shows_limit INTEGER",
                        "heart_at_zero_w_bpm REAL",
                        "heart_per_w_bpm REAL",
                        "heart_from_w REAL",
                        "heart_to_w REAL",
                        "shown_drag_area_m2 REAL",
                        "shown_rolling_resistance REAL",
                        "opening_over_target REAL",
                        "fade_percent REAL",
                        "opening_cap_w REAL",
                        "descent_speed_mps REAL");
    }

    private static RideRow only(RideStore store) throws SeasonStoreException {
        assertThat(store.rides()).hasSize(1);
        return store.rides().get(0);
    }

    private static void put(RideStore store, RideIntake.Taken taken) throws SeasonStoreException {
        store.put(
                FileRow.of(
                        taken.file(),
                        String.valueOf(taken.sha256()),
                        null,
                        taken.rides().size()),
                taken.rides());
    }
}
