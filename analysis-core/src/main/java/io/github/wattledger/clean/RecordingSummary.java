package io.github.wattledger.clean;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Median;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.LongStream;
import org.jspecify.annotations.Nullable;

/**
 * What a recording holds, without any judgement of the ride.
 *
 * @param sampleCount samples as the file holds them
 * @param usualIntervalSeconds median time from one sample to the next later one, or null with fewer than two times
 * @param longestIntervalSeconds longest such time, pauses included, or null
 * @param channels what was recorded, in the order of {@link Channel}
 * @param gaps stretches without a sample while the timer ran, after the filling of short ones
 * @param pauses stretches in which the timer stood
 * @param lapCount laps the recorder marked
 */
public record RecordingSummary(
        int sampleCount,
        @Nullable Double usualIntervalSeconds,
        @Nullable Integer longestIntervalSeconds,
        List<ChannelSummary> channels,
        List<Interval> gaps,
        List<Interval> pauses,
        int lapCount)
        implements Serializable {
    /**
     * What was recorded of one channel.
     *
     * @param channel the channel
     * @param sampleCount samples of the file that carry it
     * @param coveragePercent seconds of the cleaned ride that have it, of all seconds in which the timer ran, percent; 0
     *     when the cleaning took it for an absent sensor, null when the timer never ran
     * @param lowest lowest value in the cleaned ride while the timer ran, or null without any
     * @param highest highest such value, or null
     */
    public record ChannelSummary(
            Channel channel,
            int sampleCount,
            @Nullable Double coveragePercent,
            @Nullable Double lowest,
            @Nullable Double highest)
            implements Serializable {}

    /** Copies the lists. */
    public RecordingSummary {
        channels = List.copyOf(channels);
        gaps = List.copyOf(gaps);
        pauses = List.copyOf(pauses);
    }

    /**
     * Sums up a recording.
     *
     * @param recording what the file says
     * @param ride the same recording, cleaned
     */
    public static RecordingSummary of(Recording recording, Ride ride) {
        long[] intervals = intervals(recording.samples());
        Set<Channel> recorded = EnumSet.noneOf(Channel.class);
        recorded.addAll(recording.samples().channels());
        recorded.addAll(ride.channels());
        List<ChannelSummary> channels = new ArrayList<>();
        for (Channel channel : recorded) {
            channels.add(channel(channel, recording.samples(), ride));
        }
        return new RecordingSummary(
                recording.samples().size(),
                intervals.length == 0
                        ? null
                        : Double.valueOf(Median.of(
                                Arrays.stream(intervals).asDoubleStream().toArray())),
                intervals.length == 0 ? null : Math.toIntExact(intervals[intervals.length - 1]),
                channels,
                stretches(ride, SecondState.MISSING),
                stretches(ride, SecondState.PAUSED),
                recording.laps().size());
    }

    /** Seconds in all of these stretches. */
    public static int totalSeconds(List<Interval> stretches) {
        return stretches.stream().mapToInt(Interval::seconds).sum();
    }

    private static ChannelSummary channel(Channel channel, Samples samples, Ride ride) {
        Series series = ride.series(channel);
        int running = 0;
        int measured = 0;
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (int second = 0; second < ride.seconds(); second++) {
            if (ride.state(second) == SecondState.PAUSED) {
                continue;
            }
            running++;
            if (series.isMeasured(second)) {
                measured++;
                lowest = Math.min(lowest, series.get(second));
                highest = Math.max(highest, series.get(second));
            }
        }
        return new ChannelSummary(
                channel,
                samples.column(channel).measuredCount(),
                running == 0 ? null : 100.0 * measured / running,
                measured == 0 ? null : lowest,
                measured == 0 ? null : highest);
    }

    /** Times between samples of different times, the shortest first. Only believable samples count. */
    private static long[] intervals(Samples samples) {
        int[] kept = SampleOrder.believable(samples, new Notes());
        long[] times =
                Arrays.stream(kept).mapToLong(samples::epochSecond).distinct().toArray();
        return LongStream.range(1, times.length)
                .map(k -> times[(int) k] - times[(int) k - 1])
                .sorted()
                .toArray();
    }

    private static List<Interval> stretches(Ride ride, SecondState state) {
        List<Interval> stretches = new ArrayList<>();
        int from = -1;
        for (int second = 0; second <= ride.seconds(); second++) {
            boolean within = second < ride.seconds() && ride.state(second) == state;
            if (within && from < 0) {
                from = second;
            } else if (!within && from >= 0) {
                stretches.add(new Interval(from, second));
                from = -1;
            }
        }
        return stretches;
    }
}
