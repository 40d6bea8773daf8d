package io.github.wattledger.simulation.trial;

/**
 * What a race is like in which a bunch is to be found.
 *
 * @param saving what the bunch saves in the mean, a share of the lone drag; 0 is a race alone
 * @param bunchMinutes how long the bunch lasts; infinite where it lasts all the way
 * @param windMps the mean wind
 * @param road its surface
 * @param isLoop whether the course comes back to its start; otherwise it leads one way, with bends
 * @param builds whether the wind builds from 0.3 to 1.7 times its mean during the race
 * @param patchiness by how much the wind is patchier than usual
 */
record BunchDay(
        double saving,
        double bunchMinutes,
        double windMps,
        Road road,
        boolean isLoop,
        boolean builds,
        double patchiness) {
    /** The surface. */
    enum Road {
        /** Asphalt that changes a little from stretch to stretch. */
        ONE_KIND,
        /** One stretch of 12 to 30 % of the way is smooth, the rest rough. */
        ONE_SMOOTH_STRETCH,
        /** Asphalt and gravel in turn, 100 to 1,500 m each. */
        MIXED
    }

    /** A race alone. */
    static BunchDay alone(double windMps, boolean isLoop) {
        return new BunchDay(0, 0, windMps, Road.ONE_KIND, isLoop, false, 1);
    }

    /** The same with a bunch. */
    BunchDay with(double otherSaving, double minutes) {
        return new BunchDay(otherSaving, minutes, windMps, road, isLoop, builds, patchiness);
    }

    /** The same, all of it in a bunch. */
    BunchDay wholly(double otherSaving) {
        return with(otherSaving, Double.POSITIVE_INFINITY);
    }

    /** The same on another surface. */
    BunchDay on(Road other) {
        return new BunchDay(saving, bunchMinutes, windMps, other, isLoop, builds, patchiness);
    }

    /** The same in a wind that builds. */
    BunchDay building() {
        return new BunchDay(saving, bunchMinutes, windMps, road, isLoop, true, patchiness);
    }

    /** The same in a wind twice as patchy. */
    BunchDay twiceAsPatchy() {
        return new BunchDay(saving, bunchMinutes, windMps, road, isLoop, builds, 2);
    }
}
