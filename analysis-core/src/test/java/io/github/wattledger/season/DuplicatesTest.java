package io.github.wattledger.season;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.history.RideTraits;
import io.github.wattledger.load.LoadNumber;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.rider.RideNotes;
import io.github.wattledger.season.DuplicateRide.Reason;
import io.github.wattledger.testing.RealRides;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DuplicatesTest {
    private static final Instant START = Instant.parse("2026-05-01T09:00:00Z");
    private static final int QUARTER = 900;
    private static final List<String> FORMATS = List.of("FIT", "CSV", "GPX");

    /** A ride of so many metres and kilojoules; null where the recording does not say. */
    private static SeasonRide ride(
            String file, String format, Instant start, int seconds, @Nullable Double metres, @Nullable Double work) {
        return ride(file, format, start, seconds, seconds, metres, work, 8);
    }

    private static SeasonRide ride(
            String file,
            String format,
            Instant start,
            int seconds,
            int timerSeconds,
            @Nullable Double metres,
            @Nullable Double workKJ,
            int channels) {
        Map<LoadNumber, Double> values = new EnumMap<>(LoadNumber.class);
        values.put(LoadNumber.ELAPSED_SECONDS, (double) seconds);
        values.put(LoadNumber.TIMER_SECONDS, (double) timerSeconds);
        values.put(LoadNumber.MOVING_SECONDS, (double) timerSeconds);
        if (metres != null) {
            values.put(LoadNumber.DISTANCE, metres);
        }
        if (workKJ != null) {
            values.put(LoadNumber.WORK, workKJ);
        }
        LocalDate day = start.atOffset(ZoneOffset.UTC).toLocalDate();
        return new SeasonRide(
                new SeasonRide.Source(file, file, 0, format, null, start, null, channels),
                day,
                DateDoubt.of(start, day, LocalDate.of(2026, 11, 27)),
                new RideNumbers(workKJ == null ? 0 : timerSeconds, values),
                new RideJudgement(null, null, null, null, Verdict.NOT_JUDGED, null, null, null, null, List.of()),
                List.of(),
                List.of(),
                List.of(),
                false,
                RideTraits.NONE,
                RideNotes.NONE);
    }

    private static List<DuplicateRide> left(SeasonRide... rides) {
        return Duplicates.remove(List.of(rides)).left();
    }

    private static Optional<Reason> reason(SeasonRide one, SeasonRide other) {
        List<DuplicateRide> left = left(one, other);
        assertThat(left(other, one)).isEqualTo(left);
        return left.stream().map(DuplicateRide::reason).findFirst();
    }

    @Nested
    class Clocks {
        /** Minutes from UTC where people live: whole, half and quarter hours (IANA time zone database). */
        @ParameterizedTest
        @ValueSource(ints = {180, -420, 330, 345, 765, 840, -720})
        void aTableInLocalTimeIsTheSameRide(int minutes) {
            SeasonRide fit = ride("a.fit", "FIT", START, 13_018, 137_229.0, 2781.0);
            SeasonRide csv = ride("a.csv", "CSV", START.plusSeconds(60L * minutes), 13_018, 137_229.0, 2781.4);
            assertThat(reason(fit, csv)).contains(Reason.OTHER_CLOCK);
        }

        @Test
        void twoFitFilesHaveTheirTimesInUtc() {
            SeasonRide morning = ride("a.fit", "FIT", START, 3600, 30_000.0, 700.0);
            SeasonRide evening = ride("b.fit", "FIT", START.plusSeconds(8 * 3600), 3600, 30_000.0, 700.0);
            assertThat(reason(morning, evening)).isEmpty();
        }

        /** The same hour on a trainer morning and evening: nothing says more than its length and its work. */
        @Test
        void aClockThatIsNotAZoneAwayIsAnotherRide() {
            SeasonRide morning = ride("a.fit", "FIT", START, 3600, null, 700.0);
            SeasonRide evening = ride("b.csv", "CSV", START.plusSeconds(8 * 3600 + 200), 3600, null, 700.0);
            assertThat(reason(morning, evening)).isEmpty();
        }

        @Test
        void lengthAloneIsNotEnough() {
            SeasonRide one = ride("a.fit", "FIT", START, 3600, null, null);
            SeasonRide other = ride("b.csv", "CSV", START.plusSeconds(7200), 3600, null, null);
            assertThat(reason(one, other)).isEmpty();
        }

        @Test
        void whereADateIsWrongTheNumbersDecide() {
            SeasonRide dated = ride("a.fit", "FIT", START, 3600, 30_000.0, 700.0);
            SeasonRide undated = ride("a.csv", "CSV", Instant.ofEpochSecond(0), 3600, 30_000.0, 700.0);
            SeasonRide another = ride("b.csv", "CSV", Instant.ofEpochSecond(0), 3600, 31_000.0, 700.0);
            assertThat(reason(dated, undated)).contains(Reason.NO_DATE);
            assertThat(reason(dated, another)).isEmpty();
            // Both begin in second 0 of a clock that says nothing.
            assertThat(reason(undated, another)).isEmpty();
        }
    }

    @Nested
    class Devices {
        @Test
        void theWholeOfTwoEqualRecordingsStays() {
            SeasonRide whole = ride("whole.fit", "FIT", START, 10_000, 80_000.0, 2000.0);
            SeasonRide cut = ride("cut.fit", "FIT", START.plusSeconds(1000), 4000, 30_000.0, 800.0);
            assertThat(left(cut, whole)).containsExactly(new DuplicateRide("cut.fit", "whole.fit", Reason.SAME_TIME));
        }

        @Test
        void theRideWithPowerStaysThoughTheOtherHasMoreChannels() {
            SeasonRide power = ride("power.fit", "FIT", START, 3600, 3600, 30_000.0, 700.0, 5);
            SeasonRide watch = ride("watch.fit", "FIT", START.plusSeconds(20), 3650, 3650, 30_100.0, null, 9);
            assertThat(left(power, watch))
                    .containsExactly(new DuplicateRide("watch.fit", "power.fit", Reason.SAME_TIME));
        }

        /** A device that was only paused after the morning ride, and a second device on the evening ride. */
        @Test
        void aRideInTheLongPauseOfAnotherIsARide() {
            SeasonRide day = ride("day.fit", "FIT", START, 36_000, 7200, 60_000.0, 1400.0, 8);
            SeasonRide evening = ride("evening.fit", "FIT", START.plusSeconds(20_000), 5400, 45_000.0, 1000.0);
            assertThat(reason(day, evening)).isEmpty();
        }

        /** The afternoon's ride is only there as a table: its local time is the UTC time of another ride. */
        @Test
        void aLocalClockDoesNotLaunchOneRideIntoAnother() {
            SeasonRide table = ride("a.csv", "CSV", START.plusSeconds(30), 3600, 25_000.0, 600.0);
            SeasonRide fit = ride("b.fit", "FIT", START, 3700, 34_000.0, 800.0);
            assertThat(reason(table, fit)).isEmpty();
        }

        @Test
        void twoHalvesOfOneRideAreKept() {
            SeasonRide first = ride("first.fit", "FIT", START, 5000, 40_000.0, 1000.0);
            SeasonRide second = ride("second.fit", "FIT", START.plusSeconds(4000), 5000, 40_000.0, 1000.0);
            assertThat(reason(first, second)).isEmpty();
        }
    }

    /** The law: two rides that do not overlap are never taken for one because they are equally long. */
    @Test
    void differentRidesOfEqualLengthStayTwo() {
        Random random = new Random(16);
        for (int i = 0; i < 20_000; i++) {
            int seconds = 1200 + random.nextInt(28_000);
            double metres = seconds * (4 + 6 * random.nextDouble());
            double workKJ = seconds * (0.1 + 0.2 * random.nextDouble());
            String format = FORMATS.get(random.nextInt(3));
            String otherFormat = FORMATS.get(random.nextInt(3));
            // On whole quarters of an hour, where a zone might explain it.
            long apart = QUARTER * (long) (1 + seconds / QUARTER + random.nextInt(60));
            SeasonRide one = ride("a", format, START, seconds, metres, workKJ);
            boolean further = random.nextBoolean();
            double factor = 1.02 + 0.3 * random.nextDouble();
            SeasonRide other = ride(
                    "b",
                    otherFormat,
                    START.plusSeconds(apart),
                    seconds,
                    further ? metres * factor : metres,
                    further ? workKJ : workKJ * factor);
            assertThat(reason(one, other)).isEmpty();
            // Equal in everything, but at another time of the hour.
            SeasonRide repeated =
                    ride("b", otherFormat, START.plusSeconds(apart + 3 + random.nextInt(894)), seconds, metres, workKJ);
            assertThat(reason(one, repeated)).isEmpty();
        }
    }

    /** The law: an export of the same recording is found, whatever the zone of its clock. */
    @Test
    void exportsOfOneRecordingAreOneRide() {
        Random random = new Random(17);
        for (int i = 0; i < 5000; i++) {
            int seconds = 1200 + random.nextInt(28_000);
            double metres = seconds * (4 + 6 * random.nextDouble());
            double workKJ = seconds * (0.1 + 0.2 * random.nextDouble());
            long shift = QUARTER * (long) (random.nextInt(113) - 56);
            SeasonRide fit = ride("a", "FIT", START, seconds, metres, workKJ);
            SeasonRide other = ride(
                    "b",
                    FORMATS.get(1 + random.nextInt(2)),
                    START.plusSeconds(shift),
                    seconds + random.nextInt(2),
                    metres * (1 + 0.002 * random.nextDouble()),
                    workKJ * (1 - 0.006 * random.nextDouble()));
            assertThat(reason(fit, other)).isPresent();
        }
    }

    /** Real exports, and one ride on two devices; what is kept is what the recorder itself wrote, or has more channels. */
    @Test
    void realRidesInSeveralFormatsCountOnce(@TempDir Path temp) throws Exception {
        Path real = RealRides.folder();
        Path folder = Files.createDirectory(temp.resolve("rides"));
        List<String> twice = List.of(
                "edge520-race-3h37", "edge520plus-2h06", "edge530-62-laps-2h29", "edge1000-two-long-stops-3h01");
        List<String> names = new ArrayList<>(List.of(
                "edge520plus-2h06.gpx",
                "fenix6-indoor-53min.fit",
                "fenix6-indoor-53min-second-recorder.fit",
                "edge1000-59min.fit"));
        twice.forEach(name -> names.addAll(List.of(name + ".fit", name + ".csv")));
        for (String name : names) {
            Files.copy(real.resolve(name), folder.resolve(name));
        }
        SeasonReview season = SeasonRun.run(SeasonRequest.of(List.of(folder), temp.resolve("store.sqlite")));
        assertThat(season.rides())
                .extracting(ride -> ride.source().file())
                .containsExactlyInAnyOrder(
                        "edge520-race-3h37.fit",
                        "edge520plus-2h06.fit",
                        "edge530-62-laps-2h29.fit",
                        "edge1000-two-long-stops-3h01.fit",
                        "edge1000-59min.fit",
                        "fenix6-indoor-53min-second-recorder.fit");
        assertThat(season.duplicates())
                .contains(
                        new DuplicateRide("edge520-race-3h37.csv", "edge520-race-3h37.fit", Reason.OTHER_CLOCK),
                        new DuplicateRide("edge520plus-2h06.gpx", "edge520plus-2h06.fit", Reason.OTHER_CLOCK),
                        new DuplicateRide(
                                "fenix6-indoor-53min.fit",
                                "fenix6-indoor-53min-second-recorder.fit",
                                Reason.SAME_TIME));
    }
}
