package io.github.wattledger.cli.report.json;

import io.github.wattledger.clean.RecordingSummary;
import io.github.wattledger.cli.report.words.StartTime;
import io.github.wattledger.intake.FileInspection;
import io.github.wattledger.intake.RideSource;
import io.github.wattledger.ride.Interval;
import java.io.IOException;
import java.util.List;
import java.util.Locale;

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
        JsonWriter.document(SCHEMA, out, json -> {
            json.string("file", inspection.file());
            json.string("format", inspection.format());
            json.whole("bytes", inspection.bytes());
            json.string("sha256", inspection.sha256());
            JsonQuality.notes(json, inspection.notes());
            json.objects("sessions", inspection.sessions(), session -> session(json, session));
        });
    }

    private static void session(JsonWriter json, FileInspection.Session session) {
        RideSource source = session.source();
        json.whole("sessionIndex", source.sessionIndex());
        json.string("sport", source.sport());
        json.string("device", source.device());
        json.string(
                "startTime",
                StartTime.of(source.startTime(), source.utcOffsetSeconds()).iso());
        summary(json, session.summary());
        JsonQuality.quality(json, session.quality());
        JsonLoad.load(json, session.load());
        JsonLoad.deviceTotals(json, session.deviceTotals());
    }

    private static void summary(JsonWriter json, RecordingSummary summary) {
        json.whole("sampleCount", summary.sampleCount());
        json.number("usualIntervalSeconds", summary.usualIntervalSeconds());
        json.wholeOrNull("longestIntervalSeconds", summary.longestIntervalSeconds());
        json.whole("lapCount", summary.lapCount());
        json.objects("channels", summary.channels(), each -> {
            json.string(
                    "channel", each.channel().name().toLowerCase(Locale.ROOT).replace('_', '-'));
            json.string("unit", each.channel().unit());
            json.whole("sampleCount", each.sampleCount());
            json.number("coveragePercent", each.coveragePercent());
            json.number("lowest", each.lowest());
            json.number("highest", each.highest());
        });
        stretches(json, "gaps", summary.gaps());
        stretches(json, "pauses", summary.pauses());
    }

    private static void stretches(JsonWriter json, String name, List<Interval> stretches) {
        json.objects(name, stretches, stretch -> {
            json.whole("startSeconds", stretch.fromSecond());
            json.whole("endSeconds", stretch.toSecond());
        });
    }
}
