/**
 * The front door: {@link io.github.wattledger.Reviewer} turns a file or a ride into a
 * {@link io.github.wattledger.RideReview}, which holds everything that a report shows.
 */
@NullMarked
package io.github.wattledger;

import org.jspecify.annotations.NullMarked;
