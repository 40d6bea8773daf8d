package io.github.wattledger.read.fit;

import static io.github.wattledger.testing.RawFit.DEVELOPER_DATA_ID;
import static io.github.wattledger.testing.RawFit.ENUM;
import static io.github.wattledger.testing.RawFit.EVENT;
import static io.github.wattledger.testing.RawFit.FIELD_DESCRIPTION;
import static io.github.wattledger.testing.RawFit.FILE_ID;
import static io.github.wattledger.testing.RawFit.RECORD;
import static io.github.wattledger.testing.RawFit.SESSION;
import static io.github.wattledger.testing.RawFit.SINT32;
import static io.github.wattledger.testing.RawFit.STRING;
import static io.github.wattledger.testing.RawFit.UINT16;
import static io.github.wattledger.testing.RawFit.UINT32;
import static io.github.wattledger.testing.RawFit.UINT8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.wattledger.read.ReadLimits;
import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.ReadRequest;
import io.github.wattledger.read.ReadResult;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.Series;
import io.github.wattledger.testing.RawFit;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the bytes mean is taken from the public description of the FIT protocol and from the public FIT profile. */
class FitFormatTest {
    private static final long START = 1_100_000_000L;

    private static ReadResult read(byte[] file) throws UnreadableRideException {
        return new FitFormat().read(file, ReadRequest.DEFAULT);
    }

    /** Field numbers of a record: 253 timestamp, 7 power, 3 heart rate. */
    private static RawFit ride(RawFit fit, long fromSecond, int seconds) {
        fit.define(0, FILE_ID, 0, 1, ENUM).data(0, 4);
        fit.define(1, RECORD, 253, 4, UINT32, 7, 2, UINT16, 3, 1, UINT8);
        for (int i = 0; i < seconds; i++) {
            fit.data(1, fromSecond + i, 200 + i, 120 + i);
        }
        return fit;
    }

    private static RawFit ride(int seconds) {
        return ride(RawFit.littleEndian(), START, seconds);
    }

    /** Field numbers of a session: 2 start time, 7 total elapsed time in ms, 5 sport (2 is cycling, 1 is running). */
    private static RawFit session(RawFit fit, long start, int seconds, int sport) {
        return fit.define(2, SESSION, 253, 4, UINT32, 2, 4, UINT32, 7, 4, UINT32, 5, 1, ENUM)
                .data(2, start + seconds, start, seconds * 1000L, sport);
    }

    private static byte[] joined(byte[]... files) {
        java.io.ByteArrayOutputStream all = new java.io.ByteArrayOutputStream();
        for (byte[] file : files) {
            all.writeBytes(file);
        }
        return all.toByteArray();
    }

    private static List<String> texts(ReadResult result) {
        return result.notes().stream().map(ReadNote::text).toList();
    }

    @Test
    void theWriterOfTheseTestsKnowsTheChecksum() {
        // The published check value of this CRC-16.
        assertThat(RawFit.checksum("123456789".getBytes(StandardCharsets.US_ASCII)))
                .isEqualTo(0xBB3D);
    }

    @Test
    void readsRecordsWithTimesAndUnits() throws UnreadableRideException {
        ReadResult result = read(session(ride(3), START, 2, 2).file());
        assertThat(result.notes()).isEmpty();
        assertThat(result.recordings()).hasSize(1);
        Samples samples = result.recordings().get(0).samples();
        assertThat(samples.epochSecond(0)).isEqualTo(START + RawFit.EPOCH_SECOND);
        assertThat(samples.column(Channel.POWER)).isEqualTo(Series.of(200, 201, 202));
        assertThat(samples.column(Channel.HEART_RATE)).isEqualTo(Series.of(120, 121, 122));
    }

    @Test
    void readsTheHighByteFirstWhereTheDefinitionSaysSo() throws UnreadableRideException {
        Recording little =
                read(session(ride(5), START, 4, 2).file()).recordings().get(0);
        Recording big = read(session(ride(RawFit.bigEndian(), START, 5), START, 4, 2)
                        .file())
                .recordings()
                .get(0);
        assertThat(big).isEqualTo(little);
    }

    @Test
    void carriesCompressedTimesOn() throws UnreadableRideException {
        // Five bits of the time stand in the header and wrap every 32 s; the first record has the whole time.
        RawFit fit = RawFit.littleEndian()
                .define(0, RECORD, 253, 4, UINT32, 7, 2, UINT16)
                .data(0, START, 100)
                .define(1, RECORD, 7, 2, UINT16);
        for (int i = 1; i <= 70; i++) {
            fit.compressed(1, START + i, 100 + i);
        }
        Samples samples = read(fit.file()).recordings().get(0).samples();
        assertThat(samples.size()).isEqualTo(71);
        assertThat(samples.epochSecond(70)).isEqualTo(START + 70 + RawFit.EPOCH_SECOND);
        assertThat(samples.get(Channel.POWER, 70)).isEqualTo(170);
    }

    @Nested
    class SeveralFilesInOne {
        @Test
        void keepsTheSamplesOfEachFileInItsOwnRecording() throws UnreadableRideException {
            // The second file is of an earlier day; by time alone its samples would fall to the first file's session.
            byte[] first =
                    session(ride(RawFit.littleEndian(), START, 4), START, 3, 2).file();
            byte[] second = session(ride(RawFit.littleEndian(), START - 86_400, 3), START - 86_400, 2, 1)
                    .file();
            ReadResult result = read(joined(first, second));
            assertThat(result.recordings())
                    .extracting(each -> each.samples().size())
                    .containsExactly(4, 3);
            assertThat(result.recordings()).extracting(Recording::sport).containsExactly("cycling", "running");
            assertThat(result.recordings()).extracting(Recording::sessionIndex).containsExactly(0, 1);
            assertThat(texts(result))
                    .containsExactly("The file holds 2 FIT files one after the other; each was read on its own.");
        }

        @Test
        void readsTheSecondThoughTheFirstIsCutShort() throws UnreadableRideException {
            byte[] first = session(ride(4), START, 3, 2).file();
            byte[] cut = Arrays.copyOf(first, first.length - 30);
            ReadResult result = read(joined(cut, session(ride(6), START, 5, 2).file()));
            assertThat(result.recordings())
                    .extracting(each -> each.samples().size())
                    .containsExactly(4, 6);
        }

        @Test
        void countsTheSamplesOfAllFilesAgainstTheLimit() {
            byte[] chain = joined(ride(60).file(), ride(60).file());
            ReadRequest options = ReadRequest.DEFAULT.withLimits(new ReadLimits(1_000_000, 100, 10, 1_000_000));
            assertThatThrownBy(() -> new FitFormat().read(chain, options))
                    .isInstanceOf(UnreadableRideException.class)
                    .hasMessage("holds more than 100 samples, the most that is read; split it first");
        }
    }

    @Nested
    class Damage {
        private static final String NO_SESSION =
                "The file has no session message: it was not closed properly. All totals are recomputed.";

        @Test
        void readsUpToTheEndOfAFileThatIsCutShort() throws UnreadableRideException {
            // 12 bytes header, 8 of file id definition and data, 15 of record definition, 4,000 records of 8 bytes, 2
            // of checksum; 21 bytes are lost: the checksum and two records and a half.
            byte[] whole = ride(4000).file();
            ReadResult result = read(Arrays.copyOf(whole, whole.length - 21));
            assertThat(result.recordings().get(0).samples().size()).isEqualTo(3997);
            assertThat(texts(result))
                    .containsExactly(
                            String.format(
                                    Locale.ROOT,
                                    "The file is cut short: its header promises %,d bytes, it has %,d. "
                                            + "The 3,997 samples up to there, the last at 1:06:36, were read.",
                                    whole.length,
                                    whole.length - 21),
                            NO_SESSION);
        }

        @Test
        void readsAFileWhoseHeaderWasNeverFilledIn() throws UnreadableRideException {
            for (long promised : new long[] {0, 0xFFFFFFFFL}) {
                RawFit fit = ride(10);
                byte[] file = Arrays.copyOf(fit.file(promised), 12 + fit.messageBytes());
                ReadResult result = read(file);
                assertThat(result.recordings()
                                .get(0)
                                .samples()
                                .column(Channel.POWER)
                                .size())
                        .isEqualTo(10);
                assertThat(texts(result))
                        .containsExactly(
                                "The file was not closed properly: its header does not give its length, which is "
                                        + file.length
                                        + " bytes. The 10 samples up to there, the last at 0:00:09, were read.",
                                NO_SESSION);
            }
        }

        @Test
        void readsPastALengthThatIsTooSmall() throws UnreadableRideException {
            RawFit fit = session(ride(10), START, 9, 2);
            ReadResult result = read(fit.file(fit.messageBytes() - 50));
            assertThat(result.recordings().get(0).samples().size()).isEqualTo(10);
            assertThat(result.notes()).extracting(ReadNote::code).containsExactly("not-closed");
        }

        @Test
        void saysThatTheChecksumIsWrong() throws UnreadableRideException {
            byte[] file = session(ride(10), START, 9, 2).file();
            file[file.length - 1] ^= 0x55;
            ReadResult result = read(file);
            assertThat(result.recordings().get(0).samples().size()).isEqualTo(10);
            assertThat(texts(result))
                    .containsExactly(
                            "The file's checksum is wrong: a byte somewhere has changed, and with it perhaps a "
                                    + "value. All 10 samples were read.");
        }

        @Test
        void passesOverWhatFollowsTheEnd() throws UnreadableRideException {
            byte[] file = session(ride(10), START, 9, 2).file();
            ReadResult result = read(joined(file, "left over".getBytes(StandardCharsets.US_ASCII)));
            assertThat(texts(result))
                    .containsExactly("9 bytes after the end of the recording belong to nothing and were passed over.");
        }

        @Test
        void givesTheSamplesAfterTheLastSessionARecordingOfTheirOwnInAFileThatBreaksOff()
                throws UnreadableRideException {
            RawFit fit = session(ride(RawFit.littleEndian(), START, 100), START, 99, 1);
            for (int i = 200; i < 260; i++) {
                fit.data(1, START + i, 250, 150);
            }
            byte[] whole = fit.file();
            ReadResult result = read(Arrays.copyOf(whole, whole.length - 2));
            assertThat(result.recordings())
                    .extracting(each -> each.samples().size())
                    .containsExactly(100, 60);
            assertThat(result.recordings().get(1).totals()).isNull();
            assertThat(result.recordings().get(1).sport()).isNull();
        }

        @Test
        void refusesWhatHoldsNothing() {
            RawFit workout =
                    RawFit.littleEndian().define(0, FILE_ID, 0, 1, ENUM).data(0, 5);
            RawFit empty = RawFit.littleEndian().define(0, FILE_ID, 0, 1, ENUM).data(0, 4);
            assertThatThrownBy(() -> read(workout.file()))
                    .isInstanceOf(UnreadableRideException.class)
                    .hasMessage("is a FIT file of type \"workout\", not a recorded ride; choose an activity file");
            assertThatThrownBy(() -> read(empty.file()))
                    .isInstanceOf(UnreadableRideException.class)
                    .hasMessage("is a FIT file without a single sample; nothing was recorded in it");
        }
    }

    @Nested
    class DeveloperFields {
        /** Field numbers of a field description: 0 developer, 1 number, 2 base type, 3 name, 8 units, 15 replaced. */
        private RawFit withDescription(int replacedField, String name, String units, int nativePowerBytes) {
            RawFit fit = RawFit.littleEndian()
                    .define(0, FILE_ID, 0, 1, ENUM)
                    .data(0, 4)
                    .define(1, DEVELOPER_DATA_ID, 3, 1, UINT8)
                    .data(1, 0)
                    .define(
                            2,
                            FIELD_DESCRIPTION,
                            0,
                            1,
                            UINT8,
                            1,
                            1,
                            UINT8,
                            2,
                            1,
                            UINT8,
                            15,
                            1,
                            UINT8,
                            3,
                            16,
                            STRING,
                            8,
                            8,
                            STRING);
            fit.bytes((byte) 2, (byte) 0, (byte) 5, (byte) UINT16, (byte) replacedField);
            fit.bytes(Arrays.copyOf(name.getBytes(StandardCharsets.US_ASCII), 16));
            fit.bytes(Arrays.copyOf(units.getBytes(StandardCharsets.US_ASCII), 8));
            int[] own = nativePowerBytes == 0
                    ? new int[] {253, 4, UINT32}
                    : new int[] {253, 4, UINT32, 7, nativePowerBytes, UINT16};
            return fit.define(3, RECORD, own, new int[] {5, 2, 0});
        }

        @Test
        void standInForPowerThatTheFileDoesNotHave() throws UnreadableRideException {
            for (RawFit fit :
                    List.of(withDescription(7, "Left pedal x2", "", 0), withDescription(255, "Power", "Watts", 0))) {
                fit.data(3, START, 231).data(3, START + 1, 0xFFFF).data(3, START + 2, 240);
                Samples samples = read(fit.file()).recordings().get(0).samples();
                assertThat(samples.column(Channel.POWER)).isEqualTo(Series.of(231, Double.NaN, 240));
            }
        }

        @Test
        void areNamedInANote() throws UnreadableRideException {
            RawFit fit = withDescription(7, "Left pedal x2", "", 0).data(3, START, 231);
            assertThat(texts(read(fit.file())))
                    .contains("The file has no power of its own: it is taken from the developer field \"Left pedal "
                            + "x2\".");
        }

        @Test
        void areLeftOutWhereTheFileHasItsOwnPower() throws UnreadableRideException {
            RawFit fit =
                    withDescription(7, "Power", "W", 2).data(3, START, 200, 231).data(3, START + 1, 0xFFFF, 231);
            Samples samples = read(fit.file()).recordings().get(0).samples();
            assertThat(samples.column(Channel.POWER)).isEqualTo(Series.of(200, Double.NaN));
        }

        @Test
        void ofOtherThingsAreLeftOut() throws UnreadableRideException {
            RawFit fit = withDescription(255, "Form Power", "Watts", 0).data(3, START, 60);
            assertThat(read(fit.file()).recordings().get(0).samples().has(Channel.POWER))
                    .isFalse();
        }
    }

    @Test
    void holdsTheGearUntilTheNextChangeWhereverTheEventsStand() throws UnreadableRideException {
        RawFit fit = ride(10);
        // Event fields: 0 event (43 is a change of the rear gear), 1 type (3 is a marker), 3 data, which packs from the
        // lowest byte up: rear number, rear teeth, front number, front teeth.
        fit.define(2, EVENT, 253, 4, UINT32, 0, 1, ENUM, 1, 1, ENUM, 3, 4, UINT32);
        fit.data(2, START + 6, 43, 3, 0x32_02_15_06L);
        fit.data(2, START + 2, 43, 3, 0x32_02_18_05L);
        Samples samples = read(fit.file()).recordings().get(0).samples();
        double none = Double.NaN;
        assertThat(samples.column(Channel.REAR_TEETH)).isEqualTo(Series.of(none, none, 24, 24, 24, 24, 21, 21, 21, 21));
        assertThat(samples.column(Channel.FRONT_TEETH))
                .isEqualTo(Series.of(none, none, 50, 50, 50, 50, 50, 50, 50, 50));
    }

    @Test
    void believesOnlyTheTeethOfANumberedGear() throws UnreadableRideException {
        RawFit fit = ride(4);
        fit.define(2, EVENT, 253, 4, UINT32, 0, 1, ENUM, 1, 1, ENUM, 3, 4, UINT32);
        fit.data(2, START, 43, 3, 0x16_FF_18_05L).data(2, START + 1, 42, 3, 0x22_01_00_00L);
        fit.data(2, START + 2, 43, 3, 0x00_FF_15_06L);
        Samples samples = read(fit.file()).recordings().get(0).samples();
        assertThat(samples.column(Channel.REAR_TEETH)).isEqualTo(Series.of(24, 24, 21, 21));
        assertThat(samples.column(Channel.FRONT_TEETH)).isEqualTo(Series.of(Double.NaN, 34, 34, 34));
    }

    @Test
    void readsPositionsInSemicircles() throws UnreadableRideException {
        // 2^31 semicircles are 180 degrees (public FIT profile).
        RawFit fit = RawFit.littleEndian()
                .define(0, RECORD, 253, 4, UINT32, 0, 4, SINT32, 1, 4, SINT32)
                .data(0, START, 1L << 29, -(1L << 28));
        Samples samples = read(fit.file()).recordings().get(0).samples();
        assertThat(samples.get(Channel.LATITUDE, 0)).isEqualTo(45.0);
        assertThat(samples.get(Channel.LONGITUDE, 0)).isEqualTo(-22.5);
    }

    /**
     * A definition may name developer fields of 0 bytes, and fields that no message describes: the sizes still say where
     * each message ends (FIT protocol, definition message). A decoder of the SDK fails at both.
     */
    @ParameterizedTest
    @ValueSource(ints = {0, 1})
    void readsPastDeveloperFieldsThatNothingDescribes(int fieldBytes) throws UnreadableRideException {
        RawFit fit = ride(10);
        fit.define(1, RECORD, new int[] {253, 4, UINT32, 7, 2, UINT16, 3, 1, UINT8}, new int[] {
            0, fieldBytes, 0, 1, fieldBytes, 0
        });
        for (int i = 10; i < 20; i++) {
            fit.data(1, START + i, 200 + i, 120 + i, 7, 7);
        }
        session(fit, START, 20, 2);
        ReadResult result = read(fit.file());
        assertThat(result.notes()).isEmpty();
        Recording recording = result.recordings().get(0);
        assertThat(recording.samples().size()).isEqualTo(20);
        assertThat(recording.samples().get(Channel.POWER, 19)).isEqualTo(219);
        assertThat(recording.sport()).isEqualTo("cycling");
    }

    /** What a decoder throws is for programmers: a note or a message says in words what happened to the file. */
    @Test
    void noMessageQuotesTheDecoder() {
        byte[] sound = session(ride(200), START, 200, 2).file();
        Random random = new Random(20_261_127);
        for (int round = 0; round < 2000; round++) {
            byte[] broken = Arrays.copyOf(sound, random.nextInt(8) == 0 ? random.nextInt(sound.length) : sound.length);
            for (int i = 0; i < 3 && broken.length > 14; i++) {
                broken[14 + random.nextInt(broken.length - 14)] = (byte) random.nextInt(256);
            }
            List<String> texts = new ArrayList<>();
            try {
                read(broken).notes().forEach(note -> texts.add(note.text()));
            } catch (UnreadableRideException e) {
                texts.add(String.valueOf(e.getMessage()));
            }
            assertThat(String.join(" ", texts))
                    .doesNotContainPattern("(?i)exception|java|invoke|null|error|decode error|index|out of bounds");
        }
    }
}
