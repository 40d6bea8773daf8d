package io.github.wattledger.cli.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.pacing.Effort;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.Rider;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class AbilityWordsTest {
    private static final Rider RIDER = Rider.UNKNOWN.withThresholdPowerW(270);

    @Test
    void givesCriticalPowerItsErrorAndWhatItRestsOn() {
        // Trials of 3, 12 and 30 minutes by 280 W and 18 kJ, rested: 380, 305 and 290 W.
        double[] watts = filled(3 * 3600, 100);
        Arrays.fill(watts, 1000, 1180, 380);
        Arrays.fill(watts, 3000, 3720, 305);
        Arrays.fill(watts, 6000, 7800, 290);
        String text = text(watts, Effort.AUTO);
        assertThat(text)
                .contains("Critical power 280 W (standard error 0 W), W' 18.0 kJ")
                .contains("standard error")
                .contains("from the best 3 to 30 min of this ride; right only if those were all-out")
                .contains("W' balance: lowest");
    }

    @Test
    void saysWhyThereIsNoCriticalPower() {
        assertThat(text(filled(7200, 200), Effort.AUTO))
                .contains("Critical power and W': not known: ")
                .doesNotContain("W' balance");
    }

    @Test
    void givesTheGuideARange() {
        // 270 W x 2^-0.16 = 241.7 W; by RH-1 of the trials on simulated seasons, where 250 W give 223.76 (210.25 to
        // 238.14),
        // the range is 270 / 250 of that.
        assertThat(text(filled(7200, 240), Effort.AUTO))
                .contains("Guide for 2 h: about 242 W (227 to 257 W)")
                .contains("not a fact");
    }

    @Test
    void showsLossesAfterWorkOfRaceEffortsOnly() {
        double[] watts = filled(4 * 3600, 230);
        Arrays.fill(watts, 1000, 1300, 300);
        Arrays.fill(watts, 10_000, 10_300, 270);
        assertThat(text(watts, Effort.RACE))
                .contains("After 1000 kJ: best 5 min 270 W (300 W before, -10 %)")
                .contains("only where both efforts were all-out");
        assertThat(text(watts, Effort.TRAINING)).doesNotContain("After 1000 kJ");
    }

    private static String text(double[] watts, Effort effort) {
        RideReview review = Reviewer.review(Ride.ofWatts(watts), RIDER, ReviewOptions.WHOLE_RIDE.withEffort(effort));
        return String.join(" ", AbilityWords.of(review));
    }

    private static double[] filled(int seconds, double value) {
        double[] values = new double[seconds];
        Arrays.fill(values, value);
        return values;
    }
}
