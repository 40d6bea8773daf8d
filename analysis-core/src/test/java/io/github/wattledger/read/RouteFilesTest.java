package io.github.wattledger.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.NamedPoint;
import io.github.wattledger.ride.RouteLine;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Random;
import java.util.function.IntUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RouteFilesTest {
    private static final String HEAD = "<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\">";

    private static RouteResult read(String gpx) throws UnreadableRideException {
        return RouteFiles.read(RideInput.of(gpx.getBytes(StandardCharsets.UTF_8), "course.gpx"), ReadLimits.DEFAULT);
    }

    private static RideInput input(String gpx) {
        return RideInput.of(gpx.getBytes(StandardCharsets.UTF_8), "course.gpx");
    }

    private static String point(String element, double latitude, double longitude, String inner) {
        return String.format(
                Locale.ROOT, "<%s lat=\"%.7f\" lon=\"%.7f\">%s</%s>", element, latitude, longitude, inner, element);
    }

    /** A degree of latitude at the equator is 110,574 m on the WGS-84 ellipsoid (its published dimensions). */
    @Test
    void aRouteOfTwoPointsIsMeasuredAlongTheEllipsoid() throws UnreadableRideException {
        RouteLine line = read(HEAD + "<rte><name>Over the line</name>" + point("rtept", -0.5, 10, "<ele>5</ele>")
                        + point("rtept", 0.5, 10, "") + "</rte></gpx>")
                .line(null);
        assertThat(line.name()).isEqualTo("Over the line");
        assertThat(line.lengthM()).isCloseTo(110_574, within(1.0));
        assertThat(line.altitudeM().get(0)).isEqualTo(5);
        assertThat(line.altitudeM().get(1)).isNaN();
        assertThat(line.isRecorded()).isFalse();
    }

    @Test
    void severalTracksAreAskedForByNumber() throws UnreadableRideException {
        String track = "<trk><name>%s</name><trkseg>" + point("trkpt", 0, 0, "") + point("trkpt", 0.1, 0, "")
                + "</trkseg></trk>";
        RouteResult result = read(HEAD + String.format(track, "Long") + String.format(track, "Short") + "</gpx>");
        assertThat(result.line(2).name()).isEqualTo("Short");
        assertThatExceptionOfType(UnreadableRideException.class)
                .isThrownBy(() -> result.line(null))
                .withMessage("holds 2 routes (1: Long, 2: Short); name one by its number");
        assertThatExceptionOfType(UnreadableRideException.class)
                .isThrownBy(() -> result.line(3))
                .withMessage("has no route 3; it holds 2 (1: Long, 2: Short)");
    }

    /** Out along the equator and back beside it: a place in the middle is passed twice, one far away never. */
    @Test
    void aPlaceIsNamedAtEachPassage() throws UnreadableRideException {
        RouteLine line = read(HEAD + point("wpt", 0.0003, 0.05, "<name>Water</name>")
                        + point("wpt", 0.2, 0.05, "<name>Elsewhere</name>") + "<trk><trkseg>"
                        + point("trkpt", 0, 0, "") + point("trkpt", 0, 0.1, "") + point("trkpt", 0, 0, "")
                        + "</trkseg></trk></gpx>")
                .line(null);
        double degreeM = line.lengthM() / 0.2;
        assertThat(line.namedPoints())
                .extracting(NamedPoint::name)
                .contains("Water")
                .doesNotContain("Elsewhere");
        assertThat(line.namedPoints().get(0).distanceM()).isCloseTo(0.05 * degreeM, within(2.0));
    }

    @Test
    void aLoopThatCrossesItselfKeepsItsOrder() throws UnreadableRideException {
        RouteLine line = read(HEAD + "<trk><trkseg>" + point("trkpt", 0, 0, "") + point("trkpt", 0.02, 0.02, "")
                        + point("trkpt", 0.02, 0, "") + point("trkpt", 0, 0.02, "") + "</trkseg></trk></gpx>")
                .line(null);
        assertThat(line.distanceM().get(1)).isLessThan(line.distanceM().get(2));
        assertThat(line.distanceM().get(2)).isLessThan(line.distanceM().get(3));
    }

    @Test
    void aLongTrackIsReadWhole() throws UnreadableRideException {
        StringBuilder gpx = new StringBuilder(HEAD).append("<trk><trkseg>");
        for (int i = 0; i < 200_000; i++) {
            gpx.append(point("trkpt", i * 1e-5, 0, "<ele>100</ele>"));
        }
        RouteLine line = read(gpx.append("</trkseg></trk></gpx>").toString()).line(null);
        assertThat(line.distanceM().size()).isEqualTo(200_000);
        assertThatExceptionOfType(UnreadableRideException.class)
                .isThrownBy(() -> RouteFiles.read(input(gpx.toString()), new ReadLimits(100_000_000, 1000, 1, 1000)))
                .withMessage("course.gpx: holds more than 1,000 points, the most that is read; split it first");
    }

    @Test
    void aCutShortFileGivesWhatComesBefore() throws UnreadableRideException {
        RouteResult result = read(HEAD + "<trk><trkseg>" + point("trkpt", 0, 0, "") + "\n" + point("trkpt", 0.1, 0, "")
                + "\n<trkpt lat=\"0.2\"");
        assertThat(result.lines()).hasSize(1);
        assertThat(result.notes())
                .singleElement()
                .satisfies(note -> assertThat(note.text())
                        .isEqualTo("The file is damaged or cut short at line 3. The 2 points up to there were read;"
                                + " the course may be longer."));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "no course at all", "<gpx></gpx>", "<gpx><trk><trkseg>", "<!DOCTYPE a><gpx></gpx>"})
    void whatIsNoCourseGetsOneLine(String content) {
        assertThatExceptionOfType(UnreadableRideException.class)
                .isThrownBy(() -> read(content))
                .satisfies(e ->
                        assertThat(e.getMessage()).startsWith("course.gpx: ").doesNotContain("\n"));
    }

    /** Any damage gives a result or one line. */
    @Test
    void damagedBytesNeverEndInAnythingElse() {
        String whole = HEAD + "<rte>" + point("rtept", 0, 0, "<name>a</name>").repeat(5) + point("rtept", 1, 0, "")
                + "</rte></gpx>";
        Random random = new Random(5);
        for (int i = 0; i < 500; i++) {
            byte[] bytes = whole.getBytes(StandardCharsets.UTF_8);
            for (int change = 0; change < 3; change++) {
                bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
            }
            try {
                assertThat(RouteFiles.read(RideInput.of(bytes, "x"), ReadLimits.DEFAULT)
                                .lines())
                        .isNotEmpty();
            } catch (UnreadableRideException e) {
                assertThat(e.getMessage()).doesNotContain("\n");
            }
        }
    }

    /** A planner's times, 25 km/h throughout, are no ride; the same line with a rider's uneven speed is one. */
    @Test
    void aTrackWithMadeUpTimesIsNoRide() throws UnreadableRideException {
        assertThatExceptionOfType(UnreadableRideException.class)
                .isThrownBy(() -> RideFiles.read(input(timed(i -> 16 * i)), ReadOptions.DEFAULT))
                .withMessage(
                        "course.gpx: has times that nobody rode, at one constant speed or all alike: it is a planned"
                                + " route; export the recorded ride, or make a plan for it with wattledger plan (in the library, RacePlan)");
        assertThat(RideFiles.read(input(timed(i -> 16 * i + (i / 10) * 20)), ReadOptions.DEFAULT)
                        .recordings())
                .hasSize(1);
    }

    private static String timed(IntUnaryOperator second) {
        StringBuilder gpx = new StringBuilder(HEAD).append("<trk><trkseg>");
        for (int i = 0; i < 60; i++) {
            int at = second.applyAsInt(i);
            String time = String.format(
                    Locale.ROOT, "<time>2026-05-02T%02d:%02d:%02dZ</time>", 8 + at / 3600, at / 60 % 60, at % 60);
            gpx.append(point("trkpt", i * 0.001, 0, time));
        }
        return gpx.append("</trkseg></trk></gpx>").toString();
    }
}
