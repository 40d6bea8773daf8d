package io.github.wattledger.cli.report.html;

import io.github.wattledger.plan.RacePlan;
import java.io.IOException;

/** A plan as a card: one page of A5, black on white, that loads nothing and runs no script. */
public final class HtmlPlan {
    /** An instance without state. */
    public HtmlPlan() {}

    /**
     * Writes a card.
     *
     * @param plan what to show
     * @param out where the characters go
     * @throws IOException when {@code out} fails
     */
    public void write(RacePlan plan, Appendable out) throws IOException {
        HtmlReport.render("plan.jte", PlanCard.of(plan), out);
    }
}
