package io.github.wattledger.cli.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.RideReview;
import io.github.wattledger.bunch.BunchProposal;
import io.github.wattledger.bunch.BunchProposal.Level;
import io.github.wattledger.bunch.BunchProposal.Showing;
import io.github.wattledger.bunch.BunchProposal.Stretch;
import io.github.wattledger.pacing.BunchReview;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.ProposedBunch;
import io.github.wattledger.pacing.price.LettingGo;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.testing.SampleReviews;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What is said of a bunch that the rider does not name. */
class ProposedBunchWordsTest {
    private static final Interval WHEN = new Interval(3 * 60, 45 * 60);

    private static RideReview review(BunchProposal proposal, BunchReview.Decision... decisions) {
        return SampleReviews.raceThatProposes(new ProposedBunch(proposal, List.of(decisions)));
    }

    private static BunchProposal found() {
        return new BunchProposal(List.of(new Stretch(WHEN, 0.35, 0.262, 0.438)), null, null, List.of(), true);
    }

    private static BunchReview.Decision decision(double low, double high, BunchReview.Outcome outcome) {
        return new BunchReview.Decision(
                FindingKind.OVER_HARD_START,
                new LettingGo(WHEN, WHEN, 260, 200, 0, 0.7, new LettingGo.BreakEven(low, high), null, List.of()),
                outcome);
    }

    private static List<String> lines(RideReview review) {
        return ProposedBunchWords.of(review.pacing());
    }

    /** The range to 5 points, the level beside it, what it may be instead, and what settles it. */
    @Test
    void aStretchIsProposedWithItsRangeAndItsBreakEven() {
        RideReview review = review(found(), decision(0.05, 0.21, BunchReview.Outcome.STAYING_PAID));
        assertThat(lines(review))
                .containsExactly(
                        "Probably in a bunch from 0:03 to 0:45, each end to some 5 min: the air took 25 % to 45 % less"
                                + " than alone. Less wind, a sheltered valley or a smoother road would look the same.",
                        "If that was a bunch, staying with it paid: equally fast had it saved 5 % to 21 % of the drag.",
                        "No finding and no price counts on it. --bunch 0:03-0:45 or --alone settles it.");
        assertThat(ProposedBunchWords.brief(review.pacing()))
                .isEqualTo("Probably in a bunch from 0:03 to 0:45; equally fast had it saved 5 % to 21 % of the drag.");
        assertThat(UnknownWords.of(review))
                .contains("whether you rode in a bunch (--bunch 0:03-0:45 or --alone says it)");
    }

    @Test
    void theOtherOutcomes() {
        assertThat(lines(review(found(), decision(0.3, 0.4, BunchReview.Outcome.OPEN)))
                        .get(1))
                .isEqualTo(
                        "If that was a bunch, whether staying with it paid is open: equally fast had it saved 30 % to 40 %"
                                + " of the drag.");
        assertThat(lines(review(found(), decision(0.5, 0.55, BunchReview.Outcome.LETTING_GO_WAS_FASTER)))
                        .get(1))
                .startsWith("If that was a bunch, letting it go would have been faster: ");
    }

    private static RideReview level(boolean isOwn, @Nullable String whyNot) {
        return review(new BunchProposal(
                List.of(), new Level(0.134, isOwn ? 0.32 : 0.20, isOwn, true), whyNot, List.of(), false));
    }

    @Test
    void theLevelSaysThatButNotWhere() {
        assertThat(lines(level(false, "over half of the ride was coasted, braked or steep")))
                .containsExactly(
                        "Probably in a bunch for most of it: over level ground the air took no more than a drag area of"
                                + " 0.13 m2 asks for, and nobody alone on a road bicycle has under 0.20 m2. Where, and how"
                                + " much it saved, cannot be told: over half of the ride was coasted, braked or steep. A"
                                + " wrong mass, or a power meter that reads low, would look the same.",
                        "No finding and no price counts on it. --bunch FROM-TO or --alone settles it.");
        assertThat(lines(level(true, null)).get(0))
                .contains("asks for, and yours is 0.32 m2. Where, and how much it saved, cannot be told. A wrong mass");
        assertThat(ProposedBunchWords.brief(level(false, null).pacing()))
                .isEqualTo("Probably in a bunch for most of it; where, and how much it saved, cannot be told.");
    }

    @Test
    void whatCannotBeToldIsOneLineWithItsReason() {
        RideReview review = review(new BunchProposal(
                List.of(),
                null,
                "there are no positions in this file, so that wind and bunch look alike",
                List.of(),
                false));
        assertThat(lines(review))
                .containsExactly(
                        "Whether you rode in a bunch cannot be told: there are no positions in this file, so that"
                                + " wind and bunch look alike.");
        assertThat(ProposedBunchWords.brief(review.pacing())).isEmpty();
        assertThat(UnknownWords.of(review)).endsWith("whether you rode in a bunch.");
    }

    /** What would have shown is rounded up, never down. */
    @Test
    void noSignStandsBesideWhatWouldHaveShown() {
        RideReview review = review(
                new BunchProposal(List.of(), null, null, List.of(new Showing(75, 0.31), new Showing(45, 0.42)), true));
        assertThat(lines(review))
                .containsExactly("No sign of a bunch. One that saved 35 % of the drag over the first 75 min would have"
                        + " shown; a shorter one, or one that saved less, might not have.");
    }

    @Test
    void whereTheRiderSaysSomethingNothingIsProposed() {
        assertThat(lines(SampleReviews.race())).isEmpty();
        assertThat(lines(SampleReviews.nothingKnown())).isEmpty();
    }
}
