/**
 * How well a ride was paced. The door is {@link io.github.wattledger.pacing.PacingReview}; each detector is a class of
 * its own within this package. Sees {@code ride}, {@code load}, {@code power} and {@code road}.
 */
@NullMarked
package io.github.wattledger.pacing;

import org.jspecify.annotations.NullMarked;
