package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import java.util.List;

/** What stands at the head of a page, in the words of the first lines of the text report. */
public final class HeadlineWords {
    private HeadlineWords() {}

    /** The verdict, without a full stop. */
    public static String verdict(RideReview review) {
        return VerdictSentence.verdict(review);
    }

    /** What all mistakes cost together, or that there was none, a sentence; empty where mistakes have no price. */
    public static String minutes(RideReview review) {
        return VerdictSentence.minutes(review);
    }

    /** What the verdict rests on, in a sentence or two; empty where nothing is to be said. */
    public static String sentence(RideReview review) {
        return VerdictSentence.because(review);
    }

    /** What the first lines say of a bunch and of what had been agreed, possibly nothing. */
    public static List<String> besides(RideReview review) {
        return BriefWords.besides(review);
    }

    /** Why the caps for next time differ, a sentence; empty where there are not several. */
    public static String whyCapsDiffer(RideReview review) {
        return NextTimeWords.whyCapsDiffer(review.pacing());
    }

    /** What is not known of the ride, a sentence. */
    public static String notKnown(RideReview review) {
        return UnknownWords.of(review);
    }

    /** The title of a page: which ride it shows, the verdict, and the minutes. */
    public static String title(RideReview review) {
        return RideWords.title(review) + ": "
                + (minutes(review).isEmpty() ? verdict(review) : VerdictSentence.withMinutes(review));
    }
}
