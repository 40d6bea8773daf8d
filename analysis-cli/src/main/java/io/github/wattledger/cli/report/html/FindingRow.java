package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.EvidenceSentences;
import io.github.wattledger.cli.report.Figures;
import io.github.wattledger.cli.report.PlainText;
import io.github.wattledger.pacing.Cost;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.PacingReview;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A finding as a row of the table, and as a mark of the timeline.
 *
 * @param number counted from 1
 * @param lane the line above the timeline in which its mark lies, from 0
 * @param title what it is
 * @param severity how much it weighs, one word
 * @param from when it begins
 * @param to when it ends
 * @param kilometres where, in words
 * @param evidence the numbers it rests on, in sentences
 * @param cost minutes in words, or why there is none
 * @param low lower end of the minutes, or null
 * @param high upper end, or null
 * @param how how the price was reckoned, or empty
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
            rows.add(of(pacing.findings().get(i), i, lanes.get(i), hasDistance));
        }
        return rows;
    }

    private static FindingRow of(Finding finding, int index, int lane, boolean hasDistance) {
        String path = "pacing.findings[" + index + "].";
        Cost.Priced priced = finding.cost() instanceof Cost.Priced cost ? cost : null;
        return new FindingRow(
                index + 1,
                lane,
                EvidenceSentences.title(finding.kind()),
                finding.severity().id(),
                Num.of(path + "startSeconds", (double) finding.when().fromSecond(), Figures::clock),
                Num.of(path + "endSeconds", (double) finding.when().toSecond(), Figures::clock),
                kilometres(finding.startM(), finding.endM(), hasDistance),
                EvidenceSentences.of(finding),
                cost(finding.cost()),
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

    static String kilometres(@Nullable Double startM, @Nullable Double endM, boolean hasDistance) {
        if (startM != null && endM != null) {
            return "km " + Figures.kilometres(startM) + " to " + Figures.kilometres(endM);
        }
        return hasDistance ? "km not known" : "no distance in this file";
    }
}
