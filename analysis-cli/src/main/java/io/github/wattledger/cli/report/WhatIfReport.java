package io.github.wattledger.cli.report;

import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.intake.RideSource;
import io.github.wattledger.json.JsonDocument;
import io.github.wattledger.replay.Replayer;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.ride.Interval;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What the reports show of a what-if, on a recorded ride or on a road that nobody has recorded. */
public final class WhatIfReport {
    private final WhatIf.Answer answer;
    private final Replayer.@Nullable Replayed replayed;
    private final @Nullable Double ascentM;

    private WhatIfReport(WhatIf.Answer answer, Replayer.@Nullable Replayed replayed, @Nullable Double ascentM) {
        this.answer = answer;
        this.replayed = replayed;
        this.ascentM = ascentM;
    }

    /** Of a recorded ride. */
    public static WhatIfReport ofRide(Replayer.Replayed replayed) {
        return new WhatIfReport(replayed.answer(), replayed, null);
    }

    /**
     * Of a road.
     *
     * @param answer what the change is worth
     * @param ascentM the ascent of the road, metres
     */
    public static WhatIfReport ofRoad(WhatIf.Answer answer, double ascentM) {
        return new WhatIfReport(answer, null, ascentM);
    }

    /** What the change is worth. */
    public WhatIf.Answer answer() {
        return answer;
    }

    /** Where the ride comes from, or null without one. */
    public @Nullable RideSource source() {
        return replayed == null ? null : replayed.source();
    }

    /** The seconds of the ride that were ridden again, or null without one. */
    public @Nullable Interval ridden() {
        return replayed == null ? null : replayed.ridden();
    }

    /** The ascent of the road, metres, or null with a ride. */
    public @Nullable Double ascentM() {
        return ascentM;
    }

    /** What has to be said about the numbers that the answer rests on, possibly nothing. */
    public List<QualityNote> notes() {
        return replayed == null ? List.of() : replayed.notes();
    }

    /** The same for programs. */
    public JsonDocument json() {
        return replayed == null ? JsonDocument.of(answer, ascentM) : JsonDocument.of(replayed);
    }
}
