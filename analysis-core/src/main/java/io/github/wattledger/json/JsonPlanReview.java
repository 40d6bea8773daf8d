package io.github.wattledger.json;

import io.github.wattledger.plan.PlanReview;
import org.jspecify.annotations.Nullable;

/** A ride held against a plan, as a part of a review. */
final class JsonPlanReview {
    private JsonPlanReview() {}

    static void againstPlan(JsonWriter json, @Nullable PlanReview plan) {
        if (plan == null) {
            json.none("againstPlan");
            return;
        }
        json.begin("againstPlan");
        json.number("differenceSeconds", plan.differenceSeconds());
        json.flag("isCutShort", plan.isCutShort());
        json.begin("opening");
        json.number("capW", plan.openingCapW());
        json.number("riddenW", plan.openingW());
        json.flag("isOverHard", plan.isOpeningOverHard());
        json.end();
        json.objects("caps", plan.caps(), each -> {
            json.string("ground", each.ground().id());
            json.number("capW", each.capW());
            json.number("riddenW", each.riddenW());
            json.whole("seconds", each.seconds());
            json.whole("secondsAbove", each.secondsAbove());
            json.string("outcome", each.outcome().id());
        });
        json.objects("sections", plan.sections(), each -> {
            json.string("name", each.name());
            json.number("toM", each.toM());
            json.number("plannedSeconds", each.plannedSeconds());
            json.whole("riddenSeconds", each.riddenSeconds());
            json.number("powerSeconds", each.powerSeconds());
            json.number("daySeconds", each.daySeconds());
            json.number("stopSeconds", each.stopSeconds());
            json.number("differenceSeconds", each.differenceSeconds());
        });
        json.end();
    }
}
