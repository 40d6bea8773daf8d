package io.github.wattledger.cli.report.json;

import io.github.wattledger.cli.report.WhatIfReport;
import io.github.wattledger.intake.RideSource;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.rig.Measure;
import io.github.wattledger.rig.Position;
import java.io.IOException;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

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
        JsonWriter.document(SCHEMA, out, json -> {
            source(json, report.source(), report.ridden());
            json.begin("road");
            json.number("distanceM", answer.distanceM());
            json.number("ascentM", report.ascentM());
            json.end();
            state(json, "asItIs", answer.asItIs(), answer.rig().position(), answer.asItIsSeconds());
            Position position = answer.change().position();
            state(
                    json,
                    "changed",
                    answer.changed(),
                    position == null ? answer.rig().position() : position,
                    answer.changedSeconds());
            WhatIf.Extent extent = answer.change().extent();
            json.begin("extent");
            fine(json, "fromFraction", extent.part().from());
            fine(json, "toFraction", extent.part().to());
            json.flag("isSpread", extent.isSpread());
            json.end();
            json.begin("savedMinutes");
            json.number("value", answer.savedMinutes());
            json.number("low", answer.lowMinutes());
            json.number("high", answer.highMinutes());
            json.end();
            influences(json, answer);
            JsonQuality.notes(json, report.notes());
        });
    }

    private static void source(JsonWriter json, @Nullable RideSource source, @Nullable Interval ridden) {
        if (source == null || ridden == null) {
            json.none("source");
            return;
        }
        json.begin("source");
        json.string("file", source.file());
        json.string("format", source.format());
        json.string("sha256", source.sha256());
        json.whole("sessionIndex", source.sessionIndex());
        json.whole("startSeconds", ridden.fromSecond());
        json.whole("endSeconds", ridden.toSecond());
        json.end();
    }

    private static void state(
            JsonWriter json, String name, WhatIf.State state, Position position, double movingSeconds) {
        json.begin(name);
        json.number("powerW", state.powerW());
        json.number("massKg", state.massKg());
        json.string("position", position.id());
        fine(json, "dragAreaM2", state.dragAreaM2());
        fine(json, "rollingResistance", state.rollingResistance());
        fine(json, "airDensityKgPerM3", state.airDensityKgPerM3());
        json.number("movingSeconds", movingSeconds);
        json.end();
    }

    private static void influences(JsonWriter json, WhatIf.Answer answer) {
        json.objects("influences", answer.influences(), each -> {
            Measure range = each.range();
            json.string("input", each.input().id());
            json.string("origin", range.origin().name().toLowerCase(Locale.ROOT));
            fine(json, "value", range.value());
            fine(json, "low", range.low());
            fine(json, "high", range.high());
            json.number("savedAtLowMinutes", each.savedAtLowMinutes());
            json.number("savedAtHighMinutes", each.savedAtHighMinutes());
        });
    }

    private static void fine(JsonWriter json, String name, double value) {
        json.number(name, value, FINE_DECIMALS);
    }
}
