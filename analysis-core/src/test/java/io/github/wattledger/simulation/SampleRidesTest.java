package io.github.wattledger.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.garmin.fit.Decode;
import com.garmin.fit.FitRuntimeException;
import com.garmin.fit.Mesg;
import com.garmin.fit.MesgNum;
import com.garmin.fit.RecordMesg;
import com.garmin.fit.SessionMesg;
import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.ride.Interval;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SampleRidesTest {
    private static final Path FOLDER = Path.of("..", "sample-rides");
    private static final int LARGEST_BYTES = 1_000_000;
    private static final Map<String, byte[]> FILES = SampleRides.files();

    private static byte[] bytes(String name) {
        byte[] bytes = FILES.get(name);
        if (bytes == null) {
            throw new AssertionError("no sample file " + name);
        }
        return bytes;
    }

    private static List<Mesg> decode(byte[] bytes) {
        List<Mesg> messages = new ArrayList<>();
        decodeInto(messages, bytes);
        return messages;
    }

    private static void decodeInto(List<Mesg> messages, byte[] bytes) {
        new Decode().read(new ByteArrayInputStream(bytes), messages::add);
    }

    private static List<RecordMesg> records(List<Mesg> messages) {
        return messages.stream()
                .filter(message -> message.getNum() == MesgNum.RECORD)
                .map(RecordMesg::new)
                .toList();
    }

    private static SessionMesg session(List<Mesg> messages) {
        return messages.stream()
                .filter(message -> message.getNum() == MesgNum.SESSION)
                .map(SessionMesg::new)
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(strings = {SampleRides.OVER_HARD_START, SampleRides.EVEN_PACED, SampleRides.DAMAGED})
    void committedFileIsWhatTheProgramWrites(String name) throws IOException {
        assertThat(Files.readAllBytes(FOLDER.resolve(name))).isEqualTo(bytes(name));
        assertThat(bytes(name)).hasSizeLessThan(LARGEST_BYTES);
    }

    private static final String WRITTEN_BY_HAND = ".notes.toml";

    /** Compared unpacked: what a gzip file's bytes are is up to the machine's compressor. */
    @Test
    void committedSeasonIsWhatTheProgramWrites() throws IOException {
        Path season = FOLDER.resolve("season");
        Map<String, byte[]> files = SeasonSamples.files();
        long total = 0;
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            byte[] committed = Files.readAllBytes(season.resolve(file.getKey()));
            total += committed.length;
            assertThat(unpacked(committed)).as(file.getKey()).isEqualTo(unpacked(file.getValue()));
        }
        assertThat(total).isLessThan(1_500_000);
        try (Stream<Path> there = Files.list(season)) {
            assertThat(there.map(path -> path.getFileName().toString())
                            .filter(name -> !name.startsWith(".") && !name.endsWith(WRITTEN_BY_HAND)))
                    .containsExactlyInAnyOrderElementsOf(files.keySet());
        }
    }

    private static byte[] unpacked(byte[] content) throws IOException {
        if (content[0] != 0x1F) {
            return content;
        }
        try (GZIPInputStream gzip = new GZIPInputStream(new ByteArrayInputStream(content))) {
            return gzip.readAllBytes();
        }
    }

    @Test
    void twiceTheSameBytes() {
        assertThat(FitRideWriter.write(SampleRides.overHardStart())).isEqualTo(bytes(SampleRides.OVER_HARD_START));
    }

    /** The independent reader here is the public FIT SDK's decoder. */
    @Nested
    class Decoded {
        @Test
        void everyRecordSaysWhatTheTapeSays() {
            RideTape tape = SampleRides.overHardStart();
            List<RecordMesg> records = records(decode(bytes(SampleRides.OVER_HARD_START)));

            assertThat(records).hasSameSizeAs(tape.samples());
            for (int i = 0; i < records.size(); i++) {
                assertSame(records.get(i), tape.samples().get(i));
            }
        }

        private static void assertSame(RecordMesg record, RecordedSample sample) {
            assertThat(record.getTimestamp().getDate().toInstant().getEpochSecond())
                    .isEqualTo(sample.epochSecond());
            assertThat(record.getFieldIntegerValue(RecordMesg.PowerFieldNum))
                    .isEqualTo(sample.hasPower() ? (Integer) (int) sample.powerW() : null);
            assertThat((double) record.getHeartRate()).isEqualTo(sample.heartRateBpm());
            assertThat((double) record.getSpeed()).isCloseTo(sample.speedMps(), within(6e-4));
            assertThat((double) record.getAltitude()).isCloseTo(sample.altitudeM(), within(1e-3));
            // A float of the SDK resolves 1/64 m beyond 131 km.
            assertThat((double) record.getDistance()).isCloseTo(sample.distanceM(), within(0.03));
            assertThat(record.getPositionLat() / Math.pow(2, 31) * 180)
                    .isCloseTo(sample.latitudeDegrees(), within(1e-7));
            assertThat(record.getPositionLong() / Math.pow(2, 31) * 180)
                    .isCloseTo(sample.longitudeDegrees(), within(1e-7));
        }

        @Test
        void sessionHoldsTheTotals() {
            RideTape tape = SampleRides.evenPaced();
            SessionMesg session = session(decode(bytes(SampleRides.EVEN_PACED)));
            DeviceTotals totals = tape.totals().toDeviceTotals();

            assertThat(session.getThresholdPower()).isEqualTo(250);
            assertThat((double) session.getTotalElapsedTime()).isEqualTo(totals.elapsedSeconds());
            assertThat((double) session.getTotalTimerTime()).isEqualTo(totals.timerSeconds());
            assertThat(session.getTotalWork() / 1000.0).isEqualTo(totals.workKJ());
            assertThat((double) session.getNormalizedPower()).isEqualTo(totals.normalizedPowerW());
            assertThat((double) session.getIntensityFactor())
                    .isCloseTo(session.getNormalizedPower() / 250.0, within(0.003));
        }

        @Test
        void workCounterIsOnlyInTheEvenRide() {
            List<RecordMesg> even = records(decode(bytes(SampleRides.EVEN_PACED)));
            List<RecordMesg> hard = records(decode(bytes(SampleRides.OVER_HARD_START)));

            assertThat(hard).allMatch(record -> record.getAccumulatedPower() == null);
            long previous = 0;
            for (RecordMesg record : even) {
                long increaseJ = record.getAccumulatedPower() - previous;
                assertThat((double) increaseJ).isCloseTo(record.getPower(), within(1.0));
                previous = record.getAccumulatedPower();
            }
        }
    }

    /** What the README promises of the two races. */
    @Nested
    class Scenarios {
        private final RideTape hardTape = SampleRides.overHardStart();
        private final RideTape evenTape = SampleRides.evenPaced();
        private final RaceTruth hard = RaceTruth.of(hardTape);
        private final RaceTruth even = RaceTruth.of(evenTape);

        @Test
        void bothWaitForTheSameGun() {
            assertThat(hard.raceStartSecond()).isEqualTo(726).isEqualTo(even.raceStartSecond());
            for (int second = 500; second < 726; second++) {
                assertThat(hardTape.samples().get(second).powerW()).isZero();
                assertThat(hardTape.samples().get(second).speedMps()).isZero();
            }
            assertThat(hardTape.samples().get(726).powerW()).isPositive();
        }

        @Test
        void oneBeginsTooHardAndFades() {
            assertThat(hard.openingNormalizedPowerW() / hard.targetW()).isBetween(1.30, 1.40);
            assertThat(hard.restNormalizedPowerW()).isLessThan(0.9 * hard.targetW());
            double left = hard.sixthPedalledW().get(5) / hard.sixthPedalledW().get(1);
            assertThat(left).isBetween(0.80, 0.88);
            assertThat(heartRateAtEqualPower(hardTape, hard)).isGreaterThan(1.03);
        }

        @Test
        void theOtherIsPacedEvenly() {
            assertThat(even.openingNormalizedPowerW() / even.targetW()).isBetween(1.0, 1.05);
            double othersW = even.sixthMeanW().subList(0, 5).stream()
                    .mapToDouble(Double::doubleValue)
                    .average()
                    .orElseThrow();
            assertThat(even.sixthMeanW().get(5) / othersW).isBetween(0.95, 1.05);
            assertThat(even.surgeCount()).isLessThan(5);
            assertThat(heartRateAtEqualPower(evenTape, even)).isBetween(0.97, 1.03);
        }

        @Test
        void evenPacingIsFasterForTheSameNormalizedPower() {
            assertThat(even.raceMovingSeconds()).isLessThan(hard.raceMovingSeconds() - 600);
            assertThat(even.raceNormalizedPowerW())
                    .isCloseTo(hard.raceNormalizedPowerW(), within(0.02 * hard.raceNormalizedPowerW()));
        }

        @Test
        void truthAgreesWithItself() {
            assertThat(hard.targetW()).isCloseTo(250 / Math.pow(hard.raceMovingSeconds() / 3600.0, 0.16), within(1e-9));
            // No halt before the first feed station, so that the opening's end is its moving seconds after the gun.
            assertThat(hard.openingEndSecond() - hard.raceStartSecond()).isEqualTo(hard.raceMovingSeconds() / 6);
            assertThat(hard.raceEndSecond() - hard.raceStartSecond())
                    .isEqualTo(hard.raceMovingSeconds() + hard.standingSeconds() + hard.pausedSeconds());
            Interval opening = new Interval(hard.raceStartSecond(), hard.openingEndSecond());
            double excessKJ = 0;
            for (int second = opening.fromSecond(); second < opening.toSecond(); second++) {
                excessKJ += (hardTape.samples().get(second).powerW() - hard.targetW()) / 1000;
            }
            assertThat(hard.openingExcessKJ()).isCloseTo(excessKJ, within(1e-6)).isGreaterThan(150);
        }

        /**
         * Heart rate regressed on power with a lag of 60 s, from minute 20 to half of the race; actual over predicted
         * mean in the last third, above 0.4 times threshold.
         */
        private static double heartRateAtEqualPower(RideTape tape, RaceTruth truth) {
            List<RecordedSample> race = tape.samples()
                    .subList(truth.raceStartSecond(), tape.samples().size());
            double[] lagged = new double[race.size()];
            double state = 0;
            for (int i = 0; i < lagged.length; i++) {
                double watts = race.get(i).hasPower() ? race.get(i).powerW() : state;
                state += (watts - state) / 60;
                lagged[i] = state;
            }
            double[] line = leastSquares(race, lagged, 1200, race.size() / 2);
            double actual = 0;
            double predicted = 0;
            for (int i = race.size() * 2 / 3; i < race.size(); i++) {
                if (lagged[i] > 100) {
                    actual += race.get(i).heartRateBpm();
                    predicted += line[0] + line[1] * lagged[i];
                }
            }
            return actual / predicted;
        }

        private static double[] leastSquares(List<RecordedSample> race, double[] x, int from, int to) {
            double n = to - from;
            double sumX = 0;
            double sumY = 0;
            double sumXx = 0;
            double sumXy = 0;
            for (int i = from; i < to; i++) {
                double y = race.get(i).heartRateBpm();
                sumX += x[i];
                sumY += y;
                sumXx += x[i] * x[i];
                sumXy += x[i] * y;
            }
            double slope = (n * sumXy - sumX * sumY) / (n * sumXx - sumX * sumX);
            return new double[] {(sumY - slope * sumX) / n, slope};
        }
    }

    @Nested
    class Damaged {
        @Test
        void endsWithinARecord() {
            List<Mesg> messages = new ArrayList<>();
            assertThatThrownBy(() -> decodeInto(messages, bytes(SampleRides.DAMAGED)))
                    .isInstanceOf(FitRuntimeException.class);

            assertThat(records(messages)).hasSize(SampleRides.DAMAGED_CUT_SAMPLE);
            assertThat(messages).noneMatch(message -> message.getNum() == MesgNum.SESSION);
        }

        @Test
        void holdsTheFaultsItPromises() {
            List<RecordedSample> samples = SampleRides.damaged().samples().subList(0, SampleRides.DAMAGED_CUT_SAMPLE);

            assertThat(samples).filteredOn(sample -> sample.powerW() > 2500).hasSize(3);
            assertThat(samples).filteredOn(sample -> !sample.hasPower()).hasSize(120);
            assertThat(samples).filteredOn(sample -> sample.heartRateBpm() == 0).hasSize(20);
            assertThat(samples)
                    .filteredOn(sample -> Double.isNaN(sample.heartRateBpm()))
                    .hasSize(45);
            assertThat(samples.subList(1800, 1980))
                    .extracting(RecordedSample::heartRateBpm)
                    .containsOnly(samples.get(1800).heartRateBpm());
        }

        @Test
        void itsClockErrsAsPromised() {
            List<RecordedSample> samples = SampleRides.damaged().samples().subList(0, SampleRides.DAMAGED_CUT_SAMPLE);
            int backwards = 0;
            int repeated = 0;
            Set<Long> seconds = new HashSet<>();
            for (int i = 0; i < samples.size(); i++) {
                seconds.add(samples.get(i).epochSecond());
                long step = i == 0
                        ? 1
                        : samples.get(i).epochSecond() - samples.get(i - 1).epochSecond();
                backwards += step < 0 ? 1 : 0;
                repeated += step == 0 ? 1 : 0;
            }
            assertThat(backwards).isEqualTo(1);
            assertThat(repeated).isEqualTo(8);
            assertThat(seconds).hasSize(samples.size() - 8 - SampleRides.DAMAGED_CLOCK_BACK_S);
        }
    }
}
