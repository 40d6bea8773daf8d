package io.github.wattledger.ride;

import java.io.Serializable;

/**
 * A point of a route that has a name: a checkpoint, a place with water, a summit.
 *
 * @param name what the file calls it, fit for one line
 * @param distanceM where it lies, metres along the route
 */
public record NamedPoint(String name, double distanceM) implements Serializable {}
