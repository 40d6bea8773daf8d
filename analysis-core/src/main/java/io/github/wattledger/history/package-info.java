/**
 * What a rider's own earlier rides say on a given day. {@link io.github.wattledger.history.OwnRides} takes the rider's
 * dated rides, {@link io.github.wattledger.history.RiderHistory} is what they say. Values and pure functions only; needs
 * no store. Sees {@code ride}, {@code rider} and {@code power}.
 */
@NullMarked
package io.github.wattledger.history;

import org.jspecify.annotations.NullMarked;
