/**
 * How well a ride was paced. The door is {@link io.github.wattledger.pacing.PacingReview}; each kind of
 * finding is a class of its own within this package, which a constant of
 * {@link io.github.wattledger.pacing.FindingKind} names. What a finding costs is computed in {@code pacing.price}.
 */
@NullMarked
package io.github.wattledger.pacing;

import org.jspecify.annotations.NullMarked;
