package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.EvidenceSentences;
import io.github.wattledger.cli.report.Figures;
import io.github.wattledger.cli.report.PlainText;
import io.github.wattledger.pacing.OwnFinding;
import io.github.wattledger.pacing.PacingReview;
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
    static List<OwnRow> of(PacingReview pacing, boolean hasDistance) {
        List<OwnRow> rows = new ArrayList<>();
        for (OwnFinding finding : pacing.ownFindings()) {
            String path = "pacing.ownFindings[" + rows.size() + "].";
            rows.add(new OwnRow(
                    EvidenceSentences.title(finding),
                    finding.severity().id(),
                    Num.of(path + "startSeconds", (double) finding.when().fromSecond(), Figures::clock),
                    Num.of(path + "endSeconds", (double) finding.when().toSecond(), Figures::clock),
                    FindingRow.kilometres(finding.startM(), finding.endM(), hasDistance),
                    EvidenceSentences.of(finding),
                    PlainText.sentence(finding.advice().text())));
        }
        return rows;
    }
}
