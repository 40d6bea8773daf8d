package io.github.wattledger.season;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.pacing.JudgementLimit;
import io.github.wattledger.pacing.JudgementLimits;
import io.github.wattledger.rider.LongBest;
import io.github.wattledger.rider.RideNotes;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.ThresholdHistory;
import io.github.wattledger.rider.Trial;
import io.github.wattledger.testing.RideFolders;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The law: after each kind of change, one by one, a season with a store that was up to date before is the season of a new
 * store. And where nothing has changed, no ride is looked at again.
 */
class JudgementBasisTest {
    private static final LocalDate FIRST = LocalDate.of(2025, 3, 1);
    private static final Rider RIDER = Rider.UNKNOWN.withMassKg(70);

    @TempDir
    Path temp;

    private Path folder;
    private Path store;

    @BeforeEach
    void prepare() throws IOException {
        folder = Files.createDirectory(temp.resolve("rides"));
        store = temp.resolve("season.sqlite");
        write("hard", 0, 9000, 215);
        write("long", 20, 9600, 190);
        write("short", 40, 3000, 160);
        write("last", 60, 8000, 200);
    }

    /** A ride that fades, so that its judgement depends on the threshold; at 23:30 UTC, so that its day depends on the zone. */
    private void write(String name, int day, int seconds, int watts) {
        RideFolders.writeRide(
                folder.resolve(name + ".fit"),
                LocalDateTime.of(FIRST, LocalTime.of(23, 30)).plusDays(day).toInstant(ZoneOffset.UTC),
                seconds,
                second -> watts - second / 200 + second / 7 % 5,
                RideFolders.Settings.NONE);
    }

    private SeasonRequest request() {
        return SeasonRequest.of(List.of(folder), store).withRider(RIDER).withToday(FIRST.plusDays(400));
    }

    private SeasonReview ofNewStore(SeasonRequest request) throws Exception {
        return SeasonRun.run(new SeasonRequest(
                request.folders(),
                Files.createTempDirectory(temp, "new").resolve("s"),
                request.rider(),
                request.limits(),
                request.zone(),
                request.asOf(),
                request.today(),
                request.notes(),
                request.forgetGone()));
    }

    private String basis() throws SeasonStoreException {
        try (RideStore open = RideStore.open(store)) {
            return open.basis().orElseThrow();
        }
    }

    private static Map<String, UnaryOperator<SeasonRequest>> changesOfTheRequest() {
        Map<String, UnaryOperator<SeasonRequest>> changes = new LinkedHashMap<>();
        changes.put("mass", request -> request.withRider(RIDER.withMassKg(80)));
        changes.put("threshold", request -> request.withRider(RIDER.withThresholdPowerW(230)));
        changes.put("threshold of a date", request -> request.withRider(dated(250, FIRST)));
        changes.put("another threshold of that date", request -> request.withRider(dated(220, FIRST)));
        changes.put("that threshold from another date", request -> request.withRider(dated(250, FIRST.plusDays(30))));
        changes.put("heart rate", request -> request.withRider(RIDER.withThresholdHeartRateBpm(170)));
        changes.put("race day", request -> request.withRider(RIDER.withRaceDays(Set.of(FIRST.plusDays(40)))));
        changes.put("all-out day", request -> request.withRider(RIDER.withAllOutDays(Set.of(FIRST))));
        changes.put("trial", request -> request.withRider(RIDER.withTrials(List.of(new Trial(FIRST, 1200, null)))));
        changes.put(
                "long bests",
                request ->
                        request.withRider(RIDER.withLongBests(List.of(new LongBest(7200, 210, FIRST.minusDays(9))))));
        changes.put(
                "limits", request -> request.withLimits(JudgementLimits.USUAL.with(JudgementLimit.FADE_PERCENT, 1)));
        changes.put("zone", request -> request.withZone(ZoneId.of("Asia/Tokyo")));
        changes.put("an earlier today", request -> request.withToday(FIRST.plusDays(30)));
        changes.put(
                "notes of one ride",
                request -> request.withNotes(path -> path.endsWith("long.fit") ? noted("tired") : RideNotes.NONE));
        changes.put(
                "other notes of that ride",
                request -> request.withNotes(path -> path.endsWith("long.fit") ? noted("fresh") : RideNotes.NONE));
        changes.put("no notes of any ride", request -> request.withNotes(path -> RideNotes.NONE));
        return changes;
    }

    private static Rider dated(double watts, LocalDate from) {
        return RIDER.withThresholds(new ThresholdHistory(List.of(new ThresholdHistory.Entry(from, watts, null))));
    }

    private static RideNotes noted(String feel) {
        return new RideNotes(null, null, feel, null, List.of(), List.of(), List.of(), null);
    }

    @Test
    void noChangeOfTheRequestIsMissed() throws Exception {
        SeasonRun.run(request());
        String before = basis();
        for (Map.Entry<String, UnaryOperator<SeasonRequest>> change :
                changesOfTheRequest().entrySet()) {
            SeasonRequest changed = change.getValue().apply(request());
            assertThat(SeasonRun.run(changed)).as(change.getKey()).isEqualTo(ofNewStore(changed));
            if (!change.getKey().startsWith("no notes")) {
                assertThat(basis()).as(change.getKey()).isNotEqualTo(before);
            }
            assertThat(SeasonRun.run(changed)).as(change.getKey() + ", again").isEqualTo(ofNewStore(changed));
            before = basis();
        }
    }

    @Test
    void noChangeOfTheFilesIsMissed() throws Exception {
        SeasonRun.run(request());
        List<String> bases = new ArrayList<>(List.of(basis()));
        write("added", 10, 9300, 230);
        bases.add(afterFilesChanged("a ride added"));
        write("hard", 0, 9000, 240);
        bases.add(afterFilesChanged("a ride replaced"));
        write("hard", 5, 9000, 240);
        bases.add(afterFilesChanged("a ride of another day"));
        Files.delete(folder.resolve("hard.fit"));
        bases.add(afterFilesChanged("a ride removed"));
        assertThat(bases).doesNotHaveDuplicates();
    }

    private String afterFilesChanged(String what) throws Exception {
        SeasonRequest request = request().forgettingGone();
        SeasonReview season = SeasonRun.run(request);
        assertThat(season).as(what).isEqualTo(ofNewStore(request));
        assertThat(SeasonRun.run(request)).as(what + ", again").isEqualTo(season);
        return basis();
    }

    @Test
    void noDamageIsMissed() throws Exception {
        SeasonReview sound = SeasonRun.run(request());
        for (String damage : List.of(
                "UPDATE ride SET threshold_power_w = threshold_power_w + 1 WHERE id = 2",
                "UPDATE ride SET judgement_key = 'ffffffffffffffff' WHERE id = 1",
                "UPDATE riding_best SET watts = 400 WHERE ride_id = 3 AND seconds = 1200",
                "DELETE FROM finding",
                "DELETE FROM ride WHERE id = 4",
                "DELETE FROM file WHERE name = 'hard.fit'",
                "UPDATE judged SET basis = replace(basis, 'a', 'b')",
                "DELETE FROM judged")) {
            change(damage);
            assertThat(SeasonRun.run(request())).as(damage).isEqualTo(sound);
        }
    }

    private void change(String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + store);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    /** A ride that an interrupted run has judged for another rider is judged anew. */
    @Test
    void judgementsForAnotherRiderAreNotTakenForThisOnes() throws Exception {
        SeasonReview sound = SeasonRun.run(request());
        String basis = basis();
        SeasonRun.run(request().withRider(RIDER.withThresholdPowerW(230)));
        // As if that run had ended before it could say that all rides are judged by what it was given.
        try (RideStore open = RideStore.open(store)) {
            open.putBasis(basis);
        }
        assertThat(SeasonRun.run(request())).isEqualTo(sound);
    }

    /** What shows that nothing is looked at: judgements for another rider pass where the store says that they are right. */
    @Test
    void noRideIsLookedAtWhileTheBasisIsTheSame() throws Exception {
        SeasonRun.run(request());
        Rider other = RIDER.withThresholdPowerW(230);
        Judge judge = new Judge(request().withRider(other));
        try (RideStore open = RideStore.open(store)) {
            SortedMap<StoredRide.Key, RideRow> rides = new TreeMap<>();
            open.rides().forEach(ride -> rides.put(ride.key(), ride));
            Set<String> contents = Set.copyOf(
                    rides.keySet().stream().map(StoredRide.Key::sha256).toList());
            JudgementBasis basis = new JudgementBasis(judge, request().today(), contents, Map.of());
            open.putBasis(String.valueOf(basis.of(rides)));
        }
        assertThat(SeasonRun.run(request().withRider(other)).rides())
                .allSatisfy(
                        ride -> assertThat(ride.judgement().thresholdPowerW()).isNotEqualTo(230.0));
    }
}
