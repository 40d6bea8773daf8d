package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.EvidenceSentences;
import io.github.wattledger.cli.report.Figures;
import io.github.wattledger.cli.report.PlainText;
import io.github.wattledger.pacing.AnyFinding;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.PacingReview;
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
 * @param kilometres where, in words
 * @param evidence the numbers it rests on, in sentences
 * @param cost minutes in words, or why there is none; empty for what the user's own detectors found
 * @param low lower end of the minutes, or null
 * @param high upper end, or null
 * @param how how the price was computed, or empty
 * @param advice what to do next time
 */
public record FindingRow(
        int number,
        int lane,
        String title,
        String severity,
        Num from,
        Num to,
        String kilometres,
        String evidence,
        String cost,
        @Nullable Num low,
        @Nullable Num high,
        String how,
        String advice) {
    static List<FindingRow> of(PacingReview pacing, List<Integer> lanes, boolean hasDistance) {
        List<FindingRow> rows = new ArrayList<>();
        for (int i = 0; i < pacing.findings().size(); i++) {
            rows.add(of(pacing.findings().get(i), "pacing.findings", i, lanes.get(i), hasDistance));
        }
        return rows;
    }

    /** What the user's own detectors found. */
    static List<FindingRow> ofOwn(PacingReview pacing, boolean hasDistance) {
        List<FindingRow> rows = new ArrayList<>();
        for (AnyFinding finding : pacing.ownFindings()) {
            rows.add(of(finding, "pacing.ownFindings", rows.size(), 0, hasDistance));
        }
        return rows;
    }

    private static FindingRow of(AnyFinding finding, String list, int index, int lane, boolean hasDistance) {
        String path = list + "[" + index + "].";
        Cost cost = finding instanceof Finding ours ? ours.cost() : null;
        Cost.Priced priced = cost instanceof Cost.Priced each ? each : null;
        return new FindingRow(
                index + 1,
                lane,
                EvidenceSentences.title(finding),
                finding.severity().id(),
                Num.of(path + "startSeconds", (double) finding.when().fromSecond(), Figures::clock),
                Num.of(path + "endSeconds", (double) finding.when().toSecond(), Figures::clock),
                kilometres(finding.startM(), finding.endM(), hasDistance),
                EvidenceSentences.of(finding),
                cost == null ? "" : cost(cost),
                priced == null
                        ? null
                        : Num.of(path + "costMinutes.low", priced.lowMinutes(), value -> Figures.decimal(value, 1)),
                priced == null
                        ? null
                        : Num.of(path + "costMinutes.high", priced.highMinutes(), value -> Figures.decimal(value, 1)),
                priced == null ? "" : PlainText.of(priced.how()),
                PlainText.sentence(finding.advice().text()));
    }

    private static String cost(Cost cost) {
        if (cost instanceof Cost.Priced priced) {
            return Account.range(priced.lowMinutes(), priced.highMinutes());
        }
        if (cost instanceof Cost.NotPriced notPriced) {
            return "No price: " + PlainText.sentence(notPriced.reason());
        }
        throw new AssertionError(cost);
    }

    private static String kilometres(@Nullable Double startM, @Nullable Double endM, boolean hasDistance) {
        if (startM != null && endM != null) {
            return "km " + Figures.kilometres(startM) + " to " + Figures.kilometres(endM);
        }
        return hasDistance ? "km not known" : "no distance in this file";
    }
}
