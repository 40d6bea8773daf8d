package io.github.wattledger.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FourthPowerMeanTest {
    /**
     * Expected: the four steps of Allen and Coggan's definition with full 30-second windows only, worked out outside
     * this project.
     */
    @ParameterizedTest
    @CsvSource({
        "3600, 200,   0,   0,   1, 200",
        " 600, 100, 600, 300,   1, 252.378",
        "  30, 300,  30, 100,  60, 221.8509",
        "  15, 400,  15,   0, 120, 200",
        "  60, 400, 240, 100,  12, 251.0785"
    })
    void followsTheDefinition(int first, double firstW, int second, double secondW, int times, double expectedW) {
        List<RecordedSample> samples = new ArrayList<>();
        for (int i = 0; i < times; i++) {
            append(samples, first, firstW);
            append(samples, second, secondW);
        }

        assertThat(FourthPowerMean.normalizedPowerW(samples)).isCloseTo(expectedW, within(1e-3));
    }

    @Test
    void secondsWithoutPowerAreLeftOut() {
        List<RecordedSample> samples = new ArrayList<>();
        append(samples, 600, 200);
        append(samples, 300, Double.NaN);
        append(samples, 600, 200);

        assertThat(FourthPowerMean.normalizedPowerW(samples)).isCloseTo(200, within(1e-9));
        assertThat(FourthPowerMean.normalizedPowerW(samples.subList(0, 29))).isNaN();
    }

    private static void append(List<RecordedSample> samples, int count, double watts) {
        for (int i = 0; i < count; i++) {
            double no = Double.NaN;
            samples.add(new RecordedSample(samples.size(), watts, no, no, no, no, no, no, no, no, no));
        }
    }
}
