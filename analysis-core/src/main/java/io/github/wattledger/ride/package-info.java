/**
 * What a recorded ride is: values only, with no logic beyond their own invariants.
 *
 * <p>{@link io.github.wattledger.ride.Recording} is what a file says, {@link io.github.wattledger.ride.Ride} is what is
 * analysed. This package sees nothing else of the project.
 */
@NullMarked
package io.github.wattledger.ride;

import org.jspecify.annotations.NullMarked;
