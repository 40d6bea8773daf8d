package io.github.wattledger.road;

/** What was ridden in a bin: {@code seconds} of moving time over {@code lengthM}. */
final class ReplayBin {
    int seconds;
    double lengthM;
    double joules;
    double speedMps;
    double watts;
    double startMps = Double.NaN;
    double endMps = Double.NaN;
    double startDistanceM = Double.NaN;
    double endDistanceM = Double.NaN;
    boolean measured = true;
    double grade = Double.NaN;
    /** The part of gravity at a right angle to the road. */
    double gravityAcrossMps2;

    double apparentWindMps;
    double windMps;
    boolean fixed;
    double surplusN;
    /** By how much the settled speed rises with power at the recorded one, m/s per watt, and how that changes. */
    double riseMpsPerW;

    double bendMpsPerW2;

    /** Its means, once all its seconds are in it. */
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

    /** Seconds and power were recorded throughout, and the bin leads somewhere. */
    boolean isTold() {
        return measured && !Double.isNaN(grade) && speedMps > Replay.SLOWEST_MPS && speedMps < Replay.FASTEST_MPS;
    }
}
