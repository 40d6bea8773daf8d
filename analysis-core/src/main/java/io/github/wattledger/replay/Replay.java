package io.github.wattledger.replay;

import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.Air;
import io.github.wattledger.rig.Brakes;
import io.github.wattledger.rig.Rig;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A recorded ride replayed with other power or another rig, on the same road in the same air.
 *
 * <p>The ride is cut into bins of 200 m ridden. In each the recorded balance of forces, steady but for the recorded change
 * of speed, gives the wind along the road that explains the recorded speed; it stands for wind, draft and surface alike
 * and is bounded to 8 m/s either way. Another power or rig then gives the bin another speed through the
 * <em>difference</em> of the balance, so that whatever the model gets wrong cancels out and the same power and rig give
 * exactly the recorded time. Bins in which the rider coasted or braked (mean power under 30 W), and those about which the
 * recording says too little, keep their speed. A gain in speed is carried from bin to bin and settles over the
 * distance that momentum takes, so that speed won on a descent helps up the next rise.
 *
 * <p>Equations: Martin et al. (1998), Journal of Applied Biomechanics 14:276-291; bins and bounds are this project's own.
 * Immutable and safe for many threads.
 */
public final class Replay {
    /** A ride of which more of the moving time than this cannot be replayed is refused. */
    private static final double MOST_UNKNOWN_SHARE = 0.2;

    private final Rig rig;
    private final BinForces forces;
    private final int[] binOfSecond;
    private final ReplayBin[] bins;
    private final double movingSeconds;
    private final double lengthM;

    private Replay(Rig rig, BinForces forces, int[] binOfSecond, ReplayBin[] bins) {
        this.rig = rig;
        this.forces = forces;
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

    /**
     * Prepares a ride for replays. Refused is a ride without power, distance or altitude, or for which one of them is
     * missing for more than a fifth of the moving time.
     *
     * @param ride a ride with power, distance and altitude
     * @param course the course of this ride, or null where it leads nowhere
     * @param rig rider and bicycle as they were
     */
    public static Outcome<Replay> of(Ride ride, @Nullable Course course, Rig rig) {
        for (Channel channel : List.of(Channel.POWER, Channel.DISTANCE, Channel.ALTITUDE)) {
            if (!ride.has(channel)) {
                return Outcome.refused("no " + channel.label() + " in this file");
            }
        }
        if (course == null) {
            return Outcome.refused("the ride leads nowhere: an indoor ride, or no distance while moving");
        }
        BinCutter cutter = BinCutter.cut(ride);
        ReplayBin[] bins = cutter.bins();
        double unknown = 0;
        double all = 0;
        for (ReplayBin bin : bins) {
            bin.grade = course.meanGradeBetweenM(bin.startDistanceM, bin.endDistanceM);
            all += bin.seconds;
            unknown += bin.isKnown() ? 0 : bin.seconds;
        }
        if (bins.length == 0 || unknown > MOST_UNKNOWN_SHARE * all) {
            return Outcome.refused("power, distance or altitude are missing for more than a fifth of the moving time");
        }
        double density = Air.of(ride).density().value();
        BinForces forces = new BinForces(rig, density);
        forces.explain(bins);
        cutter.brake(Brakes.pulled(ride, course, rig, density));
        return Outcome.of(new Replay(rig, forces, cutter.binOfSecond(), bins));
    }

    /** Recorded moving time, seconds. */
    public double movingSeconds() {
        return movingSeconds;
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
     * Replays the ride with another power.
     *
     * @param watts power for each second of the ride, watts, 0 or more; a bin takes the mean of its seconds, so that a
     *     change over a part of it counts by its share of the time; {@code NaN} keeps the bin as it was
     * @throws IllegalArgumentException when the series is not as long as the ride
     */
    public Result withPower(Series watts) {
        return run(joulesOfBins(watts), null);
    }

    /**
     * Replays the ride with other work in each bin. It gives what {@link #withPower} gives, for a caller that knows the work
     * of each bin already.
     *
     * @param joulesOfBins for each bin the power of its seconds added up, joules; {@code NaN} keeps the bin as it was
     * @throws IllegalArgumentException when there are not as many as {@link #bins}
     */
    public Result withWork(double[] joulesOfBins) {
        requireBins(joulesOfBins);
        return run(joulesOfBins, null);
    }

    /**
     * Replays the ride with other work in each bin, and other shelter.
     *
     * @param joulesOfBins as in {@link #withWork(double[])}
     * @param shelter made for this replay; bins that were freewheeled keep their speed but where another drag slows a free roll
     * @throws IllegalArgumentException when there are not as many as {@link #bins}
     */
    public Result withWork(double[] joulesOfBins, Shelter shelter) {
        requireBins(joulesOfBins);
        requireShelter(shelter);
        return run(joulesOfBins, shelter);
    }

    /** No shelter anywhere, neither recorded nor ridden. */
    public Shelter noShelter() {
        return Shelter.none(bins.length, new FreeRoll(forces, bins, true));
    }

    /**
     * A shelter with a further stretch in which a bunch saved drag; a bin belongs to it when at least half of its seconds do.
     *
     * @param before the shelter elsewhere, made by this replay
     * @param stretch the seconds of the replayed ride
     * @param savedShare what the bunch saved in the recording, a share of the lone drag, 0 to {@link Shelter#MOST_SAVING}
     * @param dragShare what is ridden against instead, a share of the lone drag, above 0 and at most 1
     * @throws IllegalArgumentException when a share lies outside its range
     */
    public Shelter sheltered(Shelter before, Interval stretch, double savedShare, double dragShare) {
        requireShelter(before);
        return before.with(binsOf(stretch), savedShare, dragShare);
    }

    /**
     * Replays the ride with its recorded power and other shelter.
     *
     * @param shelter made for this replay; bins that were freewheeled keep their speed but where another drag slows a free roll
     */
    public Result withShelter(Shelter shelter) {
        requireShelter(shelter);
        return run(Arrays.stream(bins).mapToDouble(bin -> bin.joules).toArray(), shelter);
    }

    private void requireBins(double[] joulesOfBins) {
        if (joulesOfBins.length != bins.length) {
            throw new IllegalArgumentException("work of " + joulesOfBins.length + " bins, expected " + bins.length);
        }
    }

    private void requireShelter(Shelter shelter) {
        if (shelter.bins() != bins.length) {
            throw new IllegalArgumentException("shelter of " + shelter.bins() + " bins, expected " + bins.length);
        }
    }

    /**
     * What the air asks for over a stretch.
     *
     * @param workShare the share of the driving work that the air takes, over the pedalled bins; {@code NaN} where there
     *     are none
     * @param withoutDragShare the share of the pedalled bins in which the recorded balance leaves nothing for the air;
     *     {@code NaN} where there are none
     */
    public record AirOfStretch(double workShare, double withoutDragShare) {}

    /** What the air asks for over a stretch, by the recorded balance of its bins. */
    public AirOfStretch air(Interval stretch) {
        double airJ = 0;
        double wheelJ = 0;
        int pedalled = 0;
        int withoutDrag = 0;
        for (int k : binsOf(stretch)) {
            ReplayBin bin = bins[k];
            if (!bin.fixed) {
                pedalled++;
                withoutDrag += forces.airJ(bin) <= 0 ? 1 : 0;
                airJ += forces.airJ(bin);
                wheelJ += forces.wheelJ(bin);
            }
        }
        return pedalled == 0
                ? new AirOfStretch(Double.NaN, Double.NaN)
                : new AirOfStretch(airJ / wheelJ, (double) withoutDrag / pedalled);
    }

    /** The bins that have at least half of their seconds in a stretch, by rising time. */
    private int[] binsOf(Interval stretch) {
        int[] inside = new int[bins.length];
        int to = Math.min(stretch.toSecond(), binOfSecond.length);
        for (int second = Math.max(0, stretch.fromSecond()); second < to; second++) {
            if (binOfSecond[second] >= 0) {
                inside[binOfSecond[second]]++;
            }
        }
        return IntStream.range(0, bins.length)
                .filter(bin -> 2 * inside[bin] >= bins[bin].seconds)
                .toArray();
    }

    /**
     * Replays the ride with its recorded power and another rig over a part of the distance.
     *
     * @param other rider and bicycle instead
     * @param part the part
     */
    public Result withRig(Rig other, Share part) {
        return withRig(other, part, Freewheeling.AS_RECORDED);
    }

    /** Replays the ride with its recorded power and another rig, with what is supposed of the brakes. */
    Result withRig(Rig other, Share part, Freewheeling freewheeling) {
        return run(Arrays.stream(bins).mapToDouble(bin -> bin.joules).toArray(), other, part, freewheeling);
    }

    /**
     * Replays the ride with another power and, over a part of the distance, another rig.
     *
     * @param watts as in {@link #withPower}
     * @throws IllegalArgumentException when the series is not as long as the ride
     */
    public Result with(Series watts, Rig other, Share part) {
        return with(watts, other, part, Freewheeling.AS_RECORDED);
    }

    Result with(Series watts, Rig other, Share part, Freewheeling freewheeling) {
        return run(joulesOfBins(watts), other, part, freewheeling);
    }

    /**
     * A part of the distance ridden, as shares of it.
     *
     * @param from where it begins, 0 to 1
     * @param to where it ends, {@code from} to 1
     */
    public record Share(double from, double to) {
        /** The whole distance. */
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

    private Result run(double[] joules, Rig other, Share part, Freewheeling freewheeling) {
        if (other.equals(rig)) {
            return run(joules, null);
        }
        RigRun run = new RigRun(forces, bins, rig, other, freewheeling);
        double ridden = 0;
        double[] stretch = new double[bins.length];
        double total = 0;
        for (int k = 0; k < bins.length; k++) {
            ReplayBin bin = bins[k];
            stretch[k] = run.stretch(k, joules[k] / bin.seconds, shareWithin(part, ridden, bin.lengthM));
            total += stretch[k] * bin.seconds;
            ridden += bin.lengthM;
        }
        return new Result(binOfSecond, stretch, total, movingSeconds);
    }

    /** The same rig with other power and shelter. Bins that were freewheeled keep their speed. */
    private Result run(double[] joules, @Nullable Shelter shelter) {
        double[] stretch = new double[bins.length];
        double total = 0;
        double gain = 0;
        for (int k = 0; k < bins.length; k++) {
            ReplayBin bin = bins[k];
            double meanW = joules[k] / bin.seconds;
            stretch[k] = 1;
            Balance balance = Double.isNaN(meanW) ? null : balance(k, meanW, shelter);
            if (balance == null) {
                gain = 0;
            } else {
                double recordedMps = bin.speedMps;
                double settledMps = balance.speedMps(recordedMps, bin.fixed ? recordedMps : bin.speedNearMps(meanW));
                // Energy of motion won, joules per kg: it is what gravity and speed hand on to each other.
                double settledGain = (settledMps * settledMps - recordedMps * recordedMps) / 2;
                double settlings = bin.lengthM * balance.settlingPerM(settledMps);
                double left = Math.exp(-settlings);
                double meanGain = settledGain + (gain - settledGain) * (1 - left) / settlings;
                gain = settledGain + (gain - settledGain) * left;
                stretch[k] = recordedMps / ReplayBin.speedAfterGain(recordedMps, meanGain);
            }
            total += stretch[k] * bin.seconds;
        }
        return new Result(binOfSecond, stretch, total, movingSeconds);
    }

    /** What a bin is ridden by; null where it keeps its speed. */
    private @Nullable Balance balance(int k, double watts, @Nullable Shelter shelter) {
        ReplayBin bin = bins[k];
        if (shelter == null || shelter.isAsRecorded(k)) {
            return bin.fixed ? null : forces.balance(bin, watts, rig);
        }
        if (!bin.fixed) {
            return forces.shelteredBalance(bin, watts, shelter.saving(k), shelter.dragShare(k));
        }
        // Who rolls down freely behind others is slower alone. What brakes held stays as it was.
        FreeRoll freeRoll = shelter.freeRoll();
        return shelter.isChanged(k) && freeRoll.isFree(k) && !bin.isBraked() && bin.speedMps + freeRoll.windMps(k) > 0
                ? forces.shelteredBalance(bin, bin.watts, freeRoll.windMps(k), shelter.saving(k), shelter.dragShare(k))
                : null;
    }

    /** How much of a bin lies in a part of the distance, 0 to 1; exactly 1 when the part is the whole. */
    private double shareWithin(Share part, double fromM, double lengthM) {
        if (part.from == 0 && part.to == 1) {
            return 1;
        }
        return overlap(fromM, fromM + lengthM, part.from * this.lengthM, part.to * this.lengthM) / lengthM;
    }

    private static double overlap(double from, double to, double otherFrom, double otherTo) {
        return Math.max(0, Math.min(to, otherTo) - Math.max(from, otherFrom));
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
