/**
 * The ground of a ride: {@link io.github.wattledger.course.Course} with its grade, {@link
 * io.github.wattledger.course.Climb}, and which gears it was ridden in. Sees {@code ride}, {@code rider} and
 * {@code load}.
 */
@NullMarked
package io.github.wattledger.course;

import org.jspecify.annotations.NullMarked;
