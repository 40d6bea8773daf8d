package io.github.wattledger.replay;

/** What was ridden in a bin: {@code seconds} of moving time over {@code lengthM}. */
final class ReplayBin {
    /** A bin ridden slower than this keeps its speed, and no replay rides slower, m/s. */
    static final double SLOWEST_MPS = 0.5;

    /** A bin ridden faster than this keeps its speed, and no replay rides faster, m/s. */
    static final double FASTEST_MPS = 40;

    int seconds;
    double lengthM;
    double joules;
    double speedMps = Double.NaN;
    double watts = Double.NaN;
    double startMps = Double.NaN;
    double endMps = Double.NaN;
    double startDistanceM = Double.NaN;
    double endDistanceM = Double.NaN;
    boolean measured = true;
    double grade = Double.NaN;
    /** The part of gravity at a right angle to the road. */
    double gravityAcrossMps2;

    /** Where in the bin the brakes were first pulled hard, as a share of its length; {@code NaN} where they were not. */
    double brakesFrom = Double.NaN;

    /** Where in the bin they were last released, as a share of its length; {@code NaN} where they were not pulled. */
    double brakesTo = Double.NaN;

    /** Speed where they were last released, m/s. */
    double releasedMps = Double.NaN;

    /** The wind that explains the speed of this bin; {@code NaN} in a bin that keeps its speed. */
    double apparentWindMps;

    /** The median of the apparent wind around this bin: the replay rides against it. */
    double windMps;

    /** Whether the bin keeps its speed whatever the power: it was coasted, or the recording says too little about it. */
    boolean fixed;

    /** What the balance of forces leaves over at the recorded speed in that wind, newtons. */
    double surplusN;

    /** By how much the settled speed rises with power at the recorded power, m/s per watt. */
    double riseMpsPerW;

    /** Half of the change of {@link #riseMpsPerW} with power, m/s per square watt. */
    double bendMpsPerW2;

    /** Computes the means, once all seconds of the bin are in it. */
    ReplayBin closed() {
        speedMps = lengthM / seconds;
        watts = joules / seconds;
        return this;
    }

    /** Near the settled speed with another power and the same rig; exactly the recorded one with the recorded power. */
    double speedNearMps(double otherWatts) {
        double more = otherWatts - watts;
        return speedMps + (riseMpsPerW + bendMpsPerW2 * more) * more;
    }

    /** Whether it was ridden without pedalling, and the recording says enough to ride it with another rig. */
    boolean isFreewheeled() {
        return fixed && isKnown();
    }

    /**
     * Notes that the brakes were pulled hard from one place to another, shares of the length of the bin; a later place than
     * any before.
     *
     * @param atMps speed where they were released
     */
    void brake(double from, double to, double atMps) {
        brakesFrom = Double.isNaN(brakesFrom) ? from : brakesFrom;
        brakesTo = to;
        releasedMps = atMps;
    }

    /**
     * By how much the square of speed rose, halved, per metre, what the brakes took left out: pedals, slope and air have to
     * bring it; 0 where it is not known.
     */
    double motionMps2() {
        double from = isBraked() ? releasedMps : startMps;
        double change = endMps * endMps - from * from;
        return Double.isNaN(change) ? 0 : change / 2 / lengthM;
    }

    /** Whether the brakes were pulled hard in it. */
    boolean isBraked() {
        return !Double.isNaN(brakesFrom);
    }

    /** Whether seconds and power were recorded throughout, the grade is known, and the speed is one of a bicycle. */
    boolean isKnown() {
        return measured && !Double.isNaN(grade) && speedMps > SLOWEST_MPS && speedMps < FASTEST_MPS;
    }

    /**
     * The speed of a bin with more energy of motion.
     *
     * @param gain joules for each kilogram
     * @return m/s, never below {@link #SLOWEST_MPS} or the speed itself, whichever is lower
     */
    static double speedAfterGain(double speedMps, double gain) {
        if (gain == 0) {
            return speedMps;
        }
        double slowest = Math.min(SLOWEST_MPS, speedMps);
        return Math.sqrt(Math.max(slowest * slowest, speedMps * speedMps + 2 * gain));
    }
}
