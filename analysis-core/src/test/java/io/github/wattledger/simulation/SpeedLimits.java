package io.github.wattledger.simulation;

/** The fastest speed a rider dares at each place of a course, with the braking that leads to slower places. */
public final class SpeedLimits {
    /** No bend and no junction. */
    public static final SpeedLimits NONE = new SpeedLimits(new double[] {Double.POSITIVE_INFINITY});

    /** Somewhat less than a rider brakes with, so that the limits can be held, m/s2. */
    private static final double PLANNED_BRAKING_MPS2 = 1.0;

    private final double[] mps;

    private SpeedLimits(double[] mps) {
        this.mps = mps;
    }

    /**
     * The limits of a course.
     *
     * @param mpsByCell the fastest speed in each cell of {@value Course#CELL_M} m from the start line on, m/s; infinite
     *     where nothing slows the rider
     */
    public static SpeedLimits of(double... mpsByCell) {
        double[] mps = mpsByCell.clone();
        for (int cell = mps.length - 2; cell >= 0; cell--) {
            double beforeBraking =
                    StrictMath.sqrt(mps[cell + 1] * mps[cell + 1] + 2 * PLANNED_BRAKING_MPS2 * Course.CELL_M);
            mps[cell] = StrictMath.min(mps[cell], beforeBraking);
        }
        return new SpeedLimits(mps);
    }

    /** The fastest speed at a distance from the start line, m/s; places beyond an end count as that end. */
    double mpsAt(double distanceM) {
        int cell = (int) StrictMath.floor(distanceM / Course.CELL_M);
        return mps[StrictMath.max(0, StrictMath.min(mps.length - 1, cell))];
    }
}
