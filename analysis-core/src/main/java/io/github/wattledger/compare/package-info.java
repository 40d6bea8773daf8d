/**
 * Rides over one course, point by point. The door is {@link io.github.wattledger.compare.CourseComparison}. Sees {@code
 * ride} and {@code course}.
 */
@NullMarked
package io.github.wattledger.compare;

import org.jspecify.annotations.NullMarked;
