package io.github.wattledger.cli.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.plan.PlanReview;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The words follow docs/plan.md: a cap is kept up to 5 % above it, and the opening is judged by normalized power. */
class PlanReviewWordsTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "190 | The opening: 190 W normalized; the plan allowed 198 W: kept.",
                "205 | The opening: 205 W normalized; the plan allowed 198 W: kept (up to 5 % above counts as kept).",
                "209 | The opening: 209 W normalized; the plan allowed 198 W: above it.",
                "NaN | The opening has no power."
            })
    void theOpeningNamesItsPowerAndWhatCountsAsKept(double openingW, String words) {
        assertThat(PlanReviewWords.opening(new PlanReview(List.of(), List.of(), openingW, 198, false)))
                .isEqualTo(words);
    }
}
