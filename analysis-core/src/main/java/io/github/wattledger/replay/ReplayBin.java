package io.github.wattledger.replay;

/** What was ridden in a bin: {@code seconds} of moving time over {@code lengthM}. */
final class ReplayBin {
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

    /** The wind that explains this bin's own speed; {@code NaN} in a fixed one. */
    double apparentWindMps;

    /** The median of it around here, which the replay rides against. */
    double windMps;

    /** Coasted, or not told well enough: it keeps its speed whatever the power. */
    boolean fixed;

    /** What the balance of forces leaves over at the recorded speed in that wind. */
    double surplusN;

    /** By how much the settled speed rises with power at the recorded one, m/s per watt. */
    double riseMpsPerW;

    /** And by how much that rise changes, half of it, m/s per square watt. */
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
