/**
 * Rider and bicycle as air and road feel them. Doors: {@link io.github.wattledger.rig.RoadLoad} for a steady state, {@link
 * io.github.wattledger.rig.RigChoice} for the numbers to compute with and where each comes from. Sees {@code ride}, {@code
 * rider} and {@code course}.
 */
@NullMarked
package io.github.wattledger.rig;

import org.jspecify.annotations.NullMarked;
