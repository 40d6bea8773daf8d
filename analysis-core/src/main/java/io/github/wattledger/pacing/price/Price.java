package io.github.wattledger.pacing.price;

import org.jspecify.annotations.Nullable;

/**
 * A price and how it came about.
 *
 * @param cost the minutes, or why there are none
 * @param steps how the cost was computed, or null where nothing was computed
 */
public record Price(Cost cost, @Nullable PriceSteps steps) {}
