/**
 * Whether the balance of forces of a ride looks like a bunch, where nobody says whether there was one. Door: {@link
 * io.github.wattledger.bunch.BunchSearch}. It proposes and judges nothing. Sees {@code ride}, {@code course} and {@code
 * rig}.
 */
@NullMarked
package io.github.wattledger.bunch;

import org.jspecify.annotations.NullMarked;
