/**
 * A recorded ride, ridden again with something changed. Doors: {@link io.github.wattledger.replay.Replay} for another power
 * or rig, {@link io.github.wattledger.replay.WhatIf} for the worth of another position, mass, air or power. Sees {@code
 * ride}, {@code rider}, {@code course} and {@code rig}.
 */
@NullMarked
package io.github.wattledger.replay;

import org.jspecify.annotations.NullMarked;
