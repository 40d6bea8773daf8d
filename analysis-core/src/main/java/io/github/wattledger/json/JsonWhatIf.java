package io.github.wattledger.json;

import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.intake.RideSource;
import io.github.wattledger.replay.Replayer;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.rig.Measure;
import io.github.wattledger.rig.Position;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The names and values of the answer to a what-if, in the order of {@link JsonSchema#WHAT_IF}. */
final class JsonWhatIf {
    private static final int FINE_DECIMALS = 5; // a coefficient of rolling resistance has four that count

    private JsonWhatIf() {}

    /** What a change is worth on a recorded ride. */
    static void ofRide(JsonWriter json, Replayer.Replayed replayed) {
        source(json, replayed.source(), replayed.ridden());
        answer(json, replayed.answer(), null, replayed.notes());
    }

    /** What a change is worth where no file was read. */
    static void withoutFile(JsonWriter json, WhatIf.Answer answer, @Nullable Double ascentM) {
        json.none("source");
        answer(json, answer, ascentM, List.of());
    }

    private static void answer(
            JsonWriter json, WhatIf.Answer answer, @Nullable Double ascentM, List<QualityNote> notes) {
        json.begin("road");
        json.number("distanceM", answer.distanceM());
        json.number("ascentM", ascentM);
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
        json.number("bunchDragSaved", answer.change().bunchSaving());
        json.begin("savedMinutes");
        json.number("value", answer.savedMinutes());
        json.number("low", answer.lowMinutes());
        json.number("high", answer.highMinutes());
        json.end();
        influences(json, answer);
        JsonQuality.notes(json, notes);
    }

    private static void source(JsonWriter json, RideSource source, Interval ridden) {
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
            json.word("origin", range.origin());
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
