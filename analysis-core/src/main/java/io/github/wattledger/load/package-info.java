/**
 * How hard a ride was: work, normalized power, training stress, zones, watts a heartbeat and decoupling, as pure functions.
 * {@link io.github.wattledger.load.RideLoad} holds them all for one ride. It sees {@code ride} and {@code rider} only.
 */
@NullMarked
package io.github.wattledger.load;

import org.jspecify.annotations.NullMarked;
