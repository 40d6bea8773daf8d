package io.github.wattledger.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.wattledger.rider.Rider;
import io.github.wattledger.testing.RideFolders;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StoredSeasonTest {
    private static final LocalDate DAY = LocalDate.of(2026, 6, 1);

    @TempDir
    Path temp;

    private Path seasonOf(int... watts) throws Exception {
        Path folder = Files.createDirectory(temp.resolve("rides"));
        for (int i = 0; i < watts.length; i++) {
            int each = watts[i];
            RideFolders.writeRide(
                    folder.resolve(i + ".fit"),
                    Instant.parse("2026-05-0" + (i + 1) + "T08:00:00Z"),
                    3700,
                    second -> each);
        }
        Path store = temp.resolve("season.sqlite");
        SeasonRun.run(SeasonRequest.of(List.of(folder), store));
        return store;
    }

    @Test
    void whatASeasonKnowsOfItsRiderIsWhatItsStoreKnows() throws Exception {
        Path store = seasonOf(200, 210, 190);
        SeasonReview season = SeasonRun.run(SeasonRequest.of(List.of(temp.resolve("rides")), store));
        RiderFromRides fromStore = StoredSeason.rider(store, Rider.UNKNOWN, ZoneOffset.UTC);
        RiderFromRides ofSeason = Objects.requireNonNull(season.rider());
        assertThat(fromStore.sustainable()).isEqualTo(ofSeason.sustainable());
        assertThat(fromStore.moves()).isEqualTo(ofSeason.moves());
        assertThat(fromStore.traits()).isEqualTo(ofSeason.traits());
        assertThat(fromStore.history().thresholdPowerW())
                .isEqualTo(ofSeason.history().thresholdPowerW());
        // The best hour, 210 W, is more than 95 % of 210 W.
        assertThat(Objects.requireNonNull(fromStore.history().threshold()).impliedW())
                .isEqualTo(210);
        assertThat(fromStore.history().day()).isEqualTo(LocalDate.of(2026, 5, 4));
    }

    @Test
    void whereThereIsNoStoreNoneIsMade() {
        Path none = temp.resolve("none.sqlite");
        assertThatThrownBy(() -> StoredSeason.ridesBefore(none, Rider.UNKNOWN, ZoneOffset.UTC, DAY))
                .isInstanceOf(SeasonStoreException.class)
                .hasMessage(none + ": there is no season's store; run 'wattledger season' on the folder first");
        assertThat(none).doesNotExist();
    }

    @Test
    void aStoreOfAnEarlierVersionIsLeftToTheSeason() throws Exception {
        Path store = seasonOf(200);
        try (Connection older = DriverManager.getConnection("jdbc:sqlite:" + store);
                Statement statement = older.createStatement()) {
            statement.execute("PRAGMA user_version = 3");
        }
        assertThatThrownBy(() -> StoredSeason.rider(store, Rider.UNKNOWN, ZoneOffset.UTC))
                .isInstanceOf(SeasonStoreException.class)
                .hasMessageContaining("written by an earlier version");
        SeasonRun.run(SeasonRequest.of(List.of(temp.resolve("rides")), store));
        assertThat(StoredSeason.rider(store, Rider.UNKNOWN, ZoneOffset.UTC).moves())
                .isEmpty();
    }

    @Test
    void aStoreWithoutARideSaysSo() throws Exception {
        Path store = temp.resolve("season.sqlite");
        SeasonRun.run(SeasonRequest.of(List.of(Files.createDirectory(temp.resolve("empty"))), store));
        assertThatThrownBy(() -> StoredSeason.rider(store, Rider.UNKNOWN, ZoneOffset.UTC))
                .hasMessageContaining("holds no ride with a date that can be believed");
    }
}
