package io.github.wattledger.cli.report.text;

import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.PlanReviewWords;
import io.github.wattledger.cli.report.words.PlanWords;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.plan.PlanReview;
import io.github.wattledger.plan.SectionReview;
import java.util.List;

/** The part of a report that holds a ride against its plan. */
final class TextPlanReview {
    private TextPlanReview() {}

    static void write(Page page, PlanReview review, Units units) {
        page.heading("AGAINST THE PLAN");
        page.line(PlanReviewWords.whole(review));
        page.line(PlanReviewWords.opening(review));
        PlanReviewWords.caps(review).forEach(page::line);
        PlanReviewWords.capRule(review).forEach(page::line);
        Table table = new Table(1, List.of("to", "planned", "riding", "power", "the day", "stops", "in all"));
        for (SectionReview each : review.sections()) {
            table.row(List.of(
                    PlanWords.sectionEnd(each.name(), each.toM(), units),
                    Figures.clock(each.plannedSeconds()),
                    Figures.clock(each.riddenSeconds()),
                    PlanReviewWords.minutes(each.powerSeconds()),
                    PlanReviewWords.minutes(each.daySeconds()),
                    PlanReviewWords.minutes(each.stopSeconds()),
                    PlanReviewWords.minutes(each.differenceSeconds())));
        }
        table.write(page);
    }
}
