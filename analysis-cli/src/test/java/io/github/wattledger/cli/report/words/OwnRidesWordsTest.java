package io.github.wattledger.cli.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.power.LongRide;
import io.github.wattledger.power.OwnEndurance;
import io.github.wattledger.power.ThresholdBasis;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

class OwnRidesWordsTest {
    private static final int HOUR = 3600;

    /** From the definition: a ride at least as long as what is asked, and ridden at more than the estimate. */
    @Test
    void anEstimateBelowARideOfThatLengthSaysWhy() {
        OwnEndurance own = OwnEndurance.ofNamed(
                        List.of(
                                new LongRide(LocalDate.of(2026, 6, 13), 7, 182, 240),
                                new LongRide(LocalDate.of(2026, 5, 2), 3, 200, 240)),
                        ThresholdBasis.RECENT)
                .orElseThrow(AssertionError::new);
        assertThat(own.top()).hasSize(2);
        String why =
                " One of them was as long and harder: the estimate is lower because they count together and are drawn"
                        + " towards the guide.";
        assertThat(OwnRidesWords.whyLower(own, 6.2 * HOUR, 180)).isEqualTo(why);
        assertThat(OwnRidesWords.whyLower(own, 7 * HOUR, 180)).isEqualTo(why);
        assertThat(OwnRidesWords.whyLower(own, 7.1 * HOUR, 180))
                .as("none as long")
                .isEmpty();
        assertThat(OwnRidesWords.whyLower(own, 6.2 * HOUR, 182)).as("not lower").isEmpty();
    }
}
