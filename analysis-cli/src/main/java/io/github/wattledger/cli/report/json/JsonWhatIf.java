package io.github.wattledger.cli.report.json;

import io.github.wattledger.RideSource;
import io.github.wattledger.cli.report.WhatIfReport;
import io.github.wattledger.replay.Influence;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.rig.Measure;
import io.github.wattledger.rig.Position;
import java.io.IOException;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JsonGenerator;

/**
 * The answer to a what-if as JSON by the schema {@code wattledger.what-if/1} ({@code docs/what-if.schema.json}): every
 * name is always there, in this order; what does not apply is {@code null}, never 0.
 */
public final class JsonWhatIf {
    private static final String SCHEMA = "wattledger.what-if/1";

    private static final int FINE_DECIMALS = 5; // a coefficient of rolling resistance has four that count

    /**
     * Writes an answer.
     *
     * @param report what to show
     * @param out where the characters go; lines end with a line feed on every system
     * @throws IOException when {@code out} fails
     */
    public void write(WhatIfReport report, Appendable out) throws IOException {
        WhatIf.Answer answer = report.answer();
        JsonReport.document(SCHEMA, out, json -> {
            source(json, report.source(), report.ridden());
            json.writeName("road").writeStartObject();
            JsonReport.number(json, "distanceM", answer.distanceM());
            JsonReport.number(json, "ascentM", report.ascentM());
            json.writeEndObject();
            state(json, "asItIs", answer.asItIs(), answer.rig().position(), answer.asItIsSeconds());
            Position position = answer.change().position();
            state(
                    json,
                    "changed",
                    answer.changed(),
                    position == null ? answer.rig().position() : position,
                    answer.changedSeconds());
            WhatIf.Extent extent = answer.change().extent();
            json.writeName("extent").writeStartObject();
            fine(json, "fromFraction", extent.part().from());
            fine(json, "toFraction", extent.part().to());
            json.writeBooleanProperty("isSpread", extent.isSpread());
            json.writeEndObject();
            json.writeName("savedMinutes").writeStartObject();
            JsonReport.number(json, "value", answer.savedMinutes());
            JsonReport.number(json, "low", answer.lowMinutes());
            JsonReport.number(json, "high", answer.highMinutes());
            json.writeEndObject();
            influences(json, answer);
        });
    }

    private static void source(JsonGenerator json, @Nullable RideSource source, @Nullable Interval ridden) {
        if (source == null || ridden == null) {
            json.writeNullProperty("source");
            return;
        }
        json.writeName("source").writeStartObject();
        JsonReport.string(json, "file", source.file());
        JsonReport.string(json, "format", source.format());
        JsonReport.string(json, "sha256", source.sha256());
        json.writeNumberProperty("sessionIndex", source.sessionIndex());
        json.writeNumberProperty("startSeconds", ridden.fromSecond());
        json.writeNumberProperty("endSeconds", ridden.toSecond());
        json.writeEndObject();
    }

    private static void state(
            JsonGenerator json, String name, WhatIf.State state, Position position, double movingSeconds) {
        json.writeName(name).writeStartObject();
        JsonReport.number(json, "powerW", state.powerW());
        JsonReport.number(json, "massKg", state.massKg());
        JsonReport.string(json, "position", position.id());
        fine(json, "dragAreaM2", state.dragAreaM2());
        fine(json, "rollingResistance", state.rollingResistance());
        fine(json, "airDensityKgPerM3", state.airDensityKgPerM3());
        JsonReport.number(json, "movingSeconds", movingSeconds);
        json.writeEndObject();
    }

    private static void influences(JsonGenerator json, WhatIf.Answer answer) {
        json.writeName("influences").writeStartArray();
        for (Influence each : answer.influences()) {
            Measure range = each.range();
            json.writeStartObject();
            JsonReport.string(json, "input", each.input().id());
            JsonReport.string(json, "origin", range.origin().name().toLowerCase(Locale.ROOT));
            fine(json, "value", range.value());
            fine(json, "low", range.low());
            fine(json, "high", range.high());
            JsonReport.number(json, "savedAtLowMinutes", each.savedAtLowMinutes());
            JsonReport.number(json, "savedAtHighMinutes", each.savedAtHighMinutes());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void fine(JsonGenerator json, String name, double value) {
        JsonReport.number(json, name, value, FINE_DECIMALS);
    }
}
