package io.github.wattledger.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.load.Ascent;
import io.github.wattledger.ride.RouteLine;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.Rig;
import io.github.wattledger.rig.RoadLoad;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RouteTest {
    private static final double SPACING_M = 20;

    /** Hills of 40 m every 4 km and a swell of 60 m every 13 km, 160 km in all; a sum of sines, so exactly known. */
    private static double trueAltitudeM(double atM) {
        return 300 + 20 * Math.sin(2 * Math.PI * atM / 4000) + 30 * Math.sin(2 * Math.PI * atM / 13_000);
    }

    private static Series truth(int points) {
        return Series.generate(points, i -> trueAltitudeM(i * SPACING_M));
    }

    /** Noise of a first-order process whose correlation falls to 1/e over a distance. */
    private static Series noisy(int points, double sigmaM, double correlationM, long seed) {
        Random random = new Random(seed);
        double keep = correlationM > 0 ? Math.exp(-SPACING_M / correlationM) : 0;
        double[] altitude = new double[points];
        double noise = sigmaM * random.nextGaussian();
        for (int i = 0; i < points; i++) {
            altitude[i] = trueAltitudeM(i * SPACING_M) + noise;
            noise = keep * noise + Math.sqrt(1 - keep * keep) * sigmaM * random.nextGaussian();
        }
        return Series.of(altitude);
    }

    private static RouteLine line(double spacingM, Series altitudeM) {
        int points = altitudeM.size();
        Series missing = Series.generate(points, i -> Double.NaN);
        return new RouteLine(
                null, missing, missing, altitudeM, Series.generate(points, i -> i * spacingM), List.of(), false);
    }

    private static double secondsAt187W(Course course) {
        return RoadLoad.of(Rig.of(84, 0.36, 0.007), 1.2).secondsFor(course, 187, 0);
    }

    /**
     * Altitude noise of 3 m makes a hilly course slower by 4.2 % unsmoothed, 1.7 % with a Gaussian of 100 m and nothing
     * with one of 200 m (a simulation of this project's methods). The line of 200 m to each side lies between the two.
     */
    @Test
    void noiseOfATerrainModelDoesNotBecomeHills() {
        int points = 8001;
        double trueSeconds = secondsAt187W(Course.of(SPACING_M, truth(points)));
        Series noisy = noisy(points, 3, 90, 20260502);
        double raw = secondsAt187W(Course.of(SPACING_M, noisy)) / trueSeconds - 1;
        Route route = Route.of(line(SPACING_M, noisy));
        double smoothed = secondsAt187W(route.course()) / trueSeconds - 1;
        assertThat(raw).isGreaterThan(0.025);
        assertThat(smoothed).isBetween(-0.005, 0.017);
        double trueAscentM = Ascent.metres(truth(points)).orElseThrow();
        assertThat(route.ascentM()).isCloseTo(trueAscentM, within(0.10 * trueAscentM));
    }

    /** Noise from point to point: 5.6 % slower unsmoothed, 0.7 % with a Gaussian of 50 m (the same simulation). */
    @Test
    void noiseFromPointToPointIsSmoothedAway() {
        int points = 8001;
        double trueSeconds = secondsAt187W(Course.of(SPACING_M, truth(points)));
        double smoothed =
                secondsAt187W(Route.of(line(SPACING_M, noisy(points, 3, 0, 7))).course()) / trueSeconds;
        assertThat(smoothed).isBetween(0.995, 1.007);
    }

    @Test
    void aSpikeOfOnePointLeavesNothing() {
        Series withBridge = Series.generate(501, i -> i == 250 ? 160 : 100);
        Route route = Route.of(line(20, withBridge));
        assertThat(route.ascentM()).isZero();
        assertThat(route.course().altitudeAtM(5000)).isCloseTo(100, within(1e-9));
    }

    /** A straight line fitted to a straight road is the road, at its ends too. */
    @Test
    void aSteadyRoadStaysAsItIs() {
        Route route = Route.of(line(20, Series.generate(301, i -> i * 20 * 0.05)));
        assertThat(route.gradeBetweenM(0, 200)).isCloseTo(0.05, within(1e-9));
        assertThat(route.gradeBetweenM(5800, 6000)).isCloseTo(0.05, within(1e-9));
        assertThat(route.climbs()).singleElement().satisfies(climb -> {
            assertThat(climb.gainM()).isCloseTo(300, within(1e-6));
            assertThat(climb.lengthM()).isCloseTo(6000, within(1e-6));
        });
    }

    @Test
    void twoPointsAreACourse() {
        Route route = Route.of(line(5000, Series.of(100, 200)));
        assertThat(route.lengthM()).isCloseTo(5000, within(1e-9));
        assertThat(route.gradeBetweenM(1000, 1200)).isCloseTo(0.02, within(1e-9));
    }

    @Test
    void aCliffCountsAsTwentyPercent() {
        Route route = Route.of(line(100, Series.generate(41, i -> i < 20 ? 0 : 500)));
        assertThat(route.gradeBetweenM(1900, 2100)).isEqualTo(0.20);
    }

    @Test
    void withoutAltitudeItIsLevelAndSaysSo() {
        Route route = Route.of(line(1000, Series.generate(11, i -> Double.NaN)));
        assertThat(route.hasAltitude()).isFalse();
        assertThat(route.ascentM()).isZero();
        assertThat(route.gradeBetweenM(0, 200)).isZero();
    }

    @Test
    void aCourseOfNoLengthIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Route.of(line(10, Series.of(1, 2))))
                .withMessage("a course of 10.0 m, expected 100 m or more");
    }

    @Test
    void bearingsCountClockwiseFromNorth() {
        Series north = Series.of(50, 50.01);
        Series level = Series.of(0, 0);
        RouteLine east =
                new RouteLine(null, Series.of(50, 50), Series.of(8, 8.01), level, Series.of(0, 717), List.of(), false);
        RouteLine up = new RouteLine(null, north, Series.of(8, 8), level, Series.of(0, 1112), List.of(), false);
        assertThat(Route.of(east).bearingBetweenM(0, 200)).isCloseTo(Math.PI / 2, within(1e-9));
        assertThat(Route.of(up).bearingBetweenM(0, 200)).isCloseTo(0, within(1e-9));
    }
}
