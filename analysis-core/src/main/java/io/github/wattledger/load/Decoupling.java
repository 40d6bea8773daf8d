package io.github.wattledger.load;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Bounds;
import java.io.Serializable;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * Aerobic decoupling: by how many percent watts a heartbeat (normalized power over mean heart rate) was lower in the second
 * half than in the first. Positive when heart rate rose or power fell. Above 5 percent is commonly read as drift, a
 * convention and not a law of physiology; it also rises whenever power alone falls.
 *
 * <p>Source: J. Friel's definition as riders quote it, (E1 − E2) / E1 × 100. Some take average power; this takes
 * normalized power.
 */
public final class Decoupling {
    /** Shortest timer time for which two halves are compared, seconds. */
    public static final int LEAST_TIMER_SECONDS = 40 * 60;

    /** Length of a block of {@link #byBlock}, seconds of timer time. */
    public static final int BLOCK_SECONDS = 20 * 60;

    /** The stretch that blocks are compared with, seconds of timer time from the start. */
    public static final int REFERENCE_SECONDS = 60 * 60;

    private Decoupling() {}

    /**
     * One block of timer time.
     *
     * @param stretch where the block lies on the ride's axis; pauses inside it belong to it
     * @param wattsPerBeat its watts a heartbeat, watts per beat per minute, or null where fewer than four fifths of its
     *     timer seconds carry power or heart rate
     * @param decouplingPercent how far it lies below the first hour's watts a heartbeat, percent; negative when above; null
     *     where the block or the first hour has no watts a heartbeat
     */
    public record Block(
            Interval stretch,
            @Nullable Double wattsPerBeat,
            @Nullable Double decouplingPercent) implements Serializable {}

    /**
     * The percentage by which a later watts a heartbeat lies below an earlier one.
     *
     * @param earlierWPerBeat earlier watts a heartbeat, above 0, in any unit that both share
     * @param laterWPerBeat later watts a heartbeat, 0 or more
     * @return percent; negative when the later one is higher
     * @throws IllegalArgumentException when an argument is out of range
     */
    public static double percent(double earlierWPerBeat, double laterWPerBeat) {
        Bounds.requireAboveZero("earlierWPerBeat", earlierWPerBeat);
        Bounds.requireNotNegative("laterWPerBeat", laterWPerBeat);
        return (earlierWPerBeat - laterWPerBeat) / earlierWPerBeat * 100;
    }

    /**
     * Decoupling between the halves of a ride's timer time; with an odd number of seconds the second half is the longer
     * by one.
     *
     * @return percent, or empty when the timer ran for under 40 minutes, or where fewer than four fifths of the timer
     *     seconds of either half carry heart rate or power
     */
    public static OptionalDouble of(Ride ride) {
        return of(ride, ride.timerSeries(Channel.POWER), ride.timerSeries(Channel.HEART_RATE));
    }

    /** {@link #of(Ride)} for a caller that already has power and heart rate of the timer seconds. */
    static OptionalDouble of(Ride ride, Series power, Series heartRate) {
        int timerSeconds = TimerSeconds.count(ride);
        if (timerSeconds < LEAST_TIMER_SECONDS || !ride.has(Channel.POWER) || !ride.has(Channel.HEART_RATE)) {
            return OptionalDouble.empty();
        }
        int half = timerSeconds / 2;
        int middle = TimerSeconds.endOf(ride, half);
        OptionalDouble first = WattsPerBeat.ofStretch(power, heartRate, new Interval(0, middle), half);
        OptionalDouble second =
                WattsPerBeat.ofStretch(power, heartRate, new Interval(middle, ride.seconds()), timerSeconds - half);
        return first.isPresent() && first.getAsDouble() > 0 && second.isPresent()
                ? OptionalDouble.of(percent(first.getAsDouble(), second.getAsDouble()))
                : OptionalDouble.empty();
    }

    /**
     * The watts a heartbeat of each block of 20 minutes of timer time, compared with that of the first hour. What is left at the
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
                : WattsPerBeat.ofStretch(
                        power,
                        heartRate,
                        new Interval(0, TimerSeconds.endOf(ride, REFERENCE_SECONDS)),
                        REFERENCE_SECONDS);
        List<Block> blocks = new ArrayList<>();
        int from = 0;
        for (int end = BLOCK_SECONDS; end <= timerSeconds; end += BLOCK_SECONDS) {
            int to = TimerSeconds.endOf(ride, end);
            Interval stretch = new Interval(from, to);
            OptionalDouble wattsPerBeat = WattsPerBeat.ofStretch(power, heartRate, stretch, BLOCK_SECONDS);
            @Nullable Double decoupling = wattsPerBeat.isPresent() && reference.isPresent()
                    ? percent(reference.getAsDouble(), wattsPerBeat.getAsDouble())
                    : null;
            blocks.add(new Block(stretch, wattsPerBeat.isPresent() ? wattsPerBeat.getAsDouble() : null, decoupling));
            from = to;
        }
        return List.copyOf(blocks);
    }

    /**
     * {@link #of(Ride)} for one-second power and heart rate during which the timer always ran.
     *
     * @param watts one-second power, watts; {@code NaN} is "not measured"
     * @param heartRateBpm heart rate over the same seconds, beats per minute; {@code NaN} is "not measured"
     * @throws IllegalArgumentException when the series differ in length, or a reading is below 0 or infinite
     */
    public static OptionalDouble of(Series watts, Series heartRateBpm) {
        return of(Ride.builder(Instant.EPOCH, watts.size())
                .channel(Channel.POWER, watts.requireReadings("watts"))
                .channel(Channel.HEART_RATE, heartRateBpm.requireReadings("heartRateBpm"))
                .build());
    }

    /** {@link #of(Series, Series)} for arrays, which are copied. */
    public static OptionalDouble of(double[] watts, double[] heartRateBpm) {
        return of(Series.of(watts), Series.of(heartRateBpm));
    }
}
