package io.github.wattledger.json;

import io.github.wattledger.intake.Origin;
import io.github.wattledger.load.LoadNumber;
import io.github.wattledger.power.Durability;
import io.github.wattledger.season.BestEfforts;
import io.github.wattledger.season.DateDoubt;
import io.github.wattledger.season.LoadHistory;
import io.github.wattledger.season.PacingTrend;
import io.github.wattledger.season.PeriodTotals;
import io.github.wattledger.season.RideJudgement;
import io.github.wattledger.season.RideNumbers;
import io.github.wattledger.season.SeasonReview;
import io.github.wattledger.season.SeasonRide;
import io.github.wattledger.season.ThresholdCheck;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The names and values of a season, in the order of {@link JsonSchema#SEASON}. */
final class JsonSeason {
    private JsonSeason() {}

    static void season(JsonWriter json, SeasonReview season) {
        json.day("asOf", season.asOf());
        load(json, season.load());
        periods(json, "weeks", season.weeks());
        periods(json, "months", season.months());
        bests(json, "bests", season.bests());
        bests(json, "recentBests", season.recentBests());
        ridingBests(json, season.recentBests());
        threshold(json, season.threshold());
        durability(json, season.durability());
        pacing(json, season.pacing());
        JsonHistory.rider(json, season.rider());
        json.objects("rides", season.rides(), ride -> ride(json, ride));
        leftOut(json, season);
    }

    private static void load(JsonWriter json, LoadHistory load) {
        json.begin("load");
        json.number("startLoad7Days", load.startLoad7Days());
        json.number("startLoad42Days", load.startLoad42Days());
        json.objects("days", load.days(), day -> {
            json.day("day", day.day());
            json.number("trainingStress", day.trainingStress());
            json.number("load7Days", day.load7Days());
            json.number("load42Days", day.load42Days());
            json.number("loadDifference", day.loadDifference());
            json.number("loadRatio", day.loadRatio());
            json.number("loadChangeInWeek", day.loadChange());
        });
        json.end();
    }

    private static void periods(JsonWriter json, String name, List<PeriodTotals> periods) {
        json.objects(name, periods, period -> {
            json.day("from", period.from());
            json.whole("rides", period.rideCount());
            json.whole("ridesWithoutStress", period.ridesWithoutStress());
            json.whole("movingSeconds", period.movingSeconds());
            json.number("workKJ", period.workKJ());
            json.number("trainingStress", period.trainingStress());
            json.number("load42Days", period.load42Days());
            json.number("loadChange", period.loadChange());
        });
    }

    private static void bests(JsonWriter json, String name, @Nullable BestEfforts bests) {
        json.objects(name, bests == null ? List.<BestEfforts.Effort>of() : bests.efforts(), effort -> {
            json.whole("seconds", effort.seconds());
            json.number("watts", effort.watts());
            json.day("day", effort.day());
            json.string("file", effort.file());
            json.flag("mayBeLow", effort.mayBeLow());
        });
    }

    private static void ridingBests(JsonWriter json, @Nullable BestEfforts bests) {
        json.objects(
                "recentRidingBests",
                bests == null ? List.<BestEfforts.RidingEffort>of() : bests.ridingEfforts(),
                effort -> {
                    json.whole("seconds", effort.best().seconds());
                    json.number("watts", effort.best().watts());
                    json.whole("standingSeconds", effort.best().standingSeconds());
                    json.number("tooHighPercent", effort.best().tooHighPercent());
                    json.day("day", effort.day());
                    json.string("file", effort.file());
                });
    }

    private static void threshold(JsonWriter json, @Nullable ThresholdCheck check) {
        json.object("threshold", check, found -> {
            BestEfforts.Effort effort = found.effort();
            json.number("inForceW", found.inForceW());
            json.string("source", source(found.source()));
            json.number("impliedW", found.impliedW());
            json.wholeOrNull("impliedFromSeconds", effort == null ? null : effort.seconds());
            json.day("impliedOn", effort == null ? null : effort.day());
            json.number("tooHighPercent", found.tooHighPercent());
            json.word("standing", found.standing());
            json.day("lowSince", found.since());
        });
    }

    private static void durability(JsonWriter json, List<Durability> durability) {
        json.objects("durability", durability, each -> {
            json.whole("seconds", each.seconds());
            json.number("afterKJ", each.afterKJ());
            json.number("fresherW", each.fresherW());
            json.number("tiredW", each.tiredW());
            json.number("changePercent", each.changePercent());
        });
    }

    private static void pacing(JsonWriter json, PacingTrend pacing) {
        json.begin("pacing");
        half(json, "earlierRaces", pacing.earlier());
        half(json, "laterRaces", pacing.later());
        json.objects("races", pacing.races(), race -> JsonRiders.race(json, race));
        json.objects("recalls", pacing.recalls(), recall -> {
            json.string("file", recall.race().source().file());
            json.day("day", recall.race().day());
            JsonHistory.agreed(json, recall.agreed());
            json.number("openingW", recall.race().openingW());
        });
        json.end();
    }

    private static void half(JsonWriter json, String name, PacingTrend.@Nullable Half half) {
        json.object(name, half, found -> {
            json.whole("races", found.raceCount());
            json.whole("overHardStarts", found.overHardStarts());
            json.whole("evenOrNegative", found.evenOrNegative());
            json.number("meanDecouplingPercent", found.decouplingPercent());
            json.number("meanCostMinutes", found.costMinutes());
        });
    }

    private static void ride(JsonWriter json, SeasonRide ride) {
        RideNumbers numbers = ride.numbers();
        RideJudgement judgement = ride.judgement();
        json.string("file", ride.source().file());
        json.string("sha256", ride.source().sha256());
        json.whole("sessionIndex", ride.source().sessionIndex());
        json.string("format", ride.source().format());
        json.string("device", ride.source().device());
        json.startTime(ride.source().start(), ride.source().utcOffsetSeconds());
        json.day("day", ride.dateDoubt() == DateDoubt.NO_DATE ? null : ride.day());
        json.string(
                "dateDoubt", ride.dateDoubt() == null ? null : ride.dateDoubt().id());
        for (LoadNumber number : RideNumbers.KEPT) {
            json.number(number.id(), numbers.of(number));
            if (number == LoadNumber.MOVING_SECONDS) {
                json.whole("powerSeconds", numbers.powerSeconds());
            }
        }
        json.number("thresholdPowerW", judgement.thresholdPowerW());
        json.string("thresholdPowerSource", source(judgement.thresholdSource()));
        json.number(LoadNumber.INTENSITY_FACTOR.id(), judgement.intensityFactor());
        json.number(LoadNumber.TRAINING_STRESS.id(), judgement.trainingStress());
        json.string("verdict", judgement.verdict().words());
        json.string("verdictReason", judgement.verdictReason());
        json.number("targetW", judgement.targetW());
        json.number("costMinutesLow", judgement.costMinutesLow());
        json.number("costMinutesHigh", judgement.costMinutesHigh());
        json.objects("findings", judgement.findings(), found -> {
            json.string("kind", found.kind().id());
            json.string("severity", found.severity().id());
        });
        json.number("openingOverTarget", ride.traits().openingOverTarget());
        json.number("fadePercent", ride.traits().fadePercent());
        JsonNotes.notes(json, ride.notes());
    }

    private static void leftOut(JsonWriter json, SeasonReview season) {
        json.objects("duplicates", season.duplicates(), duplicate -> {
            json.string("file", duplicate.file());
            json.string("keptFile", duplicate.keptFile());
            json.flag("isCopy", duplicate.isCopy());
            json.string("reason", duplicate.reason().id());
        });
        json.objects("skipped", season.skipped(), skipped -> {
            json.string("file", skipped.file());
            json.string("reason", skipped.reason());
        });
        json.strings("goneFiles", season.goneFiles());
    }

    private static @Nullable String source(@Nullable Origin source) {
        return source == null ? null : source.id();
    }
}
