package io.github.wattledger.benchmark;

import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The mean-maximal curve at every duration of a twelve-hour ride: what nobody should ask for without need. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
public class EveryDurationBenchmark {
    /** The power of the ride; that of eleven days would take minutes. */
    @Param({"FOREST_ROADS", "INTERVALS"})
    public PowerShape shape = PowerShape.FOREST_ROADS;

    private Ride ride = Ride.ofWatts();

    @Setup
    public void prepare() {
        ride = shape.ride();
    }

    @Benchmark
    public Series everyDuration() {
        return MeanMaximalCurve.of(ride).everyBestWatts();
    }
}
