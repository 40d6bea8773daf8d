package io.github.wattledger.plan;

import java.io.Serializable;

/**
 * A piece of a course that is ridden at one power and one steady speed.
 *
 * @param lengthM length, metres, above 0
 * @param grade rise over run, -0.4 to 0.4
 * @param headwindMps wind against the rider along the road, m/s; below 0 from behind
 */
public record RoadPiece(double lengthM, double grade, double headwindMps) implements Serializable {
    private static final double STEEPEST = 0.4;

    /** @throws IllegalArgumentException when a number is out of range */
    public RoadPiece {
        if (!(lengthM > 0) || !(Math.abs(grade) <= STEEPEST) || !(Math.abs(headwindMps) <= 30)) {
            throw new IllegalArgumentException("piece of " + lengthM + " m at grade " + grade + " with " + headwindMps
                    + " m/s of wind, expected a length above 0, -0.4 to 0.4 and -30 to 30");
        }
    }
}
