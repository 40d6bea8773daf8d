package io.github.wattledger.pacing;

import io.github.wattledger.course.Course;
import io.github.wattledger.load.StretchNormalizedPower;
import io.github.wattledger.power.Ability;
import io.github.wattledger.power.WPrimeBalance;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Gears;
import io.github.wattledger.rider.RideNotes;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** The raced part of a ride as the detectors see it. Seconds are counted from the start of the part. */
final class Race {
    /** A detector has nothing to compare in less moving time than this. */
    static final int SHORTEST_JUDGED_SECONDS = 40 * 60;

    private static final double MIDDLE_ENDS = 2 / 3.0;

    /**
     * A balance that falls further below empty than this share of W′ refutes critical power or W′. All-out efforts end near
     * empty, and neither number is known much more exactly. Own choice.
     */
    private static final double MOST_BELOW_EMPTY = 0.1;

    private final Ride ride;
    private final int offsetSeconds;
    private final Thresholds thresholds;
    private final JudgementLimits limits;
    private final @Nullable Double targetW;
    private final @Nullable Gears gears;
    private final @Nullable Course course;
    private final Opening opening;
    private final Interval openingInterval;
    private final RideNotes notes;
    private final boolean wPrimeIsKnown;
    private final @Nullable WPrimeBalance wPrimeBalance;
    private final int[] secondOfMoving;
    private final Series watts;
    private final StretchNormalizedPower normalizedPower;
    private final HeartRateModel heartRateModel;
    private final List<Interval> surges;
    private final ComparableGround ground;

    /**
     * A race to be judged.
     *
     * @param ride the raced part
     * @param offsetSeconds what to add to its seconds to get seconds of the whole recording
     * @param thresholds what to judge against
     * @param ability what could be expected over the part's moving time
     * @param limits the limits from which on something is reported
     * @param gears the gears of the bicycle, or null when they are not known
     * @param course the course of the raced part, or null where it leads nowhere
     * @param opening the opening of the race
     * @param notes what the rider wrote down, in seconds of the whole recording
     */
    Race(
            Ride ride,
            int offsetSeconds,
            Thresholds thresholds,
            Ability ability,
            JudgementLimits limits,
            @Nullable Gears gears,
            @Nullable Course course,
            Opening opening,
            RideNotes notes) {
        this.notes = notes;
        this.ride = ride;
        this.offsetSeconds = offsetSeconds;
        this.thresholds = thresholds;
        this.limits = limits;
        this.gears = gears;
        this.course = course;
        this.opening = opening;
        this.openingInterval = opening.in(ride);
        this.targetW = ability.sustainablePowerW();
        this.wPrimeIsKnown = ability.wPrimeKJ() != null && ride.has(Channel.POWER);
        this.wPrimeBalance = wPrimeBalance(ride, ability);
        this.watts = ride.series(Channel.POWER);
        this.normalizedPower = StretchNormalizedPower.of(ride);
        this.secondOfMoving = new int[ride.countSeconds(SecondState.RIDING)];
        int moving = 0;
        for (int second = 0; second < ride.seconds(); second++) {
            if (ride.state(second) == SecondState.RIDING) {
                secondOfMoving[moving++] = second;
            }
        }
        this.heartRateModel = HeartRateModel.of(ride, betweenShares(0, 0.5).toSecond(), thresholdPowerW());
        this.surges = Jumps.of(
                watts,
                limit(JudgementLimit.SURGE_FRACTION) * thresholdPowerW(),
                limitSeconds(JudgementLimit.SURGE_SECONDS));
        this.ground = ComparableGround.of(ride, course, surges);
    }

    Ride ride() {
        return ride;
    }

    Series watts() {
        return watts;
    }

    /** Threshold power, watts; {@code NaN} when it is not known. */
    double thresholdPowerW() {
        Double power = thresholds.comparingPowerW();
        return power == null ? Double.NaN : power;
    }

    boolean thresholdIsEstimated() {
        return !thresholds.power().isKnown();
    }

    @Nullable Double thresholdHeartRateBpm() {
        return thresholds.heartRateBpm();
    }

    /** The highest heart rate of the rider that is known from elsewhere, beats per minute, or null. */
    @Nullable Double highestKnownHeartRateBpm() {
        return thresholds.highestKnownHeartRateBpm();
    }

    /** The highest heart rate of the race, beats per minute; {@code NaN} without heart rate. */
    double highestHeartRateBpm() {
        return ride.series(Channel.HEART_RATE).maximum().orElse(Double.NaN);
    }

    /** The value of a limit. */
    double limit(JudgementLimit limit) {
        return limits.get(limit);
    }

    /** The value of a limit in whole seconds. */
    int limitSeconds(JudgementLimit limit) {
        return limits.seconds(limit);
    }

    /** The power that could be held for the whole race, watts; {@code NaN} when it is not known. */
    double targetW() {
        return targetW == null ? Double.NaN : targetW;
    }

    /**
     * How the rider's W′ was spent and won back, full at the start of the race; null where critical power and W′ are not
     * known, or are refuted by a balance that falls far below empty.
     */
    @Nullable WPrimeBalance wPrimeBalance() {
        return wPrimeBalance;
    }

    /** Whether critical power and W′ are known, but cannot be right. */
    boolean wPrimeIsRefuted() {
        return wPrimeIsKnown && wPrimeBalance == null;
    }

    private static @Nullable WPrimeBalance wPrimeBalance(Ride ride, Ability ability) {
        if (ability.criticalPowerW() == null || ability.wPrimeKJ() == null || !ride.has(Channel.POWER)) {
            return null;
        }
        WPrimeBalance balance = WPrimeBalance.of(
                ride, ability.criticalPowerW(), 1000 * ability.wPrimeKJ(), WPrimeBalance.Model.DIFFERENTIAL);
        return balance.minimumJ() >= -MOST_BELOW_EMPTY * balance.wPrimeJ() ? balance : null;
    }

    /** The gears of the bicycle; null when they are not known. */
    @Nullable Gears gears() {
        return gears;
    }

    /** The course of the race, or null where it leads nowhere. */
    @Nullable Course course() {
        return course;
    }

    /** What the rider wrote down, in seconds of the whole recording: those of the race and {@link #offsetSeconds()}. */
    RideNotes notes() {
        return notes;
    }

    HeartRateModel heartRateModel() {
        return heartRateModel;
    }

    /** The surges of the race, by rising time; none without a threshold. */
    List<Interval> surges() {
        return surges;
    }

    /** The ground of the race, by which parts of it are compared. */
    ComparableGround ground() {
        return ground;
    }

    int movingSeconds() {
        return secondOfMoving.length;
    }

    boolean isLongEnough() {
        return movingSeconds() >= SHORTEST_JUDGED_SECONDS;
    }

    /** The opening; empty for a part of a race that begins after it. */
    Interval opening() {
        return openingInterval;
    }

    /** The normalized power that a plan allows for the opening, watts; null without a plan. */
    @Nullable Double plannedOpeningCapW() {
        return opening.plannedCapW();
    }

    /** The middle of the race: what follows the opening, up to two thirds of the moving time. */
    Interval middle() {
        int from = opening().toSecond();
        return new Interval(from, Math.max(from, betweenShares(0, MIDDLE_ENDS).toSecond()));
    }

    /** From the given interval's end to the end of the race. */
    Interval after(Interval interval) {
        return new Interval(interval.toSecond(), ride.seconds());
    }

    /** Equal parts of the moving time. */
    List<Interval> parts(int count) {
        return IntStream.range(0, count)
                .mapToObj(part -> betweenShares((double) part / count, (double) (part + 1) / count))
                .toList();
    }

    /** The seconds between two shares of moving time, for instance the last sixth. */
    Interval betweenShares(double from, double to) {
        return betweenMoving((int) Math.round(from * movingSeconds()), (int) Math.round(to * movingSeconds()));
    }

    private Interval betweenMoving(int fromMoving, int toMoving) {
        return new Interval(secondAtMoving(fromMoving), secondAtMoving(toMoving));
    }

    /** The second at which this much moving time has passed. */
    int secondAtMoving(int moving) {
        if (moving <= 0) {
            return 0;
        }
        return moving >= secondOfMoving.length ? ride.seconds() : secondOfMoving[moving];
    }

    /** Normalized power of a stretch, watts; {@code NaN} where there is none. */
    double normalizedPowerW(Interval stretch) {
        return normalizedPower.of(stretch).orElse(Double.NaN);
    }

    /** Mean of a channel over the moving seconds of a stretch; {@code NaN} where it was never measured. */
    double mean(Channel channel, Interval stretch) {
        return ride.meanWhileRiding(channel, stretch).orElse(Double.NaN);
    }

    /** What to add to a second of this race to get a second of the whole recording. */
    int offsetSeconds() {
        return offsetSeconds;
    }
}
