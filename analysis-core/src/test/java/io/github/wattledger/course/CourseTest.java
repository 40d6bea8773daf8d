package io.github.wattledger.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.simulation.PacingPlan;
import io.github.wattledger.simulation.RoadSimulation;
import io.github.wattledger.simulation.Scenario;
import io.github.wattledger.simulation.SensorNoise;
import io.github.wattledger.simulation.SimulatedRide;
import io.github.wattledger.simulation.SimulatedRider;
import io.github.wattledger.testing.EqualWork;
import java.time.Instant;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CourseTest {
    /** A ride at a constant speed over a profile, without noise. */
    private static Ride over(DoubleUnaryOperator altitudeAt, int seconds, double speedMps) {
        return Ride.builder(Instant.EPOCH, seconds)
                .channel(Channel.DISTANCE, Series.generate(seconds, s -> s * speedMps))
                .channel(Channel.ALTITUDE, Series.generate(seconds, s -> altitudeAt.applyAsDouble(s * speedMps)))
                .channel(Channel.SPEED, Series.generate(seconds, s -> speedMps))
                .channel(Channel.POWER, Series.generate(seconds, s -> 250))
                .channel(Channel.HEART_RATE, Series.generate(seconds, s -> 150))
                .build();
    }

    /** Piecewise linear through (metre, height) pairs. */
    private static DoubleUnaryOperator profile(double... pairs) {
        return metre -> {
            for (int i = 2; i < pairs.length; i += 2) {
                if (metre <= pairs[i]) {
                    double share = (metre - pairs[i - 2]) / (pairs[i] - pairs[i - 2]);
                    return pairs[i - 1] + (pairs[i + 1] - pairs[i - 1]) * share;
                }
            }
            return pairs[pairs.length - 1];
        };
    }

    @Nested
    class Hills {
        @ParameterizedTest
        @CsvSource({"100000, 1500", "322000, 3000", "1000, 30", "300, 5", "40000, 4000", "10000, 0"})
        void climbAndFallByTheAscentOverTheLength(double lengthM, double ascentM) {
            Course course = Course.ofHills(lengthM, ascentM);
            double up = 0;
            double down = 0;
            for (int piece = 0; piece < course.pieces(); piece++) {
                up += Math.max(0, course.meanGrade(piece, piece + 1)) * course.stepM();
                down += Math.max(0, -course.meanGrade(piece, piece + 1)) * course.stepM();
            }
            assertThat(course.lengthM()).isCloseTo(lengthM, within(1e-6));
            assertThat(up).isCloseTo(ascentM, within(1e-6));
            assertThat(down).isCloseTo(ascentM, within(1e-6));
        }

        @Test
        void areOfFourPercentWhereThereIsRoom() {
            Course course = Course.ofHills(100_000, 1000);
            assertThat(course.meanGrade(0, 1)).isCloseTo(0.04, within(0.001));
            assertThat(course.meanGrade(course.pieces() - 1, course.pieces())).isZero();
        }

        @Test
        void steeperThanRoadsAreAMistake() {
            assertThatThrownBy(() -> Course.ofHills(1000, 101)).hasMessageContaining("ascentM 101");
            assertThatThrownBy(() -> Course.ofHills(1000, -1)).hasMessageContaining("ascentM -1");
        }
    }

    @Nested
    class Grade {
        @Test
        void ofAStraightRampIsExact() {
            Course course =
                    Course.of(over(metre -> 100 + 0.06 * metre, 1000, 5)).orElseThrow();
            for (int node = 0; node < course.nodes(); node++) {
                assertThat(course.grade(node)).isCloseTo(0.06, within(1e-9));
                assertThat(course.altitudeM(node)).isCloseTo(100 + 0.06 * course.distanceM(node), within(1e-6));
            }
            assertThat(course.lengthM()).isCloseTo(4995, within(25.0));
        }

        /** A fit of 50 m either side rounds a kink, no more than that. */
        @Test
        void ofAKinkIsRoundedOverAHundredMetres() {
            Course course =
                    Course.of(over(profile(0, 0, 2000, 0, 4000, 100), 800, 5)).orElseThrow();
            assertThat(course.gradeAtM(1900)).isCloseTo(0, within(1e-9));
            assertThat(course.gradeAtM(2000)).isCloseTo(0.025, within(0.005));
            assertThat(course.gradeAtM(2100)).isCloseTo(0.05, within(1e-9));
        }

        @Test
        void reachesFurtherWhereTheRecordingIsCoarse() {
            Ride sparse = Ride.builder(Instant.EPOCH, 4000)
                    .channel(Channel.DISTANCE, Series.generate(4000, s -> s % 10 == 0 ? s * 6 : Double.NaN))
                    .channel(Channel.ALTITUDE, Series.generate(4000, s -> s % 10 == 0 ? s * 6 * 0.04 : Double.NaN))
                    .build();
            Course course = Course.of(sparse).orElseThrow();
            assertThat(course.gradeAtM(6000)).isCloseTo(0.04, within(1e-6));
        }

        /** Simulated road with grades to 6 %, a barometer that trembles and drifts: 0.5 % of grade in the mean. */
        @Test
        void survivesABarometer() {
            io.github.wattledger.simulation.Course road = io.github.wattledger.simulation.Course.builder()
                    .startLine(45, 0, 100)
                    .stretch(30_000, 0, 0.006)
                    .rollers(40, 2100)
                    .build();
            SimulatedRide ride =
                    RoadSimulation.ride(Scenario.of(road, SimulatedRider.tireless(), PacingPlan.steady(200)));
            Course course = Course.of(EqualWork.recorded(
                            SensorNoise.ordinary(3).record(ride).toRecording()))
                    .orElseThrow();
            double sum = 0;
            for (int node = 0; node < course.nodes(); node++) {
                sum += Math.abs(course.grade(node) - road.gradeAt(course.distanceM(node)));
            }
            assertThat(sum / course.nodes()).isLessThan(0.005);
        }

        @Test
        void isUnknownWhereNothingWasMeasured() {
            Ride ride = over(metre -> 0.03 * metre, 1000, 5);
            Series altitude = ride.series(Channel.ALTITUDE);
            Ride holed = Ride.builder(Instant.EPOCH, 1000)
                    .channel(Channel.DISTANCE, ride.series(Channel.DISTANCE))
                    .channel(
                            Channel.ALTITUDE,
                            Series.generate(1000, s -> s > 200 && s < 600 ? Double.NaN : altitude.get(s)))
                    .build();
            Course course = Course.of(holed).orElseThrow();
            assertThat(course.gradeAtM(2000)).isNaN();
            assertThat(course.gradeAtM(500)).isCloseTo(0.03, within(1e-9));
            assertThat(Course.of(Ride.ofWatts(1, 2, 3))).isEmpty();
        }
    }

    @Nested
    class OfAltitudes {
        @Test
        void gradesAreThoseBetweenTheNeighbours() {
            // By hand: 1 m, 4 m over two pieces, 8 m over two, 5 m, on pieces of 50 m.
            Course course = Course.of(50, Series.of(10, 11, 14, 19));
            assertThat(course.grade(0)).isCloseTo(1 / 50.0, within(1e-12));
            assertThat(course.grade(1)).isCloseTo(4 / 100.0, within(1e-12));
            assertThat(course.grade(2)).isCloseTo(8 / 100.0, within(1e-12));
            assertThat(course.grade(3)).isCloseTo(5 / 50.0, within(1e-12));
            assertThat(course.meanGrade(1, 2)).isCloseTo(3 / 50.0, within(1e-12));
            assertThat(course.gradeAtM(75)).isCloseTo(0.06, within(1e-12));
            assertThat(course.altitudeAtM(75)).isCloseTo(12.5, within(1e-12));
            assertThat(course.lengthM()).isEqualTo(150);
            assertThat(course.startM()).isZero();
        }

        @Test
        void needTwoNodesAndAStep() {
            assertThat(Course.of(50, Series.of(10, 11)).pieces()).isEqualTo(1);
            assertThatThrownBy(() -> Course.of(50, Series.of(10))).hasMessageContaining("with 1 nodes");
            assertThatThrownBy(() -> Course.of(0, Series.of(10, 11))).hasMessageContaining("stepM 0.0");
        }

        @Test
        void areUnknownBeyondTheEnds() {
            Course course = Course.of(50, Series.of(10, 11, 14));
            assertThat(course.altitudeAtM(-1)).isNaN();
            assertThat(course.altitudeAtM(0)).isEqualTo(10);
            assertThat(course.altitudeAtM(100)).isEqualTo(14);
            // The last sample may lie up to a step beyond the last node.
            assertThat(course.altitudeAtM(149)).isEqualTo(14);
            assertThat(course.altitudeAtM(151)).isNaN();
        }
    }

    /** A recording that begins at 5,000 m: the course is where the distances say. */
    @Test
    void beginsWhereTheRecordingDoes() {
        Ride ride = Ride.builder(Instant.EPOCH, 500)
                .channel(Channel.DISTANCE, Series.generate(500, s -> 5000 + 10.0 * s))
                .channel(Channel.ALTITUDE, Series.generate(500, s -> 100 + 0.5 * s))
                .build();
        Course course = Course.of(ride).orElseThrow();
        assertThat(course.startM()).isEqualTo(5000);
        // Samples reach to 9,990 m: 199 pieces of 25 m.
        assertThat(course.pieces()).isEqualTo(199);
        assertThat(course.distanceM(199)).isEqualTo(9975);
        assertThat(course.altitudeAtM(6000)).isCloseTo(150, within(1e-6));
        assertThat(course.gradeAtM(6000)).isCloseTo(0.05, within(1e-9));
    }

    @Nested
    class Climbs {
        @Test
        void haveLengthGainAndSpeed() {
            // 1 km flat, 2 km at 5 %, 1 km flat: 100 m of gain.
            Ride ride = over(profile(0, 10, 1000, 10, 3000, 110, 4000, 110), 1000, 4);
            List<Climb> climbs = climbs(ride);
            assertThat(climbs).hasSize(1);
            Climb climb = climbs.get(0);
            assertThat(climb.startM()).isCloseTo(1000, within(51.0));
            assertThat(climb.endM()).isCloseTo(3000, within(51.0));
            assertThat(climb.gainM()).isCloseTo(100, within(2.0));
            assertThat(climb.meanGrade()).isCloseTo(0.05, within(0.002));
            assertThat(climb.steepestGrade()).isCloseTo(0.05, within(1e-6));
            // 4 m/s at 5 % is 0.2 m/s, 720 m/h.
            assertThat(climb.verticalSpeedMPerHour()).isCloseTo(720, within(15.0));
            assertThat(climb.averagePowerW()).isEqualTo(250);
            assertThat(climb.averageHeartRateBpm()).isEqualTo(150);
        }

        @Test
        void areAtLeast500MetresAndThreePercent() {
            assertThat(climbs(over(profile(0, 0, 1000, 0, 1400, 32, 3000, 32), 600, 5)))
                    .as("400 m")
                    .isEmpty();
            assertThat(climbs(over(profile(0, 0, 1000, 0, 4000, 75, 5000, 75), 1000, 5)))
                    .as("2.5 %")
                    .isEmpty();
            assertThat(climbs(over(profile(0, 0, 1000, 0, 1700, 35, 3000, 35), 600, 5)))
                    .as("700 m at 5 %")
                    .hasSize(1);
        }

        @Test
        void bridgeAShortDipAndEndAtALongOne() {
            // 1 km at 6 %, 300 m down at 3 %, 1 km at 6 %.
            assertThat(climbs(over(profile(0, 0, 500, 0, 1500, 60, 1800, 51, 2800, 111, 3500, 111), 700, 5)))
                    .hasSize(1);
            // The same with 1.5 km down at 2 % between.
            assertThat(climbs(over(profile(0, 0, 500, 0, 1500, 60, 3000, 30, 4000, 90, 5000, 90), 1000, 5)))
                    .hasSize(2);
        }

        @Test
        void riddenAgainAreTheSame() {
            io.github.wattledger.simulation.Course loop = io.github.wattledger.simulation.Course.builder()
                    .startLine(45, 0, 100)
                    .stretch(2000, 0, 0.006)
                    .stretch(1500, 6, 0.006)
                    .stretch(1500, -6, 0.006)
                    .stretch(3000, 0, 0.006)
                    .stretch(2000, 0, 0.006)
                    .stretch(1500, 6, 0.006)
                    .stretch(1500, -6, 0.006)
                    .stretch(3000, 0, 0.006)
                    .heading(metres -> 360 * metres / 8000)
                    .build();
            SimulatedRide ride = RoadSimulation.ride(
                    Scenario.of(loop, SimulatedRider.tireless(), PacingPlan.startThenRest(260, 1500, 200)));
            List<Climb> climbs = climbs(
                    EqualWork.recorded(SensorNoise.ordinary(8).record(ride).toRecording()));

            assertThat(climbs).hasSize(2);
            assertThat(climbs.get(0).isSameRoadAs(climbs.get(1))).isTrue();
            assertThat(climbs.get(0).lengthM()).isCloseTo(1500, within(120.0));
            assertThat(climbs.get(1).movingSeconds())
                    .isGreaterThan(climbs.get(0).movingSeconds());
        }

        @Test
        void withoutPositionsAreNeverTheSame() {
            Climb climb = climbs(over(profile(0, 0, 1000, 0, 1700, 35, 3000, 35), 600, 5))
                    .get(0);
            assertThat(climb.isSameRoadAs(climb)).isFalse();
        }
    }

    private static List<Climb> climbs(Ride ride) {
        return Climb.of(ride, Course.of(ride).orElse(null));
    }
}
