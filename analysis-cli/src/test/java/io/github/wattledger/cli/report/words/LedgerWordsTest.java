package io.github.wattledger.cli.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.LostTime;
import io.github.wattledger.testing.SampleReviews;
import java.util.List;
import org.junit.jupiter.api.Test;

class LedgerWordsTest {
    private static final Cost REASON = new Cost.NotPriced("no altitude in this file");
    private static final Cost OTHER_REASON = new Cost.NotPriced("a heart that beats faster costs no time by itself");

    private static PacingReview pacing(List<Finding> findings, TimeLedger.Entry... entries) {
        return SampleReviews.race(Verdict.OVER_HARD_START, findings, List.of(entries))
                .pacing();
    }

    /** "Lost: against your ability" and "Nothing is priced in minutes" cannot both be true. */
    @Test
    void somethingIsPricedWhereTheLedgerHasALine() {
        PacingReview pacing = pacing(
                List.of(SampleReviews.overHardStart(REASON), SampleReviews.fade(REASON)),
                new TimeLedger.Entry("against your ability (a guide)", 1, 2));
        assertThat(LedgerWords.nothingPriced(pacing)).isNull();
        assertThat(LedgerWords.notes(pacing, Units.METRIC))
                .contains("No price in minutes for over-hard start, fade: no altitude in this file.");
    }

    /** Two reasons are two sentences, and findings without a price are still mistakes. */
    @Test
    void aMistakeWithoutAPriceIsFoundAllTheSame() {
        PacingReview pacing = pacing(List.of(SampleReviews.overHardStart(REASON), SampleReviews.fade(OTHER_REASON)));
        assertThat(LedgerWords.nothingPriced(pacing)).isNull();
        assertThat(LedgerWords.nothingToPrice(pacing)).isEqualTo("Nothing is priced in minutes.");
        assertThat(LedgerWords.notes(pacing, Units.METRIC))
                .contains(
                        "No price in minutes for over-hard start: no altitude in this file.",
                        "No price in minutes for fade: a heart that beats faster costs no time by itself.");
    }

    @Test
    void oneReasonForAllIsSaidOnce() {
        PacingReview pacing = pacing(List.of(SampleReviews.overHardStart(REASON), SampleReviews.fade(REASON)));
        assertThat(LedgerWords.nothingPriced(pacing))
                .isEqualTo("Nothing is priced in minutes: no altitude in this file.");
        assertThat(LedgerWords.notes(pacing, Units.METRIC)).noneMatch(note -> note.startsWith("No price"));
    }

    @Test
    void nothingWasFoundWhereNothingWasFound() {
        assertThat(LedgerWords.nothingToPrice(pacing(List.of()))).isEqualTo("Nothing to price: no mistake was found.");
    }

    @Test
    void theTwoEndsOfAPriceHaveTheirNames() {
        assertThat(PriceWords.of(7.5, 18.8, LostTime.LowEnd.SAME_ENERGY))
                .isEqualTo("7.5 min for the same energy, 18.8 min for the same effort");
        assertThat(PriceWords.of(7.5, 18.8, LostTime.LowEnd.SAME_EFFORT))
                .isEqualTo("18.8 min for the same energy, 7.5 min for the same effort");
        assertThat(PriceWords.of(0.04, 18.8, LostTime.LowEnd.SAME_ENERGY))
                .isEqualTo("nothing for the same energy, 18.8 min for the same effort");
        assertThat(PriceWords.of(0.01, 0.04, LostTime.LowEnd.SAME_ENERGY)).isEqualTo("nothing");
        assertThat(PriceWords.of(6.6, 7.0, LostTime.LowEnd.STANDING))
                .isEqualTo("6.6 min standing, 7.0 min with slowing down and getting going again");
        assertThat(PriceWords.of(4, 9.2, null)).isEqualTo("4.0 to 9.2 min");
    }
}
