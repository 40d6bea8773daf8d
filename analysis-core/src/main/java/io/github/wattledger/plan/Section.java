package io.github.wattledger.plan;

import java.io.Serializable;

/**
 * A part of the course between two points to look at the clock.
 *
 * @param name where it ends: a named point, or a distance
 * @param fromM where it begins, metres from the start
 * @param toM where it ends, metres from the start
 * @param powerW fourth-power mean of the plan's power on it, watts
 * @param movingSeconds how long it takes, seconds
 * @param arrival time since the start at its end, stops spread evenly over the way
 */
public record Section(String name, double fromM, double toM, double powerW, double movingSeconds, TimeRange arrival)
        implements Serializable {}
