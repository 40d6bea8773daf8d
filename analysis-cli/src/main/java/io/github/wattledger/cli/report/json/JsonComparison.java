package io.github.wattledger.cli.report.json;

import io.github.wattledger.RideComparison;
import io.github.wattledger.RideSource;
import io.github.wattledger.cli.report.words.ComparisonWords;
import io.github.wattledger.cli.report.words.StartTime;
import io.github.wattledger.compare.CourseComparison;
import io.github.wattledger.compare.CourseComparison.Ground;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Series;
import java.io.IOException;
import java.util.Locale;
import tools.jackson.core.JsonGenerator;

/**
 * A comparison as JSON by the schema {@code wattledger.compare/1} ({@code docs/compare.schema.json}): every name is
 * always there, in this order; what is not known is {@code null}, never 0.
 */
public final class JsonComparison {
    private static final String SCHEMA = "wattledger.compare/1";

    /**
     * Writes a comparison.
     *
     * @param comparison what to show
     * @param out where the characters go; lines end with a line feed on every system
     * @throws IOException when {@code out} fails
     */
    public void write(RideComparison comparison, Appendable out) throws IOException {
        JsonReport.document(SCHEMA, out, json -> {
            source(json, "reference", comparison.reference().source());
            CourseComparison course = comparison.course();
            json.writeName("course").writeStartObject();
            JsonReport.number(json, "startM", course.startM());
            JsonReport.number(json, "stepM", course.stepM());
            json.writeNumberProperty("pointCount", course.points());
            series(json, "referenceSeconds", course.referenceSecond());
            series(json, "powerW", comparison.along(Channel.POWER));
            series(json, "heartRateBpm", comparison.along(Channel.HEART_RATE));
            json.writeEndObject();
            json.writeName("others").writeStartArray();
            for (RideComparison.Against other : comparison.others()) {
                other(json, other);
            }
            json.writeEndArray();
        });
    }

    private static void source(JsonGenerator json, String name, RideSource source) {
        json.writeName(name).writeStartObject();
        JsonReport.string(json, "file", source.file());
        JsonReport.string(json, "format", source.format());
        JsonReport.string(json, "sha256", source.sha256());
        json.writeNumberProperty("sessionIndex", source.sessionIndex());
        JsonReport.string(
                json,
                "startTime",
                StartTime.of(source.startTime(), source.utcOffsetSeconds()).iso());
        json.writeEndObject();
    }

    private static void other(JsonGenerator json, RideComparison.Against other) {
        CourseComparison comparison = other.comparison();
        json.writeStartObject();
        source(json, "source", other.compared().source());
        JsonReport.string(json, "method", comparison.method().name().toLowerCase(Locale.ROOT));
        json.writeNumberProperty("fromPoint", comparison.fromPoint());
        json.writeNumberProperty("toPoint", comparison.toPoint());
        JsonReport.number(json, "fromM", comparison.distanceM(comparison.fromPoint()));
        JsonReport.number(json, "toM", comparison.distanceM(comparison.toPoint()));
        json.writeName("gap").writeStartObject();
        JsonReport.number(json, "elapsedSeconds", comparison.finalGapSeconds());
        JsonReport.number(json, "movingSeconds", comparison.finalMovingGapSeconds());
        JsonReport.number(json, "standingSeconds", comparison.lostStandingSeconds());
        for (Ground ground : Ground.values()) {
            boolean isThere = comparison.stretches().stream().anyMatch(stretch -> stretch.ground() == ground);
            JsonReport.number(
                    json,
                    ComparisonWords.id(ground) + "Seconds",
                    isThere ? comparison.lostMovingSecondsOn(ground) : null);
        }
        json.writeEndObject();
        json.writeName("stretches").writeStartArray();
        for (CourseComparison.Stretch stretch : comparison.stretches()) {
            stretch(json, stretch);
        }
        json.writeEndArray();
        json.writeName("apart").writeStartArray();
        for (CourseComparison.Apart apart : comparison.apart()) {
            json.writeStartObject();
            JsonReport.string(
                    json,
                    "reason",
                    apart.reason().name().toLowerCase(Locale.ROOT).replace('_', '-'));
            JsonReport.number(json, "startM", apart.startM());
            JsonReport.number(json, "endM", apart.endM());
            json.writeEndObject();
        }
        json.writeEndArray();
        series(json, "gapSeconds", comparison.gapSeconds());
        series(json, "movingGapSeconds", comparison.movingGapSeconds());
        series(json, "powerW", other.along(Channel.POWER));
        series(json, "heartRateBpm", other.along(Channel.HEART_RATE));
        json.writeEndObject();
    }

    private static void stretch(JsonGenerator json, CourseComparison.Stretch stretch) {
        json.writeStartObject();
        JsonReport.string(json, "ground", ComparisonWords.id(stretch.ground()));
        JsonReport.number(json, "startM", stretch.startM());
        JsonReport.number(json, "endM", stretch.endM());
        Double grade = stretch.meanGrade();
        JsonReport.number(json, "meanGradePercent", grade == null ? null : grade * 100);
        JsonReport.number(json, "apartM", stretch.apartM());
        JsonReport.number(json, "lostSeconds", stretch.lostSeconds());
        JsonReport.number(json, "lostMovingSeconds", stretch.lostMovingSeconds());
        side(json, "reference", stretch.reference());
        side(json, "other", stretch.other());
        json.writeEndObject();
    }

    private static void side(JsonGenerator json, String name, CourseComparison.Side side) {
        json.writeName(name).writeStartObject();
        JsonReport.number(json, "elapsedSeconds", side.elapsedSeconds());
        JsonReport.number(json, "movingSeconds", side.movingSeconds());
        JsonReport.number(json, "averagePowerW", side.averagePowerW());
        JsonReport.number(json, "averageHeartRateBpm", side.averageHeartRateBpm());
        json.writeEndObject();
    }

    /** One value a point, {@code null} where there is none. */
    private static void series(JsonGenerator json, String name, Series values) {
        json.writeName(name).writeStartArray();
        for (int point = 0; point < values.size(); point++) {
            JsonReport.element(json, values.isMeasured(point) ? values.get(point) : null);
        }
        json.writeEndArray();
    }
}
