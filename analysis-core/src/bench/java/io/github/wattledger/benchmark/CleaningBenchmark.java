package io.github.wattledger.benchmark;

import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Cleaning a twelve-hour recording of clean samples against one loop that does no more than lay the samples out on the
 * axis: what finding pauses, gaps, spikes, stops and stuck sensors costs.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(3)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class CleaningBenchmark {
    private Recording recording = Recording.of(Samples.builder().build());

    /** Both must give the same power. */
    @Setup
    public void prepare() {
        recording = SeededRecording.twelveHours();
        if (!clean().series(Channel.POWER).equals(layOut().series(Channel.POWER))) {
            throw new AssertionError("the cleaning changed the power of a clean ride");
        }
    }

    @Benchmark
    public Ride clean() {
        return Cleaning.clean(recording).ride();
    }

    /** One pass over the samples, nothing checked. */
    @Benchmark
    public Ride layOut() {
        Samples samples = recording.samples();
        long first = samples.epochSecond(0);
        int seconds = (int) (samples.epochSecond(samples.size() - 1) - first) + 1;
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        for (Channel channel : samples.channels()) {
            double[] column = new double[seconds];
            Arrays.fill(column, Double.NaN);
            columns.put(channel, column);
        }
        for (int i = 0; i < samples.size(); i++) {
            int row = (int) (samples.epochSecond(i) - first);
            for (Map.Entry<Channel, double[]> entry : columns.entrySet()) {
                entry.getValue()[row] = samples.get(entry.getKey(), i);
            }
        }
        Ride.Builder ride = Ride.builder(Instant.ofEpochSecond(first), seconds);
        columns.forEach((channel, column) -> ride.channel(channel, Series.of(column)));
        return ride.build();
    }
}
