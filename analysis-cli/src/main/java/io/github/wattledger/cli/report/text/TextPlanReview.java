package io.github.wattledger.cli.report.text;

import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.PlanReviewWords;
import io.github.wattledger.cli.report.words.PlanWords;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.plan.PlanReview;
import io.github.wattledger.plan.SectionReview;
import java.io.IOException;
import java.util.List;

/** A ride held against its plan, for people: at most 80 columns. */
public final class TextPlanReview {
    private final Units units;

    /** A report in these units. */
    public TextPlanReview(Units units) {
        this.units = units;
    }

    /**
     * Writes it as a part of a report.
     *
     * @param review what to show
     * @param out where the characters go; lines end with a line feed on every system
     * @throws IOException when {@code out} fails
     */
    public void write(PlanReview review, Appendable out) throws IOException {
        Page page = new Page();
        page.heading("AGAINST THE PLAN");
        page.line(PlanReviewWords.whole(review));
        page.line(PlanReviewWords.opening(review));
        PlanReviewWords.caps(review).forEach(page::line);
        Table table = new Table(1, List.of("to", "planned", "ridden", "power", "the day", "stops", "in all"));
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
        out.append(page.toString());
    }
}
