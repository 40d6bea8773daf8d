/**
 * How hard a ride was: work, normalized power, training stress, zones, efficiency and decoupling, as pure functions.
 * {@link io.github.wattledger.load.RideLoad} holds them all for one ride. Sees only {@code ride}.
 */
@NullMarked
package io.github.wattledger.load;

import org.jspecify.annotations.NullMarked;
