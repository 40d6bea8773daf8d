/**
 * Power, speed and the road: what a course asks for, what the air and the tyres take, and how long the same ride would
 * have taken with other power or other equipment. Doors: {@link io.github.wattledger.road.RoadLoad} for a steady state,
 * {@link io.github.wattledger.road.Replay} for a recorded ride, {@link io.github.wattledger.road.WhatIf} for the worth of
 * another position, mass, air or power, {@link io.github.wattledger.road.Course} and {@link
 * io.github.wattledger.road.Climb} for the ground. Sees {@code ride} only.
 */
@NullMarked
package io.github.wattledger.road;

import org.jspecify.annotations.NullMarked;
