package io.github.wattledger.pacing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Series;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** All expected numbers follow from the definition: power is what the ground asks for times the effort of the part. */
class GroundAndTimeTest {
    private final List<Double> watts = new ArrayList<>();
    private final List<Integer> grounds = new ArrayList<>();
    private final List<Integer> parts = new ArrayList<>();

    private void ride(int part, int ground, int seconds, double power) {
        for (int second = 0; second < seconds; second++) {
            watts.add(power);
            grounds.add(ground);
            parts.add(part);
        }
    }

    private GroundAndTime fit(int count) {
        GroundAndTime.Cells cells = new GroundAndTime.Cells(
                Series.of(watts.stream().mapToDouble(Double::doubleValue).toArray()),
                grounds.stream().mapToInt(Integer::intValue).toArray(),
                count);
        for (int second = 0; second < parts.size(); second++) {
            if (parts.get(second) != GroundAndTime.NONE) {
                cells.add(second, parts.get(second));
            }
        }
        return cells.compared();
    }

    @ParameterizedTest
    @CsvSource({
        "-0.10, 0",
        "-0.0401, 0",
        "-0.04, 1",
        "-0.031, 1",
        "-0.005, 4",
        "0, 5",
        "0.0099, 5",
        "0.0101, 6",
        "0.0899, 13",
        "0.09, 14",
        "0.3, 14",
        "NaN, -1"
    })
    void gradesFallIntoBinsOfOnePercent(double grade, int ground) {
        assertThat(GroundAndTime.groundOf(grade)).isEqualTo(ground);
    }

    @Test
    void aClimbAtTheStartIsNoHarderEffort() {
        // 300 W uphill and 200 W on the flat throughout; the first part is mostly climb, the second mostly flat.
        ride(0, 10, 1500, 300);
        ride(0, 5, 300, 200);
        ride(1, 10, 100, 300);
        ride(1, 5, 1700, 200);
        GroundAndTime fit = fit(2);
        assertThat(fit.ratio(0, 1)).isCloseTo(1, within(1e-6));
        assertThat(fit.effort(0)).isCloseTo(1, within(1e-6));
    }

    @Test
    void findsTheEffortThatWasPutIn() {
        double[] ground = {0, 120, 140, 160, 180, 200, 215, 230, 245, 260, 270, 280, 290, 295, 300};
        double[] effort = {1.3, 1.1, 1.0, 1.0, 0.9, 0.8};
        Random random = new Random(7);
        double weighted = 0;
        int all = 0;
        for (int part = 0; part < effort.length; part++) {
            for (int g = 1; g < ground.length; g++) {
                int seconds = 20 + random.nextInt(200);
                ride(part, g, seconds, ground[g] * effort[part]);
                weighted += seconds * effort[part];
                all += seconds;
            }
        }
        GroundAndTime fit = fit(effort.length);
        for (int part = 0; part < effort.length; part++) {
            assertThat(fit.effort(part)).isCloseTo(effort[part] / (weighted / all), within(1e-6));
        }
    }

    @Test
    void totalsOfEachPartAreThoseOfTheModel() {
        // The definition of the method of marginal totals, on power that is no exact product.
        Random random = new Random(3);
        for (int part = 0; part < 4; part++) {
            for (int g = 3; g < 12; g++) {
                ride(part, g, 60 + random.nextInt(60), 150 + 10 * g + random.nextInt(80));
            }
        }
        GroundAndTime fit = fit(4);
        double[] groundW = new double[GroundAndTime.GROUNDS];
        double[] weight = new double[GroundAndTime.GROUNDS];
        for (int second = 0; second < watts.size(); second++) {
            groundW[grounds.get(second)] += watts.get(second);
            weight[grounds.get(second)] += fit.effort(parts.get(second));
        }
        double[] recorded = new double[4];
        double[] modelled = new double[4];
        for (int second = 0; second < watts.size(); second++) {
            int g = grounds.get(second);
            recorded[parts.get(second)] += watts.get(second);
            modelled[parts.get(second)] += groundW[g] / weight[g] * fit.effort(parts.get(second));
        }
        for (int part = 0; part < 4; part++) {
            assertThat(modelled[part]).isCloseTo(recorded[part], within(1e-4 * recorded[part]));
        }
    }

    @Test
    void aPartOnGroundOfItsOwnSaysNothing() {
        ride(0, 5, 600, 200);
        ride(1, 5, 600, 220);
        ride(2, 12, 600, 300);
        GroundAndTime fit = fit(3);
        assertThat(fit.effort(2)).isNaN();
        assertThat(fit.seconds(2)).isZero();
        assertThat(fit.ratio(1, 0)).isCloseTo(1.1, within(1e-9));
    }

    @Test
    void lessThanAMinuteOfSharedGroundSaysNothing() {
        ride(0, 5, 600, 200);
        ride(1, 5, 59, 220);
        ride(1, 12, 600, 300);
        assertThat(fit(2).ratio(1, 0)).isNaN();
        ride(1, 5, 1, 220);
        assertThat(fit(2).ratio(1, 0)).isCloseTo(1.1, within(1e-9));
    }

    @Test
    void secondsWithoutPowerGroundOrPartAreLeftOut() {
        ride(0, 5, 600, 200);
        ride(1, 5, 600, 220);
        ride(0, 5, 100, Double.NaN);
        ride(1, GroundAndTime.NONE, 100, 900);
        ride(GroundAndTime.NONE, 5, 100, 900);
        GroundAndTime fit = fit(2);
        assertThat(fit.ratio(1, 0)).isCloseTo(1.1, within(1e-9));
        assertThat(fit.seconds(0)).isEqualTo(600);
    }
}
