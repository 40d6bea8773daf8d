package io.github.wattledger.ride;

import java.io.Serial;
import java.io.Serializable;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What is analysed: a uniform axis of whole seconds, for each channel a {@link Series} over it with {@code NaN} where
 * nothing was measured, and for every second a {@link SecondState}.
 */
public final class Ride implements Serializable {
    /** Power from which a rider pedals rather than coasts, watts. Common practice, no source. */
    public static final double PEDALLING_W = 30;

    @Serial
    private static final long serialVersionUID = 2L;

    private final long startEpochSecond;
    private final SecondState[] states;
    private final EnumMap<Channel, Series> channels;

    @SuppressWarnings("serial") // what List.copyOf gives is serializable
    private final List<Interval> laps;

    @SuppressWarnings("serial")
    private final List<Interval> pauses;

    private final EnumMap<SecondState, Integer> secondsOfState = new EnumMap<>(SecondState.class);

    /** A channel that was never measured; made when first asked for. */
    private transient @Nullable Series nothing;

    private Ride(long startEpochSecond, SecondState[] states, EnumMap<Channel, Series> channels, List<Interval> laps) {
        this.startEpochSecond = startEpochSecond;
        this.states = states;
        this.channels = channels;
        this.laps = List.copyOf(laps);
        List<Interval> paused = new ArrayList<>();
        int to = 0;
        for (int from = 0; from < states.length; from = to) {
            to = endOfState(states, from);
            secondsOfState.merge(states[from], to - from, Integer::sum);
            if (states[from] == SecondState.PAUSED) {
                paused.add(new Interval(from, to));
            }
        }
        this.pauses = List.copyOf(paused);
    }

    private static int endOfState(SecondState[] states, int from) {
        int end = from + 1;
        while (end < states.length && states[end] == states[from]) {
            end++;
        }
        return end;
    }

    /**
     * A builder for a ride of the given length in which, until told otherwise, every second was ridden.
     *
     * @param start the first second
     * @param seconds the number of seconds, 0 or more
     */
    public static Builder builder(Instant start, int seconds) {
        return new Builder(start.getEpochSecond(), seconds);
    }

    /**
     * A ride of power alone, every second ridden, for callers that have no more than that.
     *
     * @param watts one-second power, watts; {@code NaN} is "not measured"
     * @throws IllegalArgumentException when a reading is below 0 or infinite
     */
    public static Ride ofWatts(double... watts) {
        return ofWatts(Series.of(watts));
    }

    /**
     * {@link #ofWatts(double...)} for a series.
     *
     * @throws IllegalArgumentException when a reading is below 0 or infinite
     */
    public static Ride ofWatts(Series watts) {
        return builder(Instant.EPOCH, watts.size())
                .channel(Channel.POWER, watts.requireReadings("watts"))
                .build();
    }

    /** The number of seconds on the axis, pauses included. */
    public int seconds() {
        return states.length;
    }

    /** When the first second began. */
    public Instant start() {
        return Instant.ofEpochSecond(startEpochSecond);
    }

    /** Whether a channel was measured in at least one second. */
    public boolean has(Channel channel) {
        return channels.containsKey(channel);
    }

    /** The channels measured in at least one second. */
    public Set<Channel> channels() {
        return Collections.unmodifiableSet(channels.keySet());
    }

    /** A channel over the whole axis; all {@code NaN} when it was never measured. */
    public Series series(Channel channel) {
        Series series = channels.get(channel);
        return series == null ? nothing() : series;
    }

    /** Two threads may both make it, which does no harm: they are equal. */
    private Series nothing() {
        Series made = nothing;
        if (made == null) {
            made = Series.missing(states.length);
            nothing = made;
        }
        return made;
    }

    /** A channel over the whole axis without what was recorded while the timer stood, in {@link SecondState#PAUSED}. */
    public Series timerSeries(Channel channel) {
        Series series = series(channel);
        for (Interval pause : pauses) {
            for (int second = pause.fromSecond(); second < pause.toSecond(); second++) {
                if (series.isMeasured(second)) {
                    return Series.generate(
                            states.length, each -> states[each] == SecondState.PAUSED ? Double.NaN : series.get(each));
                }
            }
        }
        return series;
    }

    /** What happened in a second. */
    public SecondState state(int second) {
        return states[second];
    }

    /** How many seconds are in a state. */
    public int countSeconds(SecondState state) {
        return secondsOfState.getOrDefault(state, 0);
    }

    /**
     * How many seconds of a stretch are in a state.
     *
     * @throws IndexOutOfBoundsException when the stretch does not lie within the ride
     */
    public int countSeconds(SecondState state, Interval stretch) {
        Objects.checkFromToIndex(stretch.fromSecond(), stretch.toSecond(), states.length);
        int count = 0;
        for (int second = stretch.fromSecond(); second < stretch.toSecond(); second++) {
            if (states[second] == state) {
                count++;
            }
        }
        return count;
    }

    /**
     * The mean of a channel over the seconds of a stretch that were ridden, {@link SecondState#RIDING}, and measured.
     *
     * @return empty where there are none
     * @throws IndexOutOfBoundsException when the stretch does not lie within the ride
     */
    public OptionalDouble meanWhileRiding(Channel channel, Interval stretch) {
        Objects.checkFromToIndex(stretch.fromSecond(), stretch.toSecond(), states.length);
        Series series = series(channel);
        double sum = 0;
        int count = 0;
        for (int second = stretch.fromSecond(); second < stretch.toSecond(); second++) {
            double value = valueIfRidden(series, second);
            if (!Double.isNaN(value)) {
                sum += value;
                count++;
            }
        }
        return count == 0 ? OptionalDouble.empty() : OptionalDouble.of(sum / count);
    }

    private double valueIfRidden(Series series, int second) {
        return states[second] == SecondState.RIDING ? series.get(second) : Double.NaN;
    }

    /** The laps as stretches of this axis, in time order. */
    public List<Interval> laps() {
        return laps;
    }

    /**
     * A part of this ride as a ride of its own, whose second 0 is the part's first second. Laps are cut to it.
     *
     * @throws IndexOutOfBoundsException when the part does not lie within the ride
     */
    public Ride part(Interval part) {
        Objects.checkFromToIndex(part.fromSecond(), part.toSecond(), seconds());
        if (part.seconds() == seconds()) {
            return this;
        }
        EnumMap<Channel, Series> sliced = new EnumMap<>(Channel.class);
        for (Map.Entry<Channel, Series> entry : channels.entrySet()) {
            Series slice = entry.getValue().slice(part.fromSecond(), part.toSecond());
            if (slice.hasAny()) {
                sliced.put(entry.getKey(), slice);
            }
        }
        List<Interval> cut = new ArrayList<>();
        for (Interval lap : laps) {
            if (lap.overlapSeconds(part) > 0) {
                cut.add(new Interval(
                        Math.max(lap.fromSecond(), part.fromSecond()) - part.fromSecond(),
                        Math.min(lap.toSecond(), part.toSecond()) - part.fromSecond()));
            }
        }
        return new Ride(
                startEpochSecond + part.fromSecond(),
                Arrays.copyOfRange(states, part.fromSecond(), part.toSecond()),
                sliced,
                cut);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Ride that
                && startEpochSecond == that.startEpochSecond
                && Arrays.equals(states, that.states)
                && channels.equals(that.channels)
                && laps.equals(that.laps);
    }

    @Override
    public int hashCode() {
        return 31 * Long.hashCode(startEpochSecond) + channels.hashCode();
    }

    @Override
    public String toString() {
        return "Ride of " + seconds() + " s from " + start() + " with " + channels.keySet();
    }

    /** Collects the parts of a ride; not safe for use by several threads. */
    public static final class Builder {
        private final long startEpochSecond;
        private final SecondState[] states;
        private final EnumMap<Channel, Series> channels = new EnumMap<>(Channel.class);
        private List<Interval> laps = List.of();

        private Builder(long startEpochSecond, int seconds) {
            if (seconds < 0) {
                throw new IllegalArgumentException("seconds " + seconds + ", expected 0 or more");
            }
            this.startEpochSecond = startEpochSecond;
            this.states = new SecondState[seconds];
            Arrays.fill(states, SecondState.RIDING);
        }

        /**
         * Sets a channel; one in which nothing was measured is left out.
         *
         * @throws IllegalArgumentException when the series is not as long as the ride
         */
        public Builder channel(Channel channel, Series series) {
            if (series.size() != states.length) {
                throw new IllegalArgumentException(
                        channel + " has " + series.size() + " seconds, expected " + states.length);
            }
            if (series.hasAny()) {
                channels.put(channel, series);
            } else {
                channels.remove(channel);
            }
            return this;
        }

        /** Sets the state of every second of a stretch. */
        public Builder state(Interval stretch, SecondState state) {
            Arrays.fill(states, stretch.fromSecond(), stretch.toSecond(), state);
            return this;
        }

        /** Sets the state of one second. */
        public Builder state(int second, SecondState state) {
            states[second] = state;
            return this;
        }

        /** Sets the laps. */
        public Builder laps(List<Interval> newLaps) {
            laps = List.copyOf(newLaps);
            return this;
        }

        /** The ride. */
        public Ride build() {
            return new Ride(startEpochSecond, states.clone(), new EnumMap<>(channels), laps);
        }
    }
}
