package io.github.wattledger.history;

import java.io.Serializable;
import java.time.LocalDate;

/**
 * What a rider wrote down after a ride for the next one.
 *
 * @param day the day of that ride
 * @param words what was agreed, in the rider's own words
 */
public record Agreement(LocalDate day, String words) implements Serializable {}
