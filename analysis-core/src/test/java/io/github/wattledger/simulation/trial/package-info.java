/**
 * Many simulated races whose mistakes are known to the second, and a score of what a review makes of them.
 *
 * <p>The door is {@code JudgementTrial}. A
 * {@code TrialRace} is drawn from a seed; its
 * {@code TrialTruth} says which mistakes it holds and how large they are, by the
 * definitions alone; {@code RiddenAgain} rides it without them.
 * {@code LibraryReview} is the only class here that calls the library.
 */
@NullMarked
package io.github.wattledger.simulation.trial;

import org.jspecify.annotations.NullMarked;
