package io.github.wattledger.power;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** The lines must pass through what the models say; the models themselves are tested elsewhere. */
class ModelCurveTest {
    @Test
    void theGuideGoesFromTwentyMinutesToTheLengthAskedFor() {
        ModelCurve line = ModelCurve.guide(250, 8 * 3600).orElseThrow();
        ModelCurve.Point first = line.points().get(0);
        ModelCurve.Point last = line.points().get(line.points().size() - 1);
        // Threshold is 95 % of 20 minutes; common practice, no source.
        assertThat(first.seconds()).isEqualTo(1200);
        assertThat(first.watts()).isCloseTo(250 / 0.95, within(1e-9));
        // 0.72 of threshold over 8 h, coaches' targets to two digits; the range from the variance of the guide by hand:
        // 0.03^2 + (0.055 ln 8)^2 + (0.006 (ln 8)^2)^2 = 0.014653, and 1.2816 errors to each side.
        assertThat(last.seconds()).isEqualTo(28_800);
        assertThat(last.watts()).isCloseTo(180, within(1.5));
        assertThat(requireNonNull(last.lowW())).isCloseTo(0.8563 * last.watts(), within(0.02));
        assertThat(requireNonNull(last.highW())).isCloseTo(1.1678 * last.watts(), within(0.02));
        assertThat(line.source()).isEqualTo(ModelCurve.Source.GUIDE);
    }

    @Test
    void thereIsNoGuideUnderTwentyMinutes() {
        assertThat(ModelCurve.guide(250, 1200)).isEmpty();
    }

    @Test
    void theFitIsDrawnOverItsOwnDurationsUpToHalfAnHour() {
        // P = CP + W'/t with CP 240 W and W' 18 kJ: 340 W over 3 min, 255 W over 20 min. Five efforts on the curve.
        List<BestEffort> efforts =
                BestEffort.listOf(new double[] {180, 300, 600, 900, 1200}, new double[] {340, 300, 270, 260, 255});
        CriticalPowerFit fit = new CriticalPowerFit(
                CriticalPower.Form.INVERSE_TIME, 240, 2, 18_000, 500, null, null, efforts, List.of(), 0.99);
        ModelCurve line = ModelCurve.of(fit);
        ModelCurve.Point first = line.points().get(0);
        ModelCurve.Point last = line.points().get(line.points().size() - 1);
        assertThat(first.seconds()).isEqualTo(180);
        assertThat(first.watts()).isCloseTo(340, within(1e-9));
        assertThat(last.seconds()).isEqualTo(1200);
        assertThat(last.watts()).isCloseTo(255, within(1e-9));
        // Student's t for 3 degrees of freedom, 95 %: 3.182 (any table), times the standard error of 2 W.
        assertThat(requireNonNull(last.highW()) - last.watts()).isCloseTo(2 * 3.182, within(0.01));
        assertThat(last.watts() - requireNonNull(last.lowW())).isCloseTo(2 * 3.182, within(0.01));
    }

    @Test
    void durationsLieEvenlyOnALogarithmicAxis() {
        for (ModelCurve line : List.of(
                ModelCurve.given(240, 18_000), ModelCurve.guide(250, 8 * 3600).orElseThrow())) {
            List<ModelCurve.Point> points = line.points();
            double first = points.get(0).seconds();
            double last = points.get(points.size() - 1).seconds();
            double step = Math.pow(last / first, 1.0 / (points.size() - 1));
            for (int i = 1; i < points.size(); i++) {
                assertThat(points.get(i).seconds() / points.get(i - 1).seconds())
                        .as("point %d", i)
                        .isCloseTo(step, within(1e-9));
            }
        }
    }

    @Test
    void aFitToSprintsIsStillDrawnForward() {
        // Two minutes is where the line may begin, later than the longest of these efforts.
        List<BestEffort> efforts = BestEffort.listOf(new double[] {5, 15, 40, 100}, new double[] {900, 700, 500, 400});
        CriticalPowerFit fit = new CriticalPowerFit(
                CriticalPower.Form.THREE_PARAMETER, 250, 2, 18_000, 500, 1100.0, 20.0, efforts, List.of(), 0.99);
        assertThat(ModelCurve.of(fit).points())
                .extracting(ModelCurve.Point::seconds)
                .startsWith(120.0)
                .isSorted()
                .doesNotHaveDuplicates();
    }

    @Test
    void aGivenCriticalPowerIsDrawnWithoutBounds() {
        // P = CP + W'/t with CP 240 W and W' 18 kJ: 390 W over 2 min, 250 W over half an hour.
        ModelCurve line = ModelCurve.given(240, 18_000);
        ModelCurve.Point first = line.points().get(0);
        ModelCurve.Point last = line.points().get(line.points().size() - 1);
        assertThat(first).isEqualTo(new ModelCurve.Point(120, 390, null, null));
        assertThat(last).isEqualTo(new ModelCurve.Point(1800, 250, null, null));
        assertThat(line.source()).isEqualTo(ModelCurve.Source.GIVEN_CRITICAL_POWER);
    }
}
