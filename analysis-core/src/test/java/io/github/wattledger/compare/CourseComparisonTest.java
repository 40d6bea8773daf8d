package io.github.wattledger.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.compare.CourseComparison.Method;
import io.github.wattledger.compare.CourseComparison.Reason;
import io.github.wattledger.compare.CourseComparison.Stretch;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.simulation.SampleRides;
import java.time.Instant;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Gaps follow from their definition: rides of known speeds over invented roads have known times at every place. The
 * earth's radius is the IUGG mean radius.
 */
class CourseComparisonTest {
    private static final double METRES_PER_DEGREE = Math.toRadians(6_371_008.8);
    private static final double LATITUDE = 43.36;
    private static final double LONGITUDE = -124.21;

    /** A place on a plane, metres east and north of the start. */
    private record Spot(double eastM, double northM) {}

    /** Where a road is after so many metres. */
    private interface Road {
        Spot at(double distanceM);
    }

    /** A winding road to the east. */
    private static final Road WINDING = d -> new Spot(d * 0.95, 300 * Math.sin(d * 0.95 / 1500));

    /** A round lap of 5 km. */
    private static final Road LAPS = d -> new Spot(
            5000 / (2 * Math.PI) * Math.sin(2 * Math.PI * d / 5000),
            5000 / (2 * Math.PI) * (1 - Math.cos(2 * Math.PI * d / 5000)));

    /** Builds rides second by second. */
    private static final class Rider {
        private final Road road;
        private final DoubleUnaryOperator speedAtM;
        private final double lengthM;
        private double stopAtM = Double.NaN;
        private int stopSeconds;
        private SecondState stopState = SecondState.STOPPED;
        private double noiseM;
        private boolean hasPositions = true;
        private double odometerFactor = 1;
        private double watts = 200;

        Rider(Road road, double lengthM, DoubleUnaryOperator speedAtM) {
            this.road = road;
            this.lengthM = lengthM;
            this.speedAtM = speedAtM;
        }

        static Rider steady(Road road, double lengthM, double speedMps) {
            return new Rider(road, lengthM, at -> speedMps);
        }

        Rider stopping(double atM, int seconds, SecondState state) {
            stopAtM = atM;
            stopSeconds = seconds;
            stopState = state;
            return this;
        }

        Rider noisy(double metres) {
            noiseM = metres;
            return this;
        }

        Rider withoutPositions(double factor) {
            hasPositions = false;
            odometerFactor = factor;
            return this;
        }

        Rider at(double newWatts) {
            watts = newWatts;
            return this;
        }

        Ride ride() {
            Random random = new Random(20_260_613);
            java.util.List<double[]> rows = new java.util.ArrayList<>();
            java.util.List<SecondState> states = new java.util.ArrayList<>();
            double distance = 0;
            boolean hasStopped = Double.isNaN(stopAtM);
            while (distance <= lengthM) {
                if (!hasStopped && distance >= stopAtM) {
                    for (int second = 0; second < stopSeconds; second++) {
                        rows.add(row(distance, 0, random));
                        states.add(stopState);
                    }
                    hasStopped = true;
                }
                rows.add(row(distance, watts, random));
                states.add(SecondState.RIDING);
                distance += speedAtM.applyAsDouble(distance);
            }
            Ride.Builder builder = Ride.builder(Instant.parse("2026-06-13T14:00:00Z"), rows.size());
            for (int second = 0; second < rows.size(); second++) {
                builder.state(second, states.get(second));
            }
            builder.channel(Channel.DISTANCE, column(rows, 0)).channel(Channel.POWER, column(rows, 3));
            if (hasPositions) {
                builder.channel(Channel.LATITUDE, column(rows, 1)).channel(Channel.LONGITUDE, column(rows, 2));
            }
            return builder.build();
        }

        private double[] row(double distance, double power, Random random) {
            Spot spot = road.at(distance);
            double east = spot.eastM + noiseM * random.nextGaussian();
            double north = spot.northM + noiseM * random.nextGaussian();
            return new double[] {
                distance * odometerFactor,
                LATITUDE + north / METRES_PER_DEGREE,
                LONGITUDE + east / (METRES_PER_DEGREE * Math.cos(Math.toRadians(LATITUDE))),
                power
            };
        }

        private static Series column(java.util.List<double[]> rows, int which) {
            return Series.generate(rows.size(), second -> rows.get(second)[which]);
        }
    }

    @Test
    void aRideAgainstItselfHasNoGap() {
        Ride ride = Rider.steady(WINDING, 30_000, 8).ride();
        CourseComparison self = compare(ride, ride);
        assertThat(self.method()).isEqualTo(Method.POSITION);
        for (int point = self.fromPoint(); point <= self.toPoint(); point++) {
            assertThat(self.gapSeconds().get(point)).isCloseTo(0, within(0.3));
        }
        assertThat(self.distanceM(self.toPoint())).isGreaterThanOrEqualTo(29_800);
        assertThat(self.apart()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"STOPPED", "PAUSED", "MISSING"})
    void aStopIsAGapAtItsPlaceAndNowhereElse(SecondState state) {
        Ride through = Rider.steady(WINDING, 30_000, 8).ride();
        Ride halting =
                Rider.steady(WINDING, 30_000, 8).stopping(20_040, 120, state).ride();
        CourseComparison comparison = compare(through, halting);
        for (int point = comparison.fromPoint(); point <= comparison.toPoint(); point++) {
            double at = comparison.distanceM(point);
            if (Math.abs(at - 20_040) > 30) {
                assertThat(comparison.gapSeconds().get(point))
                        .as("at " + at)
                        .isCloseTo(at < 20_040 ? 0 : 120, within(0.5));
                assertThat(comparison.movingGapSeconds().get(point))
                        .as("at " + at)
                        .isCloseTo(0, within(1.0));
            }
        }
        assertThat(comparison.lostStandingSeconds()).isCloseTo(120, within(1.0));
        Stretch holding = comparison.stretches().stream()
                .filter(stretch -> stretch.startM() <= 20_000 && stretch.endM() > 20_040)
                .findFirst()
                .orElseThrow();
        assertThat(holding.lostSeconds()).isCloseTo(120, within(0.5));
        assertThat(holding.lostMovingSeconds()).isCloseTo(0, within(1.0));
    }

    @Test
    void aSteadyFasterRiderDrawsAwayInAStraightLine() {
        CourseComparison comparison = compare(
                Rider.steady(WINDING, 30_000, 8).at(180).ride(),
                Rider.steady(WINDING, 30_000, 10).at(240).ride());
        for (int point = comparison.fromPoint(); point <= comparison.toPoint(); point++) {
            double since = comparison.distanceM(point) - comparison.distanceM(comparison.fromPoint());
            assertThat(comparison.gapSeconds().get(point)).isCloseTo(since / 10 - since / 8, within(0.5));
        }
        assertThat(comparison.stretches()).isNotEmpty().allSatisfy(stretch -> {
            assertThat(stretch.ground()).isEqualTo(Ground.UNKNOWN); // there is no altitude
            assertThat(stretch.lostSeconds())
                    .isCloseTo((stretch.endM() - stretch.startM()) * (1 / 10.0 - 1 / 8.0), within(0.5));
            assertThat(stretch.reference().averagePowerW()).isEqualTo(180);
            assertThat(stretch.other().averagePowerW()).isEqualTo(240);
            assertThat(stretch.other().averageHeartRateBpm()).isNull();
        });
        double sum = comparison.stretches().stream()
                .mapToDouble(Stretch::lostSeconds)
                .sum();
        assertThat(sum).isCloseTo(comparison.finalGapSeconds(), within(1e-6));
    }

    @Test
    void lapsDoNotJump() {
        CourseComparison comparison = compare(
                Rider.steady(LAPS, 20_000, 8).ride(),
                Rider.steady(LAPS, 20_000, 9).ride());
        for (int point = comparison.fromPoint(); point <= comparison.toPoint(); point++) {
            double at = comparison.distanceM(point);
            assertThat(comparison.otherSecond().get(point)).as("at " + at).isCloseTo(at / 9, within(1.0));
        }
        assertThat(comparison.distanceM(comparison.toPoint())).isGreaterThanOrEqualTo(19_900);
    }

    @Test
    void ofLapsThatOneDidNotRideNothingIsGuessed() {
        CourseComparison comparison = compare(
                Rider.steady(LAPS, 15_000, 8).ride(),
                Rider.steady(LAPS, 10_000, 8).ride());
        assertThat(comparison.distanceM(comparison.toPoint())).isCloseTo(10_000, within(100.0));
        assertThat(comparison.finalGapSeconds()).isCloseTo(0, within(1.0));
        assertThat(comparison.apart()).singleElement().satisfies(rest -> {
            assertThat(rest.reason()).isEqualTo(Reason.BEYOND);
            assertThat(rest.startM()).isCloseTo(10_000, within(100.0));
            assertThat(rest.endM()).isEqualTo(15_000);
        });
    }

    @ParameterizedTest
    @ValueSource(doubles = {3, 8, 14})
    void scatterOfFiveMetresMovesAGapByAFewSeconds(double speedMps) {
        Ride still = Rider.steady(WINDING, 20_000, speedMps).ride();
        Ride scattered = Rider.steady(WINDING, 20_000, speedMps).noisy(5).ride();
        CourseComparison comparison = compare(still, scattered);
        for (int point = comparison.fromPoint(); point <= comparison.toPoint(); point++) {
            assertThat(comparison.gapSeconds().get(point)).isCloseTo(0, within(4.0));
        }
        assertThat(comparison.apart()).isEmpty();
    }

    @Test
    void aWayRoundIsNamedAndItsTimeKept() {
        // At 10 km off to the north for 1 km, 500 m along it, and back: 2 km more than the road, at 8 m/s.
        Road around = d -> {
            Spot before = WINDING.at(Math.min(d, 10_000));
            if (d <= 10_000) {
                return before;
            }
            Spot back = WINDING.at(10_500);
            double on = d - 10_000;
            if (on <= 1000) {
                return new Spot(before.eastM, before.northM + on);
            }
            if (on <= 1500) {
                double share = (on - 1000) / 500;
                return new Spot(
                        before.eastM + share * (back.eastM - before.eastM),
                        before.northM + 1000 + share * (back.northM - before.northM));
            }
            return on <= 2500 ? new Spot(back.eastM, back.northM + 2500 - on) : WINDING.at(d - 2000);
        };
        CourseComparison comparison = compare(
                Rider.steady(WINDING, 30_000, 8).ride(),
                Rider.steady(around, 32_000, 8).ride());
        assertThat(comparison.apart()).singleElement().satisfies(way -> {
            assertThat(way.reason()).isEqualTo(Reason.ELSEWHERE);
            assertThat(way.startM()).isCloseTo(10_000, within(100.0));
            assertThat(way.endM()).isCloseTo(10_500, within(100.0));
        });
        assertThat(comparison.gapSeconds().get(98)).isCloseTo(0, within(0.5));
        assertThat(comparison.gapSeconds().get(103)).isNaN();
        assertThat(comparison.gapSeconds().get(110)).isCloseTo(2000 / 8.0, within(1.0));
        assertThat(comparison.finalGapSeconds()).isCloseTo(2000 / 8.0, within(1.0));
    }

    @Test
    void theOtherWayRoundIsRefused() {
        Ride there = Rider.steady(WINDING, 20_000, 8).ride();
        Ride back = Rider.steady(d -> WINDING.at(20_000 - d), 20_000, 8).ride();
        assertThat(refusal(there, back)).contains("other way round");
    }

    @Test
    void anotherRoadIsRefused() {
        Ride here = Rider.steady(WINDING, 20_000, 8).ride();
        Ride there = Rider.steady(d -> new Spot(-d, 5000), 20_000, 8).ride();
        assertThat(refusal(here, there)).contains("shares no course");
    }

    @Test
    void withoutPositionsDistanceIsScaledByTheWhole() {
        // The second odometer reads 2 % more over the same road.
        CourseComparison comparison = compare(
                Rider.steady(WINDING, 20_000, 8).ride(),
                Rider.steady(WINDING, 20_000, 10).withoutPositions(1.02).ride());
        assertThat(comparison.method()).isEqualTo(Method.DISTANCE);
        for (int point = comparison.fromPoint(); point <= comparison.toPoint(); point++) {
            double at = comparison.distanceM(point);
            assertThat(comparison.gapSeconds().get(point)).isCloseTo(at / 10 - at / 8, within(1.0));
        }
    }

    @Test
    void withoutPositionsLengthsMustAgree() {
        Ride one = Rider.steady(WINDING, 20_000, 8).withoutPositions(1).ride();
        Ride other = Rider.steady(WINDING, 18_000, 8).ride();
        assertThat(refusal(one, other)).contains("18.0 km").contains("20.0 km");
    }

    @Test
    void aRideOfPowerAloneIsRefused() {
        Ride ride = Rider.steady(WINDING, 20_000, 8).ride();
        assertThat(refusal(ride, Ride.ofWatts(new double[3600]))).contains("neither positions nor distance");
    }

    @Test
    void aHoleInThePositionsIsNamed() {
        Ride whole = Rider.steady(WINDING, 20_000, 8).ride();
        Series latitude = whole.series(Channel.LATITUDE);
        // From 8000 m, second 1000, to 12,000 m, second 1500.
        Ride holed = Ride.builder(whole.start(), whole.seconds())
                .channel(Channel.DISTANCE, whole.series(Channel.DISTANCE))
                .channel(Channel.LONGITUDE, whole.series(Channel.LONGITUDE))
                .channel(
                        Channel.LATITUDE,
                        Series.generate(whole.seconds(), s -> s >= 1000 && s < 1500 ? Double.NaN : latitude.get(s)))
                .build();
        for (CourseComparison comparison : new CourseComparison[] {compare(whole, holed), compare(holed, whole)}) {
            assertThat(comparison.apart()).singleElement().satisfies(hole -> {
                assertThat(hole.reason()).isEqualTo(Reason.NO_POSITION);
                assertThat(hole.startM()).isCloseTo(8000, within(100.0));
                assertThat(hole.endM()).isCloseTo(12_000, within(100.0));
            });
            assertThat(comparison.gapSeconds().get(100)).isNaN();
            assertThat(comparison.gapSeconds().get(150)).isCloseTo(0, within(0.5));
        }
    }

    @Test
    void aPartBeginsWithoutAGap() {
        CourseComparison comparison = compare(
                Rider.steady(WINDING, 30_000, 8).ride(),
                Rider.steady(WINDING, 30_000, 10).ride(),
                10_000,
                20_000);
        assertThat(comparison.distanceM(comparison.fromPoint())).isEqualTo(10_000);
        assertThat(comparison.distanceM(comparison.toPoint())).isEqualTo(20_000);
        assertThat(comparison.gapSeconds().get(99)).isNaN();
        assertThat(comparison.gapSeconds().get(100)).isEqualTo(0);
        assertThat(comparison.finalGapSeconds()).isCloseTo(1000 - 1250, within(0.5));
    }

    /** The same ride with another first distance. */
    private static Ride beginningAt(Ride ride, double metres) {
        Ride.Builder copy = Ride.builder(ride.start(), ride.seconds());
        for (Channel channel : ride.channels()) {
            Series series = ride.series(channel);
            copy.channel(
                    channel,
                    channel == Channel.DISTANCE
                            ? Series.generate(ride.seconds(), s -> series.get(s) + metres)
                            : series);
        }
        return copy.build();
    }

    @Test
    void aRecordingMayBeginAnywhereOnTheOdometer() {
        Ride reference = beginningAt(Rider.steady(WINDING, 20_000, 8).ride(), 5000);
        Ride other = beginningAt(Rider.steady(WINDING, 20_000, 10).ride(), 70_000);
        CourseComparison comparison = compare(reference, other);
        assertThat(comparison.startM()).isEqualTo(5000);
        assertThat(comparison.points()).isEqualTo(201);
        assertThat(comparison.distanceM(comparison.fromPoint())).isCloseTo(5000, within(100.0));
        assertThat(comparison.distanceM(comparison.toPoint())).isCloseTo(25_000, within(100.0));
        assertThat(comparison.gapSeconds().get(150)).isCloseTo(15_000 / 10.0 - 15_000 / 8.0, within(1.0));
        CourseComparison part = compare(reference, other, 10_000, 15_000);
        assertThat(part.distanceM(part.fromPoint())).isEqualTo(10_000);
        assertThat(part.distanceM(part.toPoint())).isEqualTo(15_000);
        // By distance alone as well.
        CourseComparison byDistance = compare(
                reference,
                beginningAt(
                        Rider.steady(WINDING, 20_000, 10).withoutPositions(1).ride(), 70_000));
        assertThat(byDistance.method()).isEqualTo(Method.DISTANCE);
        assertThat(byDistance.gapSeconds().get(150)).isCloseTo(15_000 / 10.0 - 15_000 / 8.0, within(1.0));
    }

    @Test
    void withoutDistanceThePositionsAreTheOdometer() {
        Ride whole = Rider.steady(WINDING, 20_000, 8)
                .stopping(10_000, 60, SecondState.STOPPED)
                .ride();
        Ride.Builder placed = Ride.builder(whole.start(), whole.seconds());
        for (Channel channel : whole.channels()) {
            if (channel != Channel.DISTANCE) {
                placed.channel(channel, whole.series(channel));
            }
        }
        for (int second = 0; second < whole.seconds(); second++) {
            placed.state(second, whole.state(second));
        }
        CourseComparison comparison = compare(Rider.steady(WINDING, 20_000, 8).ride(), placed.build());
        assertThat(comparison.method()).isEqualTo(Method.POSITION);
        assertThat(comparison.gapSeconds().get(90)).isCloseTo(0, within(0.5));
        assertThat(comparison.gapSeconds().get(110)).isCloseTo(60, within(0.5));
        // And as the reference: the length of the road on the ground, by the definition of WINDING 0.969 of its metres
        // on
        // average, from the integral of root(0.95^2 + (0.19 cos(0.95 d / 1500))^2).
        CourseComparison reversed =
                compare(placed.build(), Rider.steady(WINDING, 20_000, 8).ride());
        double lengthM = 0;
        for (int metre = 0; metre < 20_000; metre++) {
            lengthM += Math.hypot(0.95, 0.19 * Math.cos(0.95 * metre / 1500));
        }
        assertThat(reversed.points()).isEqualTo((int) (lengthM / 100) + 1);
        assertThat(reversed.finalGapSeconds()).isCloseTo(-60, within(1.0));
    }

    @Test
    void aWayRoundCountsInTheStretchItLiesIn() {
        // From 10,050 m to 10,550 m five points were not passed: the road there lies a kilometre to the north.
        Road aside = d -> {
            Spot spot = WINDING.at(d);
            return d > 10_050 && d < 10_550 ? new Spot(spot.eastM, spot.northM + 1000) : spot;
        };
        CourseComparison comparison = compare(
                Rider.steady(WINDING, 30_000, 8).ride(),
                Rider.steady(aside, 30_000, 8).ride());
        Stretch around = comparison.stretches().stream()
                .filter(stretch -> stretch.startM() <= 10_100 && stretch.endM() >= 10_500)
                .findFirst()
                .orElseThrow();
        assertThat(around.apartM()).isEqualTo(500);
        assertThat(comparison.stretches())
                .filteredOn(stretch -> !stretch.equals(around))
                .allSatisfy(stretch -> assertThat(stretch.apartM()).isZero());
    }

    /** Along the road for so many metres, then away to the north. */
    private static Ride leaving(double afterM) {
        Road road = d -> {
            Spot spot = WINDING.at(Math.min(d, afterM));
            return new Spot(spot.eastM, spot.northM + Math.max(0, d - afterM));
        };
        return Rider.steady(road, 20_000, 8).ride();
    }

    @Test
    void ridesShareAKilometreAndATenthAtLeast() {
        Ride reference = Rider.steady(WINDING, 20_000, 8).ride();
        for (double sharedM : new double[] {800, 1700}) {
            assertThat(refusal(reference, leaving(sharedM)))
                    .as("%s m of 20 km", sharedM)
                    .contains("shares no course");
        }
        CourseComparison enough = compare(reference, leaving(2300));
        assertThat(enough.distanceM(enough.toPoint())).isCloseTo(2300, within(150.0));
        assertThat(enough.apart())
                .singleElement()
                .satisfies(rest -> assertThat(rest.reason()).isEqualTo(Reason.BEYOND));
    }

    @Test
    void ofEqualLapsTheOneAtItsOwnDistanceIsTaken() {
        CourseComparison first = compare(
                Rider.steady(LAPS, 5000, 8).ride(),
                Rider.steady(LAPS, 15_000, 8).ride());
        for (int point = first.fromPoint(); point <= first.toPoint(); point++) {
            assertThat(first.otherSecond().get(point)).isCloseTo(first.distanceM(point) / 8, within(1.0));
        }
        CourseComparison one = compare(
                Rider.steady(LAPS, 15_000, 8).ride(),
                Rider.steady(LAPS, 5000, 8).ride());
        assertThat(one.distanceM(one.fromPoint())).isCloseTo(0, within(100.0));
        assertThat(one.distanceM(one.toPoint())).isCloseTo(5000, within(100.0));
    }

    @Test
    void whatIsMissingIsNamedForTheRideThatLacksIt() {
        Ride ride = Rider.steady(WINDING, 20_000, 8).ride();
        Ride powerOnly = Ride.ofWatts(new double[3600]);
        assertThat(refusal(powerOnly, ride)).startsWith("the first ride has neither");
        assertThat(refusal(ride, powerOnly)).startsWith("it has neither");
        Series latitude = ride.series(Channel.LATITUDE);
        Ride onePlace = Ride.builder(ride.start(), ride.seconds())
                .channel(Channel.DISTANCE, ride.series(Channel.DISTANCE))
                .channel(Channel.LONGITUDE, ride.series(Channel.LONGITUDE))
                .channel(Channel.LATITUDE, Series.generate(ride.seconds(), s -> s == 5 ? latitude.get(s) : Double.NaN))
                .build();
        assertThat(refusal(ride, onePlace)).startsWith("it has too few positions");
        assertThat(refusal(onePlace, ride)).startsWith("the first ride has too few positions");
        assertThat(refusal(ride, ride, 30_000, 40_000)).contains("nothing of the chosen part");
    }

    @Test
    void whatIsToldHasItsWords() {
        assertThat(Method.DISTANCE.words()).isEqualTo("by distance");
        assertThat(Ground.CLIMB.words()).isEqualTo("climb");
        assertThat(Reason.ELSEWHERE.words()).isEqualTo("rode elsewhere");
    }

    @Nested
    class Along {
        /** At 10 m/s a point every ten seconds; power is the number of the second. */
        private final Ride ride = Ride.builder(Instant.EPOCH, 300)
                .channel(Channel.POWER, Series.generate(300, s -> s == 205 ? Double.NaN : s))
                .channel(Channel.HEART_RATE, Series.generate(300, s -> s < 250 ? Double.NaN : 150))
                .state(new Interval(130, 140), SecondState.STOPPED)
                .build();

        private final Series passing = Series.generate(28, point -> point == 12 ? Double.NaN : 10.0 * point);

        private double at(int point) {
            return CourseComparison.along(ride, Channel.POWER, passing).get(point);
        }

        @Test
        void isTheMeanOverFiveHundredMetresBothWays() {
            // From 50 s to 100 s less one, mean 74.5, for point 5 from 0 to 99.
            assertThat(at(5)).isCloseTo(49.5, within(1e-9));
            assertThat(at(6)).isCloseTo(59.5, within(1e-9));
            // At the ends as far as the course goes.
            assertThat(at(0)).isCloseTo(24.5, within(1e-9));
            assertThat(at(27)).isCloseTo(244.5, within(1e-9));
        }

        @Test
        void leavesOutStopsAndWhatWasNotMeasured() {
            // Point 13: from 80 to 180 s, without 130 to 140.
            double sum = 0;
            for (int second = 80; second < 180; second++) {
                sum += second >= 130 && second < 140 ? 0 : second;
            }
            assertThat(at(13)).isCloseTo(sum / 90, within(1e-9));
            // Point 20: from 150 to 250 s, without 205.
            assertThat(at(20)).isCloseTo((100 * 199.5 - 205) / 99, within(1e-9));
        }

        @Test
        void looksFromTheLastPassedPointWithinReach() {
            // Point 12 was not passed: for 7 it ends with 11, for 17 it begins with 13.
            assertThat(at(7)).isCloseTo((20 + 109) / 2.0, within(1e-9));
            double sum = 0;
            for (int second = 140; second < 220; second++) {
                sum += second == 205 ? 0 : second;
            }
            assertThat(at(17)).isCloseTo(sum / 79, within(1e-9));
            assertThat(at(12)).isNaN();
        }

        @Test
        void isUnknownWhereNothingWasMeasured() {
            Series bpm = CourseComparison.along(ride, Channel.HEART_RATE, passing);
            assertThat(bpm.size()).isEqualTo(28);
            assertThat(bpm.get(5)).isNaN();
            assertThat(bpm.get(22)).isCloseTo(150, within(1e-9));
        }
    }

    @Test
    void theTwoSampleRacesByWhatTheirRecordersSay() {
        Ride hard = Cleaning.clean(SampleRides.overHardStart().toRecording()).ride();
        Ride even = Cleaning.clean(SampleRides.evenPaced().toRecording()).ride();
        CourseComparison comparison = compare(hard, even);
        assertThat(comparison.method()).isEqualTo(Method.POSITION);
        assertThat(comparison.apart()).isEmpty();
        // Both rode one simulated road, so the true times are those at which their odometers read the same.
        for (int point = comparison.fromPoint() + 1; point <= comparison.toPoint(); point += 10) {
            double at = comparison.distanceM(point);
            double truth = (reached(even, at) - reached(hard, at))
                    - (reached(even, comparison.distanceM(comparison.fromPoint()))
                            - reached(hard, comparison.distanceM(comparison.fromPoint())));
            boolean nearAHalt = haltsWithin(hard, at) || haltsWithin(even, at);
            if (!nearAHalt) {
                assertThat(comparison.gapSeconds().get(point)).as("at " + at).isCloseTo(truth, within(8.0));
            }
        }
        // By the scenario they stand 240 and 150 s against 90 and 45 s, and wait for the same gun.
        assertThat(comparison.lostStandingSeconds()).isCloseTo(90 + 45 - 240 - 150, within(10.0));
        double byGround = comparison.lostMovingSecondsOn(Ground.CLIMB)
                + comparison.lostMovingSecondsOn(Ground.DESCENT)
                + comparison.lostMovingSecondsOn(Ground.FLAT)
                + comparison.lostStandingSeconds();
        assertThat(byGround).isCloseTo(comparison.finalGapSeconds(), within(1e-6));
    }

    private static double reached(Ride ride, double distanceM) {
        Series distance = ride.series(Channel.DISTANCE);
        int second = 0;
        while (!(distance.get(second) >= distanceM)) {
            second++;
        }
        return second;
    }

    private static boolean haltsWithin(Ride ride, double distanceM) {
        Series distance = ride.series(Channel.DISTANCE);
        for (int second = 0; second < ride.seconds(); second++) {
            if (ride.state(second) != SecondState.RIDING && Math.abs(distance.get(second) - distanceM) < 60) {
                return true;
            }
        }
        return false;
    }

    private static CourseComparison compare(Ride reference, Ride other) {
        return CourseComparison.of(reference, other).orElseThrow(AssertionError::new);
    }

    private static CourseComparison compare(Ride reference, Ride other, double fromM, double toM) {
        return CourseComparison.of(reference, other, fromM, toM).orElseThrow(AssertionError::new);
    }

    private static String refusal(Ride reference, Ride other) {
        return CourseComparison.of(reference, other).refusal().orElseThrow();
    }

    private static String refusal(Ride reference, Ride other, double fromM, double toM) {
        return CourseComparison.of(reference, other, fromM, toM).refusal().orElseThrow();
    }
}
