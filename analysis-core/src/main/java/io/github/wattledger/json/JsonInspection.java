package io.github.wattledger.json;

import io.github.wattledger.clean.RecordingSummary;
import io.github.wattledger.intake.FileInspection;
import io.github.wattledger.intake.RideSource;
import io.github.wattledger.ride.Interval;
import java.util.List;

/** The names and values of what a file holds, in the order of {@link JsonSchema#INSPECTION}. */
final class JsonInspection {
    private JsonInspection() {}

    static void inspection(JsonWriter json, FileInspection inspection) {
        json.string("file", inspection.file());
        json.string("format", inspection.format());
        json.whole("bytes", inspection.bytes());
        json.string("sha256", inspection.sha256());
        JsonQuality.notes(json, inspection.notes());
        json.objects("sessions", inspection.sessions(), session -> session(json, session));
    }

    private static void session(JsonWriter json, FileInspection.Session session) {
        RideSource source = session.source();
        json.whole("sessionIndex", source.sessionIndex());
        json.string("sport", source.sport());
        json.string("device", source.device());
        json.startTime(source.startTime(), source.utcOffsetSeconds());
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
            json.word("channel", each.channel());
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
