package io.github.wattledger.cli.report.html;

import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.FindingWords;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.pacing.AnyFinding;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.price.Cost;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A finding as a row of the page; one of the library's is a mark of the timeline as well.
 *
 * @param number counted from 1
 * @param lane the line above the timeline in which its mark lies, from 0; 0 for what the user's own detectors found
 * @param title what it is
 * @param severity how much it weighs, one word
 * @param from when it begins
 * @param to when it ends
 * @param where where, in words
 * @param evidence the numbers it rests on, in sentences
 * @param cost the ends of the minutes in words, or empty
 * @param noPrice why there is none, or empty
 * @param low lower end of the minutes, or null
 * @param high upper end, or null
 * @param how how the price was found, or empty
 * @param advice what to do next time
 */
public record FindingRow(
        int number,
        int lane,
        String title,
        String severity,
        Num from,
        Num to,
        String where,
        String evidence,
        List<String> cost,
        String noPrice,
        @Nullable Num low,
        @Nullable Num high,
        String how,
        String advice) {
    static List<FindingRow> of(RideReview review, List<Integer> lanes, Units units) {
        List<FindingWords> words = FindingWords.of(review, units);
        List<FindingRow> rows = new ArrayList<>();
        for (int i = 0; i < words.size(); i++) {
            rows.add(of(review.pacing().findings().get(i), words.get(i), "pacing.findings", i, lanes.get(i)));
        }
        return rows;
    }

    /** What the user's own detectors found. */
    static List<FindingRow> ofOwn(RideReview review, Units units) {
        List<FindingWords> words = FindingWords.ofOthers(review, units);
        List<FindingRow> rows = new ArrayList<>();
        for (int i = 0; i < words.size(); i++) {
            rows.add(of(review.pacing().ownFindings().get(i), words.get(i), "pacing.ownFindings", i, 0));
        }
        return rows;
    }

    private static FindingRow of(AnyFinding finding, FindingWords words, String list, int index, int lane) {
        String path = list + "[" + index + "].";
        Cost.Priced priced = finding instanceof Finding ours && ours.cost() instanceof Cost.Priced cost ? cost : null;
        return new FindingRow(
                index + 1,
                lane,
                words.title(),
                words.severity(),
                Num.of(path + "startSeconds", (double) finding.when().fromSecond(), Figures::clock),
                Num.of(path + "endSeconds", (double) finding.when().toSecond(), Figures::clock),
                words.where(),
                words.evidence(),
                words.cost(),
                words.noPrice(),
                priced == null ? null : Num.tenths(path + "costMinutes.low", priced.lowMinutes()),
                priced == null ? null : Num.tenths(path + "costMinutes.high", priced.highMinutes()),
                words.how(),
                words.nextTime());
    }
}
