package io.github.wattledger.season;

import io.github.wattledger.load.LoadNumber;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import java.io.Serializable;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The numbers of a ride's load that a season keeps: those that need no threshold.
 *
 * @param powerSeconds timer seconds that carry power
 * @param values the value of each number of {@link #KEPT} that the recording can give, in the unit of its quantity
 */
public record RideNumbers(int powerSeconds, Map<LoadNumber, Double> values) implements Serializable {
    /** The numbers that a season keeps of each ride, in the order of reports, tables and the store. */
    public static final List<LoadNumber> KEPT = List.of(
            LoadNumber.ELAPSED_SECONDS,
            LoadNumber.TIMER_SECONDS,
            LoadNumber.MOVING_SECONDS,
            LoadNumber.DISTANCE,
            LoadNumber.ASCENT,
            LoadNumber.WORK,
            LoadNumber.AVERAGE_POWER,
            LoadNumber.NORMALIZED_POWER,
            LoadNumber.AVERAGE_HEART_RATE,
            LoadNumber.MAXIMUM_HEART_RATE,
            LoadNumber.WATTS_PER_BEAT,
            LoadNumber.DECOUPLING);

    /**
     * Copies the values.
     *
     * @throws IllegalArgumentException when elapsed, timer or moving time is missing: every ride has them
     */
    public RideNumbers {
        Map<LoadNumber, Double> copy = new EnumMap<>(LoadNumber.class);
        copy.putAll(values);
        values = Collections.unmodifiableMap(copy);
        for (LoadNumber number : KEPT) {
            if (number.quantity() == LoadNumber.Quantity.TIME && !values.containsKey(number)) {
                throw new IllegalArgumentException(number.id() + " is missing, expected in every ride");
            }
        }
    }

    static RideNumbers of(Ride ride, RideLoad load) {
        int powerSeconds = 0;
        for (int second = 0; second < ride.seconds(); second++) {
            if (ride.state(second) != SecondState.PAUSED
                    && ride.series(Channel.POWER).isMeasured(second)) {
                powerSeconds++;
            }
        }
        Map<LoadNumber, Double> values = new EnumMap<>(LoadNumber.class);
        for (LoadNumber number : KEPT) {
            Double value = number.of(load);
            if (value != null) {
                values.put(number, value);
            }
        }
        return new RideNumbers(powerSeconds, values);
    }

    /** A number in the unit of its quantity; null where the recording cannot give it, or the season does not keep it. */
    public @Nullable Double of(LoadNumber number) {
        return values.get(number);
    }

    /** Seconds from the first second of the ride to its last, pauses included. */
    public int elapsedSeconds() {
        return seconds(LoadNumber.ELAPSED_SECONDS);
    }

    /** Seconds with the timer running. */
    public int timerSeconds() {
        return seconds(LoadNumber.TIMER_SECONDS);
    }

    /** Seconds under way. */
    public int movingSeconds() {
        return seconds(LoadNumber.MOVING_SECONDS);
    }

    /** Distance, metres; null where the recording cannot give it. */
    public @Nullable Double distanceM() {
        return of(LoadNumber.DISTANCE);
    }

    /** Sum of the ascents, metres; null without altitude. */
    public @Nullable Double ascentM() {
        return of(LoadNumber.ASCENT);
    }

    /** Work, kilojoules; null without power. */
    public @Nullable Double workKJ() {
        return of(LoadNumber.WORK);
    }

    /** Normalized power, watts; null where the recording cannot give it. */
    public @Nullable Double normalizedPowerW() {
        return of(LoadNumber.NORMALIZED_POWER);
    }

    /** Mean heart rate, beats per minute; null without heart rate. */
    public @Nullable Double averageHeartRateBpm() {
        return of(LoadNumber.AVERAGE_HEART_RATE);
    }

    /** Aerobic decoupling, percent; null where the recording cannot give it. */
    public @Nullable Double decouplingPercent() {
        return of(LoadNumber.DECOUPLING);
    }

    private int seconds(LoadNumber number) {
        Double seconds = of(number);
        if (seconds == null) {
            throw new AssertionError(number + " is in every ride");
        }
        return seconds.intValue();
    }
}
