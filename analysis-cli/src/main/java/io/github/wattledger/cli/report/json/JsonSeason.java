package io.github.wattledger.cli.report.json;

import io.github.wattledger.RiderContext.ThresholdSource;
import io.github.wattledger.cli.report.words.StartTime;
import io.github.wattledger.power.Durability;
import io.github.wattledger.season.BestEfforts;
import io.github.wattledger.season.DuplicateRide;
import io.github.wattledger.season.LoadHistory;
import io.github.wattledger.season.PacingTrend;
import io.github.wattledger.season.PeriodTotals;
import io.github.wattledger.season.RideJudgement;
import io.github.wattledger.season.RideNumbers;
import io.github.wattledger.season.SeasonReview;
import io.github.wattledger.season.SeasonRide;
import io.github.wattledger.season.SkippedFile;
import io.github.wattledger.season.ThresholdCheck;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JsonGenerator;

/**
 * A season as JSON by the schema {@code wattledger.season/1}: every name is always there, in this order; what could not
 * be computed is {@code null}, never 0.
 */
public final class JsonSeason {
    private static final String SCHEMA = "wattledger.season/1";

    /**
     * Writes a season.
     *
     * @param season what to show
     * @param out where the characters go; lines end with a line feed on every system
     * @throws IOException when {@code out} fails
     */
    public void write(SeasonReview season, Appendable out) throws IOException {
        JsonReport.document(SCHEMA, out, json -> {
            JsonReport.string(json, "asOf", text(season.asOf()));
            load(json, season.load());
            periods(json, "weeks", season.weeks());
            periods(json, "months", season.months());
            bests(json, "bests", season.bests());
            bests(json, "recentBests", season.recentBests());
            threshold(json, season.threshold());
            durability(json, season.durability());
            pacing(json, season.pacing());
            json.writeName("rides").writeStartArray();
            for (SeasonRide ride : season.rides()) {
                ride(json, ride);
            }
            json.writeEndArray();
            leftOut(json, season);
        });
    }

    private static void load(JsonGenerator json, LoadHistory load) {
        json.writeName("load").writeStartObject();
        json.writeNumberProperty("acuteDays", LoadHistory.ACUTE_DAYS);
        json.writeNumberProperty("chronicDays", LoadHistory.CHRONIC_DAYS);
        JsonReport.number(json, "startAcuteLoad", load.startAcute());
        JsonReport.number(json, "startChronicLoad", load.startChronic());
        json.writeName("days").writeStartArray();
        for (LoadHistory.Day day : load.days()) {
            json.writeStartObject();
            json.writeStringProperty("day", day.day().toString());
            JsonReport.number(json, "trainingStress", day.trainingStress());
            JsonReport.number(json, "acuteLoad", day.acute());
            JsonReport.number(json, "chronicLoad", day.chronic());
            JsonReport.number(json, "balance", day.balance());
            JsonReport.number(json, "ratio", day.ratio());
            JsonReport.number(json, "ramp", day.ramp());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void periods(JsonGenerator json, String name, List<PeriodTotals> periods) {
        json.writeName(name).writeStartArray();
        for (PeriodTotals period : periods) {
            json.writeStartObject();
            json.writeStringProperty("from", period.from().toString());
            json.writeNumberProperty("rides", period.rideCount());
            json.writeNumberProperty("ridesWithoutStress", period.ridesWithoutStress());
            json.writeNumberProperty("movingSeconds", period.movingSeconds());
            JsonReport.number(json, "workKJ", period.workKJ());
            JsonReport.number(json, "trainingStress", period.trainingStress());
            JsonReport.number(json, "chronicLoad", period.chronic());
            JsonReport.number(json, "ramp", period.ramp());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void bests(JsonGenerator json, String name, @Nullable BestEfforts bests) {
        json.writeName(name).writeStartArray();
        for (BestEfforts.Effort effort : bests == null ? List.<BestEfforts.Effort>of() : bests.efforts()) {
            json.writeStartObject();
            json.writeNumberProperty("seconds", effort.seconds());
            JsonReport.number(json, "watts", effort.watts());
            json.writeStringProperty("day", effort.day().toString());
            json.writeStringProperty("file", effort.file());
            json.writeBooleanProperty("mayBeLow", effort.mayBeLow());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void threshold(JsonGenerator json, @Nullable ThresholdCheck check) {
        if (check == null) {
            json.writeNullProperty("threshold");
            return;
        }
        BestEfforts.Effort effort = check.effort();
        json.writeName("threshold").writeStartObject();
        JsonReport.number(json, "inForceW", check.inForceW());
        JsonReport.string(json, "source", source(check.source()));
        JsonReport.number(json, "impliedW", check.impliedW());
        JsonReport.number(json, "impliedFromSeconds", effort == null ? null : (Double) (double) effort.seconds());
        JsonReport.string(
                json, "impliedOn", effort == null ? null : effort.day().toString());
        json.writeStringProperty(
                "standing", check.standing().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        JsonReport.string(json, "lowSince", text(check.since()));
        json.writeEndObject();
    }

    private static void durability(JsonGenerator json, List<Durability> durability) {
        json.writeName("durability").writeStartArray();
        for (Durability each : durability) {
            json.writeStartObject();
            json.writeNumberProperty("seconds", each.seconds());
            JsonReport.number(json, "afterKJ", each.afterKJ());
            JsonReport.number(json, "fresherW", each.fresherW());
            JsonReport.number(json, "tiredW", each.tiredW());
            JsonReport.number(json, "changePercent", each.changePercent());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void pacing(JsonGenerator json, PacingTrend pacing) {
        json.writeName("pacing").writeStartObject();
        half(json, "earlierRaces", pacing.earlier());
        half(json, "laterRaces", pacing.later());
        json.writeEndObject();
    }

    private static void half(JsonGenerator json, String name, PacingTrend.@Nullable Half half) {
        if (half == null) {
            json.writeNullProperty(name);
            return;
        }
        json.writeName(name).writeStartObject();
        json.writeNumberProperty("races", half.raceCount());
        json.writeNumberProperty("overHardStarts", half.overHardStarts());
        json.writeNumberProperty("evenOrNegative", half.evenOrNegative());
        JsonReport.number(json, "meanDecouplingPercent", half.decouplingPercent());
        JsonReport.number(json, "meanCostMinutes", half.costMinutes());
        json.writeEndObject();
    }

    private static void ride(JsonGenerator json, SeasonRide ride) {
        RideNumbers numbers = ride.numbers();
        RideJudgement judgement = ride.judgement();
        json.writeStartObject();
        json.writeStringProperty("file", ride.source().file());
        json.writeStringProperty("sha256", ride.source().sha256());
        json.writeNumberProperty("sessionIndex", ride.source().sessionIndex());
        json.writeStringProperty("format", ride.source().format());
        JsonReport.string(json, "device", ride.source().device());
        json.writeStringProperty(
                "startTime",
                StartTime.of(ride.source().start(), ride.source().utcOffsetSeconds())
                        .iso());
        json.writeStringProperty("day", ride.day().toString());
        json.writeNumberProperty("elapsedSeconds", numbers.elapsedSeconds());
        json.writeNumberProperty("timerSeconds", numbers.timerSeconds());
        json.writeNumberProperty("movingSeconds", numbers.movingSeconds());
        json.writeNumberProperty("powerSeconds", numbers.powerSeconds());
        JsonReport.number(json, "distanceM", numbers.distanceM());
        JsonReport.number(json, "ascentM", numbers.ascentM());
        JsonReport.number(json, "workKJ", numbers.workKJ());
        JsonReport.number(json, "averagePowerW", numbers.averagePowerW());
        JsonReport.number(json, "normalizedPowerW", numbers.normalizedPowerW());
        JsonReport.number(json, "averageHeartRateBpm", numbers.averageHeartRateBpm());
        JsonReport.number(json, "maximumHeartRateBpm", numbers.maximumHeartRateBpm());
        JsonReport.number(json, "efficiencyWPerBeat", numbers.efficiencyWPerBeat());
        JsonReport.number(json, "decouplingPercent", numbers.decouplingPercent());
        JsonReport.number(json, "thresholdPowerW", judgement.thresholdPowerW());
        JsonReport.string(json, "thresholdPowerSource", source(judgement.thresholdSource()));
        JsonReport.number(json, "intensityFactor", judgement.intensityFactor());
        JsonReport.number(json, "trainingStress", judgement.trainingStress());
        json.writeStringProperty("verdict", judgement.verdict().words());
        JsonReport.string(json, "verdictReason", judgement.verdictReason());
        JsonReport.number(json, "targetW", judgement.targetW());
        JsonReport.number(json, "costMinutesLow", judgement.costMinutesLow());
        JsonReport.number(json, "costMinutesHigh", judgement.costMinutesHigh());
        json.writeName("findings").writeStartArray();
        for (RideJudgement.Found found : judgement.findings()) {
            json.writeStartObject();
            json.writeStringProperty("kind", found.kind().id());
            json.writeStringProperty("severity", found.severity().id());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void leftOut(JsonGenerator json, SeasonReview season) {
        json.writeName("duplicates").writeStartArray();
        for (DuplicateRide duplicate : season.duplicates()) {
            json.writeStartObject();
            json.writeStringProperty("file", duplicate.file());
            json.writeStringProperty("keptFile", duplicate.keptFile());
            json.writeBooleanProperty("isCopy", duplicate.isCopy());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeName("skipped").writeStartArray();
        for (SkippedFile skipped : season.skipped()) {
            json.writeStartObject();
            json.writeStringProperty("file", skipped.file());
            json.writeStringProperty("reason", skipped.reason());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeName("goneFiles").writeStartArray();
        season.goneFiles().forEach(json::writeString);
        json.writeEndArray();
    }

    static @Nullable String text(@Nullable LocalDate day) {
        return day == null ? null : day.toString();
    }

    static @Nullable Double real(@Nullable Integer number) {
        return number == null ? null : (Double) number.doubleValue();
    }

    private static @Nullable String source(@Nullable ThresholdSource source) {
        return source == null ? null : source.id();
    }
}
