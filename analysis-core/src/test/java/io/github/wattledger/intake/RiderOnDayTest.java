package io.github.wattledger.intake;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.history.OwnRides;
import io.github.wattledger.history.PastRide;
import io.github.wattledger.power.ThresholdBasis;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.LongBest;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.ThresholdHistory;
import io.github.wattledger.rig.Measure;
import io.github.wattledger.rig.Position;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Which source of a number wins, within which bounds it is believed, and which day a ride belongs to. */
class RiderOnDayTest {
    private static final LocalDate DAY = LocalDate.of(2026, 6, 14);

    private static RecordingDevice device(
            @Nullable Double thresholdW, @Nullable Double thresholdBpm, @Nullable Double massKg) {
        return new RecordingDevice("Acme Recorder 7", thresholdW, thresholdBpm, null, massKg);
    }

    private static RiderOnDay on(Rider rider, RecordingDevice device) {
        return RiderOnDay.of(rider, device, DAY);
    }

    private static List<String> codes(RiderOnDay onDay) {
        return onDay.notes().stream().map(QualityNote::code).toList();
    }

    @Test
    void theCallerGoesBeforeTheProfileAndThatBeforeTheDeviceAndThatBeforeAnEstimate() {
        RecordingDevice device = device(220.0, 150.0, 80.0);
        Rider profile = Rider.UNKNOWN.withThresholds(
                new ThresholdHistory(List.of(new ThresholdHistory.Entry(DAY.minusDays(9), 240.0, 160.0))));
        RiderOnDay given = on(
                profile.withThresholdPowerW(260).withThresholdHeartRateBpm(170).withMassKg(70), device);
        assertThat(given.thresholdPower()).isEqualTo(new Known(260, Origin.GIVEN));
        assertThat(given.thresholdHeartRate()).isEqualTo(new Known(170, Origin.GIVEN));
        assertThat(given.mass()).isEqualTo(new Known(70, Origin.GIVEN));
        assertThat(on(profile, device).thresholdPower()).isEqualTo(new Known(240, Origin.PROFILE));
        assertThat(on(profile, device).thresholdHeartRate()).isEqualTo(new Known(160, Origin.PROFILE));
        RiderOnDay byDevice = on(Rider.UNKNOWN, device);
        assertThat(byDevice.thresholdPower()).isEqualTo(new Known(220, Origin.DEVICE));
        assertThat(byDevice.thresholdHeartRate()).isEqualTo(new Known(150, Origin.DEVICE));
        assertThat(byDevice.mass()).isEqualTo(new Known(80, Origin.DEVICE));
        assertThat(byDevice.withEstimatedThresholdPowerW(300.0)).isEqualTo(byDevice);
        RiderOnDay nothing = on(Rider.UNKNOWN, RecordingDevice.UNKNOWN);
        assertThat(nothing.thresholdPower()).isNull();
        assertThat(nothing.withEstimatedThresholdPowerW(300.0).thresholdPower())
                .isEqualTo(new Known(300, Origin.ESTIMATED));
        assertThat(nothing.withEstimatedThresholdPowerW(null)).isEqualTo(nothing);
    }

    @Test
    void ownRidesStandBetweenTheProfileAndTheDevice() {
        RecordingDevice device = device(220.0, 150.0, 80.0);
        // An hour at 230 W implies 230 W, and 3 % more.
        OwnRides own =
                OwnRides.of(List.of(PastRide.of(DAY.minusDays(20), 1.5, 200).withBests(null, 230.0)), Rider.UNKNOWN);
        RiderOnDay byRides = RiderOnDay.of(Rider.UNKNOWN, device, DAY, own);
        assertThat(byRides.thresholdPower()).isEqualTo(new Known(1.03 * 230, Origin.OWN_RIDES));
        assertThat(byRides.thresholdBasis()).isEqualTo(ThresholdBasis.OWN_EFFORTS);
        assertThat(byRides.thresholdHeartRate()).isEqualTo(new Known(150, Origin.DEVICE));
        Rider profile = Rider.UNKNOWN.withThresholds(
                new ThresholdHistory(List.of(new ThresholdHistory.Entry(DAY.minusDays(91), 222.0, null))));
        RiderOnDay byProfile = RiderOnDay.of(profile, device, DAY, own);
        assertThat(byProfile.thresholdPower()).isEqualTo(new Known(222, Origin.PROFILE));
        assertThat(byProfile.thresholdBasis()).isEqualTo(ThresholdBasis.OLD);
        // 230 W are more than 3 % above 222 W, and 91 days more than 90.
        assertThat(codes(byProfile)).containsExactly("threshold-old", "threshold-below-own-rides");
        assertThat(codes(RiderOnDay.of(profile, device, DAY))).isEmpty();
        assertThat(RiderOnDay.of(profile.withThresholdPowerW(260), device, DAY, own)
                        .thresholdPower())
                .isEqualTo(new Known(260, Origin.GIVEN));
        RiderOnDay refuted = byRides.withoutOwnRides(device);
        assertThat(refuted.thresholdPower()).isEqualTo(new Known(220, Origin.DEVICE));
        assertThat(codes(refuted)).containsExactly("own-rides-refuted");
    }

    /** Own rides show what a rider could do at least: an easy month does not make a rider weak. */
    @Test
    void aDeviceThatHoldsATenthMoreThanOwnRidesShowCountsUnlessItIsTheFactorys() {
        // 1.03 x 200 W are 206 W: 0.9 of 228.9 W.
        OwnRides own =
                OwnRides.of(List.of(PastRide.of(DAY.minusDays(20), 2.5, 199).withBests(null, 200.0)), Rider.UNKNOWN);
        RiderOnDay near = RiderOnDay.of(Rider.UNKNOWN, device(228.0, null, null), DAY, own);
        assertThat(near.thresholdPowerOrigin()).isEqualTo(Origin.OWN_RIDES);
        assertThat(near.power().endurance()).isNotNull();
        assertThat(near.notes()).isEmpty();
        RiderOnDay far = RiderOnDay.of(Rider.UNKNOWN, device(230.0, null, null), DAY, own);
        assertThat(far.thresholdPower()).isEqualTo(new Known(230, Origin.DEVICE));
        assertThat(far.power().endurance()).as("held against another threshold").isNull();
        assertThat(codes(far)).containsExactly("device-above-own-rides");
        OwnRides easy =
                OwnRides.of(List.of(PastRide.of(DAY.minusDays(20), 1.5, 150).withBests(null, 160.0)), Rider.UNKNOWN);
        // 13 of 43 real rides carry 200 W, what devices are delivered with.
        assertThat(RiderOnDay.of(Rider.UNKNOWN, device(200.0, null, null), DAY, easy)
                        .thresholdPowerOrigin())
                .isEqualTo(Origin.OWN_RIDES);
        assertThat(RiderOnDay.of(Rider.UNKNOWN, device(900.0, null, null), DAY, easy)
                        .thresholdPowerOrigin())
                .isEqualTo(Origin.OWN_RIDES);
    }

    /** The ends of the bounds belong to them: 30 to 700 W, 60 to 230 beats per minute, 25 to 250 kg. */
    @ParameterizedTest
    @CsvSource({"30, 60, 25", "700, 230, 250"})
    void aSettingAtTheEndOfItsBoundsIsBelieved(double watts, double beats, double kg) {
        RiderOnDay onDay = on(Rider.UNKNOWN, device(watts, beats, kg));
        assertThat(onDay.thresholdPowerW()).isEqualTo(watts);
        assertThat(onDay.thresholdHeartRateBpm()).isEqualTo(beats);
        assertThat(onDay.massKg()).isEqualTo(kg);
        assertThat(onDay.notes()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"29, 59, 24.9", "701, 231, 250.1", "5, 0, 10"})
    void aSettingBeyondThemIsIgnoredWithANote(double watts, double beats, double kg) {
        RiderOnDay onDay = on(Rider.UNKNOWN, device(watts, beats, kg));
        assertThat(onDay.thresholdPower()).isNull();
        assertThat(onDay.thresholdHeartRate()).isNull();
        assertThat(onDay.mass()).isNull();
        assertThat(codes(onDay))
                .containsExactly(
                        "device-threshold-power-ignored", "device-threshold-heart-rate-ignored", "device-mass-ignored");
    }

    @Test
    void theNoteNamesTheSettingAndTheBounds() {
        assertThat(on(Rider.UNKNOWN, device(5.0, null, null)).notes())
                .extracting(QualityNote::text)
                .containsExactly("The device holds a threshold power of 5 W, outside 30 to 700 W. It was ignored;"
                        + " correct it on the device, or give the true one.");
    }

    @Test
    void aSettingThatNothingRestsOnLeavesNoNote() {
        Rider known = Rider.UNKNOWN
                .withThresholdPowerW(250)
                .withThresholdHeartRateBpm(165)
                .withMassKg(72);
        assertThat(on(known, device(5.0, 0.0, 10.0)).notes()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY})
    void whatIsNoNumberIsNoSetting(double number) {
        RiderOnDay onDay = on(Rider.UNKNOWN, device(number, number, number));
        assertThat(onDay.thresholdPower()).isNull();
        assertThat(onDay.mass()).isNull();
        assertThat(onDay.notes()).isEmpty();
    }

    @Test
    void aWrongMassOfTheDeviceLeavesATypicalRig() {
        assertThat(on(Rider.UNKNOWN, device(null, null, 10.0))
                        .rig(Position.HOODS)
                        .riderKg()
                        .origin())
                .isEqualTo(Measure.Origin.TYPICAL);
        assertThat(on(Rider.UNKNOWN, device(null, null, 80.0))
                        .rig(Position.HOODS)
                        .riderKg())
                .isEqualTo(Measure.exactly(80, Measure.Origin.DEVICE));
    }

    @Test
    void aThresholdOfALaterDayLeavesANote() {
        Rider later = Rider.UNKNOWN.withThresholds(
                new ThresholdHistory(List.of(new ThresholdHistory.Entry(DAY.plusDays(1), 240.0, null))));
        assertThat(codes(on(later, RecordingDevice.UNKNOWN))).containsExactly("threshold-later-than-ride");
        assertThat(codes(on(later.withThresholdPowerW(250), RecordingDevice.UNKNOWN)))
                .isEmpty();
    }

    @Test
    void longBestsOfEarlierDaysCount() {
        Rider rider = Rider.UNKNOWN.withLongBests(List.of(
                new LongBest(3600, 240, DAY.minusDays(1)),
                new LongBest(7200, 230, DAY),
                new LongBest(10_800, 220, null)));
        assertThat(on(rider, RecordingDevice.UNKNOWN).earlierLongBests())
                .extracting(LongBest::seconds)
                .containsExactly(3600, 10_800);
    }

    /**
     * By the clocks of the world: at 05:00 UTC on 15 June it is 22:00 of the 14th in Los Angeles (UTC-7), and at 22:30 UTC
     * on the 14th half past one of the 15th, three hours further east.
     */
    @ParameterizedTest
    @CsvSource({
        "2026-06-15T05:00:00Z, , America/Los_Angeles, 2026-06-14",
        "2026-06-15T05:00:00Z, , UTC, 2026-06-15",
        "2026-06-15T05:00:00Z, 0, America/Los_Angeles, 2026-06-15",
        "2026-06-14T22:30:00Z, 10800, UTC, 2026-06-15",
        "2026-06-14T22:30:00Z, 10800, America/Los_Angeles, 2026-06-15",
        "2026-06-14T22:30:00Z, 2147483647, UTC, 2026-06-14"
    })
    void theDayIsThatOfTheRecordingsClockOrElseOfTheZone(
            String start, @Nullable Integer offset, String zone, String day) {
        assertThat(RiderOnDay.localDay(Instant.parse(start), offset, ZoneId.of(zone)))
                .isEqualTo(LocalDate.parse(day));
    }

    @Test
    void anOpenedRideKnowsItsDay() {
        OpenedRide opened = OpenedRide.of(Ride.ofWatts(200, 200), RecordingDevice.UNKNOWN, 3600);
        assertThat(opened.localDay(ZoneOffset.UTC)).isEqualTo(LocalDate.of(1970, 1, 1));
        assertThat(opened.riderOnDay(Rider.UNKNOWN, ZoneOffset.UTC).day()).isEqualTo(LocalDate.of(1970, 1, 1));
    }

    /**
     * By hand: in 2026 whoever was born in 2008 turns 18, on a day that the year does not name; whoever was born in 2007 was
     * 18 before the year began.
     */
    @ParameterizedTest
    @CsvSource({"2014, true", "2009, true", "2008, true", "2007, false", "1950, false"})
    void aRiderIsTakenForAMinorUpToTheEndOfTheYearOfComingOfAge(int birthYear, boolean mayBe) {
        Rider rider = Rider.UNKNOWN.withBirthYear(birthYear);
        for (LocalDate day : List.of(LocalDate.of(2026, 1, 1), LocalDate.of(2026, 12, 31))) {
            assertThat(RiderOnDay.of(rider, RecordingDevice.UNKNOWN, day).mayBeUnder18())
                    .as("%s", day)
                    .isEqualTo(mayBe);
        }
        assertThat(on(Rider.UNKNOWN, RecordingDevice.UNKNOWN).mayBeUnder18()).isFalse();
    }
}
