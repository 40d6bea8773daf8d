package io.github.wattledger.cli.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.RideReview;
import io.github.wattledger.pacing.Advice;
import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.testing.SampleReviews;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The headline of a race that was ridden too easily, and the sentence about caps that differ. */
class VerdictSentenceTest {
    private static RideReview tooEasy(double stopMinutes) {
        Finding stops = SampleReviews.stoppedTime(new Cost.Priced(stopMinutes, stopMinutes + 3, "measured"));
        Finding easy = SampleReviews.finding(FindingKind.UNDER_PACED, Evidence.none());
        return SampleReviews.race(
                Verdict.UNDER_PACED,
                List.of(stops, easy),
                List.of(
                        new TimeLedger.Entry("stopped-time", stopMinutes, stopMinutes + 3),
                        new TimeLedger.Entry("against your ability (a guide)", 14.4, 27.0)));
    }

    /** An even race at the rider's best would have won 27 min at most; stops of 117 min cost more, stops of 5 min less. */
    @Test
    void theHeadlineOfAnEasyRaceNamesWhatCostMost() {
        assertThat(HeadlineWords.verdict(tooEasy(117)))
                .isEqualTo("Stopped time cost most, and the ride was under-paced");
        assertThat(VerdictSentence.withMinutes(tooEasy(117)))
                .startsWith("Stopped time cost most, and the ride was under-paced.");
        assertThat(HeadlineWords.verdict(tooEasy(5))).isEqualTo("Under-paced");
        assertThat(HeadlineWords.verdict(SampleReviews.race(Verdict.UNDER_PACED, List.of(), List.of())))
                .isEqualTo("Under-paced");
    }

    /** The dearest mistake is named for an easy ride alone: every other verdict is about the pacing itself. */
    @Test
    void otherHeadlinesStay() {
        Finding stops = SampleReviews.stoppedTime(new Cost.Priced(117, 120, "measured"));
        assertThat(HeadlineWords.verdict(SampleReviews.race(Verdict.EVEN, List.of(stops), List.of())))
                .isEqualTo("Even");
    }

    /** A heart that beats faster costs no time and is no mistake; stops without a price are one. */
    @Test
    void aDriftAloneIsNoMistake() {
        Finding drift = SampleReviews.finding(FindingKind.DRIFT, Evidence.none());
        Finding stops = SampleReviews.stoppedTime(new Cost.NotPriced("not priced"));
        assertThat(VerdictSentence.minutes(SampleReviews.race(Verdict.EVEN, List.of(drift), List.of())))
                .isEqualTo("No mistake was found.");
        assertThat(VerdictSentence.minutes(SampleReviews.race(Verdict.EVEN, List.of(drift, stops), List.of())))
                .isEmpty();
    }

    /** A brief has room for two: the verdict is never without what to do about it, however little it weighs. */
    @Test
    void whatTheVerdictAsksForIsSecondAtTheLatest() {
        Finding easy = SampleReviews.finding(FindingKind.UNDER_PACED, Evidence.none());
        Finding towards = new Finding(
                easy.kind(),
                easy.severity(),
                easy.when(),
                easy.startM(),
                easy.endM(),
                easy.evidence(),
                easy.cost(),
                new Advice("Ride harder.", 214.0, null),
                easy.priceSteps());
        RideReview review = SampleReviews.race(
                Verdict.UNDER_PACED,
                List.of(
                        SampleReviews.stoppedTime(new Cost.Priced(13, 14, "measured")),
                        SampleReviews.finding(FindingKind.DRIFT, Evidence.none()),
                        towards),
                List.of());
        assertThat(NextTimeWords.others(review))
                .containsExactly(
                        "stops: plan each before the start, the body's needs first",
                        "there was more to give: towards 214 W, from early on",
                        "look at cooling, drinking and rest");
    }

    @Test
    void severalCapsComeWithTheReasonWhyTheyDiffer() {
        RideReview several = SampleReviews.race(
                Verdict.OVER_HARD_START,
                List.of(SampleReviews.overHardStart(new Cost.NotPriced("not priced")), cappedFade()),
                List.of());
        assertThat(NextTimeWords.caps(several.pacing())).hasSize(2);
        assertThat(HeadlineWords.whyCapsDiffer(several))
                .isEqualTo(
                        "The caps differ because each is an average over the part that it names, and the shorter the part,"
                                + " the more of it can be made up for by easier riding after it; all of them hold at"
                                + " once.");
        RideReview one = SampleReviews.race(Verdict.UNEVEN, SampleReviews.everyKind(), List.of());
        assertThat(NextTimeWords.caps(one.pacing())).hasSize(1);
        assertThat(HeadlineWords.whyCapsDiffer(one)).isEmpty();
    }

    private static Finding cappedFade() {
        Finding fade = SampleReviews.fade(new Cost.NotPriced("not priced"));
        return new Finding(
                fade.kind(),
                fade.severity(),
                fade.when(),
                fade.startM(),
                fade.endM(),
                fade.evidence(),
                fade.cost(),
                new Advice("Hold the first half to 184 W.", 184.0, null),
                fade.priceSteps());
    }
}
