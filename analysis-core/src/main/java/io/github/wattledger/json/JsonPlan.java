package io.github.wattledger.json;

import io.github.wattledger.plan.PlanAltitude;
import io.github.wattledger.plan.PlanFuel;
import io.github.wattledger.plan.PlanOptions;
import io.github.wattledger.plan.PlanTarget;
import io.github.wattledger.plan.RacePlan;
import io.github.wattledger.plan.TimeRange;
import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.RouteResult;
import io.github.wattledger.rig.RigChoice;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The names and values of a plan, in the order of {@link JsonSchema#PLAN}. */
final class JsonPlan {
    private static final int FINE_DECIMALS = 5;
    private static final double PERCENT = 100;

    private JsonPlan() {}

    static void plan(JsonWriter json, RacePlan plan, @Nullable String file, @Nullable RouteResult read) {
        course(json, plan, file, read);
        rider(json, plan);
        day(json, plan.options());
        target(json, plan.target());
        range(json, "movingSeconds", plan.moving());
        json.number("stoppedSeconds", plan.stoppedSeconds());
        range(json, "totalSeconds", plan.total());
        json.begin("opening");
        json.number("seconds", plan.opening().seconds());
        json.number("capW", plan.opening().capW());
        json.number("byCapsW", plan.opening().byCapsW());
        json.number("capBpm", plan.opening().capBpm());
        json.number("pastRatio", plan.opening().pastRatio());
        json.end();
        altitude(json, plan.altitude());
        fuel(json, plan.fuel());
        caps(json, plan);
        sections(json, plan);
        json.objects("influences", plan.influences(), each -> {
            json.string("input", each.input().id());
            json.number("low", each.low(), FINE_DECIMALS);
            json.number("high", each.high(), FINE_DECIMALS);
            json.number("fasterSeconds", each.fasterSeconds());
            json.number("slowerSeconds", each.slowerSeconds());
        });
        minutes(json, "gainMinutes", plan.gainMinutes(), plan.lowGainMinutes(), plan.highGainMinutes());
        json.objects("mistakes", plan.mistakes(), each -> {
            json.string("kind", each.kind().id());
            json.number("amount", each.amount());
            json.begin("costMinutes");
            json.number("value", each.minutes());
            json.number("low", each.lowMinutes());
            json.number("high", each.highMinutes());
            json.end();
        });
        List<ReadNote> notes = read == null ? List.of() : read.notes();
        json.objects("notes", notes, note -> {
            json.string("code", note.code());
            json.string("text", note.text());
        });
    }

    private static void course(JsonWriter json, RacePlan plan, @Nullable String file, @Nullable RouteResult read) {
        json.begin("course");
        json.string("file", file);
        json.string("format", read == null ? null : read.format());
        json.string("sha256", read == null ? null : read.sha256());
        json.string("name", plan.courseName());
        json.number("lengthM", plan.lengthM());
        json.number("ascentM", plan.hasAltitude() ? Double.valueOf(plan.ascentM()) : null);
        json.end();
    }

    private static void rider(JsonWriter json, RacePlan plan) {
        RigChoice rig = plan.rider().rig();
        json.begin("rider");
        json.number("thresholdPowerW", plan.rider().thresholdPowerW());
        json.number("thresholdHeartRateBpm", plan.rider().thresholdHeartRateBpm());
        json.number("massKg", rig.totalKg());
        json.number("dragAreaM2", rig.dragAreaM2().value(), FINE_DECIMALS);
        json.number("rollingResistance", rig.rollingResistance().value(), FINE_DECIMALS);
        json.whole("lastRaces", plan.rider().lastRaces().size());
        json.number("usualStoppedShare", plan.rider().usualStoppedShare(), FINE_DECIMALS);
        json.end();
    }

    private static void day(JsonWriter json, PlanOptions options) {
        json.begin("day");
        json.number("windMps", options.windMps());
        json.number("windFromDegrees", options.windFromDegrees());
        json.number("temperatureC", options.temperatureC());
        json.number("organiserAscentM", options.organiserAscentM());
        json.number("fastestDescentMps", options.fastestDescentMps());
        json.objects("surfaces", options.surfaces(), each -> {
            json.number("fromM", each.fromM());
            json.number("toM", each.toM());
            json.number("rollingResistance", each.rollingResistance(), FINE_DECIMALS);
        });
        json.end();
    }

    private static void target(JsonWriter json, PlanTarget target) {
        json.begin("target");
        json.number("powerW", target.watts());
        json.string("origin", target.origin().id());
        json.string("standing", target.standing().id());
        json.flag("isLimited", target.isLimited());
        json.begin("sustainable");
        json.number("powerW", target.sustainable().watts());
        json.number("lowW", target.sustainable().lowW());
        json.number("highW", target.sustainable().highW());
        json.word("source", target.sustainable().source());
        json.end();
        json.end();
    }

    private static void altitude(JsonWriter json, @Nullable PlanAltitude altitude) {
        json.object("altitude", altitude, found -> {
            json.number("meanM", found.meanM());
            json.number("lowShare", found.lowShare(), FINE_DECIMALS);
            json.number("highShare", found.highShare(), FINE_DECIMALS);
        });
    }

    private static void fuel(JsonWriter json, @Nullable PlanFuel fuel) {
        json.object("fuel", fuel, found -> {
            JsonEnergy.range(json, "carbohydrateGPerHour", found.carbohydrateGPerHour());
            JsonEnergy.guide(json, found.guide());
        });
    }

    private static void caps(JsonWriter json, RacePlan plan) {
        json.objects("caps", plan.caps(), each -> {
            json.string("ground", each.ground().id());
            json.number("fromGradePercent", PERCENT * each.ground().fromGrade());
            json.number("toGradePercent", PERCENT * each.ground().toGrade());
            json.number("capW", each.capW());
            json.number("capBpm", each.capBpm());
            json.number("lengthM", each.lengthM());
            json.number("seconds", each.seconds());
        });
        json.objects("climbs", plan.climbs(), each -> {
            json.string("name", each.name());
            json.number("fromM", each.climb().fromM());
            json.number("toM", each.climb().toM());
            json.number("gainM", each.climb().gainM());
            json.number("capW", each.capW());
            json.number("capBpm", each.capBpm());
            json.number("seconds", each.seconds());
        });
    }

    private static void sections(JsonWriter json, RacePlan plan) {
        json.objects("sections", plan.sections(), each -> {
            json.string("name", each.name());
            json.number("fromM", each.fromM());
            json.number("toM", each.toM());
            json.number("powerW", each.powerW());
            json.number("movingSeconds", each.movingSeconds());
            range(json, "arrivalSeconds", each.arrival());
        });
    }

    private static void range(JsonWriter json, String name, TimeRange range) {
        json.begin(name);
        json.number("value", range.seconds());
        json.number("low", range.lowSeconds());
        json.number("high", range.highSeconds());
        json.end();
    }

    private static void minutes(JsonWriter json, String name, double value, double low, double high) {
        json.begin(name);
        json.number("value", value);
        json.number("low", low);
        json.number("high", high);
        json.end();
    }
}
