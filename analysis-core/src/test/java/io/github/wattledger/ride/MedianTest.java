package io.github.wattledger.ride;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.hipparchus.stat.StatUtils;
import org.junit.jupiter.api.Test;

class MedianTest {
    @Test
    void isTheMiddleOneOrTheMeanOfTheTwoInTheMiddle() {
        // The definition in any textbook.
        assertThat(Median.of(new double[] {7})).isEqualTo(7);
        assertThat(Median.of(new double[] {9, 1, 5})).isEqualTo(5);
        assertThat(Median.of(new double[] {4, 1, 3, 10})).isEqualTo(3.5);
        assertThat(Median.of(new double[0])).isNaN();
    }

    @Test
    void agreesWithTheLibraryOfStatistics() {
        SplittableRandom random = new SplittableRandom(11);
        for (int size = 1; size < 60; size++) {
            double[] values = random.doubles(size, -100, 100).toArray();
            assertThat(Median.of(values)).isCloseTo(StatUtils.percentile(values, 50), within(1e-12));
        }
    }

    @Test
    void theUpperOneIsOneOfTheValues() {
        // The definition: of an even number the upper of the two in the middle.
        assertThat(Median.upperOf(new double[] {9, 1, 5})).isEqualTo(5);
        assertThat(Median.upperOf(new double[] {4, 1, 3, 10})).isEqualTo(4);
    }

    @Test
    void leavesTheValuesAsTheyAre() {
        double[] values = {3, 1, 2};
        Median.of(values);
        assertThat(values).containsExactly(3, 1, 2);
    }
}
