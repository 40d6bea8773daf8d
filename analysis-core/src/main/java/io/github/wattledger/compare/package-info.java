/**
 * Rides over one course, point by point. The door for files is {@link io.github.wattledger.compare.Comparer}, the one
 * for rides in memory {@link io.github.wattledger.compare.CourseComparison}. Sees {@code ride}, {@code read}, {@code
 * course} and {@code intake}.
 */
@NullMarked
package io.github.wattledger.compare;

import org.jspecify.annotations.NullMarked;
