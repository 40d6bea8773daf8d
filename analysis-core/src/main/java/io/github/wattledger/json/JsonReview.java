package io.github.wattledger.json;

import io.github.wattledger.RideReview;
import io.github.wattledger.RideSplits;
import io.github.wattledger.course.Climb;
import io.github.wattledger.course.ClimbReview;
import io.github.wattledger.intake.Origin;
import io.github.wattledger.intake.RideSource;
import io.github.wattledger.intake.RiderOnDay;
import io.github.wattledger.load.RideTemperature;
import io.github.wattledger.plan.PlanReview;
import io.github.wattledger.power.Ability;
import io.github.wattledger.power.MeanMaximalCurve;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The names and values of a review, in the order of {@link JsonSchema#REVIEW}. */
final class JsonReview {
    private JsonReview() {}

    static void review(JsonWriter json, RideReview review, @Nullable PlanReview plan) {
        source(json, review.source());
        rider(json, review.rider());
        JsonQuality.quality(json, review.quality());
        RideTemperature temperature =
                RideTemperature.of(review.ride().part(review.reviewed())).orElse(null);
        JsonLoad.load(json, review.load(), temperature);
        JsonLoad.deviceTotals(json, review.deviceTotals());
        curve(json, review.curve());
        ability(json, review.ability());
        JsonPacing.pacing(json, review.pacing());
        climbs(json, review.climbs());
        JsonSplits.splits(json, RideSplits.of(review));
        JsonEnergy.energy(json, review.fuel());
        JsonNotes.notes(json, review.notes());
        JsonHistory.history(json, review.rider().history());
        JsonPlanReview.againstPlan(json, plan);
    }

    private static void source(JsonWriter json, RideSource source) {
        json.begin("source");
        json.string("file", source.file());
        json.string("format", source.format());
        json.string("sha256", source.sha256());
        json.string("device", source.device());
        json.string("sport", source.sport());
        json.startTime(source.startTime(), source.utcOffsetSeconds());
        json.whole("sessionIndex", source.sessionIndex());
        json.end();
    }

    private static void rider(JsonWriter json, RiderOnDay rider) {
        json.begin("rider");
        json.number("thresholdPowerW", rider.thresholdPowerW());
        Origin from = rider.thresholdPowerOrigin();
        json.string("thresholdPowerSource", from == null ? null : from.id());
        json.number("thresholdHeartRateBpm", rider.thresholdHeartRateBpm());
        json.number("massKg", rider.massKg());
        json.end();
    }

    private static void curve(JsonWriter json, MeanMaximalCurve curve) {
        json.objects("curve", curve.logSpacedSeconds(), seconds -> {
            json.whole("seconds", seconds);
            json.number("watts", curve.bestWatts(seconds));
        });
    }

    private static void ability(JsonWriter json, Ability ability) {
        json.begin("ability");
        json.number("criticalPowerW", ability.criticalPowerW());
        json.number("wPrimeKJ", ability.wPrimeKJ());
        Ability.Source from = ability.source();
        json.string("source", from == null ? null : from.id());
        json.number("fitErrorW", ability.fitErrorW());
        json.number("sustainablePowerW", ability.sustainablePowerW());
        json.whole("forSeconds", ability.forSeconds());
        json.end();
    }

    private static void climbs(JsonWriter json, @Nullable List<ClimbReview> climbs) {
        if (climbs == null) {
            json.none("climbs");
        } else {
            json.objects("climbs", climbs, each -> climb(json, each));
        }
    }

    private static void climb(JsonWriter json, ClimbReview review) {
        Climb climb = review.climb();
        json.whole("startSeconds", review.when().fromSecond());
        json.whole("endSeconds", review.when().toSecond());
        json.number("startM", climb.startM());
        json.number("endM", climb.endM());
        json.number("gainM", climb.gainM());
        json.number("meanGradePercent", climb.meanGrade() * 100);
        json.number("steepestGradePercent", climb.steepestGrade() * 100);
        json.whole("movingSeconds", climb.movingSeconds());
        json.number("averagePowerW", climb.averagePowerW());
        json.number("normalizedPowerW", review.normalizedPowerW());
        json.number("wattsPerKg", review.wattsPerKg());
        json.number("averageHeartRateBpm", climb.averageHeartRateBpm());
        json.number("verticalSpeedMPerHour", climb.verticalSpeedMPerHour());
        json.wholeOrNull("sameAs", review.sameAs());
        json.wholeOrNull("secondsOverFirst", review.secondsOverFirst());
    }
}
