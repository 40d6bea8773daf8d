package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;

/** What stands at the head of a page: the verdict with its minutes, and what it rests on. */
public final class HeadlineWords {
    private HeadlineWords() {}

    /** The verdict, and what the mistake behind it cost where that has a price. */
    public static String headline(RideReview review) {
        String verdict = PlainText.capital(review.pacing().verdict().words());
        String lost = VerdictSentence.lost(review.pacing());
        return lost == null ? verdict : verdict + ": " + lost + " lost";
    }

    /** What the verdict rests on, in a sentence; empty where nothing is to be said. */
    public static String sentence(RideReview review) {
        return PlainText.capital(VerdictSentence.reason(review));
    }

    /** The title of a page: which ride it shows, and the headline. */
    public static String title(RideReview review) {
        return RideWords.name(review.source(), "A ride") + ": " + headline(review);
    }
}
