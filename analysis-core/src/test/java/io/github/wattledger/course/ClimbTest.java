package io.github.wattledger.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Places, seconds and means of a climb by hand; what is a climb at all is tested with the courses. */
class ClimbTest {
    /** A degree on a sphere of the IUGG mean radius, 6,371,008.8 m: 2 pi r / 360. */
    private static final double DEGREE_M = 111_195.08;

    @Test
    void distancesAreThoseOfASphere() {
        assertThat(new Place(45, 7).metresTo(new Place(46, 7))).isCloseTo(DEGREE_M, within(0.1));
        assertThat(new Place(0, 7).metresTo(new Place(0, 6))).isCloseTo(DEGREE_M, within(0.1));
        // Spherical law of cosines: cos a = sin^2 60 + cos^2 60 cos 1 degree, a = 0.4999905 degrees.
        assertThat(new Place(60, 7).metresTo(new Place(60, 8))).isCloseTo(55_596.5, within(1.0));
        assertThat(new Place(60, 7).metresTo(new Place(60, 7))).isZero();
    }

    private static Climb climb(double lengthM, @Nullable Place foot, @Nullable Place top) {
        return new Climb(new Interval(0, 600), 1000, 1000 + lengthM, 60, 0.06, 0.06, 600, null, null, 360, foot, top);
    }

    @Test
    void aRoadIsTheSameUpToSixtyMetresAndATenthOfItsLength() {
        Place foot = new Place(45, 7);
        Place top = new Place(45.01, 7);
        Climb one = climb(1000, foot, top);
        Place within = new Place(45 + 59 / DEGREE_M, 7);
        Place beyond = new Place(45 + 61 / DEGREE_M, 7);
        Place topWithin = new Place(45.01 - 59 / DEGREE_M, 7);
        Place topBeyond = new Place(45.01 - 61 / DEGREE_M, 7);
        assertThat(one.isSameRoadAs(climb(1000, within, topWithin))).isTrue();
        assertThat(one.isSameRoadAs(climb(1000, beyond, top))).isFalse();
        assertThat(one.isSameRoadAs(climb(1000, foot, topBeyond))).isFalse();
        // 110 m of 1,110 are 9.9 %, 112 m of 1,112 are 10.1 %.
        assertThat(one.isSameRoadAs(climb(1110, foot, top))).isTrue();
        assertThat(one.isSameRoadAs(climb(1112, foot, top))).isFalse();
        assertThat(climb(1110, foot, top).isSameRoadAs(one)).isTrue();
        assertThat(one.isSameRoadAs(climb(1000, null, top))).isFalse();
        assertThat(one.isSameRoadAs(climb(1000, foot, null))).isFalse();
    }

    /** A kilometre level, one at 6 %, one level, at 4 m/s; on the way up power and heart rate by halves, and a stop. */
    private static Ride ride() {
        int seconds = 760;
        // The stop lasts from 370 s to 380 s, at 1,480 m; metres are those before it or 40 less.
        return Ride.builder(Instant.EPOCH, seconds)
                .channel(Channel.DISTANCE, Series.generate(seconds, ClimbTest::metres))
                .channel(
                        Channel.ALTITUDE,
                        Series.generate(seconds, s -> 100 + 0.06 * Math.max(0, Math.min(1000, metres(s) - 1000))))
                .channel(Channel.POWER, Series.generate(seconds, s -> s < 370 ? 200 : s < 380 ? 900 : 300))
                .channel(Channel.HEART_RATE, Series.generate(seconds, s -> s < 370 ? 140 : s < 380 ? 200 : 160))
                .channel(Channel.LATITUDE, Series.generate(seconds, s -> 45 + metres(s) / DEGREE_M))
                .channel(Channel.LONGITUDE, Series.generate(seconds, s -> 7))
                .state(new Interval(370, 380), SecondState.STOPPED)
                .build();
    }

    private static double metres(int second) {
        return 4.0 * (second < 370 ? second : second < 380 ? 370 : second - 10);
    }

    @Test
    void goesFromTheLastSecondBelowToTheFirstAbove() {
        List<Climb> climbs = climbs(ride());
        assertThat(climbs).hasSize(1);
        Climb climb = climbs.get(0);
        int from = climb.when().fromSecond();
        int to = climb.when().toSecond();
        assertThat(metres(from)).isLessThanOrEqualTo(climb.startM());
        assertThat(metres(from + 1)).isGreaterThan(climb.startM());
        assertThat(metres(to - 1)).isGreaterThanOrEqualTo(climb.endM());
        assertThat(metres(to - 2)).isLessThan(climb.endM());
        assertThat(climb.movingSeconds()).isEqualTo(to - from - 10);
        assertThat(climb.lengthM()).isCloseTo(1000, within(51.0));
        assertThat(climb.meanGrade()).isCloseTo(climb.gainM() / climb.lengthM(), within(1e-12));
        assertThat(climb.verticalSpeedMPerHour()).isCloseTo(climb.gainM() * 3600 / climb.movingSeconds(), within(1e-9));
        // Seconds under way: 370 - from at 200 W, the rest at 300 W.
        double below = 370 - from;
        double above = to - 380;
        assertThat(climb.averagePowerW()).isNotNull();
        assertThat(climb.averagePowerW()).isCloseTo((200 * below + 300 * above) / (below + above), within(1e-9));
        assertThat(climb.averageHeartRateBpm()).isNotNull();
        assertThat(climb.averageHeartRateBpm()).isCloseTo((140 * below + 160 * above) / (below + above), within(1e-9));
        assertThat(climb.foot()).isEqualTo(new Place(45 + metres(from) / DEGREE_M, 7));
        assertThat(climb.top()).isEqualTo(new Place(45 + metres(to - 1) / DEGREE_M, 7));
    }

    /** A kilometre level and one at 6 %, three times over: each climb has its own seconds, at 4 m/s 500 s apart. */
    @Test
    void oneAfterAnotherHasItsOwnSeconds() {
        int seconds = 1500;
        List<Climb> climbs = climbs(Ride.builder(Instant.EPOCH, seconds)
                .channel(Channel.DISTANCE, Series.generate(seconds, s -> 4.0 * s))
                .channel(
                        Channel.ALTITUDE,
                        Series.generate(seconds, s -> 60 * (s / 500) + 0.06 * Math.max(0, 4.0 * (s % 500) - 1000)))
                .build());
        assertThat(climbs).hasSize(3);
        for (int number = 0; number < climbs.size(); number++) {
            Climb climb = climbs.get(number);
            assertThat(climb.startM()).isCloseTo(2000 * number + 1000, within(51.0));
            assertThat(4.0 * climb.when().fromSecond()).isBetween(climb.startM() - 4, climb.startM());
            assertThat(4.0 * (climb.when().toSecond() - 1)).isBetween(climb.endM(), climb.endM() + 4);
        }
    }

    private static List<Climb> climbs(Ride ride) {
        return Climb.of(ride, Course.of(ride).orElse(null));
    }
}
