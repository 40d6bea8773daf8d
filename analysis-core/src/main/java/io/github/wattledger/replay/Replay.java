package io.github.wattledger.replay;

import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.Air;
import io.github.wattledger.rig.Rig;
import io.github.wattledger.rig.RoadLoad;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A recorded ride once more with other power or another rig, on the same road in the same air.
 *
 * <p>The ride is cut into bins of 200 m ridden. In each the recorded balance of forces, steady but for the recorded change
 * of speed, gives the wind along the road that explains the recorded speed; it stands for wind, draft and surface alike
 * and is bounded to 8 m/s either way. Another power or rig then gives the bin another speed through the
 * <em>difference</em> of the balance, so that whatever the model gets wrong cancels out and the same power and rig give
 * exactly the recorded time. Bins in which the rider coasted or braked (mean power under 30 W), and those that the
 * recording does not tell enough about, keep their speed. A gain in speed is carried from bin to bin and settles over the
 * distance that momentum takes, so that speed won on a descent helps up the next rise.
 *
 * <p>Equations: Martin et al. (1998), Journal of Applied Biomechanics 14:276-291; bins and bounds are this project's own.
 * Immutable and safe for many threads.
 */
public final class Replay {
    /** Length of a bin, metres ridden. */
    public static final double BIN_M = 200;

    private static final double MOST_WIND_MPS = 8;
    /** Wind is the median of so many bins before and after, too: it does not change as fast as a barometer trembles. */
    private static final int WIND_REACH = 5;

    static final double SLOWEST_MPS = 0.5;
    static final double FASTEST_MPS = 40;
    private static final int MOST_STEPS = 100;
    private static final double SPEED_TOLERANCE_MPS = 1e-6;
    /**
     * A step of Newton's as short as this is the last one: the error after it is at most its square over the speed, so
     * 0.0000002 m/s at 5 m/s.
     */
    private static final double LAST_NEWTON_STEP_MPS = 1e-3;

    /** A ride of which more of the moving time than this cannot be replayed is refused. */
    private static final double MOST_UNKNOWN_SHARE = 0.2;

    private final Rig rig;
    private final double densityKgPerM3;
    private final int[] binOfSecond;
    private final ReplayBin[] bins;
    private final double movingSeconds;
    private final double lengthM;

    private Replay(Rig rig, double densityKgPerM3, int[] binOfSecond, ReplayBin[] bins) {
        this.rig = rig;
        this.densityKgPerM3 = densityKgPerM3;
        this.binOfSecond = binOfSecond;
        this.bins = bins;
        double secondsOfAll = 0;
        double lengthOfAllM = 0;
        for (ReplayBin bin : bins) {
            secondsOfAll += bin.seconds;
            lengthOfAllM += bin.lengthM;
        }
        this.movingSeconds = secondsOfAll;
        this.lengthM = lengthOfAllM;
    }

    /** Either a replay or the reason why there is none. */
    public static final class Attempt {
        private final @Nullable Replay replay;
        private final @Nullable String refusal;

        private Attempt(@Nullable Replay replay, @Nullable String refusal) {
            this.replay = replay;
            this.refusal = refusal;
        }

        /** The replay, or null when there is none. */
        public @Nullable Replay replay() {
            return replay;
        }

        /** Why there is no replay, one clause, or null when there is one. */
        public @Nullable String refusal() {
            return refusal;
        }

        private static Attempt refused(String reason) {
            return new Attempt(null, reason);
        }
    }

    /**
     * Prepares a ride for replays.
     *
     * @param ride a ride with power, distance and altitude
     * @param rig rider and bicycle as they were
     * @return a refusal when a channel is missing altogether, or for more than a fifth of the moving time
     */
    public static Attempt of(Ride ride, Rig rig) {
        return of(ride, rig, Course.of(ride).orElse(null));
    }

    /**
     * {@link #of(Ride, Rig)} for who has the course of the ride already.
     *
     * @param course the course of this ride, or null where it leads nowhere
     */
    public static Attempt of(Ride ride, Rig rig, @Nullable Course course) {
        if (!ride.has(Channel.POWER)) {
            return Attempt.refused("no power in this file");
        }
        if (!ride.has(Channel.DISTANCE)) {
            return Attempt.refused("no distance in this file");
        }
        if (!ride.has(Channel.ALTITUDE)) {
            return Attempt.refused("no altitude in this file");
        }
        if (course == null) {
            return Attempt.refused("the ride leads nowhere: an indoor ride, or no distance while moving");
        }
        return of(ride, rig, course, Air.of(ride).density().value());
    }

    private static Attempt of(Ride ride, Rig rig, Course course, double densityKgPerM3) {
        BinCutter cutter = BinCutter.cut(ride);
        ReplayBin[] bins = cutter.bins();
        double unknown = 0;
        double all = 0;
        for (ReplayBin bin : bins) {
            bin.grade = (course.altitudeAtM(bin.endDistanceM) - course.altitudeAtM(bin.startDistanceM))
                    / (bin.endDistanceM - bin.startDistanceM);
            bin.gravityAcrossMps2 = RoadLoad.GRAVITY_MPS2 / Math.sqrt(1 + bin.grade * bin.grade);
            all += bin.seconds;
            unknown += bin.isTold() ? 0 : bin.seconds;
        }
        if (bins.length == 0 || unknown > MOST_UNKNOWN_SHARE * all) {
            return Attempt.refused("power, distance or altitude are missing for more than a fifth of the moving time");
        }
        Replay replay = new Replay(rig, densityKgPerM3, cutter.binOfSecond(), bins);
        for (ReplayBin bin : bins) {
            bin.fixed = !bin.isTold() || bin.watts < Ride.PEDALLING_W;
            bin.apparentWindMps = bin.fixed ? Double.NaN : replay.windMps(bin);
        }
        double[] winds = new double[2 * WIND_REACH + 1];
        for (int k = 0; k < bins.length; k++) {
            if (!bins[k].fixed) {
                bins[k].windMps = median(bins, k - WIND_REACH, k + WIND_REACH, winds);
                bins[k].surplusN = replay.recordedSurplusN(bins[k]);
                replay.expand(bins[k]);
            }
        }
        return new Attempt(replay, null);
    }

    /** The median wind of a stretch of bins, sorted in an array with room for them. */
    private static double median(ReplayBin[] bins, int from, int to, double[] winds) {
        int count = 0;
        for (int k = Math.max(0, from); k < Math.min(bins.length, to + 1); k++) {
            if (!bins[k].fixed) {
                winds[count++] = bins[k].apparentWindMps;
            }
        }
        Arrays.sort(winds, 0, count);
        int middle = count / 2;
        return count % 2 == 1 ? winds[middle] : (winds[middle - 1] + winds[middle]) / 2;
    }

    /** Recorded moving time, seconds. */
    public double movingSeconds() {
        return movingSeconds;
    }

    /** The rig that the ride was replayed with. */
    public Rig rig() {
        return rig;
    }

    /** Whether a second lies in a bin that was pedalled, so that another power there changes its speed. */
    public boolean isPedalled(int second) {
        return binOfSecond[second] >= 0 && !bins[binOfSecond[second]].fixed;
    }

    /** How many bins the ride was cut into. */
    public int bins() {
        return bins.length;
    }

    /** The bin that a second belongs to, from 0, or -1 for a second that is not moving time. */
    public int binOf(int second) {
        return binOfSecond[second];
    }

    /**
     * The same ride with another power.
     *
     * @param watts power for each second of the ride, watts, 0 or more; a bin takes the mean of its seconds, so that a
     *     change over a part of it counts by its share of the time; {@code NaN} keeps the bin as it was
     * @throws IllegalArgumentException when the series is not as long as the ride
     */
    public Result withPower(Series watts) {
        return run(joulesOfBins(watts), rig, Share.WHOLE);
    }

    /**
     * {@link #withPower} for who knows the work of each bin already: one pass over bins instead of seconds.
     *
     * @param joulesOfBins for each bin the power of its seconds added up, joules; {@code NaN} keeps the bin as it was
     * @throws IllegalArgumentException when there are not as many as {@link #bins}
     */
    public Result withWork(double[] joulesOfBins) {
        if (joulesOfBins.length != bins.length) {
            throw new IllegalArgumentException("work of " + joulesOfBins.length + " bins, expected " + bins.length);
        }
        return run(joulesOfBins, rig, Share.WHOLE);
    }

    /**
     * The same ride and power with another rig over a part of the distance.
     *
     * @param other rider and bicycle instead
     * @param part the part
     */
    public Result withRig(Rig other, Share part) {
        return run(Arrays.stream(bins).mapToDouble(bin -> bin.joules).toArray(), other, part);
    }

    /**
     * Another power and, over a part of the distance, another rig.
     *
     * @param watts as in {@link #withPower}
     * @throws IllegalArgumentException when the series is not as long as the ride
     */
    public Result with(Series watts, Rig other, Share part) {
        return run(joulesOfBins(watts), other, part);
    }

    /**
     * A part of the distance ridden.
     *
     * @param from where it begins, 0 to 1
     * @param to where it ends, {@code from} to 1
     */
    public record Share(double from, double to) {
        /** All of it. */
        public static final Share WHOLE = new Share(0, 1);

        /** @throws IllegalArgumentException when the bounds are out of order or range */
        public Share {
            if (!(from >= 0 && from <= to && to <= 1)) {
                throw new IllegalArgumentException("share " + from + " to " + to + ", expected 0 <= from <= to <= 1");
            }
        }
    }

    private double[] joulesOfBins(Series watts) {
        if (watts.size() != binOfSecond.length) {
            throw new IllegalArgumentException("power of " + watts.size() + " seconds, expected " + binOfSecond.length);
        }
        double[] joules = new double[bins.length];
        for (int second = 0; second < binOfSecond.length; second++) {
            if (binOfSecond[second] >= 0) {
                joules[binOfSecond[second]] += watts.get(second);
            }
        }
        return joules;
    }

    private Result run(double[] joules, Rig other, Share part) {
        double ridden = 0;
        double[] stretch = new double[bins.length];
        double total = 0;
        double gain = 0;
        for (int k = 0; k < bins.length; k++) {
            ReplayBin bin = bins[k];
            double meanW = joules[k] / bin.seconds;
            stretch[k] = 1;
            if (bin.fixed || Double.isNaN(meanW)) {
                gain = 0;
            } else {
                double recordedMps = bin.speedMps;
                double share = shareWithin(part, ridden, bin.lengthM);
                Balance most = balance(bin, meanW, share > 0.5 ? other : rig);
                double near = bin.speedNearMps(meanW);
                double settledMps = share == 0 || share == 1
                        ? most.speedMps(recordedMps, near)
                        : balance(bin, meanW, rig).speedMps(recordedMps, near) * (1 - share)
                                + balance(bin, meanW, other).speedMps(recordedMps, near) * share;
                // Energy of motion won, joules per kg: it is what gravity and speed hand on to each other.
                double settledGain = (settledMps * settledMps - recordedMps * recordedMps) / 2;
                double settlings = bin.lengthM * most.settlingPerM(settledMps);
                double left = Math.exp(-settlings);
                double meanGain = settledGain + (gain - settledGain) * (1 - left) / settlings;
                gain = settledGain + (gain - settledGain) * left;
                stretch[k] = recordedMps / speedAfterGain(recordedMps, meanGain);
            }
            total += stretch[k] * bin.seconds;
            ridden += bin.lengthM;
        }
        return new Result(binOfSecond, stretch, total, movingSeconds);
    }

    /** How much of a bin lies in a part of the distance, 0 to 1; of the whole exactly 1. */
    private double shareWithin(Share part, double fromM, double lengthM) {
        if (part.from == 0 && part.to == 1) {
            return 1;
        }
        return overlap(fromM, fromM + lengthM, part.from * this.lengthM, part.to * this.lengthM) / lengthM;
    }

    private static double speedAfterGain(double speedMps, double gain) {
        if (gain == 0) {
            return speedMps;
        }
        double slowest = Math.min(SLOWEST_MPS, speedMps);
        return Math.sqrt(Math.max(slowest * slowest, speedMps * speedMps + 2 * gain));
    }

    private static double overlap(double from, double to, double otherFrom, double otherTo) {
        return Math.max(0, Math.min(to, otherTo) - Math.max(from, otherFrom));
    }

    private double windMps(ReplayBin bin) {
        double v = bin.speedMps;
        double airN = rig.driveEfficiency() * bin.watts / v
                - roadN(rig, bin)
                - RoadLoad.BEARINGS_N
                - RoadLoad.BEARINGS_N_PER_MPS * v
                - kineticN(bin);
        double airMps = Math.signum(airN) * Math.sqrt(Math.abs(airN) / halfDensityArea(rig));
        return Math.max(-MOST_WIND_MPS, Math.min(MOST_WIND_MPS, airMps - v));
    }

    /** What goes into motion per metre; the recorded change of speed is ridden again as it was. */
    private double kineticN(ReplayBin bin) {
        double change = bin.endMps * bin.endMps - bin.startMps * bin.startMps;
        return Double.isNaN(change) ? 0 : rig.inertKg() / 2 * change / bin.lengthM;
    }

    /** Rolling and slope, newtons. */
    private static double roadN(Rig of, ReplayBin bin) {
        return of.massKg() * (of.rollingResistance() + bin.grade) * bin.gravityAcrossMps2;
    }

    private double halfDensityArea(Rig of) {
        return densityKgPerM3 / 2 * (of.dragAreaM2() + of.spokeDragAreaM2());
    }

    /** The balance of a bin with some power and rig. */
    private Balance balance(ReplayBin bin, double watts, Rig other) {
        double roadN = roadN(other, bin) - roadN(rig, bin);
        return new Balance(
                other.driveEfficiency() * watts,
                halfDensityArea(other),
                bin.windMps,
                bin.surplusN + roadN,
                other.inertKg());
    }

    /** What push was left over in the recorded state, newtons. */
    private double recordedSurplusN(ReplayBin bin) {
        return Balance.surplusN(bin.speedMps, rig.driveEfficiency() * bin.watts, halfDensityArea(rig), bin.windMps);
    }

    /** The settled speed by power to the second order: the balance stays 0 while power changes. */
    private void expand(ReplayBin bin) {
        double v = bin.speedMps;
        double efficiency = rig.driveEfficiency();
        Balance recorded = balance(bin, bin.watts, rig);
        double fallN = recorded.fallN(v);
        bin.riseMpsPerW = efficiency / v / fallN;
        double airN = 2 * recorded.halfDensityArea * Math.signum(v + bin.windMps);
        double fallChange = airN - 2 * recorded.wheelW / (v * v * v);
        bin.bendMpsPerW2 = -bin.riseMpsPerW / fallN * (efficiency / (v * v) + fallChange * bin.riseMpsPerW / 2);
    }

    /**
     * The difference between the forces on a rider at some speed and those recorded, with all worked out that does not
     * depend on the speed.
     *
     * @param wheelW power at the wheel, watts
     * @param halfDensityArea half the density of the air times drag area, kg/m
     * @param windMps wind along the road, against the rider, m/s
     * @param otherN what was left over in the recorded state, and what rolling and slope ask for beyond it, newtons
     * @param inertKg what has to be set in motion, kg
     */
    private record Balance(double wheelW, double halfDensityArea, double windMps, double otherN, double inertKg) {
        /** Push less air and bearings, newtons. */
        static double surplusN(double speedMps, double wheelW, double halfDensityArea, double windMps) {
            return wheelW * (1 / speedMps)
                    - halfDensityArea * square(speedMps + windMps)
                    - RoadLoad.BEARINGS_N_PER_MPS * speedMps;
        }

        double surplusN(double speedMps) {
            return surplusN(speedMps, wheelW, halfDensityArea, windMps) - otherN;
        }

        /** How fast the surplus force falls with speed, newtons per m/s; above 0. */
        double fallN(double speedMps) {
            double secondsPerM = 1 / speedMps;
            return 2 * halfDensityArea * Math.abs(speedMps + windMps)
                    + RoadLoad.BEARINGS_N_PER_MPS
                    + wheelW * secondsPerM * secondsPerM;
        }

        /**
         * One over the distance in which a difference in speed shrinks to 1/e, per metre: how fast the surplus force falls
         * with speed over momentum. That distance is a few metres on a steep climb, near 200 on a fast descent.
         */
        double settlingPerM(double speedMps) {
            return fallN(speedMps) / (inertKg * speedMps);
        }

        /**
         * The speed at which the forces balance, once it has settled; the recorded one when nothing changed. Surplus
         * force falls with speed, so the root is bracketed; where it lies outside, the bound is the answer. Newton's step
         * where it stays within the bracket, halving where not.
         *
         * @param recordedMps a speed that the bracket holds, and where to begin when the other lies outside it
         * @param nearMps where to begin
         */
        double speedMps(double recordedMps, double nearMps) {
            double slow = Math.min(SLOWEST_MPS, recordedMps);
            double fast = FASTEST_MPS;
            double v = nearMps > slow && nearMps < fast ? nearMps : recordedMps;
            for (int step = 0; step < MOST_STEPS && fast - slow > SPEED_TOLERANCE_MPS; step++) {
                double surplus = surplusN(v);
                if (surplus == 0) {
                    return v;
                } else if (surplus > 0) {
                    slow = v;
                } else {
                    fast = v;
                }
                double next = v + surplus / fallN(v);
                if (!(next > slow && next < fast)) {
                    next = (slow + fast) / 2;
                } else if (Math.abs(next - v) < LAST_NEWTON_STEP_MPS) {
                    return next;
                }
                v = next;
            }
            return v;
        }
    }

    private static double square(double airMps) {
        return airMps * Math.abs(airMps);
    }

    /** How long a replayed ride took, and where its time went. */
    public static final class Result {
        private final int[] binOfSecond;
        private final double[] stretch;
        private final double seconds;
        private final double recordedSeconds;

        private Result(int[] binOfSecond, double[] stretch, double seconds, double recordedSeconds) {
            this.binOfSecond = binOfSecond;
            this.stretch = stretch;
            this.seconds = seconds;
            this.recordedSeconds = recordedSeconds;
        }

        /** Moving time of the replayed ride, seconds. */
        public double movingSeconds() {
            return seconds;
        }

        /** Recorded minus replayed moving time, seconds; positive when the replayed ride is faster. */
        public double savedSeconds() {
            return recordedSeconds - seconds;
        }

        /**
         * How long what was done in a recorded second took in the replay, seconds: 1 where nothing changed, 0 for a
         * second that is not moving time.
         */
        public double secondsFor(int second) {
            return binOfSecond[second] < 0 ? 0 : stretch[binOfSecond[second]];
        }

        /** How long what was done in a recorded second of a bin took in the replay, seconds; above 0. */
        public double secondsForSecondOf(int bin) {
            return stretch[bin];
        }
    }
}
