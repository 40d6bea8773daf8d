package io.github.wattledger.plan;

import io.github.wattledger.ride.Series;
import java.io.Serializable;

/**
 * A course ridden at a power for each of its pieces.
 *
 * @param watts power of each piece, watts
 * @param speedMps steady speed of each piece, m/s
 * @param seconds how long all pieces take
 * @param effortW the mean over time of the power to the exponent of the plan, as a power: with the exponent 4 the normalized
 *     power of steady pieces, watts
 * @param averageW mean power over time, watts
 */
public record PowerByPiece(Series watts, Series speedMps, double seconds, double effortW, double averageW)
        implements Serializable {}
