package io.github.wattledger.load;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * Efficiency: normalized power over mean heart rate, watts per beat per minute. It falls when the heart beats faster for
 * the same power. Source: J. Friel's efficiency factor (from memory), with normalized power as the power.
 */
public final class Efficiency {
    /** Length of a block of {@link #byBlock}, seconds of timer time. */
    public static final int BLOCK_SECONDS = 20 * 60;

    /** The stretch that blocks are compared with, seconds of timer time from the start. */
    public static final int REFERENCE_SECONDS = 60 * 60;

    /**
     * Least share of the timer seconds of a stretch that must carry power, and heart rate, for an efficiency to stand
     * for the stretch. Our own decision: with less, the two means may speak of different minutes.
     */
    static final double LEAST_COVERAGE = 0.8;

    private Efficiency() {}

    /**
     * One block of timer time.
     *
     * @param stretch where the block lies on the ride's axis; pauses inside it belong to it
     * @param efficiencyWPerBeat its efficiency, watts per beat per minute, or null where fewer than four fifths of its
     *     timer seconds carry power or heart rate
     * @param decouplingPercent how far it lies below the first hour's efficiency, percent; negative when above; null
     *     where the block or the first hour has no efficiency
     */
    public record Block(
            Interval stretch,
            @Nullable Double efficiencyWPerBeat,
            @Nullable Double decouplingPercent) implements Serializable {}

    /**
     * Efficiency of one-second power and heart rate.
     *
     * @param watts one-second power, watts; {@code NaN} (not measured) is left out
     * @param heartRateBpm heart rate over the same seconds, beats per minute; {@code NaN} is left out
     * @return watts per beat per minute, or empty without normalized power or without heart rate
     * @throws IllegalArgumentException when the series differ in length
     */
    public static OptionalDouble of(Series watts, Series heartRateBpm) {
        if (watts.size() != heartRateBpm.size()) {
            throw new IllegalArgumentException(
                    "heartRateBpm has " + heartRateBpm.size() + " seconds, expected " + watts.size() + " as watts");
        }
        return of(watts, heartRateBpm, 0, watts.size());
    }

    private static OptionalDouble of(Series watts, Series heartRateBpm, int from, int to) {
        OptionalDouble normalizedPowerW = NormalizedPower.of(watts, from, to);
        OptionalDouble meanHeartRateBpm = CompensatedSum.meanOfMeasured(heartRateBpm, from, to);
        return normalizedPowerW.isPresent() && meanHeartRateBpm.isPresent() && meanHeartRateBpm.getAsDouble() > 0
                ? OptionalDouble.of(normalizedPowerW.getAsDouble() / meanHeartRateBpm.getAsDouble())
                : OptionalDouble.empty();
    }

    /** {@link #of(Series, Series)} for arrays, which are copied; a reading below 0 or infinite is refused. */
    public static OptionalDouble of(double[] watts, double[] heartRateBpm) {
        return of(Series.ofReadings("watts", watts), Series.ofReadings("heartRateBpm", heartRateBpm));
    }

    /**
     * The efficiency of each block of 20 minutes of timer time, compared with that of the first hour. What is left at the
     * end, under 20 minutes, is not a block.
     *
     * @return the whole blocks in time order; empty without power or heart rate, or when the timer ran for under 20
     *     minutes
     */
    public static List<Block> byBlock(Ride ride) {
        if (!ride.has(Channel.POWER) || !ride.has(Channel.HEART_RATE)) {
            return List.of();
        }
        Series power = ride.timerSeries(Channel.POWER);
        Series heartRate = ride.timerSeries(Channel.HEART_RATE);
        int timerSeconds = TimerSeconds.count(ride);
        OptionalDouble reference = timerSeconds < REFERENCE_SECONDS
                ? OptionalDouble.empty()
                : ofStretch(
                        power,
                        heartRate,
                        new Interval(0, TimerSeconds.endOf(ride, REFERENCE_SECONDS)),
                        REFERENCE_SECONDS);
        List<Block> blocks = new ArrayList<>();
        int from = 0;
        for (int end = BLOCK_SECONDS; end <= timerSeconds; end += BLOCK_SECONDS) {
            int to = TimerSeconds.endOf(ride, end);
            Interval stretch = new Interval(from, to);
            OptionalDouble efficiency = ofStretch(power, heartRate, stretch, BLOCK_SECONDS);
            @Nullable Double decoupling = efficiency.isPresent() && reference.isPresent()
                    ? Decoupling.percent(reference.getAsDouble(), efficiency.getAsDouble())
                    : null;
            blocks.add(new Block(stretch, efficiency.isPresent() ? efficiency.getAsDouble() : null, decoupling));
            from = to;
        }
        return List.copyOf(blocks);
    }

    /** Efficiency of a stretch that holds so many timer seconds; empty where too few of them carry both readings. */
    static OptionalDouble ofStretch(Series power, Series heartRate, Interval stretch, int timerSeconds) {
        int from = stretch.fromSecond();
        int to = stretch.toSecond();
        double least = LEAST_COVERAGE * timerSeconds;
        return power.measuredCount(from, to) < least || heartRate.measuredCount(from, to) < least
                ? OptionalDouble.empty()
                : of(power, heartRate, from, to);
    }
}
