package io.github.wattledger.cli.report.json;

import io.github.wattledger.ClimbReview;
import io.github.wattledger.RideReview;
import io.github.wattledger.RideSource;
import io.github.wattledger.RiderContext;
import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.clean.QualityReport;
import io.github.wattledger.cli.report.Report;
import io.github.wattledger.cli.report.StartTime;
import io.github.wattledger.course.Climb;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.load.ZoneTime;
import io.github.wattledger.pacing.AnyFinding;
import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.power.Ability;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.ride.Interval;
import java.io.IOException;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.PrettyPrinter;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.core.util.DefaultIndenter;
import tools.jackson.core.util.DefaultPrettyPrinter;
import tools.jackson.core.util.Separators;

/**
 * JSON by the schema {@code wattledger.review/1} ({@code docs/review.schema.json}): every name is always there, in this
 * order; what could not be computed is {@code null}, never 0. Numbers carry at most three decimals.
 */
public final class JsonReport implements Report {
    private static final String SCHEMA = "wattledger.review/1";

    private static final int DECIMALS = 3; // finer than any sensor here, coarse enough to hide binary fractions

    @Override
    public void write(RideReview review, Appendable out) throws IOException {
        document(SCHEMA, out, json -> {
            source(json, review.source());
            rider(json, review.rider());
            quality(json, review.quality());
            load(json, review.load());
            deviceTotals(json, review.deviceTotals());
            curve(json, review.curve());
            ability(json, review.ability());
            pacing(json, review.pacing());
            climbs(json, review.climbs());
        });
    }

    /** The names and values of a document after its first name, {@code schema}. */
    @FunctionalInterface
    interface Body {
        void write(JsonGenerator json);
    }

    /** One document of a schema; lines end with a line feed on every system. */
    static void document(String schema, Appendable out, Body body) throws IOException {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(new Indented(), text)) {
            json.writeStartObject();
            json.writeStringProperty("schema", schema);
            body.write(json);
            json.writeEndObject();
        }
        out.append(text.getBuffer()).append('\n');
    }

    private static void source(JsonGenerator json, RideSource source) {
        json.writeName("source").writeStartObject();
        string(json, "file", source.file());
        string(json, "format", source.format());
        string(json, "sha256", source.sha256());
        string(json, "device", source.device());
        string(json, "sport", source.sport());
        string(
                json,
                "startTime",
                StartTime.of(source.startTime(), source.utcOffsetSeconds()).iso());
        json.writeNumberProperty("sessionIndex", source.sessionIndex());
        json.writeEndObject();
    }

    private static void rider(JsonGenerator json, RiderContext rider) {
        json.writeName("rider").writeStartObject();
        number(json, "thresholdPowerW", rider.thresholdPowerW());
        RiderContext.ThresholdSource from = rider.thresholdPowerSource();
        string(json, "thresholdPowerSource", from == null ? null : from.id());
        number(json, "thresholdHeartRateBpm", rider.thresholdHeartRateBpm());
        number(json, "massKg", rider.massKg());
        json.writeEndObject();
    }

    static void quality(JsonGenerator json, QualityReport quality) {
        json.writeName("quality").writeStartObject();
        json.writeNumberProperty("recordedSeconds", quality.recordedSeconds());
        json.writeNumberProperty("missingPowerSeconds", quality.missingPowerSeconds());
        json.writeNumberProperty("repairedSamples", quality.repairedSamples());
        notes(json, quality.notes());
        json.writeEndObject();
    }

    static void notes(JsonGenerator json, List<QualityNote> notes) {
        json.writeName("notes").writeStartArray();
        for (QualityNote note : notes) {
            json.writeStartObject();
            string(json, "code", note.code());
            Integer seconds = note.seconds();
            number(json, "seconds", seconds == null ? null : seconds.doubleValue());
            string(json, "text", note.text());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    static void load(JsonGenerator json, RideLoad load) {
        json.writeName("load").writeStartObject();
        json.writeNumberProperty("elapsedSeconds", load.elapsedSeconds());
        json.writeNumberProperty("timerSeconds", load.timerSeconds());
        json.writeNumberProperty("movingSeconds", load.movingSeconds());
        json.writeNumberProperty("stoppedSeconds", load.stoppedSeconds());
        number(json, "distanceM", load.distanceM());
        number(json, "ascentM", load.ascentM());
        number(json, "workKJ", load.workKJ());
        number(json, "averagePowerW", load.averagePowerW());
        number(json, "normalizedPowerW", load.normalizedPowerW());
        number(json, "intensityFactor", load.intensityFactor());
        number(json, "trainingStress", load.trainingStress());
        number(json, "variabilityIndex", load.variabilityIndex());
        number(json, "averageHeartRateBpm", load.averageHeartRateBpm());
        number(json, "maximumHeartRateBpm", load.maximumHeartRateBpm());
        number(json, "averageCadenceRpm", load.averageCadenceRpm());
        number(json, "averageSpeedMps", load.averageSpeedMps());
        number(json, "efficiencyWPerBeat", load.efficiencyWPerBeat());
        number(json, "decouplingPercent", load.decouplingPercent());
        zones(json, "powerZones", "fromW", "toW", load.powerZones());
        zones(json, "heartRateZones", "fromBpm", "toBpm", load.heartRateZones());
        json.writeEndObject();
    }

    private static void zones(JsonGenerator json, String name, String from, String to, List<ZoneTime> zones) {
        json.writeName(name).writeStartArray();
        for (ZoneTime zone : zones) {
            json.writeStartObject();
            string(json, "name", zone.name());
            number(json, from, zone.from());
            number(json, to, zone.to());
            json.writeNumberProperty("seconds", zone.seconds());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    static void deviceTotals(JsonGenerator json, @Nullable DeviceTotals totals) {
        if (totals == null) {
            json.writeNullProperty("deviceTotals");
            return;
        }
        json.writeName("deviceTotals").writeStartObject();
        number(json, "elapsedSeconds", totals.elapsedSeconds());
        number(json, "timerSeconds", totals.timerSeconds());
        number(json, "movingSeconds", totals.movingSeconds());
        json.writeNullProperty("stoppedSeconds");
        number(json, "distanceM", totals.distanceM());
        number(json, "ascentM", totals.ascentM());
        number(json, "workKJ", totals.workKJ());
        number(json, "averagePowerW", totals.averagePowerW());
        number(json, "normalizedPowerW", totals.normalizedPowerW());
        number(json, "intensityFactor", totals.intensityFactor());
        number(json, "trainingStress", totals.trainingStress());
        json.writeNullProperty("variabilityIndex");
        number(json, "averageHeartRateBpm", totals.averageHeartRateBpm());
        number(json, "maximumHeartRateBpm", totals.maximumHeartRateBpm());
        number(json, "averageCadenceRpm", totals.averageCadenceRpm());
        number(json, "averageSpeedMps", totals.averageSpeedMps());
        json.writeNullProperty("efficiencyWPerBeat");
        json.writeNullProperty("decouplingPercent");
        json.writeEndObject();
    }

    private static void curve(JsonGenerator json, MeanMaximalCurve curve) {
        json.writeName("curve").writeStartArray();
        for (int seconds : curve.logSpacedSeconds()) {
            json.writeStartObject();
            json.writeNumberProperty("seconds", seconds);
            number(json, "watts", curve.watts(seconds));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void ability(JsonGenerator json, Ability ability) {
        json.writeName("ability").writeStartObject();
        number(json, "criticalPowerW", ability.criticalPowerW());
        number(json, "wPrimeKJ", ability.wPrimeKJ());
        Ability.Source from = ability.source();
        string(json, "source", from == null ? null : from.id());
        number(json, "fitErrorW", ability.fitErrorW());
        number(json, "sustainablePowerW", ability.sustainablePowerW());
        json.writeNumberProperty("forSeconds", ability.forSeconds());
        json.writeEndObject();
    }

    private static void pacing(JsonGenerator json, PacingReview pacing) {
        json.writeName("pacing").writeStartObject();
        string(json, "verdict", pacing.verdict().words());
        json.writeName("findings").writeStartArray();
        for (AnyFinding finding : pacing.findings()) {
            finding(json, finding);
        }
        json.writeEndArray();
        ledger(json, pacing.ledger());
        json.writeName("ownFindings").writeStartArray();
        for (AnyFinding finding : pacing.ownFindings()) {
            finding(json, finding);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void finding(JsonGenerator json, AnyFinding finding) {
        json.writeStartObject();
        string(json, "kind", finding.kindId());
        string(json, "severity", finding.severity().id());
        place(json, finding.when(), finding.startM(), finding.endM());
        evidence(json, finding.evidence());
        if (finding instanceof Finding ours) {
            cost(json, ours.cost());
        }
        string(json, "advice", finding.advice().text());
        json.writeEndObject();
    }

    private static void place(JsonGenerator json, Interval when, @Nullable Double startM, @Nullable Double endM) {
        json.writeNumberProperty("startSeconds", when.fromSecond());
        json.writeNumberProperty("endSeconds", when.toSecond());
        number(json, "startM", startM);
        number(json, "endM", endM);
    }

    private static void evidence(JsonGenerator json, Evidence evidence) {
        json.writeName("evidence").writeStartObject();
        for (Evidence.Entry entry : evidence.entries()) {
            number(json, entry.name(), entry.value());
        }
        json.writeEndObject();
    }

    private static void cost(JsonGenerator json, Cost cost) {
        if (cost instanceof Cost.Priced priced) {
            json.writeName("costMinutes").writeStartObject();
            number(json, "low", priced.lowMinutes());
            number(json, "high", priced.highMinutes());
            json.writeEndObject();
            string(json, "costNote", priced.how());
        } else if (cost instanceof Cost.NotPriced notPriced) {
            json.writeNullProperty("costMinutes");
            string(json, "costNote", notPriced.reason());
        } else {
            throw new AssertionError(cost);
        }
    }

    private static void ledger(JsonGenerator json, TimeLedger ledger) {
        json.writeName("ledger").writeStartObject();
        number(json, "elapsedMinutes", ledger.elapsedMinutes());
        number(json, "movingMinutes", ledger.movingMinutes());
        number(json, "stoppedMinutes", ledger.stoppedMinutes());
        number(json, "missingMinutes", ledger.missingMinutes());
        json.writeName("entries").writeStartArray();
        for (TimeLedger.Entry entry : ledger.entries()) {
            json.writeStartObject();
            string(json, "label", entry.label());
            number(json, "minutesLow", entry.minutesLow());
            number(json, "minutesHigh", entry.minutesHigh());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    static void string(JsonGenerator json, String name, @Nullable String value) {
        if (value == null) {
            json.writeNullProperty(name);
        } else {
            json.writeStringProperty(name, value);
        }
    }

    static void number(JsonGenerator json, String name, @Nullable Double value) {
        number(json, name, value, DECIMALS);
    }

    static void number(JsonGenerator json, String name, @Nullable Double value, int decimals) {
        if (value == null || !Double.isFinite(value)) {
            json.writeNullProperty(name);
        } else {
            json.writeName(name).writeNumber(plain(value, decimals));
        }
    }

    /** A number of an array. */
    static void element(JsonGenerator json, @Nullable Double value) {
        if (value == null || !Double.isFinite(value)) {
            json.writeNull();
        } else {
            json.writeNumber(plain(value, DECIMALS));
        }
    }

    private static void climbs(JsonGenerator json, @Nullable List<ClimbReview> climbs) {
        if (climbs == null) {
            json.writeNullProperty("climbs");
            return;
        }
        json.writeName("climbs").writeStartArray();
        for (ClimbReview review : climbs) {
            Climb climb = review.climb();
            json.writeStartObject();
            json.writeNumberProperty("startSeconds", review.when().fromSecond());
            json.writeNumberProperty("endSeconds", review.when().toSecond());
            number(json, "startM", climb.startM());
            number(json, "endM", climb.endM());
            number(json, "gainM", climb.gainM());
            number(json, "meanGradePercent", climb.meanGrade() * 100);
            number(json, "steepestGradePercent", climb.steepestGrade() * 100);
            json.writeNumberProperty("movingSeconds", climb.movingSeconds());
            number(json, "averagePowerW", climb.averagePowerW());
            number(json, "normalizedPowerW", review.normalizedPowerW());
            number(json, "wattsPerKg", review.wattsPerKg());
            number(json, "averageHeartRateBpm", climb.averageHeartRateBpm());
            number(json, "verticalSpeedMPerHour", climb.verticalSpeedMPerHour());
            Integer sameAs = review.sameAs();
            number(json, "sameAs", sameAs == null ? null : sameAs.doubleValue());
            Integer over = review.secondsOverFirst();
            number(json, "secondsOverFirst", over == null ? null : over.doubleValue());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    /** A finite number without exponent, trailing zeros or minus zero. */
    private static String plain(double value, int decimals) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /** Two spaces a level and line feeds on every system, so that the same review gives the same bytes. */
    static final class Indented extends ObjectWriteContext.Base {
        @Override
        public PrettyPrinter getPrettyPrinter() {
            DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
            Separators colonAfterName = Separators.createDefaultInstance()
                    .withObjectNameValueSpacing(Separators.Spacing.AFTER)
                    .withArrayEmptySeparator("")
                    .withObjectEmptySeparator("");
            return new DefaultPrettyPrinter(colonAfterName)
                    .withObjectIndenter(indenter)
                    .withArrayIndenter(indenter);
        }

        @Override
        public boolean hasPrettyPrinter() {
            return true;
        }
    }
}
