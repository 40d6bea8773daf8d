package io.github.wattledger.cli.report.json;

import io.github.wattledger.FileInspection;
import io.github.wattledger.RideSource;
import io.github.wattledger.clean.RecordingSummary;
import io.github.wattledger.clean.RecordingSummary.ChannelSummary;
import io.github.wattledger.cli.report.words.StartTime;
import io.github.wattledger.ride.Interval;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import tools.jackson.core.JsonGenerator;

/**
 * What a file holds, as JSON by the schema {@code wattledger.inspection/1}: every name is always there, in this order;
 * what is not known is {@code null}, never 0.
 */
public final class JsonInspection {
    private static final String SCHEMA = "wattledger.inspection/1";

    /**
     * Writes an inspection.
     *
     * @param inspection what to show
     * @param out where the characters go; lines end with a line feed on every system
     * @throws IOException when {@code out} fails
     */
    public void write(FileInspection inspection, Appendable out) throws IOException {
        JsonReport.document(SCHEMA, out, json -> {
            json.writeStringProperty("file", inspection.file());
            json.writeStringProperty("format", inspection.format());
            json.writeNumberProperty("bytes", inspection.bytes());
            json.writeStringProperty("sha256", inspection.sha256());
            JsonReport.notes(json, inspection.notes());
            json.writeName("sessions").writeStartArray();
            for (FileInspection.Session session : inspection.sessions()) {
                session(json, session);
            }
            json.writeEndArray();
        });
    }

    private static void session(JsonGenerator json, FileInspection.Session session) {
        RideSource source = session.source();
        json.writeStartObject();
        json.writeNumberProperty("sessionIndex", source.sessionIndex());
        JsonReport.string(json, "sport", source.sport());
        JsonReport.string(json, "device", source.device());
        JsonReport.string(
                json,
                "startTime",
                StartTime.of(source.startTime(), source.utcOffsetSeconds()).iso());
        summary(json, session.summary());
        JsonReport.quality(json, session.quality());
        JsonReport.load(json, session.load());
        JsonReport.deviceTotals(json, session.deviceTotals());
        json.writeEndObject();
    }

    private static void summary(JsonGenerator json, RecordingSummary summary) {
        json.writeNumberProperty("sampleCount", summary.sampleCount());
        JsonReport.number(json, "usualIntervalSeconds", summary.usualIntervalSeconds());
        Integer longest = summary.longestIntervalSeconds();
        JsonReport.number(json, "longestIntervalSeconds", longest == null ? null : longest.doubleValue());
        json.writeNumberProperty("lapCount", summary.lapCount());
        json.writeName("channels").writeStartArray();
        for (ChannelSummary each : summary.channels()) {
            json.writeStartObject();
            json.writeStringProperty(
                    "channel", each.channel().name().toLowerCase(Locale.ROOT).replace('_', '-'));
            json.writeStringProperty("unit", each.channel().unit());
            json.writeNumberProperty("sampleCount", each.sampleCount());
            JsonReport.number(json, "coveragePercent", each.coveragePercent());
            JsonReport.number(json, "lowest", each.lowest());
            JsonReport.number(json, "highest", each.highest());
            json.writeEndObject();
        }
        json.writeEndArray();
        stretches(json, "gaps", summary.gaps());
        stretches(json, "pauses", summary.pauses());
    }

    private static void stretches(JsonGenerator json, String name, List<Interval> stretches) {
        json.writeName(name).writeStartArray();
        for (Interval stretch : stretches) {
            json.writeStartObject();
            json.writeNumberProperty("startSeconds", stretch.fromSecond());
            json.writeNumberProperty("endSeconds", stretch.toSecond());
            json.writeEndObject();
        }
        json.writeEndArray();
    }
}
