package io.github.wattledger.cli.report;

import io.github.wattledger.RideSource;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.ride.Interval;
import org.jspecify.annotations.Nullable;

/**
 * What the reports show of a what-if.
 *
 * @param source where the ride comes from, or null without one
 * @param ridden the seconds of it that were ridden again, or null without a ride
 * @param ascentM ascent of a road that nobody has recorded, metres, or null with a ride
 * @param answer what the change is worth
 */
public record WhatIfReport(
        @Nullable RideSource source,
        @Nullable Interval ridden,
        @Nullable Double ascentM,
        WhatIf.Answer answer) {}
