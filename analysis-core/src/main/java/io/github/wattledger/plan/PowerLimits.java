package io.github.wattledger.plan;

import java.io.Serializable;

/**
 * Between which powers and up to which speed a course is ridden.
 *
 * @param floorW the least power where the road does not fall, watts, 0 or more
 * @param capW the highest power anywhere, watts, at least {@code floorW}
 * @param slowestMps the lowest speed that can be ridden, m/s, 0 or more; the cap gives way to it on steep pieces
 * @param fastestMps the highest speed that is ridden, m/s, above {@code slowestMps}; where the road alone reaches it the
 *     power is 0
 */
public record PowerLimits(double floorW, double capW, double slowestMps, double fastestMps) implements Serializable {
    /** No limits at all. */
    public static final PowerLimits NONE = new PowerLimits(0, Double.MAX_VALUE, 0, 50);

    /** From this grade on the floor holds; below it the road helps. Own choice. */
    static final double FLOOR_FROM_GRADE = -0.01;

    /** @throws IllegalArgumentException when the numbers are out of order */
    public PowerLimits {
        if (!(floorW >= 0 && capW >= floorW) || !(slowestMps >= 0 && fastestMps > slowestMps)) {
            throw new IllegalArgumentException("power " + floorW + " to " + capW + " W, speed " + slowestMps + " to "
                    + fastestMps + " m/s, expected rising limits from 0 on");
        }
    }
}
