package io.github.wattledger.power;

/**
 * The share of the aerobic power of sea level that is left at a height. Riders differ widely (Chapman 2013, Br J Sports
 * Med 47:i40): show both ends.
 *
 * <p>Source: Bassett, Kyle, Passfield, Broker and Burke 1999, Med Sci Sports Exerc 31:1665-1676; the formula for
 * acclimatised riders as quoted elsewhere, the other one from memory.
 */
public final class AltitudeShare {
    /** Highest height that the formulas are used for, metres. Own choice: roads end near it. */
    public static final double HIGHEST_M = 5000;

    private static final double METRES_PER_KM = 1000;

    private AltitudeShare() {}

    /**
     * The share that is left to a rider who has lived at the height for some weeks.
     *
     * @param heightM metres above the sea, 0 to {@link #HIGHEST_M}
     * @return from 0 to 1
     * @throws IllegalArgumentException when the height is out of range
     */
    public static double acclimatised(double heightM) {
        double km = kilometres(heightM);
        return Math.min(1, (-1.12 * km * km - 1.90 * km + 99.9) / 100);
    }

    /**
     * The share that is left to a rider who has just come from the sea.
     *
     * @param heightM metres above the sea, 0 to {@link #HIGHEST_M}
     * @return from 0 to 1
     * @throws IllegalArgumentException when the height is out of range
     */
    public static double unacclimatised(double heightM) {
        double km = kilometres(heightM);
        return Math.min(1, (0.178 * km * km * km - 1.43 * km * km - 4.07 * km + 100) / 100);
    }

    private static double kilometres(double heightM) {
        if (!(heightM >= 0 && heightM <= HIGHEST_M)) {
            throw new IllegalArgumentException("heightM " + heightM + ", expected 0 to " + (int) HIGHEST_M);
        }
        return heightM / METRES_PER_KM;
    }
}
