package io.github.wattledger.intake;

import java.io.Serializable;

/**
 * A number that is known about the rider.
 *
 * @param value the number, in the unit of what it stands for
 * @param origin where it comes from
 */
public record Known(double value, Origin origin) implements Serializable {}
