package io.github.wattledger.cli.report.html;

import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.FindingWords;
import io.github.wattledger.ride.Interval;
import java.util.ArrayList;
import java.util.List;

/**
 * What a detector of one's own found, as a row of a table; it has no mark on the timeline.
 *
 * @param title what it is
 * @param severity how much it weighs, one word
 * @param from when it begins
 * @param to when it ends
 * @param kilometres where, in words
 * @param evidence the numbers it rests on
 * @param advice what to do next time
 */
public record OwnRow(
        String title, String severity, Num from, Num to, String kilometres, String evidence, String advice) {
    static List<OwnRow> of(RideReview review) {
        List<FindingWords> words = FindingWords.ofOthers(review);
        List<OwnRow> rows = new ArrayList<>();
        for (int i = 0; i < words.size(); i++) {
            FindingWords each = words.get(i);
            Interval when = review.pacing().ownFindings().get(i).when();
            String path = "pacing.ownFindings[" + i + "].";
            rows.add(new OwnRow(
                    each.title(),
                    each.severity(),
                    Num.of(path + "startSeconds", (double) when.fromSecond(), Figures::clock),
                    Num.of(path + "endSeconds", (double) when.toSecond(), Figures::clock),
                    each.where(),
                    each.evidence(),
                    each.nextTime()));
        }
        return rows;
    }
}
