package io.github.wattledger.pacing;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JudgedPartTest {
    /** 10 m in each second, nothing measured in the first five and from 40 to 60. */
    private static final Ride RIDE = Ride.builder(Instant.EPOCH, 100)
            .channel(
                    Channel.DISTANCE,
                    Series.generate(
                            100, second -> second < 5 || (second >= 40 && second < 60) ? Double.NaN : 10 * second))
            .build();

    @ParameterizedTest
    @CsvSource({
        "10, 20, 100, 190",
        "30, 50, 300, 390",
        "50, 70, 600, 690",
        // Within a pause the rider stands where it began.
        "40, 60, 390, 390",
        "45, 50, 390, 390",
        "0, 5, 50, 50"
    })
    void aStretchNeverEndsBeforeItBegins(int from, int to, double startM, double endM) {
        Interval when = new Interval(from, to);
        assertThat(JudgedPart.startM(RIDE, when)).isEqualTo(startM);
        assertThat(JudgedPart.endM(RIDE, when)).isEqualTo(endM);
    }
}
