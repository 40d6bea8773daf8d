/**
 * A ride simulator for tests and for the sample files: a rider of known ability on a known course, second by second.
 *
 * <p>The door is {@link io.github.wattledger.simulation.RoadSimulation};
 * {@link io.github.wattledger.simulation.Scenario} says what is ridden,
 * {@link io.github.wattledger.simulation.SimulatedRide} holds what truly happened, and
 * {@link io.github.wattledger.simulation.RideTape} what a recorder with ordinary sensors would have written. The
 * physics is written here a second time on purpose and shares nothing with the library, which it is there to judge.
 * Only {@link StrictMath}, plain arithmetic and seeded {@link java.util.Random} are used, so that every machine gets
 * the same bytes.
 */
@NullMarked
package io.github.wattledger.simulation;

import org.jspecify.annotations.NullMarked;
