package io.github.wattledger.read.gpx;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.read.ReadLimits;
import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.ReadRequest;
import io.github.wattledger.read.ReadResult;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.ride.TimerEvent;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class GpxFormatTest {
    private static final String HEAD = """
            <?xml version="1.0" encoding="UTF-8"?>
            <gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="Tidemark One">
            """;

    private static ReadResult read(String text) throws UnreadableRideException {
        return new GpxFormat().read(text.getBytes(StandardCharsets.UTF_8), ReadRequest.DEFAULT);
    }

    private static String track(String points) {
        return HEAD + "<trk><type>cycling</type><trkseg>" + points + "</trkseg></trk></gpx>";
    }

    private static String point(int second, String latitude, String inner) {
        return String.format(
                Locale.ROOT,
                "<trkpt lat=\"%s\" lon=\"9.5\"><time>%s</time>%s</trkpt>",
                latitude,
                Instant.parse("2024-05-04T07:00:00Z").plusSeconds(second),
                inner);
    }

    private static Samples samples(String text) throws UnreadableRideException {
        return read(text).recordings().get(0).samples();
    }

    private static List<String> texts(ReadResult result) {
        return result.notes().stream().map(ReadNote::text).toList();
    }

    @ParameterizedTest
    @CsvSource({
        "<power>231</power>",
        "<watts>231</watts>",
        "<x:PowerInWatts xmlns:x='http://example.org/x'>231</x:PowerInWatts>",
        "<x:PowerExtension xmlns:x='u'><x:PowerInWatts>231</x:PowerInWatts></x:PowerExtension>"
    })
    void findsPowerUnderEveryNameInUse(String element) throws UnreadableRideException {
        String text = track(point(0, "55.5", "<extensions>" + element.replace('\'', '"') + "</extensions>"));
        assertThat(samples(text).column(Channel.POWER)).isEqualTo(Series.of(231));
    }

    @Test
    void readsTheOtherChannelsInAnyOrder() throws UnreadableRideException {
        String text = track("<trkpt lon=\"9.25\" lat=\"55.5\"><extensions><a:TPX xmlns:a=\"u\"><a:cad>88</a:cad>"
                + "<a:hr>141</a:hr><a:atemp>-3</a:atemp><a:speed>8.25</a:speed><a:distance>1200.5</a:distance></a:TPX>"
                + "</extensions><ele>12.4</ele><time>2024-05-04T09:00:00+02:00</time></trkpt>");
        Samples samples = samples(text);
        assertThat(samples.epochSecond(0))
                .isEqualTo(Instant.parse("2024-05-04T07:00:00Z").getEpochSecond());
        assertThat(samples.get(Channel.LATITUDE, 0)).isEqualTo(55.5);
        assertThat(samples.get(Channel.LONGITUDE, 0)).isEqualTo(9.25);
        assertThat(samples.get(Channel.ALTITUDE, 0)).isEqualTo(12.4);
        assertThat(samples.get(Channel.CADENCE, 0)).isEqualTo(88);
        assertThat(samples.get(Channel.HEART_RATE, 0)).isEqualTo(141);
        assertThat(samples.get(Channel.TEMPERATURE, 0)).isEqualTo(-3);
        assertThat(samples.get(Channel.SPEED, 0)).isEqualTo(8.25);
        assertThat(samples.get(Channel.DISTANCE, 0)).isEqualTo(1200.5);
    }

    @Test
    void namesTheSportAndTheDevice() throws UnreadableRideException {
        Recording recording = read(track(point(0, "55.5", ""))).recordings().get(0);
        assertThat(recording.sport()).isEqualTo("cycling");
        assertThat(recording.device().name()).isEqualTo("Tidemark One");
    }

    @Test
    void measuresDistanceAndSpeedWhereTheFileHasNone() throws UnreadableRideException {
        // One degree of latitude at 55.5 degrees is 111,332.7 m long: 111132.954 - 559.822 cos 2x + 1.175 cos 4x
        // (WGS-84).
        ReadResult result = read(track(point(0, "55.5000", "") + point(1, "55.5001", "") + point(3, "55.5003", "")));
        Samples samples = result.recordings().get(0).samples();
        assertThat(samples.get(Channel.DISTANCE, 1)).isCloseTo(11.133, within(0.005));
        assertThat(samples.get(Channel.DISTANCE, 2)).isCloseTo(33.398, within(0.01));
        assertThat(samples.get(Channel.SPEED, 2)).isCloseTo(11.133, within(0.005));
        assertThat(samples.get(Channel.SPEED, 0)).isNaN();
        assertThat(texts(result))
                .containsExactly("The file has no distance and no speed; measured from one position to the next on the "
                        + "WGS-84 ellipsoid.");
    }

    @Nested
    class Segments {
        private final String text = HEAD + "<trk><trkseg>" + point(0, "55.5", "") + point(1, "55.5001", "")
                + "</trkseg><trkseg>" + point(10, "55.6", "") + point(11, "55.6001", "")
                + "</trkseg><trkseg>" + point(12, "55.6002", "") + "</trkseg></trk></gpx>";

        @Test
        void areOneRecordingBetweenWhichTheTimerStood() throws UnreadableRideException {
            ReadResult result = read(text);
            assertThat(result.recordings()).hasSize(1);
            long start = Instant.parse("2024-05-04T07:00:00Z").getEpochSecond();
            assertThat(result.recordings().get(0).timerEvents())
                    .containsExactly(
                            new TimerEvent(start + 2, TimerEvent.Kind.STOP),
                            new TimerEvent(start + 10, TimerEvent.Kind.START));
            Ride ride = Cleaning.clean(result.recordings().get(0)).ride();
            assertThat(ride.countSeconds(SecondState.PAUSED)).isEqualTo(8);
        }

        @Test
        void doNotCountTheWayBetweenThem() throws UnreadableRideException {
            Samples samples = samples(text);
            assertThat(samples.get(Channel.DISTANCE, 2)).isEqualTo(samples.get(Channel.DISTANCE, 1));
        }
    }

    /** GPX 1.1: a track is an ordered list of points describing a path; a file may hold any number of tracks. */
    @Nested
    class Tracks {
        private static String trackOf(String type, int fromSecond) {
            return "<trk><type>" + type + "</type><trkseg>" + point(fromSecond, "55.5", "<speed>5</speed>")
                    + point(fromSecond + 1, "55.5001", "<speed>6</speed>") + "</trkseg></trk>";
        }

        @Test
        void areASessionEach() throws UnreadableRideException {
            String empty = "<trk><trkseg><trkpt lat=\"1\" lon=\"2\"/></trkseg></trk>";
            ReadResult result = read(HEAD + trackOf("running", 0) + empty + trackOf("cycling", 100) + "</gpx>");
            assertThat(result.recordings()).extracting(Recording::sport).containsExactly("running", "cycling");
            assertThat(result.recordings())
                    .extracting(recording -> recording.samples().size())
                    .containsExactly(2, 2);
            assertThat(result.recordings()).extracting(Recording::sessionIndex).containsExactly(0, 1);
            Recording second = result.recordings().get(1);
            assertThat(second.timerEvents()).isEmpty();
            assertThat(second.samples().get(Channel.DISTANCE, 0)).isZero();
            assertThat(second.samples().get(Channel.SPEED, 0)).isEqualTo(5);
            assertThat(texts(result))
                    .contains("1 track points without a time were left out.")
                    .contains("Track 3: The file has no distance; measured from one position to the next on the "
                            + "WGS-84 ellipsoid.");
        }

        @Test
        void countTogetherAgainstTheLimit() {
            byte[] text = (HEAD + trackOf("", 0) + trackOf("", 10) + "</gpx>").getBytes(StandardCharsets.UTF_8);
            ReadRequest options = ReadRequest.DEFAULT.withLimits(new ReadLimits(10_000, 3, 10, 10_000));
            assertThatThrownBy(() -> new GpxFormat().read(text, options))
                    .isInstanceOf(UnreadableRideException.class)
                    .hasMessage("holds more than 3 samples, the most that is read; split it first");
        }

        @Test
        void beyondTwoHundredAreReadAsOne() throws UnreadableRideException {
            StringBuilder text = new StringBuilder(HEAD);
            for (int i = 0; i < 300; i++) {
                text.append(trackOf("cycling", 10 * i));
            }
            ReadResult result = read(text + "</gpx>");
            assertThat(result.recordings()).hasSize(200);
            assertThat(result.recordings().get(199).samples().size()).isEqualTo(202);
            assertThat(result.notes()).extracting(ReadNote::code).contains("many-tracks");
        }
    }

    @Test
    void readsElementsWhosePrefixIsNeverDeclaredAndSaysSo() throws UnreadableRideException {
        ReadResult result = read(track(point(
                0,
                "55.5",
                "<extensions><pw:PowerInWatts>231</pw:PowerInWatts></extensions>"
                        + "<speed>1</speed><distance>2</distance>")));
        assertThat(result.recordings().get(0).samples().column(Channel.POWER)).isEqualTo(Series.of(231));
        assertThat(texts(result))
                .containsExactly(
                        "The file uses the prefix \"pw\" without declaring it (xmlns); its elements were read by "
                                + "their names all the same.");
    }

    @Test
    void keepsWhatComesBeforeTheDamage() throws UnreadableRideException {
        String whole = track(point(0, "55.5", "") + "\n" + point(1, "55.5001", "") + "\n" + point(2, "55.5002", ""));
        ReadResult result = read(whole.substring(0, whole.indexOf("55.5002") + 30));
        assertThat(result.recordings().get(0).samples().size()).isEqualTo(2);
        assertThat(texts(result).get(0))
                .isEqualTo("The file is damaged or cut short at line 5. "
                        + "The 2 samples up to there, the last at 0:00:01, were read.");
    }

    @Test
    void leavesOutPointsWithoutTimeAndValuesThatAreNone() throws UnreadableRideException {
        ReadResult result = read(track(point(0, "55.5", "<ele>high</ele><speed>1</speed><distance>0</distance>")
                + "<trkpt lat=\"55.6\" lon=\"9.5\"/>" + point(1, "95.5", "<speed>NaN</speed>")));
        assertThat(result.recordings().get(0).samples().size()).isEqualTo(2);
        assertThat(texts(result))
                .containsExactly(
                        "1 track points without a time were left out.",
                        "3 values are no numbers, or no positions; they are missing.");
    }

    /** XML 1.0, section 4.3.3: the encoding is what the bytes are; a wrong declaration is an error of its writer. */
    @ParameterizedTest
    @CsvSource({
        "UTF-8, ISO-8859-1, 'The file names the encoding UTF-8, but holds bytes that are not UTF-8: those letters were "
                + "replaced, and all else was read.'",
        "US-ASCII, UTF-8, 'The file names the encoding US-ASCII, but holds bytes that are not US-ASCII: those letters "
                + "were replaced, and all else was read.'",
        "UTF-16, UTF-8, 'The file names the encoding UTF-16, which is not what it is in: it was read as UTF-8.'",
        "klingon-9, UTF-8, 'The file names the encoding klingon-9, which is not what it is in: it was read as UTF-8.'",
        "UTF-8, UTF-16LE, 'The file names the encoding UTF-8, which is not what it is in: it was read as UTF-16LE.'",
        "ISO-8859-1, ISO-8859-1, ''",
        "UTF-8, UTF-8, ''",
        "UTF-16, UTF-16BE, ''",
    })
    void readsADocumentInAnotherEncodingThanItDeclares(String declared, String real, String said)
            throws UnreadableRideException {
        String text = "<?xml version=\"1.0\" encoding=\"" + declared + "\"?>"
                + track("<name>Größe</name>" + point(0, "55.5", "<speed>5</speed><distance>1</distance>"))
                        .replaceFirst("<\\?xml.*?\\?>", "");
        PrintStream before = System.err;
        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        System.setErr(new PrintStream(printed, true, StandardCharsets.UTF_8));
        ReadResult result;
        try {
            result = new GpxFormat().read(text.getBytes(Charset.forName(real)), ReadRequest.DEFAULT);
        } finally {
            System.setErr(before);
        }
        assertThat(printed.toString(StandardCharsets.UTF_8)).isEmpty();
        assertThat(result.recordings().get(0).samples().size()).isEqualTo(1);
        assertThat(String.join("", texts(result))).isEqualTo(said);
    }

    /** One position on the other side of the world is 20,000 km away and 20,000 km back. */
    @Test
    void passesOverAPositionThatNobodyReaches() throws UnreadableRideException {
        ReadResult result = read(track(
                point(0, "55.5000", "") + point(1, "-55.5", "") + point(2, "55.5002", "") + point(3, "55.5003", "")));
        Samples samples = result.recordings().get(0).samples();
        assertThat(samples.get(Channel.DISTANCE, 3)).isCloseTo(33.398, within(0.01));
    }

    @Nested
    class Refusals {
        @Test
        void ofATrackWithoutTimes() {
            assertThatThrownBy(() -> read(track("<trkpt lat=\"1\" lon=\"2\"/><trkpt lat=\"1\" lon=\"2\"/>")))
                    .isInstanceOf(UnreadableRideException.class)
                    .hasMessage(
                            "has 2 track points but not one time: it is a route, or its times were removed; "
                                    + "export the recorded ride with times, or make a plan for it with wattledger plan (in the library, RacePlan)");
        }

        @Test
        void ofAFileWithoutTrack() {
            assertThatThrownBy(
                            () -> read(HEAD + "<wpt lat=\"1\" lon=\"2\"><time>2024-05-04T07:00:00Z</time></wpt></gpx>"))
                    .isInstanceOf(UnreadableRideException.class)
                    .hasMessage(
                            "is a GPX file without a track point; export the recorded ride, or make a plan for a route with"
                                    + " wattledger plan (in the library, RacePlan)");
        }

        @Test
        void ofAFileDamagedAtItsStart() {
            assertThatThrownBy(() -> read("<gpx><trk>"))
                    .isInstanceOf(UnreadableRideException.class)
                    .hasMessage("is a damaged GPX file with no track point before the damage (line 1); "
                            + "export the ride again");
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "<!DOCTYPE gpx [<!ENTITY x SYSTEM \"file:///etc/hostname\">]><gpx><trk><name>&x;</name></trk></gpx>",
                    "<!DOCTYPE gpx [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;&a;&a;\">]><gpx><trk>&b;</trk></gpx>",
                    "<!DOCTYPE gpx SYSTEM \"http://example.org/gpx.dtd\"><gpx/>"
                })
        void ofDocumentTypesAndWithThemOfEveryEntity(String text) {
            assertThatThrownBy(() -> read(text))
                    .isInstanceOf(UnreadableRideException.class)
                    .hasMessage("declares a document type (line 1), which no GPX file needs and which can be used for "
                            + "attacks; remove that declaration");
        }

        @Test
        void ofMoreSamplesThanAllowed() {
            byte[] text = track(point(0, "55.5", "") + point(1, "55.5", "")).getBytes(StandardCharsets.UTF_8);
            ReadRequest options = ReadRequest.DEFAULT.withLimits(new ReadLimits(10_000, 1, 10, 10_000));
            assertThatThrownBy(() -> new GpxFormat().read(text, options))
                    .isInstanceOf(UnreadableRideException.class)
                    .hasMessage("holds more than 1 samples, the most that is read; split it first");
        }
    }

    @Test
    void recognizesGpxByItsRootWhateverStandsBefore() {
        GpxFormat format = new GpxFormat();
        assertThat(format.recognizes((HEAD + "</gpx>").getBytes(StandardCharsets.UTF_8)))
                .isTrue();
        assertThat(format.recognizes("\uFEFF<!-- a ride --><g:gpx xmlns:g='u'/>".getBytes(StandardCharsets.UTF_16LE)))
                .isTrue();
        assertThat(format.recognizes("<kml/>".getBytes(StandardCharsets.UTF_8))).isFalse();
        assertThat(format.recognizes("a gpx, b".getBytes(StandardCharsets.UTF_8)))
                .isFalse();
    }
}
