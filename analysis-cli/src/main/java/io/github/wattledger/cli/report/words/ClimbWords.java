package io.github.wattledger.cli.report.words;

import io.github.wattledger.course.Climb;
import io.github.wattledger.course.ClimbReview;

/** Climbs in words. */
public final class ClimbWords {
    private ClimbWords() {}

    /** What counts as a climb. */
    public static String whatCounts(Units units) {
        return "at least " + units.roundHeightWords(Climb.LEAST_LENGTH_M) + " of "
                + Figures.brief(Climb.LEAST_GRADE * 100) + " % or more";
    }

    /** How it compares with the first time on the same road; empty for the first time. */
    public static String again(ClimbReview review) {
        Integer first = review.sameAs();
        Integer over = review.secondsOverFirst();
        return first == null || over == null
                ? ""
                : "the same road as climb " + (first + 1) + ", " + Figures.clock(Math.abs(over))
                        + (over < 0 ? " faster" : " slower");
    }
}
