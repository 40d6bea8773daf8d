package io.github.wattledger.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Series;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Expected values are worked out by hand from the definition, or by the plain double loop over it. */
class RollingMeanTest {
    private static final double GAP = Double.NaN;

    @Test
    void looksBackOverTheWindowAndAtTheStartOverWhatThereIs() {
        assertThat(RollingMean.trailing(new double[] {3, 5, 10, 0}, 3).toArray())
                .containsExactly(3, 4, 6, 5); // 3/1, 8/2, 18/3, 15/3
    }

    @Test
    void missingSecondsAreLeftOutAndStayMissing() {
        assertThat(RollingMean.trailing(new double[] {4, GAP, 8, GAP, GAP, 6}, 3)
                        .toArray())
                .containsExactly(4, GAP, 6, GAP, GAP, 6); // (4+8)/2; the 8 is out of reach of the last window
    }

    @Test
    void aWindowShorterThanASecondIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RollingMean.trailing(Series.of(1, 2), 0))
                .withMessageContaining("windowSeconds 0");
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void equalsThePlainLoop(long seed) {
        Random random = new Random(seed);
        double[] values = random.doubles(400, 0, 900).toArray();
        for (int i = 0; i < 120; i++) {
            values[random.nextInt(values.length)] = GAP;
        }
        int window = 1 + random.nextInt(60);
        double[] means = RollingMean.trailing(values, window).toArray();
        for (int second = 0; second < values.length; second++) {
            double sum = 0;
            int count = 0;
            for (int back = Math.max(0, second - window + 1); back <= second; back++) {
                if (!Double.isNaN(values[back])) {
                    sum += values[back];
                    count++;
                }
            }
            if (Double.isNaN(values[second])) {
                assertThat(means[second])
                        .as("second " + second + " of seed " + seed)
                        .isNaN();
            } else {
                assertThat(means[second])
                        .as("second " + second + " of seed " + seed)
                        .isCloseTo(sum / count, within(1e-9));
            }
        }
    }
}
