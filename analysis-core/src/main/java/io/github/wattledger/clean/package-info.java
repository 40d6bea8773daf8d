/**
 * From a recording's samples to a ride of uniform seconds, with a report of everything that was changed. The door is
 * {@link io.github.wattledger.clean.Cleaning}. Sees only {@code ride}.
 */
@NullMarked
package io.github.wattledger.clean;

import org.jspecify.annotations.NullMarked;
