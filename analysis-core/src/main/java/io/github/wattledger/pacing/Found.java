package io.github.wattledger.pacing;

import io.github.wattledger.pacing.price.PricePlan;
import io.github.wattledger.ride.Interval;

/**
 * What a {@link Detector} found in a race, before it is priced.
 *
 * @param severity how much it weighs
 * @param when the seconds it concerns, counted from the start of the race
 * @param evidence the numbers it rests on
 * @param advice what to do next time
 * @param price how it is repaired, what it cost, or why it has no price
 */
record Found(Severity severity, Interval when, Evidence evidence, Advice advice, PricePlan price) {}
