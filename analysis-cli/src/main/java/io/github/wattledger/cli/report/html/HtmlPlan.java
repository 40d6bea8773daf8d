package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.plan.RacePlan;
import java.io.IOException;

/** A plan as a card: one page of A5, black on white, that loads nothing and runs no script. */
public final class HtmlPlan {
    private final Units units;

    /** A page in these units. */
    public HtmlPlan(Units units) {
        this.units = units;
    }

    /**
     * Writes a card.
     *
     * @param plan what to show
     * @param out where the characters go
     * @throws IOException when {@code out} fails
     */
    public void write(RacePlan plan, Appendable out) throws IOException {
        HtmlReport.render("plan.jte", PlanCard.of(plan, units), out);
    }
}
