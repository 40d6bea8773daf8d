package io.github.wattledger.cli.report;

import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.intake.RideSource;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.ride.Interval;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the reports show of a what-if.
 *
 * @param source where the ride comes from, or null without one
 * @param ridden the seconds of it that were ridden again, or null without a ride
 * @param ascentM ascent of a road that nobody has recorded, metres, or null with a ride
 * @param answer what the change is worth
 * @param notes what has to be said about the numbers that the answer rests on, possibly nothing
 */
public record WhatIfReport(
        @Nullable RideSource source,
        @Nullable Interval ridden,
        @Nullable Double ascentM,
        WhatIf.Answer answer,
        List<QualityNote> notes) {}
