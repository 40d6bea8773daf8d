package io.github.wattledger.pacing;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.pacing.KnownThreshold.Doubt;
import io.github.wattledger.pacing.Occasion.Kind;
import io.github.wattledger.pacing.Occasion.Reason;
import io.github.wattledger.pacing.Occasion.WorkLap;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.power.RideCriticalPower;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.power.ThresholdEstimate;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.ReadResult;
import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.testing.RealRides;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What real rides were. The expected outcome of each is what a person read from its power, heart rate, speed, altitude and
 * laps before this code was there; only rides that lie far from every limit are here.
 */
class OccasionOfRealRidesTest {
    private static final int HOUR_SECONDS = 3600;

    /** A real ride with all that decides what it was. */
    record RealRide(Ride ride, RacedPart part, KnownThreshold threshold, int sports) {
        Occasion occasion(boolean isIndoorBySport) {
            Double watts = threshold.powerW();
            int ridingSeconds = part.movingSeconds(ride);
            Double guideW = watts == null || ridingSeconds < SustainablePower.SHORTEST_GUIDE_SECONDS
                    ? null
                    : (Double) SustainablePower.guideW(watts, ridingSeconds);
            return decide(new Circumstances(
                    ride,
                    part.interval(),
                    isIndoorBySport,
                    ride.has(Channel.LATITUDE),
                    sports,
                    threshold.isKnown(),
                    guideW,
                    Effort.AUTO,
                    false));
        }
    }

    /** Rides read before: reading and the curve of a ride take most of the time of these tests. */
    private static final Map<String, RealRide> READ = new ConcurrentHashMap<>();

    private static RealRide read(String name, @Nullable Double givenW) throws UnreadableRideException {
        String key = name + " " + givenW;
        RealRide before = READ.get(key);
        RealRide ride = before == null ? readAnew(name, givenW) : before;
        READ.put(key, ride);
        return ride;
    }

    private static RealRide readAnew(String name, @Nullable Double givenW) throws UnreadableRideException {
        Path file = RealRides.file(name);
        ReadResult read = RideFiles.read(file, ReadOptions.DEFAULT);
        Recording recording = read.recordings().stream()
                .filter(Recording::isCycling)
                .findFirst()
                .orElse(read.recordings().get(0));
        int sports = (int) read.recordings().stream()
                .map(Recording::sport)
                .filter(Objects::nonNull)
                .filter(sport -> !sport.equals("transition"))
                .distinct()
                .count();
        Ride ride = Cleaning.clean(recording).ride();
        MeanMaximalCurve curve = MeanMaximalCurve.of(ride);
        Double deviceW = recording.device().thresholdPowerW();
        Double knownW = givenW != null ? givenW : deviceW;
        ThresholdEstimate estimate = knownW != null
                ? null
                : ThresholdEstimate.of(curve, RideCriticalPower.ofRide(ride, curve, null))
                        .orElse(null);
        Double anyW = knownW != null ? knownW : estimate == null ? null : (Double) estimate.watts();
        RacedPart part = RacedPart.find(ride, anyW);
        Double bestHourW = curve.longestSeconds() < HOUR_SECONDS ? null : (Double) curve.bestWatts(HOUR_SECONDS);
        KnownThreshold.Ridden ridden = new KnownThreshold.Ridden(
                ride, part.interval(), bestHourW, recording.device().maximumHeartRateBpm());
        KnownThreshold threshold = anyW == null
                ? KnownThreshold.none()
                : givenW != null
                        ? KnownThreshold.ofRider(anyW, ridden)
                        : deviceW != null
                                ? KnownThreshold.ofDevice(anyW, ridden)
                                : KnownThreshold.estimated(anyW, ridden);
        return new RealRide(ride, part, threshold, Math.max(1, sports));
    }

    @ParameterizedTest
    @CsvSource({
        // 137 km at 38 km/h without a stop.
        "edge520-race-3h37.fit, HARD_FOR_ITS_LENGTH",
        // 62 timed laps of work and rest; twice 20 min hard with rests; eight sprints.
        "edge530-62-laps-2h29.fit, LAPS_OF_WORK_AND_REST",
        "edge810-pedals-1h18.fit, LAPS_OF_WORK_AND_REST",
        "watch-indoor-48min.fit, LAPS_OF_WORK_AND_REST",
        "fenix6-indoor-53min-second-recorder.fit, LAPS_OF_WORK_AND_REST",
        // 57 stops of up to 27 min; 30 stops in town.
        "big-endian-6h33-57-stops.fit, LONG_STOPS",
        "edge530-35-stops-2h49.fit, MANY_STOPS",
        // No effort anywhere.
        "edge1000-59min.fit, BELOW_GUIDE",
        "edgemtb-1h58.fit, BELOW_GUIDE",
        // The device is set to 200 W; the tables and the watch hold no threshold at all.
        "edge510-default-threshold-54min.fit, THRESHOLD_NOT_KNOWN",
        "edge520-race-3h37.csv, THRESHOLD_NOT_KNOWN",
        "edge520plus-2h06.csv, THRESHOLD_NOT_KNOWN",
        "edge520plus-2h06.gpx, THRESHOLD_NOT_KNOWN",
        "watch-power-no-heart-rate-2h55.fit, THRESHOLD_NOT_KNOWN",
        // No power meter, and half of the time stopped; and a race of three sports whose bike leg lasts 26 min.
        "bryton-four-second-no-power-2h01.fit, LONG_STOPS",
        "watch-altitude-wanders-2h26.fit, LONG_STOPS",
        "coros-zero-placeholders-1h01.fit, NO_POWER",
        "edge25-variable-interval-no-power-2h07.fit, NO_POWER",
        "triathlon-five-sessions-summary-last.fit, UNDER_FORTY_MINUTES"
    })
    void outdoors(String name, Reason reason) throws UnreadableRideException {
        assertThat(read(name, null).occasion(false).reason()).isEqualTo(reason);
    }

    /** Neither position nor speed. */
    @Test
    void indoorsWithoutAnythingThatMoves() throws UnreadableRideException {
        assertThat(read("fenix6-indoor-53min.fit", null).occasion(false).reason())
                .isEqualTo(Reason.NOTHING_MOVED);
    }

    /** A trainer gives speed; the file's session names the sub-sport indoor cycling. */
    @Test
    void indoorsByTheSubSport() throws UnreadableRideException {
        assertThat(read("indoor-spikes-1h16.fit", null).occasion(true).reason()).isEqualTo(Reason.INDOOR_SPORT);
    }

    /** Laps of work say more about a ride than the place does. */
    @ParameterizedTest
    @ValueSource(strings = {"watch-indoor-48min.fit", "fenix6-indoor-53min-second-recorder.fit"})
    void aSessionIndoorsIsASession(String name) throws UnreadableRideException {
        assertThat(read(name, null).occasion(true).kind()).isEqualTo(Kind.SESSION);
    }

    /** 200 W on the device. */
    @ParameterizedTest
    @ValueSource(
            strings = {"edge510-default-threshold-54min.fit", "watch-indoor-48min.fit", "maker-w-half-power-1h21.fit"})
    void aFactorySettingIsNoThreshold(String name) throws UnreadableRideException {
        assertThat(read(name, null).threshold().doubt()).isEqualTo(Doubt.FACTORY_SETTING);
    }

    /** Set by the rider: two of them rode above the guide's range, which refutes nothing. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "edge520-race-3h37.fit",
                "edge530-35-stops-2h49.fit",
                "edge520plus-2h06.fit",
                "edge530-62-laps-2h29.fit",
                "edge810-pedals-1h18.fit",
                "edge-6h11-168km.fit",
                "big-endian-6h33-57-stops.fit",
                "edge1000-59min.fit",
                "edgemtb-1h58.fit"
            })
    void aSettingOfTheRiderIsKnown(String name) throws UnreadableRideException {
        assertThat(read(name, null).threshold().isKnown()).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"edge520-race-3h37.csv", "edge520plus-2h06.gpx", "watch-power-no-heart-rate-2h55.fit"})
    void anEstimateIsNotKnown(String name) throws UnreadableRideException {
        assertThat(read(name, null).threshold().isKnown()).isFalse();
    }

    /** The table of the race lacks the threshold that its device knew: 300 W. */
    @Test
    void aThresholdThatIsGivenMakesTheTableOfTheRaceARace() throws UnreadableRideException {
        assertThat(read("edge520-race-3h37.csv", 300.0).occasion(false).kind()).isEqualTo(Kind.RACE);
    }

    /** Counted by hand in the laps as the devices stored them. */
    @Test
    void findsTheLapsOfWork() throws UnreadableRideException {
        assertThat(read("edge530-62-laps-2h29.fit", null).occasion(false).workLaps())
                .hasSize(23);
        assertThat(read("watch-indoor-48min.fit", null).occasion(false).workLaps())
                .hasSize(8);
        List<WorkLap> twice =
                read("edge810-pedals-1h18.fit", null).occasion(false).workLaps();
        assertThat(twice).extracting(WorkLap::number).containsExactly(5, 7);
        assertThat(twice).allSatisfy(lap -> assertThat(lap.seconds()).isBetween(1195, 1205));
    }

    private static Occasion decide(Circumstances circumstances) {
        return OccasionRules.decide(circumstances, JudgementLimits.USUAL);
    }
}
