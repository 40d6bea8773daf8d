package io.github.wattledger.json;

import io.github.wattledger.plan.PlanReview;
import org.jspecify.annotations.Nullable;

/** A ride held against a plan, as a part of a review. */
final class JsonPlanReview {
    private JsonPlanReview() {}

    static void againstPlan(JsonWriter json, @Nullable PlanReview plan) {
        json.object("againstPlan", plan, found -> {
            json.number("differenceSeconds", found.differenceSeconds());
            json.flag("isCutShort", found.isCutShort());
            json.begin("opening");
            json.number("capW", found.openingCapW());
            json.number("riddenW", found.openingW());
            json.flag("isAboveCap", found.isOpeningAboveCap());
            json.end();
            json.objects("caps", found.caps(), each -> {
                json.string("ground", each.ground().id());
                json.number("capW", each.capW());
                json.number("riddenW", each.riddenW());
                json.whole("seconds", each.seconds());
                json.whole("secondsAbove", each.secondsAbove());
                json.string("outcome", each.outcome().id());
            });
            json.objects("sections", found.sections(), each -> {
                json.string("name", each.name());
                json.number("toM", each.toM());
                json.number("plannedSeconds", each.plannedSeconds());
                json.whole("riddenSeconds", each.riddenSeconds());
                json.number("powerSeconds", each.powerSeconds());
                json.number("daySeconds", each.daySeconds());
                json.number("stopSeconds", each.stopSeconds());
                json.number("differenceSeconds", each.differenceSeconds());
            });
        });
    }
}
