package io.github.wattledger.read.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import com.garmin.fit.BufferEncoder;
import com.garmin.fit.CourseMesg;
import com.garmin.fit.CoursePoint;
import com.garmin.fit.CoursePointMesg;
import com.garmin.fit.DateTime;
import com.garmin.fit.File;
import com.garmin.fit.FileIdMesg;
import com.garmin.fit.Fit;
import com.garmin.fit.RecordMesg;
import io.github.wattledger.read.ReadLimits;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.RouteFiles;
import io.github.wattledger.read.RouteResult;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.NamedPoint;
import io.github.wattledger.ride.RouteLine;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Courses written by the FIT SDK's own encoder. */
class FitRoutesTest {
    private static final int POINTS = 100;

    /** 99 steps of 100 m, rising by 2 m each, with a virtual partner's times and two named points. */
    private static byte[] course() {
        BufferEncoder encoder = new BufferEncoder(Fit.ProtocolVersion.V2_0);
        FileIdMesg id = new FileIdMesg();
        id.setType(File.COURSE);
        encoder.write(id);
        CourseMesg course = new CourseMesg();
        course.setName("Ridge way");
        encoder.write(course);
        for (int i = 0; i < POINTS; i++) {
            RecordMesg point = new RecordMesg();
            point.setTimestamp(new DateTime(1_000_000_000L + 12L * i));
            point.setPositionLat(536_870_912 + 10_737 * i);
            point.setPositionLong(0);
            point.setEnhancedAltitude(100f + 2 * i);
            point.setDistance(100f * i);
            encoder.write(point);
        }
        CoursePointMesg summit = new CoursePointMesg();
        summit.setDistance(9000f);
        summit.setName("Top");
        encoder.write(summit);
        CoursePointMesg water = new CoursePointMesg();
        water.setDistance(3000f);
        water.setType(CoursePoint.WATER);
        encoder.write(water);
        return encoder.close();
    }

    @Test
    void aCourseGivesItsLineAndItsNamedPoints() throws UnreadableRideException {
        RouteLine line = RouteFiles.read(RideInput.of(course(), "ridge.fit"), ReadLimits.DEFAULT)
                .line(null);
        assertThat(line.name()).isEqualTo("Ridge way");
        assertThat(line.lengthM()).isCloseTo(9900, within(0.1));
        assertThat(line.altitudeM().get(POINTS - 1)).isCloseTo(298, within(0.3));
        assertThat(line.isRecorded()).isFalse();
        assertThat(line.namedPoints()).extracting(NamedPoint::name).containsExactly("water", "Top");
        assertThat(line.namedPoints().get(1).distanceM()).isCloseTo(9000, within(0.1));
    }

    @Test
    void aCourseIsNoRide() {
        assertThatExceptionOfType(UnreadableRideException.class)
                .isThrownBy(() -> RideFiles.read(RideInput.of(course(), "ridge.fit"), ReadOptions.DEFAULT))
                .withMessage(
                        "ridge.fit: is a FIT course, a way to ride and not a recorded ride; choose an activity file,"
                                + " or make a plan for it with wattledger plan (in the library, RacePlan)");
    }

    @Test
    void aCutShortCourseGivesWhatComesBefore() throws UnreadableRideException {
        byte[] whole = course();
        byte[] half = Arrays.copyOf(whole, whole.length / 2);
        RouteResult result = RouteFiles.read(RideInput.of(half, "ridge.fit"), ReadLimits.DEFAULT);
        assertThat(result.line(null).lengthM()).isBetween(1000.0, 9000.0);
        assertThat(result.notes())
                .singleElement()
                .satisfies(note -> assertThat(note.code()).isEqualTo("damaged"));
    }

    /** Courses with changed, lost and doubled bytes: a line with its ground, or one line that says why not. */
    @Test
    void changedCoursesGiveALineOrOneLineOfWords() {
        byte[] whole = course();
        SplittableRandom random = new SplittableRandom(20261127);
        int read = 0;
        int refused = 0;
        for (int i = 0; i < 3000; i++) {
            byte[] changed = changed(whole, random);
            try {
                RouteLine line = RouteFiles.read(RideInput.of(changed, "changed.fit"), ReadLimits.DEFAULT)
                        .line(null);
                assertThat(line.lengthM()).isNotNaN();
                read++;
            } catch (UnreadableRideException e) {
                String message = String.valueOf(e.getMessage());
                assertThat(message).startsWith("changed.fit: ");
                assertThat(message.chars().anyMatch(Character::isISOControl))
                        .as(message)
                        .isFalse();
                refused++;
            }
        }
        assertThat(read).isPositive();
        assertThat(refused).isPositive();
    }

    private static byte[] changed(byte[] whole, SplittableRandom random) {
        byte[] changed = Arrays.copyOf(whole, random.nextInt(4) == 0 ? random.nextInt(whole.length) : whole.length);
        for (int times = random.nextInt(8); times > 0 && changed.length > 0; times--) {
            int at = random.nextInt(changed.length);
            if (random.nextInt(3) == 0) {
                int length = random.nextInt(1 + Math.min(64, changed.length - at));
                System.arraycopy(changed, at, changed, random.nextInt(changed.length - length + 1), length);
            } else {
                changed[at] = (byte) random.nextInt(256);
            }
        }
        return changed;
    }
}
