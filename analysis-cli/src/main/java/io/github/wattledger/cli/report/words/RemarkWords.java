package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import io.github.wattledger.pacing.Remark;
import io.github.wattledger.ride.Channel;
import java.util.List;

/**
 * A remark in words: something that stands out in a ride that was no race, without weight, price or advice.
 *
 * @param title what it is
 * @param when from when to when
 * @param where from which kilometre to which, or why that is not known
 * @param evidence the numbers it rests on, in sentences; empty without any
 */
public record RemarkWords(String title, String when, String where, String evidence) {
    /** What stands over the remarks. */
    public static final String HEADING = "PARTS OF THE RIDE COMPARED, times and places of the whole recording";

    /** What is said where nothing stands out; without power nothing could. */
    public static String none(RideReview review) {
        return review.ride().has(Channel.POWER)
                ? "Nothing stands out when parts of the ride are compared."
                : "No parts of the ride were compared: there is no power in this file.";
    }

    /** The remarks of a review, in their order. */
    public static List<RemarkWords> of(RideReview review, Units units) {
        return review.pacing().remarks().stream()
                .map(remark -> of(remark, review, units))
                .toList();
    }

    /** What stands out and the numbers that show it, in one sentence without its full stop. */
    static String brief(Remark remark, Units units) {
        String evidence = FindingSentences.of(remark, units);
        int end = evidence.indexOf(". ");
        String first = PlainText.withoutCapital(end < 0 ? evidence : evidence.substring(0, end));
        return FindingWords.name(remark.kind()) + ", " + remark.when()
                + (first.isEmpty()
                        ? ""
                        : ": " + (first.endsWith(".") ? first.substring(0, first.length() - 1) : first));
    }

    private static RemarkWords of(Remark remark, RideReview review, Units units) {
        return new RemarkWords(
                FindingWords.title(remark.kind()),
                remark.when().toString(),
                FindingWords.where(remark.startM(), remark.endM(), review, units),
                FindingSentences.of(remark, units));
    }

    /** What it is, when and where. */
    public String heading() {
        return title + ", " + when + ", " + where;
    }
}
